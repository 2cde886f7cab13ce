package winding

import (
	"path/filepath"
	"strings"
	"testing"

	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Watts into the battery are the volts at its posts times the net amps into it, in every job and
// condition, regulated or not, with high battery and cable resistance too. The volts are those of the
// battery behind its own ohms plus the drop in these: at least that of its mean amps, and the heat of
// its rms, as in the cable.
func TestNetWattsAreVoltsAtThePostsTimesNetAmps(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	points, fed := 0, 0
	check := func(what string, b *Bench, p *RunPoint) {
		assert.InDelta(t, p.NetWatts, p.PostsVolts*p.NetAmps, 1e-9*(1+p.BatteryWatts), "%s at %g", what, p.RPM)
		assert.InDelta(t, p.BatteryWatts-p.FieldWatts, p.NetWatts, 1e-9*(1+p.BatteryWatts), "%s at %g", what, p.RPM)
		points++
		if b.dc.notBattery != "" || p.ControllerWatts > 0 {
			return
		}
		own, drop := p.PostsVolts-b.dc.works.Value, b.dc.inner.Value*p.AmpsDC
		assert.GreaterOrEqual(t, own, drop*(1-1e-9)-1e-9, "%s at %g", what, p.RPM)
		if b.dc.cable.Value > 0 && p.AmpsDC > 0 { // the same rms heats the cable
			heat := p.CableWatts / b.dc.cable.Value * b.dc.inner.Value
			assert.InDelta(t, heat, own*p.AmpsDC, 1e-5*p.BatteryWatts, "%s at %g", what, p.RPM)
		}
		if p.FieldWatts > 0 && p.AmpsDC > 0 {
			fed++
			assert.InEpsilon(t, p.FieldWatts/p.PostsVolts, p.AmpsDC-p.NetAmps, 1e-5, "%s at %g", what, p.RPM)
		}
	}
	for _, file := range append(files, "") {
		name := strings.TrimSuffix(filepath.Base(file), ".toml")
		j := job.Example().Job()
		if file != "" {
			j = loadJob(t, name)
		}
		for _, ohms := range []float64{0, 0.1} {
			for _, most := range []float64{0, 4} {
				if ohms > 0 {
					j.Battery.Ohms, j.Battery.CableMM2 = quantity.Known(ohms), quantity.Known(1)
				}
				if most > 0 && !j.Battery.MostAmps.Given() {
					j.Battery.MostAmps = quantity.Known(most)
				}
				b := Prepare(j).WithoutOffers()
				o := b.Outcome()
				for i := range o.Trials {
					a := &o.Trials[i]
					for k := range a.Operating {
						check(name+" "+a.Name+" "+a.Operating[k].Condition, b, &a.Operating[k].RunPoint)
					}
					for k := range a.Curve {
						check(name+" "+a.Name, b, &a.Curve[k])
					}
				}
			}
		}
	}
	assert.Greater(t, points, 10000)
	assert.Greater(t, fed, 1000)
}

// By hand: 10 A without ripple into 12 V behind 0.05 Ω are 12.5 V at the posts and 125 W. A rotor of 25
// W takes 2 A of them there, which leaves 8 A and 100 W.
func TestTheRotorIsFedAtTheBatterysPosts(t *testing.T) {
	r := &charger{sets: 1, inner: 0.05, field: 25}
	r.load.Volts = 12
	p := point(10, 10, 12)
	volts, watts := r.posts(&p)
	assert.InDelta(t, 12.5, volts, 1e-12)
	assert.InDelta(t, 125, watts, 1e-12)
	assert.InDelta(t, 8, r.net(&p), 1e-12)
	r.holder = &regulator{amps: 8}
	assert.InDelta(t, 10, r.heldAmps(r, 10), 1e-12, "and the bridge that a regulator holds to these 8 A gives 10")
	none := point(0, 0, 12)
	assert.InDelta(t, -25.0/12, r.net(&none), 1e-12, "nothing comes in: of a battery at rest")
}

func point(amps, rms, volts float64) charge.Point {
	return charge.Point{DCAmps: amps, DCAmpsRMS: rms, BatteryWatts: volts * amps}
}
