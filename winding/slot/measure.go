package slot

import (
	"fmt"
	"math"
)

// Measure works out a slot and what its insulation leaves for the wire.
//
//	net = gross - liner thickness x wall length - wedge - separator
//
// Only the body is counted: no wire lies in the neck. The wall length is the body's outline less the
// mouth; with no mouth given the whole top edge is counted, since a liner is folded shut over the wire
// there. The wedge lies below the shoulders, inside the liner, as does the separator, which is put
// where it cuts the room into two equal areas: across, or upright in the middle where the sides lie
// beside one another.
//
// The liner is taken as the flat sheet it is cut from, so corners count twice: net is less than the
// area of Inner by a few liner thicknesses squared, on the safe side.
//
// AreaOnly is replaced by an equivalent parallel slot of Slot.DepthPerWidth, and Room says so in
// Assumed and Note. Errors are *FieldError and name the field; no Room with NetMM2 <= 0 is returned.
func Measure(s Slot, ins Insulation) (Room, error) {
	if err := firstOf(checkSlot(s), checkInsulation(ins)); err != nil {
		return Room{}, err
	}
	room := Room{MouthMM: s.MouthMM, MouthHeightMM: s.MouthHeightMM, MouthKnown: s.MouthMM > 0, Layers: max(1, ins.Layers)}
	room.Beside = ins.Beside && room.Layers == 2
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
		return s, fmt.Sprintf("only the area is given: taken as a parallel slot %.2f mm wide, %.2f mm deep (depth %g × width)",
			s.TopMM, s.DepthMM, ratio)
	}
	return s, ""
}

// area of the body in the iron.
func (w wall) area() float64 {
	return (w.topHalf+w.bottomHalf)*(w.shoulder-w.straight) + math.Pi/2*w.straight*w.straight + w.crownArea()
}

// crownArea is the area of the round at the mouth: a half disc less what the mouth cuts off.
func (w wall) crownArea() float64 {
	high := w.depth - w.shoulder
	if high <= 0 {
		return 0
	}
	return high*w.half(w.depth) + w.topHalf*w.topHalf*math.Asin(min(1, high/w.topHalf))
}

// wedgeArea is the wedge's area between two heights inside the liner. Its width is that at half its
// height, except in a pear, whose round converges there.
func (w wall) wedgeArea(low, high float64) float64 {
	r := w.topHalf - w.liner
	if !w.crowned() || low < w.shoulder || r <= 0 {
		return (high - low) * 2 * max(0, w.reach((low+high)/2, w.liner))
	}
	under := func(y float64) float64 { // of the half disc, from its centre up to y
		h := min(y-w.shoulder, r)
		return h*math.Sqrt(r*r-h*h) + r*r*math.Asin(h/r)
	}
	return under(high) - under(low)
}

// length of the body's whole outline.
func (w wall) length() float64 {
	sides, top := 2*math.Hypot(w.topHalf-w.bottomHalf, w.shoulder-w.straight), 2*w.topHalf
	if w.crowned() {
		top = 2 * w.half(w.depth)
		sides += 2 * w.topHalf * math.Asin(min(1, (w.depth-w.shoulder)/w.topHalf))
	}
	bottom := 2 * w.bottomHalf
	if w.round() {
		bottom = math.Pi * w.straight
	}
	return sides + bottom + top
}

// insulate puts liner, wedge and separator into the room.
func (room *Room) insulate(s Slot, ins Insulation, w wall) error {
	w.liner = ins.LinerMM
	under := s.DepthMM // the wedge's upper face: below the liner under the shoulders
	if s.MouthMM <= 0 || s.MouthMM < s.TopMM {
		under -= ins.LinerMM
	}
	w.ceiling = under - ins.WedgeMM
	if w.ceiling <= w.straight || w.ceiling <= w.liner {
		return tooThick(ins, s.DepthMM-w.straight)
	}
	room.LinerMM2 = ins.LinerMM * room.PerimeterMM
	room.WedgeMM2 = w.wedgeArea(under-ins.WedgeMM, under)
	w.split = w.halve()
	if room.Layers == 2 {
		w.separator, w.beside = ins.SeparatorMM, room.Beside
		if w.separatorTooThick() {
			return wrong("SeparatorMM", fmt.Sprintf("of %g mm is thicker than the room of a layer", ins.SeparatorMM), "give the thickness of the sheet between the layers")
		}
		room.separate(w)
	}
	room.NetMM2 = room.GrossMM2 - room.LinerMM2 - room.WedgeMM2 - room.SeparatorMM2
	bare := w
	bare.liner = 0
	room.Outline, room.Inner = bare.outline(0, w.depth), w.outline(w.liner, w.ceiling)
	room.Wedge, room.Neck, room.wall = w.band(w.ceiling, under), neck(s), w
	return room.roomLeft()
}

// separatorTooThick says that the sheet leaves a side no room.
func (w wall) separatorTooThick() bool {
	t := w.separator / 2
	if w.beside {
		return t > 0 && t >= w.reach(w.split, w.liner)
	}
	return t > 0 && (t >= w.split-w.liner || t >= w.ceiling-w.split)
}

// separate puts in the sheet between the two sides: across the slot, or upright on its centre line from
// liner to wedge.
func (room *Room) separate(w wall) {
	if !w.beside {
		room.SeparatorMM2 = w.separator * 2 * max(0, w.reach(w.split, w.liner))
		room.Separator = w.band(w.split-w.separator/2, w.split+w.separator/2)
		return
	}
	t, low := w.separator/2, w.liner
	room.SeparatorMM2 = w.separator * (w.ceiling - low)
	if t > 0 {
		room.Separator = []Point{{-t, low}, {t, low}, {t, w.ceiling}, {-t, w.ceiling}}
	}
}

// tooThick says that liner and wedge leave no depth, and blames the thicker one.
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
