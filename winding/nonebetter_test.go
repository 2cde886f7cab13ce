package winding

import (
	"fmt"
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

// The same where shaft and battery decide by amps: however far a trial's wire is from the one that is
// wanted, no rung of its ladder begins in time, withstands what it brings and brings clearly more.
func TestNoWindingThatFitsDoesBetterHoldsFarFromTheTrial(t *testing.T) {
	said, rungs := 0, 0
	for name, stored := range everyJob(t) {
		if stored.Drive.Kind == job.DriveWind || len(stored.Trials) == 0 {
			continue
		}
		for _, size := range []int{8, 14, 20, 28, 32} {
			j := stored
			j.Trials = slices.Clone(stored.Trials[:1])
			gauge, err := wiretable.Parse(fmt.Sprint(size, " AWG"))
			require.NoError(t, err)
			j.Trials[0].Gauge = gauge
			b := Prepare(j)
			o := b.Outcome()
			a := &o.Trials[0]
			if !strings.HasPrefix(a.InTheWay, "no winding that fits does better") || a.Rejoin != "" {
				continue
			}
			said++
			for _, r := range b.Ladder(0) {
				rungs++
				late := b.speeds.slow.Known() && !(r.CutInRPM.Value <= b.speeds.slow.Value)
				stands := r.Fits() && !late && !r.OverLimit() && !r.Burns() && r.HottestC.Known() && r.HottestC.Value <= o.Machine.MeanLimitC.Value && r.dragged(draggedFar) == nil
				assert.False(t, stands && r.AmpsUsual.Value > 1.1*max(a.AmpsUsual.Value, leastNet), "%s with %d AWG: %s brings %g of %g A; %s", name, size, r.Wire, r.AmpsUsual.Value, a.AmpsUsual.Value, a.InTheWay)
			}
		}
	}
	assert.Greater(t, said, 3)
	assert.Greater(t, rungs, 30)
}
