package main

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/card"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/spf13/cobra"
)

// paper is how written outputs are wanted.
type paper struct{ inch, fahrenheit, json bool }

func (p *paper) flags(c *cobra.Command) {
	c.Flags().BoolVar(&p.inch, "inch", false, "inches, feet and pounds")
	c.Flags().BoolVar(&p.fahrenheit, "fahrenheit", false, "temperatures in °F")
	c.Flags().BoolVar(&p.json, "json", false, "answer in JSON")
}

func (p *paper) units() quantity.Choice {
	return quantity.Choice{Inch: p.inch, Fahrenheit: p.fahrenheit}
}

// newReport is the verb that prints every figure of every trial.
func newReport(s streams) *cobra.Command {
	var p paper
	c := &cobra.Command{
		Use:   "report [JOB]",
		Short: "Every figure of every trial; without JOB, of the built-in example",
		RunE: func(_ *cobra.Command, args []string) error {
			d, b, o, err := workOut(argument(args))
			if err != nil {
				return err
			}
			if p.json {
				return printJSON(s.out, asReported(o))
			}
			fmt.Fprint(s.out, card.Report(b, o, card.Options{ASCII: isASCII(s.out), Units: p.units(), Document: &d}))
			return nil
		},
	}
	p.flags(c)
	return c
}

// newCard is the verb that prints the winding card of one trial.
func newCard(s streams) *cobra.Command {
	var p paper
	var trial string
	c := &cobra.Command{
		Use:   "card [JOB]",
		Short: "The winding card as text; without JOB, of the built-in example",
		RunE: func(_ *cobra.Command, args []string) error {
			d, b, o, err := workOut(argument(args))
			if err != nil {
				return err
			}
			i, err := findTrial(o, trial)
			if err != nil {
				return err
			}
			text := card.Text(b, o, i, card.Options{ASCII: isASCII(s.out), Units: p.units(), Document: &d})
			if p.json {
				return printJSON(s.out, carded{o.Trials[i], o.Machine, append([]winding.Caution{}, o.Cautions...), text})
			}
			fmt.Fprint(s.out, text)
			return nil
		},
	}
	c.Flags().StringVar(&trial, "trial", "", "name of the trial; the first when not given")
	p.flags(c)
	return c
}

// workOut reads a job and works it out.
func workOut(path string) (job.Document, *winding.Bench, *winding.Outcome, error) {
	d, j, err := readJob(path)
	if err != nil {
		return d, nil, nil, err
	}
	b := winding.Prepare(j)
	o := b.Outcome()
	return d, b, &o, nil
}

// findTrial is the index of a trial by its name: as written, else without regard to case.
func findTrial(o *winding.Outcome, name string) (int, error) {
	if len(o.Trials) == 0 {
		return 0, jobProblem{text: "the job has no trial; add one under [[trial]]"}
	}
	if name == "" {
		return 0, nil
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
	return 0, fmt.Errorf("--trial: read %q, expected one of%s", name, names)
}
