package drawing

import (
	"math"

	"slotwright/winding/quantity"
)

// dimensions writes the slot's dimensions round it.
func (v *slotView) dimensions() {
	depth, top, bottom := v.measures()
	deep, wide, narrow, open, high := v.slotReadings()
	left := v.origin.x + v.scale*v.extent.x0
	v.upright(left-9, v.at(0, 0).y, v.at(0, depth).y, left, -1, v.given(deep, depth))
	y := v.at(0, v.extent.y1).y
	v.across(y-12, v.at(-top/2, depth), v.at(top/2, depth), v.given(wide, top))
	if bottom.width > 0 && v.kind() != flat {
		v.across(v.at(0, 0).y+7, v.at(-bottom.width/2, bottom.at), v.at(bottom.width/2, bottom.at), v.given(narrow, bottom.width))
	}
	if len(v.picture.Neck) == 2 {
		l := v.picture.Neck[1]
		v.across(y-4, v.at(-l.To.X, l.To.Y), v.at(l.To.X, l.To.Y), v.given(open, 2*l.To.X))
		if l.To.Y > l.From.Y {
			right := v.origin.x + v.scale*v.extent.x1
			v.upright(right+9, v.at(0, l.From.Y).y, v.at(0, l.To.Y).y, v.at(l.To.X, 0).x, 1, v.given(high, l.To.Y-l.From.Y))
		}
	}
}

// level is a width at a height.
type level struct{ width, at float64 }

// measures reads from the picture its depth, its width at the mouth side, and the width where the
// straight sides begin.
func (v *slotView) measures() (depth, top float64, bottom level) {
	for _, p := range v.picture.Outline {
		depth = max(depth, p.Y)
	}
	for _, p := range v.picture.Outline {
		if p.Y > depth-1e-9 {
			top = max(top, 2*p.X)
		}
	}
	// The sides are the only stroke up to the top; they begin at the last point below it.
	for _, p := range v.picture.Outline {
		if p.X > 0 && p.Y < depth-1e-9 {
			bottom = level{2 * p.X, p.Y}
		}
	}
	return depth, top, bottom
}

// given is a dimension as the person typed it, else as in the picture, with the mark of a guess.
func (v *slotView) given(r quantity.Reading, drawn float64) string {
	f := quantity.Figure{Value: math.Round(drawn*100) / 100, Origin: quantity.Guessed}
	if r.Given() && math.Abs(r.Value-drawn) < 1e-6 {
		f = r.Figure("")
	}
	return v.length(f)
}

// across is a dimension from side to side, at a height of the page.
func (v *slotView) across(y float64, from, to point, says string) {
	p := v.page
	way := math.Copysign(1, y-from.y)
	for _, e := range []point{from, to} {
		p.line(hairline, point{e.x, e.y + way*dimGap}, point{e.x, y + way*1})
	}
	w := words{text: says, size: textSize, anchor: centred, at: point{(from.x + to.x) / 2, y - 2.2}}
	p.line(hairline, point{from.x, y}, point{to.x, y})
	p.arrowHead(point{from.x, y}, -1, 0, min(2, (to.x-from.x)/3))
	p.arrowHead(point{to.x, y}, 1, 0, min(2, (to.x-from.x)/3))
	if way > 0 {
		w.at.y = y + 2.2
	}
	w.plate = true
	p.say(w)
}

// upright is a dimension from low to high, at an x of the page; from is where the thing measured ends,
// way the side of the words.
func (v *slotView) upright(x, low, high, from, way float64, says string) {
	p := v.page
	for _, y := range []float64{low, high} {
		p.line(hairline, point{from + way*dimGap, y}, point{x + way, y})
	}
	p.line(hairline, point{x, low}, point{x, high})
	p.arrowHead(point{x, low}, 0, 1, min(2, (low-high)/3))
	p.arrowHead(point{x, high}, 0, -1, min(2, (low-high)/3))
	w := words{text: says, size: textSize, anchor: fromLeft, at: point{x + 2, (low + high) / 2}}
	if way < 0 {
		w.anchor, w.at.x = toRight, x-2
	}
	p.say(w)
}
