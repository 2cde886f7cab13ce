package winding_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plant is a job whose only record has the readings that the trial would give if made differently.
func plant(j job.Job, otherwise func(*job.Trial), ohms, volts, began bool) (winding.Outcome, bool) {
	j.Machine.MeanTurnMM = quantity.Known(200) // a strand that is not joined makes no thinner coil
	j.Trials = []job.Trial{j.Trials[0]}
	j.Trials[0].Name = "A"
	wrong := j
	wrong.Trials = slices.Clone(j.Trials)
	otherwise(&wrong.Trials[0])
	made := winding.Prepare(wrong).Static(wrong.Trials[0])
	r := job.AsWound{Trial: "A", RPM: quantity.Known(600)}
	if ohms {
		r.LeadOhms, r.LeadOhmsC = quantity.Known(made.LeadOhms20.Value), quantity.Known(20)
	}
	if volts {
		r.LineVolts = quantity.Known(made.LinePerRPM.Value * 600)
	}
	if began {
		r.CutInRPM = quantity.Known(made.CutInRPM.Value)
	}
	j.AsWound = []job.AsWound{r}
	return winding.Evaluate(j), made.LeadOhms20.Known() && made.LinePerRPM.Known()
}

// A fault is planted by evaluating the trial as it would then be: with the other connection, in other
// circuits, with strands missing. Whatever was read of it, the fault is among the first named, before
// all that would give other readings.
func TestPlantedFaultsAreNamedFirst(t *testing.T) {
	planted := map[string]int{}
	forAny(t, 25, func(r *rand.Rand, j job.Job) {
		one := &j.Trials[0]
		one.Connection = []layout.Connection{layout.Star, layout.Delta}[r.IntN(2)]
		one.Strands = quantity.Known(float64(1 + r.IntN(4)))
		choices := winding.Prepare(j).Static(*one).CircuitChoices
		require.NotEmpty(t, choices)
		one.Circuits = quantity.Known(float64(choices[r.IntN(len(choices))]))
		faults := map[string]func(*job.Trial){}
		other := layout.Star
		if one.Connection == layout.Star {
			other = layout.Delta
		}
		faults["joined in "+other.String()+", not "+one.Connection.String()] = func(t *job.Trial) { t.Connection = other }
		for _, n := range choices {
			if float64(n) != one.Circuits.Value {
				faults["its coils joined in "+counted(n, "circuit")] = func(t *job.Trial) { t.Circuits = quantity.Known(float64(n)) }
			}
		}
		for n := 1; n < one.Strands.Whole(); n++ {
			faults[counted(n, "strand")+" of "+fmt.Sprint(one.Strands.Whole())+" not joined, in every phase"] = func(t *job.Trial) { t.Strands = quantity.Known(one.Strands.Value - float64(n)) }
		}
		for name, otherwise := range faults {
			for _, read := range [][3]bool{{true, true, true}, {true, true, false}, {true, false, false}, {true, false, true}} {
				o, ok := plant(j, otherwise, read[0], read[1], read[2])
				require.True(t, ok, name)
				list := o.Wound[0].Likely
				require.NotEmpty(t, list, "%s %v", name, read)
				at := slices.IndexFunc(list, func(l winding.Likely) bool { return len(l.Fault) >= len(name) && l.Fault[:len(name)] == name })
				require.GreaterOrEqual(t, at, 0, "%s %v: %+v", name, read, list)
				for _, before := range list[:at] {
					assert.InEpsilon(t, list[at].Ohms, before.Ohms, 1e-9, "%s: %+v reads otherwise", name, before)
					if read[1] {
						assert.InEpsilon(t, list[at].Volts, before.Volts, 1e-9, "%s: %+v reads otherwise", name, before)
					}
				}
				assert.False(t, list[0].ByOhms)
				planted[name[:9]]++
			}
		}
	})
	for _, kind := range []string{"joined in", "its coils", "1 strand ", "2 strands"} {
		assert.Greater(t, planted[kind], 10, kind)
	}
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprint(n, " ", what, "s")
}

// A winding made as planned indicates no fault, and no fault is offered that its phases, connection or
// circuits do not allow.
func TestNoFaultIsOfferedThatCannotBe(t *testing.T) {
	forAny(t, 20, func(_ *rand.Rand, j job.Job) {
		o, _ := plant(j, func(*job.Trial) {}, true, true, true)
		assert.Empty(t, o.Wound[0].Likely)
	})
	j := load(t, "flywheel-ten-of-twelve.toml")
	for _, times := range []float64{1.0 / 3, 3, 0.5, 2, 4, 0.25} {
		k := j
		k.Trials = []job.Trial{j.Trials[0]}
		plan := winding.Evaluate(k).Trials[0]
		require.True(t, plan.LeadOhms20.Known(), plan.LeadOhms20.Why)
		k.AsWound = []job.AsWound{{LeadOhms: quantity.Known(times * plan.LeadOhms20.Value), LeadOhmsC: quantity.Known(20)}}
		for _, l := range winding.Evaluate(k).Wound[0].Likely {
			for _, word := range []string{"delta", "star", "phase"} {
				assert.NotContains(t, l.Fault, word)
			}
		}
	}
}

// byHand is the example's first trial, with ohms and volts read as multiples of the plan.
func byHand(t *testing.T, change func(*job.Trial), ohms, volts, began float64) *winding.WoundOutcome {
	j := job.Example().Job()
	j.Trials = []job.Trial{j.Trials[0]}
	change(&j.Trials[0])
	plan := winding.Evaluate(j).Trials[0]
	r := job.AsWound{RPM: quantity.Known(600), LeadOhmsC: quantity.Known(20)}
	if ohms > 0 {
		r.LeadOhms = quantity.Known(ohms * plan.LeadOhms20.Value)
	}
	if volts > 0 {
		r.LineVolts = quantity.Known(volts * plan.LinePerRPM.Value * 600)
	}
	if began > 0 {
		r.CutInRPM = quantity.Known(began * plan.CutInRPM.Value)
	}
	j.AsWound = []job.AsWound{r}
	return &winding.Evaluate(j).Wound[0]
}

// Worked by hand for faults in one phase. A star of 1, 1 and 2 Ω: pairs 2, 3 and 3, mean 8/3 of 2
// planned, ×4/3. A delta with one of three open: pairs 2, 1 and 1 of a phase's ohms, mean
// 4/3 of 2/3 planned, ×2, its volts as they were; of 1, 1 and 2 Ω: pairs 3/4, 3/4 and 1, mean
// 5/6 of 2/3, ×5/4. A star with one phase turned round: pairs 1, 1
// and √3 of a phase's volts, mean 1.244 of 1.732, ×0.718.
func TestFaultsOfOnePhaseByHand(t *testing.T) {
	two := func(t *job.Trial) { t.Strands = quantity.Known(2) }
	delta := func(t *job.Trial) { t.Connection = layout.Delta }
	twoInDelta := func(t *job.Trial) { two(t); delta(t) }
	as := func(*job.Trial) {}
	for _, c := range []struct {
		change             func(*job.Trial)
		ohms, volts, began float64
		want               string
	}{
		{two, 4.0 / 3, 1, 0, "1 strand of 2 open in one phase: the pairs are unlike"},
		{twoInDelta, 5.0 / 4, 1, 0, "1 strand of 2 open in one phase: the pairs are unlike"},
		{delta, 2, 1, 1, "one phase of the delta open: one pair reads twice the others"},
		{as, 1, (2 + math.Sqrt(3)) / 3 / math.Sqrt(3), 1, "one phase turned round: two pairs read 58 % of the third"},
		{as, 0.5, 1 / math.Sqrt(3), 1, "read between a lead and the star point, not between two leads"},
		{as, 1, 1 / math.Sqrt(3), 1, "the volts read between a lead and the star point, not between two leads"},
		{as, 1.0 / 3, 1 / math.Sqrt(3), 0, "joined in delta, not star"},
		{delta, 3, math.Sqrt(3), 0, "joined in star, not delta"},
		{two, 4, 2, 0.5, "its 2 strands joined in series, not side by side"},
		{as, 1, 0.5, 2, "the tachometer showing twice the speed"},
	} {
		list := byHand(t, c.change, c.ohms, c.volts, c.began).Likely
		require.NotEmpty(t, list, c.want)
		assert.Equal(t, c.want, list[0].Fault, "%+v", list)
	}
}

// Volts with the drive's speed in place of the alternator's exceed the plan by the speed ratio; this is
// not mentioned for a drive on the same shaft. Half the coils left out is offered only if there is a
// half.
func TestFaultsThatNeedARatioOrAHalf(t *testing.T) {
	spoken := func(j job.Job, ohms, volts float64, want string) bool {
		plan := winding.Evaluate(j).Trials[0]
		j.AsWound = []job.AsWound{{RPM: quantity.Known(600), LeadOhmsC: quantity.Known(20), LeadOhms: quantity.Known(ohms * plan.LeadOhms20.Value), LineVolts: quantity.Known(volts * plan.LinePerRPM.Value * 600)}}
		list := winding.Evaluate(j).Wound[0].Likely
		return slices.ContainsFunc(list, func(l winding.Likely) bool { return l.Fault == want })
	}
	const speed = "the speed of the drive given for that of the alternator"
	for ratio, want := range map[float64]bool{3: true, 1: false} {
		j := job.Example().Job()
		j.Trials = j.Trials[:1]
		j.Drive.DriverMM, j.Drive.DrivenMM, j.Drive.Slip, j.Drive.Ratio = quantity.Reading{}, quantity.Reading{}, quantity.Reading{}, quantity.Known(ratio)
		times := winding.Evaluate(j).Machine.Ratio.Value
		assert.Equal(t, want, spoken(j, 1, times+1e-9, speed), "%g", ratio)
	}
	for slots, want := range map[float64]bool{9: false, 12: true} {
		j := plain()
		j.Machine.Slots, j.Machine.Poles, j.Machine.Layers, j.Machine.Span = quantity.Known(slots), quantity.Known(slots*2/3), quantity.Known(2), quantity.Known(1)
		assert.Equal(t, want, spoken(j, 0.5, 0.5, "half the coils of each phase not in circuit"), "%g slots", slots)
	}
}

// A fault is named once; ohms that no connection explains are called open or shorted; ohms explained
// only by a fault that the volts do not confirm say so; and volts contradicted by a cut-in speed are to
// be read again.
func TestWhatAReadingSpeaksOf(t *testing.T) {
	speaks := func(ohms, volts, began float64) map[string]string {
		said := map[string]string{}
		for _, c := range byHand(t, func(*job.Trial) {}, ohms, volts, began).Checks() {
			said[c.Field] = c.Speaks()
		}
		return said
	}
	s := speaks(1.0/3, 1/math.Sqrt(3), math.Sqrt(3))
	assert.Equal(t, "likely joined in delta, not star (ohms ×0.33, volts ×0.58)", s["lead"])
	assert.Equal(t, "the same, as with ohms at 20 °C", s["line"])
	assert.Equal(t, "the same, as with ohms at 20 °C", s["cut_in"])
	assert.Contains(t, speaks(276, 0, 0)["lead"], "open: a lead or a joint not connected")
	assert.Contains(t, speaks(0.01, 0, 0)["lead"], "shorted:")
	assert.Contains(t, speaks(1, 0.02, 0)["line"], "as good as none: a lead or the star point not connected")
	s = speaks(1.0/3, 1.27, 0)
	assert.Contains(t, s["lead"], "joined in delta, not star (ohms ×0.33, volts ×0.58), which the volts do not confirm")
	assert.Contains(t, s["line"], "speed or field current more than said")
	assert.Contains(t, speaks(1, 0.31, 1)["line"], "it begins to charge as if its volts were right: read them again")
	assert.NotContains(t, speaks(1, 0.8, 1.25)["line"], "begins to charge as if", "both say the same")
	assert.Contains(t, speaks(1.13, 1, 1)["lead"], "cold joint", "no join makes it")
}

// The finding about a record names the fault, once.
func TestAFaultIsCalledOutOnce(t *testing.T) {
	j := job.Example().Job()
	j.Trials = []job.Trial{j.Trials[0]}
	plan := winding.Evaluate(j).Trials[0]
	j.AsWound = []job.AsWound{{LeadOhms: quantity.Known(plan.LeadOhms20.Value / 3), LeadOhmsC: quantity.Known(20),
		LineVolts: quantity.Known(plan.LinePerRPM.Value * 600 / math.Sqrt(3)), RPM: quantity.Known(600)}}
	n := 0
	for _, f := range winding.Evaluate(j).Findings {
		if len(f.Text) > 0 && slices.Contains([]string{"wound[0].lead", "wound[0].line"}, f.Path) {
			if f.Path == "wound[0].lead" {
				assert.Contains(t, f.Text, ": likely joined in delta, not star")
			} else {
				assert.NotContains(t, f.Text, "likely")
			}
			n++
		}
	}
	assert.Equal(t, 2, n)
}
