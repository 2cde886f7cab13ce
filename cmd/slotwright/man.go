package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"

	"slotwright/winding/job"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// The manual is written in the man macros (groff_man(7)) straight from the commands. The library beside
// cobra that does this too depends on a reader of markdown and one of YAML, which made every start a
// millisecond longer and the program a third of a megabyte larger.

// newMan is the verb that prints or writes the manual.
func newMan(s streams) *cobra.Command {
	return &cobra.Command{
		Use:     "man [FOLDER]",
		Short:   "Print the manual page, or write one a verb into a folder",
		Example: "  slotwright man | man -l -\n  slotwright man ~/.local/share/man/man1",
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) == 0 {
				return manPage(c.Root(), s.out)
			}
			if args[0] == "" {
				return errors.New("man: read no name, expected a folder; usage: slotwright man [FOLDER]")
			}
			for _, verb := range append(c.Root().Commands(), c.Root()) {
				if err := manFile(verb, args[0]); err != nil {
					return jobProblem{text: err.Error(), file: args[0]}
				}
			}
			_, err := fmt.Fprintln(s.out, "Wrote the manual to "+text.Visible(args[0]))
			return err
		},
	}
}

// manFile writes the page of a verb into a folder, atomically; an older page is replaced.
func manFile(verb *cobra.Command, folder string) error {
	var page strings.Builder
	if err := manPage(verb, &page); err != nil {
		return err
	}
	_, err := job.Write(filepath.Join(folder, manName(verb)+".1"), page.String(), job.Mark{}, job.OverChanged|job.Anew)
	return err
}

func manName(verb *cobra.Command) string { return strings.ReplaceAll(verb.CommandPath(), " ", "-") }

// manPage writes the page of a verb.
func manPage(verb *cobra.Command, out io.Writer) error {
	verb.InitDefaultHelpFlag()
	name := manName(verb)
	var p strings.Builder
	fmt.Fprintf(&p, ".nh\n.TH %q \"1\" %q \"Slotwright\" \"Slotwright\"\n", strings.ToUpper(name), time.Now().Format("Jan 2006"))
	p.WriteString(".SH NAME\n" + roff(name+" - "+verb.Short))
	p.WriteString(".SH SYNOPSIS\n\\fB" + roff(verb.UseLine()+"\\fP"))
	p.WriteString(".SH DESCRIPTION\n")
	long := verb.Long
	if long == "" {
		long = verb.Short
	}
	for i, paragraph := range strings.Split(long, "\n\n") {
		if i > 0 {
			p.WriteString(".PP\n")
		}
		p.WriteString(roff(paragraph))
	}
	manFlags(&p, "OPTIONS", verb.NonInheritedFlags())
	manFlags(&p, "OPTIONS OF EVERY VERB", verb.InheritedFlags())
	if verb.Example != "" {
		p.WriteString(".SH EXAMPLE\n.EX\n" + roff(verb.Example) + ".EE\n")
	}
	p.WriteString(".SH SEE ALSO\n" + roff(strings.Join(manOthers(verb), ", ")))
	_, err := io.WriteString(out, p.String())
	return err
}

// manOthers is the pages that a page refers to: the root's, or all the verbs'.
func manOthers(verb *cobra.Command) []string {
	if verb.HasParent() {
		return []string{manName(verb.Parent()) + "(1)"}
	}
	var list []string
	for _, c := range verb.Commands() {
		if c.IsAvailableCommand() {
			list = append(list, manName(c)+"(1)")
		}
	}
	return list
}

// manFlags writes options with what they mean.
func manFlags(p *strings.Builder, heading string, flags *pflag.FlagSet) {
	if !flags.HasAvailableFlags() {
		return
	}
	p.WriteString(".SH " + heading + "\n")
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		name := "\\fB" + strings.ReplaceAll("--"+f.Name, "-", `\-`) + "\\fP"
		if f.Shorthand != "" {
			name = "\\fB\\-" + f.Shorthand + "\\fP, " + name
		}
		kind, meaning := pflag.UnquoteUsage(f)
		if kind != "" {
			name += " " + kind
		}
		p.WriteString(".TP\n" + name + "\n" + roff(meaning))
	})
}

// roff is lines of text in which nothing is taken for a macro or an escape, except for a font reset at
// the end of a line.
func roff(s string) string {
	var p strings.Builder
	for _, line := range strings.Split(strings.TrimRight(s, "\n"), "\n") {
		bold := strings.HasSuffix(line, `\fP`)
		line = strings.ReplaceAll(strings.TrimSuffix(line, `\fP`), `\`, `\e`)
		line = strings.ReplaceAll(line, "-", `\-`)
		if strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'") {
			line = `\&` + line
		}
		if p.WriteString(line); bold {
			p.WriteString(`\fP`)
		}
		p.WriteByte('\n')
	}
	return p.String()
}
