package winding_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// yearInSlices is the year of a trial from its points, in small slices of wind by the Rayleigh density
// (π/2)·v/m²·exp(−π·v²/4m²), 8760 h: what counts of each point says counts. Below the first point and
// above the last it takes rest watts.
func yearInSlices(o *winding.TrialOutcome, mean, rest float64, counts func(p *winding.DrivePoint) float64) float64 {
	kwh, n := 0.0, 0
	const step = 0.002
	for v := step / 2; v < 12*mean; v += step {
		for n < len(o.Points) && o.Points[n].X <= v {
			n++
		}
		watts := -rest
		if n > 0 && n < len(o.Points) {
			p, q := &o.Points[n-1], &o.Points[n]
			watts = counts(p) + (counts(q)-counts(p))*(v-p.X)/(q.X-p.X)
		}
		kwh += 8.760 * watts * math.Pi / 2 * v / mean / mean * math.Exp(-math.Pi*v*v/4/mean/mean) * step
	}
	return kwh
}

// A wound rotor's year counts its current only where that gains, so that it is never negative, and
// beside it is the year with the current on all the time.
func TestAYearTakesTheFieldOffWhereItDoesNotGain(t *testing.T) {
	o := winding.Evaluate(load(t, "wind-wound-rotor.toml"))
	for i := range o.Trials {
		tr := &o.Trials[i]
		gains := yearInSlices(tr, 4.5, 0, func(p *winding.DrivePoint) float64 {
			if p.TooHot || p.BatteryWatts < tr.FieldWatts.Value {
				return 0
			}
			return p.BatteryWatts - tr.FieldWatts.Value
		})
		on := yearInSlices(tr, 4.5, tr.FieldWatts.Value, func(p *winding.DrivePoint) float64 {
			if p.TooHot {
				return 0
			}
			return p.BatteryWatts - tr.FieldWatts.Value
		})
		assert.InDelta(t, gains, tr.YearKWh.Value, 1e-3+1e-4*gains, tr.Name)
		assert.InDelta(t, on, tr.YearLeftOnKWh.Value, 0.02, tr.Name)
		assert.Contains(t, notesOf(&o, tr.Name), fmt.Sprintf("a year's energy, %.0f kWh, takes the rotor's current as switched off in winds in which it takes more than comes in; left on all year it is %.0f kWh",
			math.Abs(gains), on))
	}
	a, b := &o.Trials[0], &o.Trials[1]
	assert.Greater(t, a.YearKWh.Value, 100.0)
	assert.Zero(t, b.YearKWh.Value, "it never gains in any wind")
	assert.Less(t, b.YearLeftOnKWh.Value, -200.0)
	for _, f := range o.Findings {
		if strings.Contains(f.Text, "left on all year") {
			assert.Equal(t, f.Trial == "A", strings.Contains(f.Fix, "from 673 alternator rpm"), f.Trial)
		}
	}
}

// Magnets have nothing to switch off.
func TestAYearOfMagnetsHasNoOtherRule(t *testing.T) {
	o := winding.Evaluate(load(t, "wind-good.toml"))
	for i := range o.Trials {
		assert.False(t, o.Trials[i].YearLeftOnKWh.Known())
		assert.NotContains(t, strings.Join(notesOf(&o, o.Trials[i].Name), " "), "left on all year")
	}
}

// Where a winding burns in some winds, its year says that it leaves these out.
func TestAYearSaysThatItLeavesOutWindsInWhichItBurns(t *testing.T) {
	burns, lives := 0, 0
	for name, w := range everyWorked(t) {
		if w.job.Drive.Kind != "wind" {
			continue
		}
		o := &w.outcome
		for i := range o.Trials {
			tr := &o.Trials[i]
			if !tr.YearKWh.Known() {
				continue
			}
			text := findingText(o, tr.Name, "leaves out the winds in which it does")
			if !tr.Burns() {
				lives++
				assert.Empty(t, text, name)
				continue
			}
			burns++
			assert.Contains(t, text, "(wind from ", name)
		}
	}
	assert.Greater(t, burns, 2)
	assert.Greater(t, lives, 2)
	good := load(t, "wind-good.toml")
	a := winding.Evaluate(good).Trials[0]
	require.True(t, a.Burns())
	all := yearInSlices(&a, 5, 0, func(p *winding.DrivePoint) float64 { return p.NetWatts })
	assert.Greater(t, all, a.YearKWh.Value+20, "with the winds in which it burns")
	good.Machine.KelvinPerWatt = quantity.Known(0.01) // so cool that it stands them all
	assert.Greater(t, winding.Evaluate(good).Trials[0].YearKWh.Value, a.YearKWh.Value+20)
}
