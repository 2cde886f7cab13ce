package winding

import (
	"slices"
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Where "no winding that fits does better" is said, it holds for the trial's whole ladder: each rung,
// evaluated as a trial of its own, exceeds a limit, takes more for its rotor than comes in usually, or
// brings no more than an offer would have to.
func TestNoWindingThatFitsDoesBetterIsSaidWhereThatIsSo(t *testing.T) {
	said, rungs := 0, 0
	for name, stored := range everyJob(t) {
		if stored.Drive.Kind != job.DriveWind {
			continue
		}
		for n := range 54 {
			if testing.Short() && n%7 != 0 { // has still every rotor, every wind and all turns
				continue
			}
			j := stored
			j.Trials = slices.Clone(stored.Trials)
			metres := []float64{1.4, 1.8, 2.4}[n%3]
			j.Drive.RotorM, j.Drive.CutOutMS = quantity.Known(metres), quantity.Known([]float64{8, 11, 16}[n/3%3])
			j.Drive.MeanWindMS = quantity.Known([]float64{3.5, 5}[n/9%2])
			for i := range j.Trials {
				j.Trials[i].Turns = quantity.Known(float64(int(j.Trials[i].Turns.Value * []float64{0.5, 1, 2}[n/18])))
			}
			b := Prepare(j)
			o := b.Outcome()
			for i := range o.Trials {
				a := &o.Trials[i]
				if !strings.HasPrefix(a.InTheWay, "no winding that fits does better") {
					continue
				}
				said++
				least := max(leastYear, a.YearKWh.Value+leastYear)
				if !a.stands(&o.Machine) {
					least = max(leastYear, worthKeeping*a.YearKWh.Value)
				}
				for _, r := range b.Ladder(i) {
					rungs++
					stands := r.freed == 0 && r.AmpsUsual.Value >= 0 && !r.OverLimit() && !r.Burns() && r.HottestC.Known() && r.HottestC.Value <= o.Machine.MeanLimitC.Value && r.Fits()
					assert.False(t, stands && r.YearKWh.Value > 1.05*least, "%s %g m, %s: %s brings %g of %g kWh; %s", name, metres, a.Name, r.Wire, r.YearKWh.Value, a.YearKWh.Value, a.InTheWay)
				}
			}
		}
	}
	assert.Greater(t, said, 3)
	assert.Greater(t, rungs, 30)
}

// However far a trial's wire is from the one that is wanted: where nothing is offered because none does
// better, no rung of its ladder begins in time, withstands what it brings and brings clearly more; and
// what is offered brings, put in, as much as the best of these rungs but for a twentieth. Where none
// begins in time, the rungs are those that begin no later than the trial.
func TestWhatIsOfferedIsTheBestFarFromTheTrialToo(t *testing.T) {
	said, offered := 0, 0
	for name, stored := range everyJob(t) {
		if len(stored.Trials) == 0 {
			continue
		}
		windy := stored.Drive.Kind == job.DriveWind
		brings := func(o *TrialOutcome) float64 {
			if windy {
				return o.YearKWh.Value
			}
			return o.AmpsUsual.Value
		}
		for _, size := range []string{"8 AWG", "12 AWG", "16 AWG", "20 AWG", "24 AWG", "28 AWG", "32 AWG"} {
			if testing.Short() && size != "8 AWG" && size != "28 AWG" && size != "32 AWG" {
				continue
			}
			gauge, err := wiretable.Parse(size)
			require.NoError(t, err)
			j := stored
			j.Trials = slices.Clone(stored.Trials[:1])
			j.Trials[0].Gauge = gauge
			b := Prepare(j)
			o := b.Outcome()
			a := &o.Trials[0]
			var best *Rung
			for _, r := range b.Ladder(0) {
				by := b.speeds.slow
				if a.Offer != nil && a.Offer.lateRPM > 0 { // none begins in time: by when the trial does
					by = a.CutInRPM
				}
				late := !windy && by.Known() && !(r.CutInRPM.Value <= by.Value)
				stands := r.Fits() && !late && r.freed == 0 && !r.OverLimit() && !r.Burns() && r.HottestC.Known() && r.HottestC.Value <= o.Machine.MeanLimitC.Value && r.dragged(draggedFar) == nil
				if stands && r.AmpsUsual.Value >= 0 && (best == nil || brings(&r.TrialOutcome) > brings(&best.TrialOutcome)) {
					best = &r
				}
			}
			none := strings.HasPrefix(a.InTheWay, "no winding that fits does better") && a.Rejoin == "" && !windy
			if none {
				said++
			}
			switch {
			case best == nil:
			case a.Offer != nil:
				offered++
				j.Trials[0].Gauge, j.Trials[0].Turns, j.Trials[0].Circuits = a.Offer.Gauge, quantity.Known(float64(a.Offer.Turns)), quantity.Known(float64(a.Offer.Circuits))
				o := Evaluate(j)
				assert.Greater(t, 1.05*brings(&o.Trials[0]), brings(&best.TrialOutcome), "%s with %s: %s, and the ladder has %s with %g", name, size, a.Mend, best.Wire, brings(&best.TrialOutcome))
			case none:
				assert.Less(t, brings(&best.TrialOutcome), 1.1*max(brings(a), leastNet), "%s with %s: %s, and the ladder has %s", name, size, a.InTheWay, best.Wire)
			}
		}
	}
	assert.Greater(t, said, 2)
	assert.Greater(t, offered, 20)
}
