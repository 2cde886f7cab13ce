package main

import (
	"fmt"
	"io"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// checked is the JSON answer of check.
type checked struct {
	File     string      `json:"file"`
	Problems []complaint `json:"problems"`
	// More is how many problems there are beyond those listed.
	More   int     `json:"more_problems"`
	Doubts []doubt `json:"doubts"`
}

// doubt is a finding with its place in the file.
type doubt struct {
	Line   int `json:"line,omitempty"`
	Column int `json:"column,omitempty"`
	winding.Finding
}

// newCheck is the verb that says what is wrong or doubtful in a job file.
func newCheck(s streams) *cobra.Command {
	var asJSON bool
	c := &cobra.Command{
		Use:   "check JOB",
		Short: "Say what is wrong or doubtful, with line and column",
		Long: "Say what is wrong or doubtful, with line and column. What is wrong goes to standard error, and\n" +
			"check then ends with 1; what can be used but is doubtful goes to standard output, and it ends\n" +
			"with 0. With --json both are in one answer on standard output.",
		Example: "  slotwright check hub.toml",
		RunE: func(_ *cobra.Command, args []string) error {
			d, _, err := job.Load(args[0])
			if err != nil {
				return jobProblem{text: err.Error(), file: args[0]}
			}
			answer := checked{File: args[0], Problems: []complaint{}, More: d.More(), Doubts: []doubt{}}
			for _, p := range d.Problems() {
				answer.Problems = append(answer.Problems, complaint{&p, p.Text()})
			}
			for _, f := range winding.Evaluate(d.Job()).Findings {
				if f.Severity < winding.Doubt {
					continue
				}
				line, column := d.Where(f.Path)
				answer.Doubts = append(answer.Doubts, doubt{line, column, f})
			}
			if asJSON {
				err = printJSON(s.out, answer)
			} else {
				answer.print(s)
			}
			if err == nil && len(answer.Problems) > 0 {
				return jobProblem{answered: true}
			}
			return err
		},
	}
	c.Flags().BoolVar(&asJSON, "json", false, "answer in JSON")
	return c
}

// print writes the answer: problems as errors, doubts as warnings, a line each.
func (c checked) print(s streams) {
	line := func(w io.Writer, format string, args ...any) {
		fmt.Fprintln(w, text.Visible(c.File+":"+fmt.Sprintf(format, args...)))
	}
	for _, p := range c.Problems {
		line(s.err, "%s", p.Error())
	}
	if c.More > 0 {
		line(s.err, " %d more problems are not listed; mend these first", c.More)
	}
	for _, d := range c.Doubts {
		who, fix := "", ""
		if d.Trial != "" {
			who = "trial " + d.Trial + ": "
		}
		if d.Fix != "" {
			fix = "; " + d.Fix
		}
		line(s.out, "%d:%d: doubtful: %s%s%s", d.Line, d.Column, who, d.Text, fix)
	}
	switch {
	case len(c.Problems) > 0:
	case len(c.Doubts) == 1:
		line(s.out, " can be used; 1 thing to look at")
	case len(c.Doubts) > 1:
		line(s.out, " can be used; %d things to look at", len(c.Doubts))
	default:
		line(s.out, " nothing wrong")
	}
}
