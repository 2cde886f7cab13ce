package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/card"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// paper is how written output is wanted.
type paper struct {
	inch, fahrenheit, json, pages bool

	flagged func(name string) bool // whether a flag was typed
}

func (p *paper) flags(c *cobra.Command) {
	inUnits(c, &p.inch, &p.fahrenheit)
	p.flagged = c.Flags().Changed
	c.Flags().BoolVar(&p.json, "json", false, "answer in JSON")
}

// printed adds the flags that only text has.
func (p *paper) printed(c *cobra.Command) {
	p.flags(c)
	c.Flags().BoolVar(&p.pages, "pages", false, "a form feed between sheets, for a printer")
}

// options are those for a text that goes to w.
func (p *paper) options(w io.Writer, d *job.Document) card.Options {
	return card.Options{ASCII: isASCII(w), Units: p.units(d), Document: d, Pages: p.pages}
}

// inUnits gives a verb the flags of units, which are the same for all.
func inUnits(c *cobra.Command, inch, fahrenheit *bool) {
	c.Flags().BoolVar(inch, "inch", false, "inches, feet and pounds (not given: as most lengths of the job are typed)")
	c.Flags().BoolVar(fahrenheit, "fahrenheit", false, "temperatures in °F (not given: as most of the job are typed)")
}

// units are those asked for; otherwise those in which most of the job was typed.
func (p *paper) units(d *job.Document) quantity.Choice {
	u := d.Units(quantity.Choice{})
	if p.flagged("inch") {
		u.Inch = p.inch
	}
	if p.flagged("fahrenheit") {
		u.Fahrenheit = p.fahrenheit
	}
	return u
}

// newReport is the verb that prints every figure of every trial.
func newReport(s streams) *cobra.Command {
	var p paper
	var only []string
	c := &cobra.Command{
		Use:     "report [JOB]",
		Short:   "Every figure of every trial; without JOB, of the built-in example",
		Long:    "Every figure of every trial; without JOB, of the built-in example. Its sections, for --section:\n\n" + sectionList(),
		Example: "  slotwright report hub.toml --section battery,limits\n  slotwright report hub.toml --json",
		RunE: func(_ *cobra.Command, args []string) error {
			if err := knownSections(only); err != nil {
				return err
			}
			d, b, o, err := workOut(argument(args))
			if err != nil {
				return err
			}
			if p.json {
				return printJSON(s.out, asReported(o))
			}
			opt := p.options(s.out, &d)
			opt.Sections = only
			fmt.Fprint(s.out, card.Report(b, o, opt))
			return nil
		},
	}
	c.Flags().StringSliceVar(&only, "section", nil, "only these sections, with commas between them")
	p.printed(c)
	return c
}

// sectionList is the report's sections, a line each.
func sectionList() string {
	var b strings.Builder
	for _, s := range card.Sections() {
		fmt.Fprintf(&b, "  %-10s %s\n", s.Name, s.About)
	}
	return b.String()
}

// knownSections names a section that does not exist.
func knownSections(names []string) error {
	var known []string
	for _, s := range card.Sections() {
		known = append(known, s.Name)
	}
	for _, n := range names {
		if !slices.Contains(known, n) {
			return fmt.Errorf("--section: read %q, expected one of %s", n, strings.Join(known, ", "))
		}
	}
	return nil
}

// newCard is the verb that prints the winding card of one trial.
func newCard(s streams) *cobra.Command {
	var p paper
	var trial string
	c := &cobra.Command{
		Use:     "card [JOB]",
		Short:   "The winding card as text; without JOB, of the built-in example",
		Example: "  slotwright card hub.toml --trial B > card.txt\n  slotwright card hub.toml --inch --pages | lp",
		RunE: func(_ *cobra.Command, args []string) error {
			d, b, o, err := workOut(argument(args))
			if err != nil {
				return err
			}
			i, err := theTrial(s, b, o, trial)
			if err != nil {
				return err
			}
			printed := card.Text(b, o, i, p.options(s.out, &d))
			if p.json {
				return printJSON(s.out, carded{o.Trials[i], o.Machine, append([]winding.Caution{}, o.Cautions...), printed})
			}
			fmt.Fprint(s.out, printed)
			return nil
		},
	}
	c.Flags().StringVar(&trial, "trial", "", "name of the trial; when not given the one wound, else the reference")
	p.printed(c)
	return c
}

// workOut reads a job and evaluates it.
func workOut(path string) (job.Document, *winding.Bench, *winding.Outcome, error) {
	d, b, err := prepared(path)
	if err != nil {
		return d, nil, nil, err
	}
	o := b.Outcome()
	return d, b, &o, nil
}

// prepared reads a job and makes its bench.
func prepared(path string) (job.Document, *winding.Bench, error) {
	d, j, err := readJob(path)
	if err != nil {
		return d, nil, err
	}
	return d, winding.Prepare(j), nil
}

// theTrial is the index of the named trial, else of the one that the job is currently about; where
// there are several, which was taken and why is written to standard error.
func theTrial(s streams, b *winding.Bench, o *winding.Outcome, name string) (int, error) {
	if name != "" || len(o.Trials) == 0 {
		return findTrial(o, name)
	}
	i, why := o.Foremost(b.Job().Target.Reference)
	if len(o.Trials) > 1 {
		if why == "" {
			why = "it is the first"
		}
		fmt.Fprintf(s.err, "slotwright: trial %s: %s; --trial takes another\n", text.Visible(o.Trials[i].Name), why)
	}
	return i, nil
}

// findTrial is the index of a trial by its name: as written, else ignoring case.
func findTrial(o *winding.Outcome, name string) (int, error) {
	if len(o.Trials) == 0 {
		return 0, jobProblem{text: "the job has no trial; add one under [[trial]]"}
	}
	names, near := "", -1
	for i, t := range o.Trials {
		if t.Name == name {
			return i, nil
		}
		if near < 0 && strings.EqualFold(t.Name, name) {
			near = i
		}
		names += " " + t.Name
	}
	if near >= 0 {
		return near, nil
	}
	if strings.TrimSpace(names) == "" {
		return 0, fmt.Errorf("--trial: read %q, but no trial of the job has a name: give it one (name = \"A\") or leave --trial out", name)
	}
	return 0, fmt.Errorf("--trial: read %q, expected one of%s", name, names)
}
