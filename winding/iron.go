package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// # The stator's iron
//
// All flux of a slot pitch goes through one tooth, and half a pole's through the yoke on either side. A
// tooth under the middle of a pole collects the most: of a sine wave of peak B, over a slot pitch τs of
// a pole pitch τ,
//
//	∫ B·cos(π·x/τ) dx over ±τs/2 = B·(2·τ/π)·sin(π·τs/(2·τ)),
//
// of magnets, whose field is a block over their cover α, B times as much of the slot pitch as lies
// under the block, less what reaches past the gap between blocks into the next pole's. With many slots
// per pole both are B·τs; a tooth with its own coil, a pole wide, collects two thirds of that. Where
// the slot's widths are known, the tooth is what they leave of the pitch at each depth; where the
// outside diameter is known, the yoke is what lies behind the slots. The stacking factor is 0.95: 5 %
// of the stack is varnish.
//
// The gap's density over a tooth is the peak of the working wave, under magnets the block's own. Past
// 1.8 T in the teeth ordinary lamination needs 10 000 A/m and more, and what is computed without that,
// or scaled to another flux, no longer holds.

// iron is the stator's iron as a path for the flux.
type iron struct {
	// path is what the magnets' flux goes through; nil where it is not known.
	path field.Iron
	// tooth and yoke are the density there for one tesla in the gap: at its peak, and as the mean of a
	// pole.
	tooth, yoke quantity.Figure
	// noTooth is set where the slots do not fit round the bore: no tooth is left between them.
	noTooth bool
	// toothMM is the narrowest width of the tooth.
	toothMM quantity.Figure
}

// toothSlices is the number of slices in which a tooth's mmf is summed along its depth.
const toothSlices = 8

// newIron measures teeth and yoke under a rotor; tooth is the width of one by caliper, taken as
// parallel.
func newIron(m *machine, room *slotRoom, tooth quantity.Reading, f *job.FieldSpec) iron {
	s := iron{yoke: quantity.Missing("needs the outside diameter, the slot's depth and the bore")}
	s.toothMM = quantity.Missing("needs the slot's width and depth, the slots and the bore")
	s.tooth = s.toothMM
	body, why := room.of(1)
	if m.flat() {
		s.toothMM = quantity.Missing("there is no iron in the stator")
		s.tooth, s.yoke = s.toothMM, s.toothMM
		return s
	}
	if why != "" || !m.BoreMM.Given() || !m.Slots.Given() {
		return s
	}
	weak := guessedIf(m.BoreMM)
	if room.assumed() || room.origin.Weak() && weak.Weak() {
		weak = quantity.Guessed
	}
	s.teeth(m, body, tooth, weak, f)
	if m.OutsideMM.Given() && m.Poles.Given() {
		s.back(m, body, f.MagnetCover.Or(defaultCover))
	}
	return s
}

// assumed reports whether the slot's shape was assumed from its area.
func (r *slotRoom) assumed() bool { return r.rooms[0].Assumed }

// radiusMM is the radius at a depth in the stator's iron, counted from the gap.
func (m *machine) radiusMM(deep float64) float64 { return m.BoreMM.Value/2 + m.outward()*deep }

// gathered is the width of the gap, mm, whose flux a tooth carries, at its peak density: under magnets
// of a given cover, else under a sine wave.
func gathered(m *machine, magnets bool, cover float64) float64 {
	slots := math.Pi * m.BoreMM.Value / m.Slots.Value
	if !m.Poles.Given() {
		return slots
	}
	pole := math.Pi * m.BoreMM.Value / m.Poles.Value
	if !magnets {
		return math.Abs(2 * pole / math.Pi * math.Sin(math.Pi*slots/(2*pole)))
	}
	return math.Abs(min(slots, cover*pole) - max(0, slots-pole*(2-cover)))
}

// teeth sums up the tooth along its depth.
func (s *iron) teeth(m *machine, body *slot.Room, tooth quantity.Reading, weak quantity.Origin, f *job.FieldSpec) {
	cover := f.MagnetCover.Or(defaultCover)
	block, gathers := gathered(m, true, cover), gathered(m, f.Kind == job.FieldMagnets, cover)
	if tooth.Given() { // a measured width precedes what the slot leaves
		weak = guessedIf(tooth, m.BoreMM)
	}
	narrow := math.Inf(1)
	var path field.Iron
	for i := range toothSlices + 1 { // the narrowest at the faces between slices, the mmf at their middles
		face := body.DepthMM * float64(i) / toothSlices
		narrow = min(narrow, tooth.Or(m.toothAt(body, face)))
		if i == toothSlices {
			break
		}
		middle := face + body.DepthMM/toothSlices/2
		wide := tooth.Or(m.toothAt(body, middle))
		here := 2 * math.Pi * m.radiusMM(body.MouthHeightMM+middle) / m.Slots.Value
		metal := wide * field.Stacking
		path = append(path, field.Path{Times: block / metal, MM: body.DepthMM / toothSlices, Beside: here/metal - 1})
	}
	if narrow <= 0 {
		s.toothMM, s.noTooth = quantity.Missing("the slots are wider than their pitch: measure slot and bore again"), true
		s.tooth = s.toothMM
		return
	}
	s.path = path
	s.toothMM = quantity.Of(narrow, weak)
	s.tooth = quantity.Of(gathers/(narrow*field.Stacking), weak)
}

// toothAt is the tooth's width at a depth below the neck, mm.
func (m *machine) toothAt(body *slot.Room, deep float64) float64 {
	return 2*math.Pi*m.radiusMM(body.MouthHeightMM+deep)/m.Slots.Value - widthAt(body.Outline, body.DepthMM-deep)
}

// widthAt is how wide an outline is at a height.
func widthAt(outline []slot.Point, y float64) float64 {
	reach := 0.0
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if low, high := min(a.Y, b.Y), max(a.Y, b.Y); y < low-1e-9 || y > high+1e-9 || a.X < 0 || b.X < 0 {
			continue
		}
		if a.Y == b.Y {
			reach = max(reach, a.X, b.X)
			continue
		}
		part := min(1, max(0, (y-a.Y)/(b.Y-a.Y)))
		reach = max(reach, a.X+part*(b.X-a.X))
	}
	return 2 * reach
}

// behindMM is the height of the iron behind the slots, mm; 0 or negative where they are deeper than the
// iron.
func (m *machine) behindMM(body *slot.Room) float64 {
	return m.outward() * (m.OutsideMM.Value/2 - m.radiusMM(body.MouthHeightMM+body.DepthMM))
}

// back is the yoke: half a pole's flux, along a quarter of a turn of its circuit.
func (s *iron) back(m *machine, body *slot.Room, cover float64) {
	height := m.behindMM(body)
	if height <= 0 {
		s.yoke = quantity.Missing("the slots are deeper than the iron: measure depth, bore and outside again")
		return
	}
	pole := math.Pi * m.BoreMM.Value / m.Poles.Value
	s.yoke = quantity.Of(pole/2/(height*field.Stacking), guessedIf(m.OutsideMM, m.BoreMM))
	if s.path != nil {
		way := math.Pi * (m.OutsideMM.Value - m.outward()*height) / m.Poles.Value / 2
		s.path = append(s.path, field.Path{Times: s.yoke.Value * cover, MM: way})
	}
}

// crest is the density over the slots for the peak of the working wave.
func crest(f *job.FieldSpec, working quantity.Figure) quantity.Figure {
	if f.Kind != job.FieldMagnets {
		return working
	}
	return working.Times(math.Pi / 4 / math.Sin(f.MagnetCover.Or(defaultCover)*math.Pi/2))
}

// densities are teeth and yoke for the peak of the working wave under a rotor.
func (s *iron) densities(f *job.FieldSpec, working quantity.Figure) (tooth, yoke quantity.Figure) {
	tooth = crest(f, working).With(s.tooth, mul)
	yoke = working.With(s.yoke, func(t, times float64) float64 { return t * times * 2 / math.Pi })
	return tooth, yoke
}
