package winding

import (
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// # Coils round one tooth
//
// A wire at a distance δ all round the tooth, taken as a block of stack L by width t, is 2L + 2t + 2π·δ
// long: straight along the four sides, a quarter circle of radius δ at each corner (Steiner's formula
// for the parallel of a convex curve). The middle wire of a coil of thickness b on a liner i is at δ =
// i + b/2, so with the ends held x off the iron by their cheeks
//
//	l = 2(L + t) + 4x + 2π(i + b/2)
//
// The slot pitch at half the depth h of the slot is π(D + h)/Q, with the rotor outside π(D - h)/Q. The
// tooth is what the slot leaves of it: t = pitch - A/h, with the slot's area A, so that A/h is its mean
// width. For parallel-sided teeth this is exact; for others it is the tooth at half its depth.
//
// b is the area of the coil's wires, each its square at the fill limit, over the lined depth of the
// slot; at most its half of the slot's width (all of it with one side per slot). Where turns or wire
// are not known it is all of that.
//
// Where only the slot's area is known, its depth would follow from a guessed proportion, and the tooth
// would be the difference of two guesses: tooth and slot are then taken as equally wide at half depth
// (common practice, no source).
//
// Compared with tooth coils that were unwound it errs by some 5 %, mostly by how the ends bow out
// (common practice, no source). A tooth by caliper makes it better; a measured turn is best.

// toothEndMM is how far the cheeks hold a tooth coil off the end of the iron.
const toothEndMM = job.ToothEndMM

// tooth is the block that a coil lies round, and the slot beside it, in mm.
type tooth struct {
	width, slotWidth, depth float64
	// even says that the tooth is taken as wide as the slot for want of a measurement.
	even bool
}

// newTooth is the tooth of a machine; why says why it is not known.
func newTooth(m *machine, room *slotRoom, s *job.SlotSpec) (t tooth, why string) {
	bare, why := room.of(alone)
	switch {
	case why != "":
		return t, why
	case s.ToothMM.Given() && !m.BoreMM.Given():
		return tooth{width: s.ToothMM.Value, slotWidth: bare.GrossMM2 / bare.DepthMM, depth: bare.DepthMM}, ""
	case !m.BoreMM.Given():
		return t, "needs the diameter at the gap, the tooth or a measured mean turn"
	case !m.Slots.Given():
		return t, "needs the slots, or a measured mean turn"
	}
	pitch := math.Pi * m.BoreMM.Value / m.Slots.Value
	curve := m.outward() * math.Pi / m.Slots.Value
	if s.DepthPerWidth.Given() || !bare.Assumed {
		t = tooth{slotWidth: bare.GrossMM2 / bare.DepthMM, depth: bare.DepthMM}
		t.width = s.ToothMM.Or(pitch + curve*t.depth - t.slotWidth)
	} else {
		t = evenTooth(bare, s.ToothMM, pitch, curve)
	}
	if !(t.width > 0 && t.depth > 0) {
		return t, "the slots leave no tooth between them: check the slots, the diameter at the gap and the slot"
	}
	return t, ""
}

// evenTooth is the tooth beside a slot of which only the area A is known. With a tooth of t the depth
// is the h of (pitch + curve·h - t)·h = A; without one, both are half the pitch, (pitch + curve·h)·h/2
// = A.
func evenTooth(bare *slot.Room, measured quantity.Reading, pitch, curve float64) tooth {
	free, area := pitch-measured.Or(0), bare.GrossMM2
	if !measured.Given() {
		area *= 2
	}
	h := 2 * area / (free + math.Sqrt(free*free+4*curve*area))
	slotWidth := bare.GrossMM2 / h
	return tooth{width: measured.Or(slotWidth), slotWidth: slotWidth, depth: h, even: !measured.Given()}
}

// buildMM is the thickness of a coil on its tooth.
func (t *tooth) buildMM(w *candidate, s *job.SlotSpec) float64 {
	liner := s.LinerMM.Or(defaultLinerMM)
	most := max(0, t.slotWidth/2-liner)
	if w.coils.lie == alone {
		most = max(0, t.slotWidth-2*liner)
	}
	wires := w.coils.slotTurns * slot.SquarePerTurnMM2(slotWires(w.trial.Wound))
	deep := t.depth - liner - s.WedgeMM.Or(defaultWedgeMM)
	if wires == 0 || deep <= 0 {
		return most
	}
	return min(most, wires/(s.FillLimit.Or(defaultFillLimit)*deep))
}

// turnMM is the mean turn of a coil. A flat coil fills its side whatever the turns, and has no liner.
func (t *tooth) turnMM(w *candidate, m *machine, s *job.SlotSpec) float64 {
	if m.flat() {
		return 2*(m.StackMM.Value+t.width) + math.Pi*m.SideMM.Value
	}
	off := s.LinerMM.Or(defaultLinerMM) + t.buildMM(w, s)/2
	return 2*(m.StackMM.Value+t.width) + 4*m.EndRunMM.Or(toothEndMM) + 2*math.Pi*off
}
