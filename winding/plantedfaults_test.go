package winding_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"

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
				at := slices.IndexFunc(list, func(l wound.Likely) bool { return len(l.Fault) >= len(name) && l.Fault[:len(name)] == name })
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

// Volts with the drive's speed in place of the alternator's exceed the plan by the speed ratio; this is
// not mentioned for a drive on the same shaft. Half the coils left out is offered only if there is a
// half.
func TestFaultsThatNeedARatioOrAHalf(t *testing.T) {
	spoken := func(j job.Job, ohms, volts float64, want string) bool {
		plan := winding.Evaluate(j).Trials[0]
		j.AsWound = []job.AsWound{{RPM: quantity.Known(600), LeadOhmsC: quantity.Known(20), LeadOhms: quantity.Known(ohms * plan.LeadOhms20.Value), LineVolts: quantity.Known(volts * plan.LinePerRPM.Value * 600)}}
		list := winding.Evaluate(j).Wound[0].Likely
		return slices.ContainsFunc(list, func(l wound.Likely) bool { return l.Fault == want })
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
