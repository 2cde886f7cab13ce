package job

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// cables is the copper of one conductor, given as parallel cables by number and size, "2 x 16 mm²", "2
// x 6 AWG", or as the name of one size, "6 AWG". A stranded cable named by a gauge has the copper area
// of that gauge's solid wire (ASTM B258 for the sizes).
type cables struct {
	guessed string // the mark in front, or nothing
	count   string // how many in parallel, "" for one
	size    string // of each, as typed, without its unit; the whole name of a gauge
	unit    quantity.Unit
	said    bool // the unit was typed
	named   bool // the size is a gauge
	total   float64
}

// beside is the form of parallel cables, or of one.
var beside = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^\s*(~?)\s*(?:([1-9][0-9]?)\s*[xX×*]\s*)?([^\s~].*?)\s*$`)
})

// cablesOf reads cables where a cable's area is asked for; ok is false for anything else, including a
// plain number.
func (f *Input) cablesOf(typed string) (c cables, ok bool) {
	if f.Path() != "battery.cable_area" {
		return c, false
	}
	m := beside().FindStringSubmatch(typed)
	if m == nil {
		return c, false
	}
	c.guessed, c.count, c.size = m[1], m[2], m[3]
	each, ok := c.each(f.Dim)
	if !ok || c.count == "" && !c.named {
		return c, false
	}
	n := 1.0
	if c.count != "" {
		n, _ = strconv.ParseFloat(c.count, 64)
	}
	c.total = n * each
	return c, true
}

// each is the size of one, in mm² of a gauge and else in the unit that was typed, or none.
func (c *cables) each(dim quantity.Dimension) (size float64, ok bool) {
	if strings.HasSuffix(strings.ToUpper(c.size), "WG") {
		g, err := wiretable.Parse(c.size)
		if err != nil {
			return 0, false
		}
		c.size, c.named = g.String(), true
		return g.AreaMM2(wiretable.Heavy), true
	}
	q, err := parseQuantity(c.size)
	if err != nil || q.guessed || q.plusMinus != 0 {
		return 0, false
	}
	if c.unit, ok = dim.Typed(q.unit); !ok {
		return 0, false
	}
	if c.said = q.unit != ""; c.said {
		c.size = strings.TrimSpace(quantityForm().FindStringSubmatch(plainUnit.Replace(c.size))[2])
	}
	return q.value, true
}

// area is the total area as a number of the field in the unit of its key.
func (c cables) area(key quantity.Unit) string {
	total := c.total
	switch {
	case c.named:
		total = key.From(total)
	case c.said:
		return c.guessed + strconv.FormatFloat(total, 'g', 10, 64) + " " + c.unit.Suffix
	}
	return c.guessed + strconv.FormatFloat(total, 'g', 10, 64)
}

// alone is the cables without their unit, and the unit for the key.
func (c cables) alone(u quantity.Unit) (string, quantity.Unit) {
	text := c.guessed
	if c.count != "" {
		text += c.count + " x "
	}
	if c.said {
		u = c.unit
	}
	return text + c.size, u
}

// saysItself reports whether a value as typed includes its unit, so that none follows it: a gauge.
func (f *Input) saysItself(typed string) bool {
	c, ok := f.cablesOf(typed)
	return ok && c.named
}
