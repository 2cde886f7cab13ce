package winding_test

import (
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// taking is a job with its battery taking charge at so many volts.
func taking(j job.Job, volts float64) job.Job {
	j.Battery.ChargingVolts = quantity.Known(volts)
	return j
}

// absorbing is a job with its battery nearly full at so many volts.
func absorbing(j job.Job, volts float64) job.Job {
	j.Battery.AbsorptionVolts = quantity.Known(volts)
	return taking(j, 54.24)
}

// A winding that holds its rotor while the battery takes charge and burns once that is nearly full is
// judged by the second: by limit, heat, fuse and verdict, and it is not offered.
func TestABatteryThatIsNearlyFullMaySetTheRotorFree(t *testing.T) {
	j := load(t, "on-the-edge.toml")
	o := winding.Evaluate(j)
	b := o.Trials[1]
	top := b.Operating[len(b.Operating)-1]
	limit := b.LimitAmps.Value
	require.Less(t, top.AmpsDC, limit, "taking charge it is within")
	require.Greater(t, top.FullAmps, 1.5*limit)

	assert.True(t, b.OverLimit())
	assert.True(t, b.Burns())
	assert.InDelta(t, top.FullAmps, b.SteadyAmps.Value, 1e-9)
	assert.GreaterOrEqual(t, b.MostAmps.Value, top.FullAmps)
	assert.GreaterOrEqual(t, b.FuseAmps.Value, 1.25*top.FullAmps)
	assert.Contains(t, b.Verdict, "once the battery is nearly full")
	for _, trial := range o.Trials {
		if trial.Offer != nil {
			n := winding.Evaluate(inPlace(j, 0, trial.Offer)).Trials[0]
			assert.False(t, n.OverLimit() || n.Burns(), trial.Name)
		}
	}

	held := winding.Evaluate(taking(j, o.Machine.AbsorptionVolts.Value)).Trials[1]
	at := held.Operating[len(held.Operating)-1]
	assert.InEpsilon(t, top.FullAmps, at.AmpsDC, 0.05, "the same as with those volts all the time")
	assert.True(t, at.TooHot)
}

// In the wind before which it is told to furl, it withstands a full battery.
func TestFurledInTimeItStandsAFullBattery(t *testing.T) {
	j := load(t, "on-the-edge.toml")
	j.Trials = j.Trials[1:]
	var said []string
	for _, f := range winding.Evaluate(j).Findings {
		if strings.Contains(f.Text, "battery nearly full") {
			said = append(said, f.Fix)
		}
	}
	require.Len(t, said, 2, "its limit, and that it burns")
	assert.Equal(t, "better cooling, or furl it before 11 m/s; that leaves 843 of its 925 kWh a year; none of the windings examined that bring nearly as much withstands it unfurled", said[0])
	j.Drive.CutOutMS = quantity.Known(11)
	b := winding.Evaluate(j).Trials[0]
	assert.False(t, b.OverLimit() || b.Burns())
	assert.InEpsilon(t, 843, b.YearKWh.Value, 0.01, "what was told is left")
}

// A machine of a few more volts holds the rotor, but not within the meter's error: it says so, and
// truly.
func TestStandsOnAnEdge(t *testing.T) {
	j := load(t, "on-the-edge.toml")
	j.Trials = j.Trials[1:]
	onEdge := func(read float64) (found bool) {
		j.Spins[0].LineVolts = quantity.Known(read)
		for _, f := range winding.Evaluate(j).Findings {
			found = found || strings.Contains(f.Text, "close to breaking free")
		}
		return found
	}
	assert.False(t, onEdge(11), "well held")
	assert.False(t, onEdge(9.8), "past the edge, which says more")
	require.True(t, onEdge(10.1))
	volts := winding.Evaluate(j).Machine.AbsorptionVolts.Value
	for _, c := range []struct {
		times float64
		over  bool
	}{{1, false}, {1.02, true}} {
		b := winding.Evaluate(absorbing(j, c.times*volts)).Trials[0]
		assert.Equal(t, c.over, b.OverLimit(), c.times)
	}
	j.Spins[0].LineVolts = quantity.Known(10.1 * 0.98)
	assert.True(t, winding.Evaluate(j).Trials[0].OverLimit())
}
