package winding

import (
	"math"

	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// # A slot as it is cut into the iron
//
// One slot with the teeth beside it, flattened: at every depth the wall of the next slot is as far away
// as the tooth there is wide, which is what the slot leaves of its pitch (see iron.go), or by caliper.

// Section is a slot of the bare iron with its teeth, in mm: x from the slot's middle, y from the bottom of
// its body towards the gap, as in a [slot.Room].
type Section struct {
	// Wall is the right side of the slot, from the middle of its bottom up to the gap; the left side is
	// its mirror image. Next is the near side of the slot to the right, from the gap down to its
	// bottom; nil where the tooth's width is not known.
	Wall, Next []slot.Point
	// GapMM is the height of the gap's face, BackMM that of the back of the iron: < 0, or 0 where it is
	// not known.
	GapMM, BackMM float64
	// Deep, Wide and Bottom are the body's depth, its width at the mouth side and the height at which
	// its straight sides begin; Mouth and MouthHigh the neck's; Tooth is a tooth at its narrowest, Back
	// the iron behind the slot.
	Deep, Wide, Bottom, Mouth, MouthHigh, Tooth, Back quantity.Figure
}

// sectionSteps is the number of steps of the next slot's wall.
const sectionSteps = 24

// Section is the job's slot as it is cut; why says why there is none.
func (b *Bench) Section() (s Section, why string) {
	m, spec := &b.machine, &b.job.Slot
	body, why := b.room.of(alone)
	switch {
	case m.flat():
		return s, "there is no iron in the stator"
	case why != "":
		return s, why
	}
	drawn := func(r quantity.Reading, mm float64) quantity.Figure {
		if r.Given() && !body.Assumed {
			return r.Figure("")
		}
		return quantity.Of(mm, quantity.Guessed)
	}
	s.GapMM = body.DepthMM
	s.wall(body)
	s.Deep, s.Wide = drawn(spec.DepthMM, body.DepthMM), drawn(spec.TopMM, widthAt(body.Outline, body.DepthMM))
	s.Bottom = quantity.Missing("the sides are parallel")
	if spec.BottomMM.Given() && !body.Assumed {
		s.Bottom = spec.BottomMM.Figure("")
	}
	s.Mouth, s.MouthHigh = spec.MouthMM.Figure("needs the mouth's width"), quantity.Missing("needs the mouth's width")
	if len(body.Neck) == 2 {
		s.MouthHigh = spec.MouthHeightMM.OrReading(defaultMouthMM).Figure("")
	}
	s.Tooth = b.iron.toothMM
	s.Back = quantity.Missing("needs the outside diameter, the slot's depth and the bore")
	if m.BoreMM.Given() && m.Slots.Given() && s.Tooth.Known() {
		s.next(m, body, spec.ToothMM)
	}
	if high := b.backMM(body); high > 0 {
		s.Back, s.BackMM = quantity.Of(high, guessedIf(m.OutsideMM, m.BoreMM, spec.DepthMM)), -high
		if body.Assumed {
			s.Back.Origin = quantity.Guessed
		}
	}
	return s, ""
}

// backMM is the height of the iron behind the slots, mm; 0 where that is not known or there is none.
func (b *Bench) backMM(body *slot.Room) float64 {
	m := &b.machine
	if !m.OutsideMM.Given() || !m.BoreMM.Given() {
		return 0
	}
	return max(0, m.behindMM(body))
}

// wall is the slot's right side, with the neck where there is one.
func (s *Section) wall(body *slot.Room) {
	s.Wall = []slot.Point{{X: 0, Y: lowest(body.Outline)}}
	for _, p := range body.Outline {
		if p.X > 0 {
			s.Wall = append(s.Wall, p)
		}
	}
	if len(body.Neck) == 2 {
		neck := body.Neck[1]
		s.Wall, s.GapMM = append(s.Wall, neck.From, neck.To), neck.To.Y
	}
}

// next is the near wall of the slot to the right, from the gap down.
func (s *Section) next(m *machine, body *slot.Room, calipered quantity.Reading) {
	tip := s.Wall[len(s.Wall)-1]
	for _, deep := range []float64{s.GapMM - body.DepthMM, 0} { // the neck's height over the body, none
		if len(body.Neck) == 2 {
			pitch := 2 * math.Pi * m.radiusMM(body.MouthHeightMM-deep) / m.Slots.Value
			s.Next = append(s.Next, slot.Point{X: pitch - tip.X, Y: body.DepthMM + deep})
		}
	}
	for i := range sectionSteps + 1 {
		deep := body.DepthMM * float64(i) / sectionSteps
		s.Next = append(s.Next, slot.Point{X: widthAt(body.Outline, body.DepthMM-deep)/2 + calipered.Or(m.toothAt(body, deep)), Y: body.DepthMM - deep})
	}
}

func lowest(points []slot.Point) float64 {
	least := math.Inf(1)
	for _, p := range points {
		least = min(least, p.Y)
	}
	return least
}
