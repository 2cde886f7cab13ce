package job

import (
	"math"
	"strconv"
	"strings"

	"slotwright/winding/quantity"
)

// side is the width or the depth of a slot, typed as one of two, "~4.2 ±0.1 mm".
type side struct {
	typedNumber
	number string // as typed, fractions included, without mark, unit and ±
	spread string // " ±0.1", "" where none was written
}

// sideOf reads one side.
func sideOf(text string) (s side, ok bool) {
	q, err := parseQuantity(text)
	m := quantityForm().FindStringSubmatch(plainUnit.Replace(text))
	if err != nil || m == nil || q.value <= 0 {
		return s, false
	}
	s = side{typedNumber: q, number: strings.TrimSpace(m[2])}
	if m[4] != "" {
		s.spread = " ±" + quantity.File.Number(q.plusMinus, quantity.AtMost(6))
	}
	return s, true
}

// text is the side without its unit.
func (s side) text() string {
	mark := ""
	if s.guessed {
		mark = "~"
	}
	return mark + s.number + s.spread
}

// times is the side in a unit smaller by a factor.
func (s side) times(by float64) side {
	s.value, s.plusMinus = s.value*by, s.plusMinus*by
	s.number = strconv.FormatFloat(s.value, 'g', 10, 64)
	if s.spread != "" {
		s.spread = " ±" + strconv.FormatFloat(s.plusMinus, 'g', 6, 64)
	}
	return s
}

// sides are the width and the depth of a slot, given instead of its area: "8 x 9 mm", "7/16 × 15/16
// in". The unit applies to both, and so do the mark of a guess in front and a single ± at the end.
type sides struct {
	width, depth side
	unit         quantity.Unit
	said         bool // the unit was typed
}

// sidesOf reads two sides where an area is asked for; ok is false for anything else.
func (f *Input) sidesOf(typed string) (s sides, ok bool) {
	if f.Path() != areaOfSlot {
		return s, false
	}
	parts := strings.FieldsFunc(typed, func(r rune) bool { return strings.ContainsRune("xX×*", r) })
	if len(parts) != 2 {
		return s, false
	}
	var okWidth, okDepth bool
	s.width, okWidth = sideOf(parts[0])
	s.depth, okDepth = sideOf(parts[1])
	if !okWidth || !okDepth || s.width.unit != "" && s.depth.unit != "" && !strings.EqualFold(s.width.unit, s.depth.unit) {
		return s, false
	}
	unit := s.depth.unit
	if unit == "" {
		unit = s.width.unit
	}
	s.unit, ok = quantity.Millimetres.Typed(unit)
	s.said = unit != ""
	if s.width.spread == "" && s.depth.spread != "" {
		s.width.plusMinus, s.width.spread = s.depth.plusMinus, s.depth.spread
	}
	if _, keyed := quantity.SquareMM.Suffixed(s.unit.Suffix + "2"); s.said && !keyed { // no key of an area ends with cm or mil
		times := s.unit.Base(1)
		s.width, s.depth, s.unit = s.width.times(times), s.depth.times(times), quantity.Millimetres[0]
	}
	return s, ok
}

// area is the sides as an area with its unit, as a number of the field is written. The errors of the
// two are taken as independent.
func (s sides) area() string {
	area := s.width.value * s.depth.value
	text := strconv.FormatFloat(area, 'g', 10, 64)
	if s.width.guessed || s.depth.guessed {
		text = "~" + text
	}
	if off := math.Hypot(s.width.plusMinus*s.depth.value, s.depth.plusMinus*s.width.value); off > 0 {
		text += " ±" + strconv.FormatFloat(off, 'g', 6, 64)
	}
	if s.said {
		text += " " + s.unit.Suffix + "2"
	}
	return text
}

// alone is the sides without their unit, and the unit of the area, for a key that ends with it.
func (s sides) alone(u quantity.Unit) (string, quantity.Unit) {
	if own, ok := quantity.SquareMM.Suffixed(s.unit.Suffix + "2"); ok && s.said {
		u = own
	}
	return s.width.text() + " x " + s.depth.text(), u
}

// storeSides keeps both sides, mm, of a slot whose area was written as width × depth.
func (f *Input) storeSides(j *Job, typed string, u quantity.Unit) {
	s, two := f.sidesOf(typed)
	length, known := quantity.Millimetres.Suffixed(strings.TrimSuffix(u.Suffix, "2"))
	if !two || !known {
		return
	}
	if s.width.guessed && !strings.Contains(typed[1:], "~") { // the mark in front applies to both
		s.depth.guessed = true
	}
	for i, side := range []side{s.width, s.depth} {
		r := quantity.Reading{Value: length.Base(side.value), PlusMinus: length.BaseSpan(side.plusMinus), Origin: quantity.Measured}
		if side.guessed {
			r.Origin = quantity.Guessed
		}
		j.Slot.SideMM[i] = r
	}
}

// areaOfSlot is the field that accepts two sides.
const areaOfSlot = "slot.area"

// Shaped is the document in which a slot's area given as width × depth is replaced by what it implies:
// a parallel slot as wide below its mouth and as deep, each in its own field and in the unit it was
// typed in. ok is false where there is nothing of the kind, or where a side is not possible for a slot.
func (d Document) Shaped() (_ Document, width, depth string, ok bool) {
	e, given := d.entries[areaOfSlot]
	if !given {
		return d, "", "", false
	}
	s, two := e.field.sidesOf(e.typed)
	unit, known := quantity.Millimetres.Suffixed(strings.TrimSuffix(e.unit.Suffix, "2"))
	if _, bad := d.ProblemAt(areaOfSlot); !two || !known || bad {
		return d, "", "", false
	}
	if s.width.guessed && !strings.Contains(e.typed[1:], "~") { // the mark in front applies to both
		s.depth.guessed = true
	}
	width, depth = s.width.text()+" "+unit.Name, s.depth.text()+" "+unit.Name
	next := d
	for _, set := range [][2]string{{"slot.shape", "parallel"}, {"slot.top", width}, {"slot.depth", depth}, {areaOfSlot, ""}} {
		if next = next.Set(set[0], set[1], quantity.Choice{}); next.refused != "" {
			return d, "", "", false
		}
		if _, bad := next.ProblemAt(set[0]); bad {
			return d, "", "", false
		}
	}
	return next, width, depth, true
}
