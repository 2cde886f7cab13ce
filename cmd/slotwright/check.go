package main

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/spf13/cobra"
)

// checked is the JSON answer of check.
type checked struct {
	File     string      `json:"file"`
	Problems []complaint `json:"problems"`
	Doubts   []doubt     `json:"doubts"`
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
		RunE: func(_ *cobra.Command, args []string) error {
			d, _, err := job.Load(args[0])
			if err != nil {
				return jobProblem{text: err.Error(), file: args[0]}
			}
			answer := checked{File: args[0], Problems: []complaint{}, Doubts: []doubt{}}
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

// print writes the answer: problems as errors, doubts as warnings.
func (c checked) print(s streams) {
	for _, p := range c.Problems {
		fmt.Fprintf(s.err, "%s:%s\n", c.File, p.Error())
	}
	for _, d := range c.Doubts {
		who := ""
		if d.Trial != "" {
			who = "trial " + d.Trial + ": "
		}
		fix := ""
		if d.Fix != "" {
			fix = "; " + d.Fix
		}
		fmt.Fprintf(s.out, "%s:%d:%d: doubtful: %s%s%s\n", c.File, d.Line, d.Column, who, d.Text, fix)
	}
	switch {
	case len(c.Problems) > 0:
	case len(c.Doubts) > 0:
		fmt.Fprintf(s.out, "%s: can be used; %d things to look at\n", c.File, len(c.Doubts))
	default:
		fmt.Fprintf(s.out, "%s: nothing wrong\n", c.File)
	}
}
