package slot

import (
	"fmt"
	"math"
)

// Measure works out what a slot is and what its insulation leaves for the wire.
//
//	net = gross - liner thickness x wall length - wedge - separator
//
// The body alone is counted: wire does not lie in the neck. The wall length is the body's
// outline less the mouth; with no mouth given the whole top edge is counted, since a liner
// is folded shut over the wire there. The wedge lies below the shoulders, inside the liner,
// as does the separator, which is put where it cuts the room into two equal areas.
//
// The liner is taken as the flat sheet it is cut from, so corners count twice: net is less
// than the area of Inner by a few liner thicknesses squared, on the safe side.
//
// AreaOnly stands in an equivalent parallel slot of Slot.DepthPerWidth, and Room says so in
// Assumed and Note. Errors are *FieldError and name the field; no Room with NetMM2 <= 0
// comes back.
func Measure(s Slot, ins Insulation) (Room, error) {
	if err := firstOf(checkSlot(s), checkInsulation(ins)); err != nil {
		return Room{}, err
	}
	room := Room{MouthMM: s.MouthMM, MouthHeightMM: s.MouthHeightMM, MouthKnown: s.MouthMM > 0, Layers: max(1, ins.Layers)}
	s, room.Note = equivalent(s)
	room.Assumed = room.Note != ""
	w := newWall(s)
	room.GrossMM2, room.PerimeterMM = w.area(), w.length()-min(s.MouthMM, s.TopMM)
	room.DepthMM, room.WidthMidMM = s.DepthMM, 2*w.half(s.DepthMM/2)
	if room.MouthKnown {
		room.MouthNetMM = s.MouthMM - 2*ins.LinerMM
	}
	if err := room.insulate(s, ins, w); err != nil {
		return Room{}, err
	}
	return room, nil
}

// equivalent fills in the widths that a shape leaves open, and says what was assumed.
func equivalent(s Slot) (Slot, string) {
	switch s.Shape {
	case Parallel:
		s.BottomMM = s.TopMM
	case AreaOnly:
		ratio := s.DepthPerWidth
		if ratio == 0 {
			ratio = DefaultDepthPerWidth
		}
		width := math.Sqrt(s.AreaMM2 / ratio)
		s.TopMM, s.BottomMM, s.DepthMM = width, width, width*ratio
		return s, fmt.Sprintf("only the area is given: taken as a parallel slot %.2f mm wide, %.2f mm deep (depth %g x width)",
			s.TopMM, s.DepthMM, ratio)
	}
	return s, ""
}

// area of the body in the iron.
func (w wall) area() float64 {
	return (w.topHalf+w.bottomHalf)*(w.depth-w.straight) + math.Pi/2*w.straight*w.straight
}

// length of the body's whole outline.
func (w wall) length() float64 {
	sides := 2 * math.Hypot(w.topHalf-w.bottomHalf, w.depth-w.straight)
	bottom := 2 * w.bottomHalf
	if w.round() {
		bottom = math.Pi * w.straight
	}
	return sides + bottom + 2*w.topHalf
}

// insulate puts liner, wedge and separator into the room.
func (room *Room) insulate(s Slot, ins Insulation, w wall) error {
	w.liner = ins.LinerMM
	under := s.DepthMM // where the wedge's upper face lies: below the liner under the shoulders
	if s.MouthMM <= 0 || s.MouthMM < s.TopMM {
		under -= ins.LinerMM
	}
	w.ceiling = under - ins.WedgeMM
	if w.ceiling <= w.straight || w.ceiling <= w.liner {
		return tooThick(ins, s.DepthMM-w.straight)
	}
	room.LinerMM2 = ins.LinerMM * room.PerimeterMM
	room.WedgeMM2 = ins.WedgeMM * 2 * max(0, w.reach(under-ins.WedgeMM/2, w.liner))
	w.split = w.halve()
	if room.Layers == 2 {
		w.separator = ins.SeparatorMM
		if w.separator > 0 && (w.separator/2 >= w.split-w.liner || w.separator/2 >= w.ceiling-w.split) {
			return wrong("SeparatorMM", fmt.Sprintf("of %g mm is thicker than the room of a layer", ins.SeparatorMM), "give the thickness of the sheet between the layers")
		}
		room.SeparatorMM2 = ins.SeparatorMM * 2 * max(0, w.reach(w.split, w.liner))
		room.Separator = w.band(w.split-w.separator/2, w.split+w.separator/2)
	}
	room.NetMM2 = room.GrossMM2 - room.LinerMM2 - room.WedgeMM2 - room.SeparatorMM2
	bare := w
	bare.liner = 0
	room.Outline, room.Inner = bare.outline(0, w.depth), w.outline(w.liner, w.ceiling)
	room.Wedge, room.Neck, room.wall = w.band(w.ceiling, under), neck(s), w
	return room.roomLeft()
}

// tooThick says that liner and wedge leave no depth, and blames the thicker.
func tooThick(ins Insulation, straight float64) error {
	field, name, v := "WedgeMM", "liner", ins.LinerMM
	problem := ins.WedgeMM
	if ins.LinerMM > ins.WedgeMM {
		field, name, v, problem = "LinerMM", "wedge", ins.WedgeMM, ins.LinerMM
	}
	return wrong(field, fmt.Sprintf("of %g mm with a %s of %g mm fills the slot", problem, name, v),
		"the straight part of the slot is only %.4g mm deep: use thinner insulation or check the depth", straight)
}

// roomLeft refuses a slot that its insulation fills.
func (room *Room) roomLeft() error {
	taken := room.LinerMM2 + room.WedgeMM2 + room.SeparatorMM2
	if room.NetMM2 <= 0 {
		return wrong("NetMM2", fmt.Sprintf("is gone: liner %.4g, wedge %.4g and separator %.4g mm² make %.4g mm² in a slot of %.4g mm², %.3g mm² too much",
			room.LinerMM2, room.WedgeMM2, room.SeparatorMM2, taken, room.GrossMM2, -room.NetMM2),
			"use thinner insulation or check the slot's dimensions")
	}
	if len(room.Inner) < 3 {
		return wrong("LinerMM", fmt.Sprintf("of %g mm on both sides leaves no width for wire", room.wall.liner),
			"use a thinner liner or check the slot's widths")
	}
	return nil
}
