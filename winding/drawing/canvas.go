package drawing

import "strings"

// pen is how a line looks: its width in mm, and dashes and gaps in mm.
type pen struct {
	width float64
	dash  string
}

// The pens that are not those of phases or trials.
var (
	hairline = pen{width: 0.15}
	thin     = pen{width: 0.25}
	bold     = pen{width: 0.5}
	dotted   = pen{width: 0.2, dash: "0.8 0.8"}
)

// part is a primitive on a page: its element and its bounding box.
type part struct {
	element any
	box     box
	// words is the string of a text, "" for anything else; plate says that white lies under it.
	words string
	plate bool
	// lines are the straight strokes of a path.
	lines [][]point
}

// canvas is a page while it is drawn.
type canvas struct {
	paper Paper
	ascii bool
	parts []part
}

func (c *canvas) elements() []any {
	all := make([]any, len(c.parts))
	for i, p := range c.parts {
		all[i] = p.element
	}
	return all
}

// mark is the name of a path or text within its drawing.
type mark struct{ id, class string }

// strokes draws polylines as one path. Nothing is drawn for none.
func (c *canvas) strokes(m mark, p pen, lines ...[]point) {
	c.path(m, p, "", false, lines...)
}

// line draws one line.
func (c *canvas) line(p pen, points ...point) { c.strokes(mark{}, p, points) }

// area draws closed outlines, filled white or black, or not at all for "".
func (c *canvas) area(m mark, p pen, fill string, outlines ...[]point) {
	c.path(m, p, fill, true, outlines...)
}

func (c *canvas) path(m mark, p pen, fill string, closed bool, lines ...[]point) {
	var d strings.Builder
	var all []point
	for _, line := range lines {
		for i, at := range line {
			d.WriteString([]string{"L", "M"}[b2i(i == 0)] + mm(at.x) + " " + mm(at.y))
		}
		if closed {
			d.WriteString("Z")
		}
		all = append(all, line...)
	}
	if len(all) == 0 {
		return
	}
	c.parts = append(c.parts, part{
		element: pathElement{ID: m.id, Class: m.class, D: d.String(), Width: number(p.width), Dash: p.dash, Fill: fill},
		box:     around(all...).grown(p.width / 2), lines: lines,
	})
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// ring draws a circle, filled white or black, or not at all for "".
func (c *canvas) ring(at point, r float64, p pen, fill string) {
	c.parts = append(c.parts, part{
		element: circleElement{X: number(at.x), Y: number(at.y), R: number(r), Width: number(p.width), Fill: fill},
		box:     box{at.x - r, at.y - r, at.x + r, at.y + r}.grown(p.width / 2),
	})
}

// Where a text is relative to its place.
const (
	fromLeft = "start"
	centred  = "middle"
	toRight  = "end"
)

// words is a text to be set: at is its left end, middle or right end, at half its height.
type words struct {
	text   string
	at     point
	size   float64
	anchor string
	bold   bool
	// plate puts white under it, where it is on lines; it is at least cover mm wide, and has an edge
	// when framed.
	plate, framed bool
	cover         float64
	id            string
}

// box is the bounding box of the text.
func (w words) box() box {
	width, _ := textWidth(w.text, w.size, w.bold)
	x := w.at.x
	switch w.anchor {
	case centred:
		x -= width / 2
	case toRight:
		x -= width
	}
	return box{x, w.at.y - halfLine*w.size, x + width, w.at.y + halfLine*w.size}
}

// say sets a text, all of it: the caller cuts what may be too long.
func (c *canvas) say(w words) {
	if c.ascii {
		w.text = cleaned(w.text, true)
	}
	if w.text == "" {
		return
	}
	b := w.box()
	if w.plate {
		c.plateUnder(w, b)
	}
	e := textElement{ID: w.id, X: number(w.at.x), Y: number(w.at.y + baseline*w.size), Size: number(w.size), Fill: "black", Stroke: "none", Words: w.text}
	if w.anchor != fromLeft {
		e.Anchor = w.anchor
	}
	if w.bold {
		e.Weight = "bold"
	}
	if width, told := textWidth(w.text, w.size, w.bold); told {
		e.Length, e.Adjust = mm(width), "spacingAndGlyphs"
	}
	c.parts = append(c.parts, part{element: e, box: b, words: w.text, plate: w.plate})
}

// plateUnder is the white under a text.
func (c *canvas) plateUnder(w words, b box) {
	b.y0, b.y1 = b.y0+0.06*w.size, b.y1-0.06*w.size
	if wider := (w.cover - b.width()) / 2; wider > 0 {
		b.x0, b.x1 = b.x0-wider, b.x1+wider
	}
	e := rectElement{X: number(b.x0), Y: number(b.y0), Width: number(b.width()), Height: number(b.height()), Fill: "white", Stroke: "none"}
	if w.framed {
		e.Stroke, e.Line = "black", number(hairline.width)
		b = b.grown(hairline.width / 2)
	}
	c.parts = append(c.parts, part{box: b, element: e})
}

// paragraph sets lines of at most so many mm under one another and returns the place of the next.
func (c *canvas) paragraph(at point, size, width float64, texts ...string) float64 {
	for _, t := range texts {
		for _, line := range wrapTo(t, size, width) {
			c.say(words{text: line, at: at, size: size, anchor: fromLeft})
			at.y += 1.35 * size
		}
	}
	return at.y
}

// arrowHead draws a filled triangle whose tip is at a point; (dx, dy) is its direction, of length 1.
func (c *canvas) arrowHead(tip point, dx, dy, length float64) {
	back := point{tip.x - dx*length, tip.y - dy*length}
	side := 0.4 * length
	c.area(mark{}, pen{width: 0.1}, "black", []point{tip, {back.x - dy*side, back.y + dx*side}, {back.x + dy*side, back.y - dx*side}})
}
