package winding_test

import (
	"math/rand/v2"
	"testing"

	"slotwright/winding"
	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// "Amps wanted at", "limit at" and "crosses the reference at" are speeds: run there, the trial gives
// the amps wanted, those of its limit, and as many as the reference. To a part in a thousand, to which
// a temperature is found.
func TestSpeedsAtWhichSomethingIsReached(t *testing.T) {
	wanted, limits, crossed := 0, 0, 0
	forAny(t, 40, func(_ *rand.Rand, j job.Job) {
		b := winding.Prepare(j)
		o := b.Outcome()
		amps := func(i int, rpm quantity.Figure) float64 {
			p, why := b.RunAt(i, rpm.Value)
			require.Empty(t, why)
			return p.AmpsDC
		}
		for i, a := range o.Trials {
			if a.TargetRPM.Known() {
				wanted++
				assert.InEpsilon(t, 5, amps(i, a.TargetRPM), 2e-3)
			} else {
				assert.Less(t, a.Curve[len(a.Curve)-1].AmpsDC, 5.0)
			}
			if a.LimitRPM.Known() {
				limits++
				assert.InEpsilon(t, a.LimitAmps.Value, amps(i, a.LimitRPM), 2e-3)
			}
		}
		if c := o.Trials[1].CrossRPM; c.Known() {
			crossed++
			assert.InEpsilon(t, amps(0, c), amps(1, c), 4e-3)
			low := quantity.Of(c.Value * 0.97)
			high := quantity.Of(c.Value * 1.03)
			assert.Less(t, (amps(1, low)-amps(0, low))*(amps(1, high)-amps(0, high)), 0.0, "one is ahead before, the other after")
		}
		assert.False(t, o.Trials[0].CrossRPM.Known(), "the reference does not cross itself")
	})
	assert.Greater(t, wanted, 20)
	assert.Greater(t, limits, 10)
	assert.Greater(t, crossed, 5)
}

// Below cut-in a drive idles; where it is asked for more than it gives it is overloaded;
// in between it charges. At each point of each drive with a power of its own.
func TestRegionsOfAShaft(t *testing.T) {
	seen := map[drive.Region]int{}
	for _, name := range []string{"pedals", "water", "engine", "fixed"} {
		j := load(t, name+".toml")
		weak := j
		weak.Drive.Watts = quantity.Known(40)
		for _, j := range []job.Job{j, weak} {
			for _, a := range winding.Evaluate(j).Trials {
				for _, p := range a.Points {
					want := drive.Charging
					switch {
					case p.GivesWatts > 0 && p.DriveWatts > p.GivesWatts:
						want = winding.Overload
					case p.RPM < a.CutInRPM.Value || p.AmpsDC == 0:
						want = drive.Idling
						assert.Zero(t, p.AmpsDC)
					}
					assert.Equal(t, want, p.Region, "%s at %.1f rpm of the drive", name, p.X)
					seen[p.Region]++
				}
			}
		}
	}
	for _, r := range []drive.Region{drive.Charging, drive.Idling, winding.Overload} {
		assert.Greater(t, seen[r], 10, "%s", r)
	}
}
