package winding

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// timed is a job of testdata, "" the example, with a number of trials.
func timed(b *testing.B, name string, trials int) job.Job {
	doc := job.Example()
	if name != "" {
		text, err := os.ReadFile("../testdata/jobs/" + name + ".toml")
		require.NoError(b, err)
		doc = job.Parse(string(text))
	}
	j := doc.Job()
	j.Trials = append([]job.Trial(nil), j.Trials[:min(trials, len(j.Trials))]...)
	for n := len(j.Trials); n < trials; n++ {
		t := j.Trials[n-1]
		t.Name, t.Turns = fmt.Sprint("T", n), quantity.Known(t.Turns.Value+1)
		j.Trials = append(j.Trials, t)
	}
	return j
}

// nameOf is a job's name in a benchmark.
func nameOf(name string) string {
	if name == "" {
		return "example"
	}
	return name
}

// BenchmarkEvaluateFour is four trials with curves and a drive, from nothing; the same figures without
// the search for replacements; one more turn on one of them, which is what a key costs.
func BenchmarkEvaluateFour(b *testing.B) {
	for _, name := range []string{"", "engine", "water", "pedals", "wind-good", "wind-wound-rotor"} {
		j := timed(b, name, 4)
		b.Run(nameOf(name)+"/nothing", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Evaluate(j)
			}
		})
		b.Run(nameOf(name)+"/figures", func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Prepare(j).WithoutOffers().Outcome()
			}
		})
		b.Run(nameOf(name)+"/one-turn", func(b *testing.B) {
			b.ReportAllocs()
			bench := Prepare(j)
			bench.Outcome()
			for b.Loop() {
				k := bench.Job()
				k.Trials = append([]job.Trial(nil), k.Trials...)
				k.Trials[0].Turns.Value = 9 + float64((int(k.Trials[0].Turns.Value)+1)%8)
				bench = bench.With(k)
				bench.Outcome()
			}
		})
	}
}

// BenchmarkGrowth is how the time of an outcome, and of its parts, grows.
func BenchmarkGrowth(b *testing.B) {
	for trials := 1; trials <= 4; trials++ {
		j := timed(b, "", trials)
		b.Run(fmt.Sprint("trials/", trials), func(b *testing.B) {
			for b.Loop() {
				Evaluate(j)
			}
		})
	}
	for _, slots := range []int{12, 36, 72, 144} {
		j := timed(b, "", 2)
		j.Machine.Slots, j.Machine.Poles, j.Machine.Span = quantity.Known(float64(slots)), quantity.Known(float64(slots/3)), quantity.Known(3)
		b.Run(fmt.Sprint("slots/", slots), func(b *testing.B) {
			for b.Loop() {
				Evaluate(j)
			}
		})
	}
	for readings := 0; readings <= 3; readings++ {
		j := timed(b, "", 2)
		j.Spins = j.Spins[:readings]
		b.Run(fmt.Sprint("spin-readings/", readings), func(b *testing.B) {
			for b.Loop() {
				Evaluate(j)
			}
		})
	}
	for _, within := range []float64{1e-2, 1e-3, closeCurve, 1e-4, 1e-5} {
		bench := Prepare(timed(b, "", 1))
		o := bench.Static(bench.job.Trials[0])
		r, why := bench.bed.charger(bench.job.Trials[0], &o)
		require.Empty(b, why)
		b.Run(fmt.Sprintf("curve-agreeing-to/%.0e", within), func(b *testing.B) {
			knots := 0
			for b.Loop() {
				own := *r
				knots = len(own.over(bench.drive.fastest, bench.air.ambientC, within).knots)
			}
			b.ReportMetric(float64(knots), "solved-points")
		})
	}
}

// BenchmarkStaticFitted is Static where the readings of the old winding were fitted jointly.
func BenchmarkStaticFitted(b *testing.B) {
	j := timed(b, "amps-readings", 1)
	bench := Prepare(j)
	b.ReportAllocs()
	for b.Loop() {
		bench.Static(j.Trials[0])
	}
}
