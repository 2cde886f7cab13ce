package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The axial machine by hand. On its circle the poles are π·240/12 = 62.83 mm wide; turns of 30 to 80 mm
// link on average 0.8·(cos 0.75 - cos 2.00) = 0.9183 of them, and the three coils of a phase are in the
// same position under the poles. Flux of a pole 2·0.6·0.24·0.046/12 = 1.104 mWb, 240 turns, at 300 rpm
// 30 Hz: 0.9183·√2·π·30·240·1.104e-3 = 32.43 V a phase, 56.17 between leads. A turn is 2·(46 + 30) +
// π·25 = 230.5 mm, 240 of them of 1.539 mm²: 55.33 m, 0.62 Ω.
func TestAxialAirCoreByHand(t *testing.T) {
	j := load(t, "axial-air-core.toml")
	o := winding.Evaluate(j)
	a := o.Trials[0]
	assert.InDelta(t, 0.9183, a.Kw1.Value, 1e-4)
	assert.InDelta(t, 1.104, o.Machine.FluxMWb.Value, 1e-6)
	assert.InDelta(t, 56.17, a.LinePerRPM.Value*300, 0.01)
	assert.InDelta(t, 230.54, a.MeanTurnMM.Value, 0.01)
	assert.InDelta(t, 240*0.23054/(58e6*a.ConductorAreaMM2.Value*1e-6), a.PhaseOhms20.Value, 1e-4)
	assert.InDelta(t, 0.62, a.PhaseOhms20.Value, 0.01)
	assert.Equal(t, a.MeanTurnMM.Value, o.Trials[1].MeanTurnMM.Value, "a coil fills its side whatever the turns")
	// Each side is 25 by 13 = 325 mm², its turns the squares of the wire at 0.70 of it.
	over := a.OverallMM.Value
	assert.Equal(t, math.Floor(0.70*325/(over*over)), a.TurnsThatFit.Value)
	assert.InDelta(t, 80*over*over/325, a.WireFill.Value, 1e-9)
	assert.Equal(t, 650.0, o.Machine.GrossMM2.Value, "the sides of two neighbours")
	assert.Equal(t, 0.0, o.Machine.LinerMM2.Value)
	plan, why := winding.Prepare(j).Plan(0)
	require.Empty(t, why)
	assert.Len(t, plan.Coils(), 9)
	for _, f := range o.Findings {
		assert.NotEqual(t, "machine.side", f.Path)
	}
}

// What flat coils cannot have: iron and its loss, slot leakage, a mouth. The inductance exists and goes
// with the square of the turns.
func TestAxialAirCoreHasNoIron(t *testing.T) {
	j := load(t, "axial-air-core.toml")
	j.Machine.Layers, j.Machine.Span, j.Slot.AreaMM2 = quantity.Known(1), quantity.Known(4), quantity.Known(50)
	j.Trials[0].Span = quantity.Known(3)
	o := winding.Evaluate(j)
	a := o.Trials[0]
	assert.InDelta(t, 56.17, a.LinePerRPM.Value*300, 0.01, "what a slotted stator would ask does not count")
	assert.Zero(t, o.Machine.DragWatts.Value)
	assert.False(t, a.MouthSpareMM.Known())
	require.True(t, a.PhaseMilliHenries.Known(), a.PhaseMilliHenries.Why)
	assert.Positive(t, a.PhaseMilliHenries.Value)
	assert.NotEmpty(t, a.AtSpeeds)
	// Twice the turns, four times all of it; ends too.
	j.Trials[0].Turns = quantity.Known(160)
	assert.InEpsilon(t, 4, evaluateA(j).PhaseMilliHenries.Value/a.PhaseMilliHenries.Value, 1e-9)
	// A tenth more on the distance from magnet to magnet leaves less.
	j.Trials[0].Turns = quantity.Known(80)
	j.Machine.AirGapMM = quantity.Known(12)
	assert.Less(t, evaluateA(j).PhaseMilliHenries.Value, a.PhaseMilliHenries.Value)
}

// The ring gives off heat from two faces of π·240·(46 + 2·25) mm² and two edges of π·240·13.
func TestAxialAirCoreSurface(t *testing.T) {
	o := winding.Evaluate(load(t, "axial-air-core.toml"))
	area := 2 * math.Pi * 0.240 * (0.046 + 0.050 + 0.013)
	assert.InEpsilon(t, 1/(heat.Film(heat.Open)*area), o.Machine.RisePerWatt.Value, 1e-9)
}

// Coils wider than their share of the circle, 83.8 mm, lie over one another.
func TestFlatCoilsThatOverlap(t *testing.T) {
	j := load(t, "axial-air-core.toml")
	j.Machine.HoleMM = quantity.Known(36)
	o := winding.Evaluate(j)
	f := finding(&o, "machine.side")
	require.NotNil(t, f)
	assert.Equal(t, winding.Broken, f.Severity)
	assert.Contains(t, f.Text, "only 83.8 mm")
}

// Flat coils are not asked for a slot, nor slots for a coil's hole.
func TestWhatFlatCoilsAreAsked(t *testing.T) {
	flat, slots := job.Job{}, job.Job{}
	flat.Machine.Stator = "flat"
	for path, want := range map[string]bool{"machine.hole": true, "machine.side": true, "machine.thick": true,
		"machine.span": false, "machine.layers": false, "machine.rotor": false, "machine.end_run": false,
		"slot.shape": false, "slot.area": false, "slot.mouth": false, "slot.liner": false} {
		f, ok := job.InputAt(path)
		require.True(t, ok, path)
		assert.Equal(t, want, f.Applies(&flat), path)
		assert.Equal(t, !want, f.Applies(&slots), path)
	}
	f, _ := job.InputAt("slot.fill_limit")
	assert.True(t, f.Applies(&flat))
}
