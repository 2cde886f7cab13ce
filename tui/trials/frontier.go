package trials

import (
	"fmt"

	"slotwright/tui/chart"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// The size that the frontier needs, in cells.
const (
	frontierWide = 44
	frontierHigh = 26 // with a slot under it
)

// beside are the pictures beside the rungs: what every gauge brings against where it begins, and the
// slot with the marked one; the slot alone where both do not fit.
func (l *ladder) beside(s *session.Session, r kit.Rect, list []winding.Rung) []kit.Block {
	var blocks []kit.Block
	if r.W >= frontierWide && r.H >= frontierHigh {
		top, bottom := r.SplitTop(min(22, r.H/2))
		blocks = append(blocks, kit.Bare(s.Theme, top, l.frontier(s, list, top.W, top.H)))
		r = bottom
	}
	rung := &list[l.row]
	r.H = min(r.H, 30)
	r, _ = r.SplitLeft(min(r.W, slotWidth(r.H)))
	pack, why := s.Bench().PictureOf(rung.Trial)
	title := fmt.Sprintf("%d × %s", rung.Trial.Turns.Whole(), shortWire(rung.Wire))
	return append(blocks, slotBox(s.Theme, r, title, fillWords(&rung.TrialOutcome), s.Trial, false, pack, why))
}

// frontier is the trade-off in one picture: net amps in each condition of every gauge with the slot
// full, against the speed at which it begins to charge. Thin and many are left, thick and few right.
func (l *ladder) frontier(s *session.Session, list []winding.Rung, w, h int) []string {
	m := &s.Outcome().Machine
	c := chart.Chart{Width: w, Height: h, X: chart.Axis{Label: "charging begins", Unit: "alternator rpm", Max: farthest(list, l.row)},
		Y: chart.Axis{Label: "net amps, every gauge", Unit: "A", Zero: true}}
	for i, of := range []func(*winding.Rung) quantity.Figure{
		func(r *winding.Rung) quantity.Figure { return r.AmpsSlow }, func(r *winding.Rung) quantity.Figure { return r.AmpsUsual }, func(r *winding.Rung) quantity.Figure { return r.AmpsTop },
	} {
		if i >= len(m.Conditions) || m.Conditions[i].Same != "" {
			continue
		}
		line := chart.Series{Letter: m.Conditions[i].Name, Name: s.Units.Words(m.Conditions[i].Label)}
		for k := len(list) - 1; k >= 0; k-- { // so that the line ends, and is named, at the right
			if at, y := list[k].CutInRPM, of(&list[k]); at.Known() && y.Known() {
				line.Points = append(line.Points, chart.XY{X: at.Value, Y: y.Value})
			}
		}
		c.Series = append(c.Series, line)
	}
	if r := &list[l.row]; r.CutInRPM.Known() && r.AmpsUsual.Known() {
		c.Markers = []chart.Marker{{X: r.CutInRPM.Value, Y: r.AmpsUsual.Value, Label: shortWire(r.Wire)}}
	}
	if m.SlowRPM.Known() {
		c.VLines = []chart.Limit{{At: m.SlowRPM.Value, Label: "slow " + quantity.Screen.Number(m.SlowRPM.Value, 0)}}
	}
	if wanted := s.Job().Target.Amps; wanted.Given() {
		c.HLines = []chart.Limit{{At: wanted.Value, Label: " wanted "}}
	}
	return c.Lines(s.Theme)
}

// farthest is the speed up to which the frontier is drawn: that of the last gauge that brings anything,
// or of the marked one, with a little room.
func farthest(list []winding.Rung, marked int) float64 {
	far := list[marked].CutInRPM.Value
	for i := range list {
		if r := &list[i]; r.AmpsUsual.Value > 0 || r.AmpsTop.Value > 0 {
			far = max(far, r.CutInRPM.Value)
		}
	}
	return 1.1 * far
}
