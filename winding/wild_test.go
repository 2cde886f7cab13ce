package winding_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/card"
	"slotwright/winding/job"
)

// wildJob is a job file with any of the fields there are, each with any value it takes.
func wildJob(r *rand.Rand, density float64) string {
	var b strings.Builder
	for i := range job.Tables {
		t := &job.Tables[i]
		n := 1
		if t.Many() {
			n = r.IntN(4)
		}
		for range n {
			switch {
			case t.Many():
				fmt.Fprintf(&b, "[[%s]]\n", t.Name)
			case t.Name != "":
				fmt.Fprintf(&b, "[%s]\n", t.Name)
			}
			for _, f := range job.InputsOf(t.Name) {
				if r.Float64() < density && f.Name != "format" {
					fmt.Fprintf(&b, "%s = %s\n", f.Keys()[0], wildValue(r, f))
				}
			}
		}
	}
	return b.String()
}

func wildValue(r *rand.Rand, f *job.Input) string {
	switch f.Kind {
	case job.Word:
		return fmt.Sprintf("%q", f.Words[r.IntN(len(f.Words))])
	case job.Text:
		return `"A"`
	case job.Wire:
		return []string{`"18 AWG"`, `"0000 AWG"`, `"50 AWG"`, `"0.75 mm over"`, `"19 SWG"`, `"0.02 mm"`, `"14 mm"`}[r.IntN(7)]
	case job.List:
		return []string{"[12, 10]", "[1]", "[3, 2, 1]", fmt.Sprintf("[%.0f]", min(f.Max, 5000))}[r.IntN(4)]
	}
	if f.Allowed != nil {
		return fmt.Sprint(f.Allowed[r.IntN(len(f.Allowed))])
	}
	low, high := f.Min, f.Max
	v := low + (high-low)*math.Pow(r.Float64(), 4) // mostly small, sometimes the largest
	switch r.IntN(8) {
	case 0:
		v = low
	case 1:
		v = high
	}
	if f.Kind == job.Whole {
		return fmt.Sprint(math.Round(v))
	}
	return strconv.FormatFloat(math.Max(low, math.Min(high, v)), 'f', -1, 64)
}

// No job that can be written breaks anything: every figure is a number or says why not, and card and
// report are written.
func checkWild(t *testing.T, text string) {
	t.Helper()
	d := job.Parse(text)
	if len(d.Problems()) > 0 {
		t.Fatalf("a value in its range is a problem: %v in\n%s", d.Problems()[0], text)
	}
	b := winding.Prepare(d.Job())
	o := b.Outcome()
	out, err := json.Marshal(o)
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	_ = out
	for _, row := range o.Comparison {
		for _, c := range row.Cells {
			if !c.Figure.Known() && c.Figure.Why == "" {
				t.Fatalf("%s: missing without a reason in\n%s", row.Label, text)
			}
			if v := c.Figure.Value; math.IsNaN(v) || math.IsInf(v, 0) {
				t.Fatalf("%s: %v in\n%s", row.Label, v, text)
			}
		}
	}
	for i := range o.Trials {
		if s := card.Text(b, &o, i, card.Options{Document: &d}); strings.Contains(s, "NaN") || strings.Contains(s, "Inf ") {
			t.Fatalf("a card with no number in it:\n%s\nof\n%s", s, text)
		}
		b.Picture(i)
		b.Plan(i)
		b.Spans(i)
	}
	if s := card.Report(b, &o, card.Options{}); strings.Contains(s, "NaN") {
		t.Fatalf("a report with NaN of\n%s", text)
	}
}

func TestWildJobs(t *testing.T) {
	n := 150
	if testing.Short() {
		n = 25
	}
	for seed := range n {
		r := rand.New(rand.NewPCG(uint64(seed), 99))
		checkWild(t, wildJob(r, []float64{0.2, 0.6, 0.95}[seed%3]))
	}
}

func FuzzWildJobs(f *testing.F) {
	f.Add(uint64(1), uint8(100))
	f.Fuzz(func(t *testing.T, seed uint64, density uint8) {
		checkWild(t, wildJob(rand.New(rand.NewPCG(seed, 7)), float64(density)/255))
	})
}
