package winding

import (
	"math"
	"testing"

	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// No slot is known: a trial of twice the turns has twice the volts, four times the inductance,
// and of its ohms turns over copper, by hand from the wire's bare diameters; the old winding's
// ohms and volts are those that were read.
func TestTrialsAsRatiosOfTurns(t *testing.T) {
	j := loadJob(t, "no-slots-known")
	o := Evaluate(j)
	a, b := &o.Trials[0], &o.Trials[1]
	assert.InEpsilon(t, 2*14.6/1.2, a.LinePer1000RPM.Value, 1e-9)
	assert.InEpsilon(t, 0.17, b.LeadOhms20.Value, 1e-9)
	thick, thin := j.Old.Gauge.BareMM(wiretable.Heavy), j.Trials[0].Gauge.BareMM(wiretable.Heavy)
	assert.InEpsilon(t, 0.17*2*sq(thick/thin), a.LeadOhms20.Value, 1e-9)
	// 14.6/√3/1.2 V a krpm, 31 A through hypot(0.085, ωL) at 100 Hz.
	e := 14.6 / math.Sqrt(3) / 1.2
	henries := math.Sqrt(sq(e/31)-sq(0.085)) / (2 * math.Pi * 100)
	assert.InEpsilon(t, henries*1000, b.PhaseMilliHenries.Value, 1e-9)
	assert.InEpsilon(t, 4*henries*1000, a.PhaseMilliHenries.Value, 1e-9)
	assert.InEpsilon(t, 2, a.Against.Volts.Value, 1e-12)
	assert.Greater(t, a.BridgeUsual.Value, 1.0, a.NoCharging)
	p, why := Prepare(j).RunAt(1, 0.99*b.CutInRPM.Value)
	require.Empty(t, why)
	assert.Zero(t, p.AmpsDC)
}

// Old turns and wire alone: twice the turns are twice the volts, and half the speed.
func TestRatiosOfOldTurnsAlone(t *testing.T) {
	j := loadJob(t, "old-turns-only")
	for _, began := range []bool{true, false} {
		if !began {
			j.Old.CutInRPM = quantity.Reading{}
		}
		b := Evaluate(j).Trials[1].Against
		assert.InEpsilon(t, 2, b.Volts.Value, 1e-12)
		assert.InEpsilon(t, 0.5, b.CutIn.Value, 1e-12)
		thick, thin := j.Old.Gauge.BareMM(wiretable.Heavy), j.Trials[1].Gauge.BareMM(wiretable.Heavy)
		assert.InEpsilon(t, 2*sq(thick/thin), b.Ohms.Value, 1e-12)
		assert.InEpsilon(t, 2*sq(thin/thick), b.Copper.Value, 1e-12)
	}
}

// 0.50 ±0.02 mm of bare wire: its ohms go by 1/d², so they are off by 8 %, beside the 2 % of a
// mean turn that was read.
func TestPlusMinusOfAWire(t *testing.T) {
	j := loadJob(t, "trial-coil")
	var err error
	j.Trials[0].Gauge, err = wiretable.Parse("0.50 ±0.02 mm")
	require.NoError(t, err)
	ohms := Evaluate(j).Trials[0].LeadOhms20
	assert.InEpsilon(t, math.Hypot(1-sq(0.50/0.52), 0.02), ohms.PlusMinus/ohms.Value, 0.01)
	fill := Evaluate(j).Trials[0].CopperFill
	assert.InEpsilon(t, sq(0.52/0.50)-1, fill.PlusMinus/fill.Value, 0.01)
}
