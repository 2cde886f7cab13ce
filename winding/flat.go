package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # Coils laid flat and cast
//
// An axial machine with an ironless stator: coils in a ring, not overlapping, between magnets on both
// sides. On the circle through the magnets' middles it is a machine of coils round one tooth each, the
// coil's hole being the tooth and the sides of two neighbours the slot, so that coil list, joins, fill,
// ohms, volts and card are those of every other machine. The differences are:
//
//   - diameter is that circle, stack the radial length of magnets and hole, the air gap half
//     of the clear distance between facing magnets;
//   - a turn of width w links sin(π·w/2τ) of a pole's flux, a coil the mean over its turns
//     from hole to outer edge (winding/field/aircore.go), instead of the slots' pitch factor;
//   - the mean turn goes round hole and side, 2(L + w) + 2π·s/2, whatever the turns;
//   - there is no slot leakage, and the coils' own field goes from rotor to rotor;
//   - there is no iron loss: the torque to turn it unloaded is only what was measured. Eddy
//     currents of the magnets' field in thick strands are not counted.
//
// Holes and sides are taken as straight and of even width, magnets as wide as they are on that circle;
// wedge-shaped coils are measured on it too. Common practice, no source.

// asFlat turns a job of flat coils into one of tooth coils, which the rest of the computation knows;
// any other job is unchanged.
func asFlat(j job.Job) job.Job {
	m := &j.Machine
	if m.Stator != job.StatorFlat {
		return j
	}
	m.Span, m.Layers, m.Kind, m.Rotor = quantity.Known(1), quantity.Known(2), "", ""
	m.OutsideMM = quantity.Reading{}
	sides := m.SideMM
	sides.Value, sides.PlusMinus = 2*sides.Value, 2*sides.PlusMinus
	none := quantity.Known(0)
	j.Slot = job.SlotSpec{Shape: "parallel", TopMM: sides, DepthMM: m.ThickMM, ToothMM: m.HoleMM,
		LinerMM: none, WedgeMM: none, SeparatorMM: none, MouthHeightMM: none, FillLimit: j.Slot.FillLimit}
	j.Trials = append([]job.Trial(nil), j.Trials...)
	for i := range j.Trials {
		t := &j.Trials[i]
		t.Span, t.Layers, t.Kind = quantity.Reading{}, quantity.Reading{}, ""
	}
	return j
}

// flat reports whether the stator is of flat coils.
func (m *machine) flat() bool { return m.Stator == job.StatorFlat }

// flatCoils is the geometry of flat coils with G from rotor iron to rotor iron; ok is false
// when it is not known, or the stator has slots.
func (m *machine) flatCoils(ironGapMM float64) (f field.Flat, ok bool) {
	if !m.flat() || !m.BoreMM.Given() || !m.HoleMM.Given() || !m.SideMM.Given() {
		return f, false
	}
	return field.Flat{CircleMM: m.BoreMM.Value, LengthMM: m.StackMM.Value, HoleMM: m.HoleMM.Value, SideMM: m.SideMM.Value, IronGapMM: ironGapMM}, true
}

// factor is the winding factor of an electrical harmonic: for flat coils with the factor of the coils'
// windows instead of the pitch factor.
func (m *machine) factor(plan *layout.Layout, harmonic int) float64 {
	f, ok := m.flatCoils(1)
	if !ok {
		return plan.Factor(harmonic)
	}
	return plan.BeltFactor(harmonic) * math.Abs(f.Window(harmonic*plan.Spec().Poles/2))
}

// waves are those of a coil list's field in the gap; for flat coils they are part of the inductance's
// own sum.
func (m *machine) waves(plan *layout.Layout) layout.GapWaves {
	if m.flat() {
		return layout.WorkingWave(1)
	}
	return plan.GapWaves()
}

// flatParts is the inductance of flat coils; half is half the distance from rotor iron to rotor iron.
// All of it goes with the square of the turns, like the working wave.
func (b *inductances) flatParts(w *candidate, halfMM float64) parts {
	m, c := b.machine, &w.coils
	f, ok := m.flatCoils(2 * halfMM)
	if !ok {
		return parts{why: "needs the hole and the sides of a coil"}
	}
	spec := c.plan.Spec()
	coils := c.plan.Coils()
	list := make([]field.FlatCoil, len(coils))
	for i, k := range coils {
		list[i] = field.FlatCoil{Place: (float64(k.Start) - 0.5) / float64(spec.Slots), Sense: k.Sense, Lag: c.plan.LagRad(k)}
	}
	turns := c.series / c.perPhase // per coil, over the circuits
	gap := f.Henries(list, turns, spec.Phases, spec.Poles/2)
	mean, _ := b.turn.of(w)
	end, err := field.EndLeakage(max(0, mean.Value/2-m.StackMM.Value), c.series, m.Poles.Value/2, field.EndPermeance)
	if err != nil || !mean.Known() {
		end = 0
	}
	return parts{working: gap, leakage: end}
}

// flatSurface is the rise per watt from both faces and both edges of the cast ring, K/W; a guess, like
// package heat's for a stator.
func (m *machine) flatSurface(c heat.Cooling) quantity.Figure {
	if !m.BoreMM.Given() || !m.StackMM.Given() || !m.SideMM.Given() || !m.ThickMM.Given() {
		return quantity.Missing("needs the rise per watt, or the circle of the magnets, their length and the coils' sides to guess it")
	}
	circle := math.Pi * m.BoreMM.Value * 1e-6
	area := 2 * circle * (m.StackMM.Value + 2*m.SideMM.Value + m.ThickMM.Value)
	return quantity.Of(1/(heat.Film(c)*area), quantity.Guessed)
}
