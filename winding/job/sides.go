package job

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"slotwright/winding/quantity"
)

// sides are the width and the depth of a slot, given in the place of its area: "8 x 9 mm",
// "7/16 × 15/16 in". The unit is that of both, "" where none was written.
type sides struct {
	guessed      string // the mark in front, or nothing
	width, depth string
	unit         quantity.Unit
	said         bool // the unit was
	product      float64
}

// multiplied is the form of two sides, the unit behind either or both.
var multiplied = sync.OnceValue(func() *regexp.Regexp {
	const number, unit = `([0-9][0-9.,/ -]*|[.,][0-9]+)`, `(mm|cm|in|inch|inches|"|″)?`
	return regexp.MustCompile(`(?i)^\s*(~?)\s*` + number + `\s*` + unit + `\s*[x×*]\s*` + number + `\s*` + unit + `\s*$`)
})

// sidesOf reads two sides where an area is asked for; ok is false for anything else.
func (f *Input) sidesOf(typed string) (s sides, ok bool) {
	if f.Table != "slot" || len(f.Dim) == 0 || f.Dim[0].Suffix != quantity.SquareMM[0].Suffix {
		return s, false
	}
	m := multiplied().FindStringSubmatch(typed)
	if m == nil || m[3] != "" && m[5] != "" && !strings.EqualFold(m[3], m[5]) {
		return s, false
	}
	s.guessed, s.width, s.depth = m[1], strings.TrimSpace(m[2]), strings.TrimSpace(m[4])
	width, errWidth := parseNumber(s.width)
	depth, errDepth := parseNumber(s.depth)
	unit := m[5]
	if unit == "" {
		unit = m[3]
	}
	s.unit, ok = quantity.Millimetres.Typed(unit)
	s.said, s.product = unit != "", width*depth
	return s, ok && errWidth == nil && errDepth == nil
}

// area is the sides as an area with its unit, as a number of the field is written.
func (s sides) area() string {
	text := s.guessed + strconv.FormatFloat(s.product, 'g', 10, 64)
	switch {
	case !s.said:
		return text
	case s.unit.Suffix == "cm":
		return s.guessed + strconv.FormatFloat(100*s.product, 'g', 10, 64) + " mm2"
	}
	return text + " " + s.unit.Suffix + "2"
}

// alone are the sides without their unit, and the unit of the area, for a key that ends with it;
// what no key ends with, centimetres, is turned into the area itself.
func (s sides) alone(u quantity.Unit) (string, quantity.Unit) {
	if !s.said {
		return s.guessed + s.width + " x " + s.depth, u
	}
	if own, ok := quantity.SquareMM.Suffixed(s.unit.Suffix + "2"); ok {
		return s.guessed + s.width + " x " + s.depth, own
	}
	return s.guessed + strconv.FormatFloat(100*s.product, 'g', 10, 64), quantity.SquareMM[0]
}
