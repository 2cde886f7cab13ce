package layout

import (
	"slotwright/tui/kit"
	"slotwright/winding/layout"
)

// picture is the stator unrolled in at most h rows of w cells, and what had to be left out for that, ""
// for nothing.
func (v *View) picture(t kit.Theme, d *sheet, w, h int) (lines []string, left string) {
	filters := v.filters(d)
	for _, f := range filters {
		coils := f.keep(d.plan.Coils())
		for _, coilRows := range [2]bool{true, false} {
			p := v.newStrip(t, d, coilRows)
			p.shown = filters[0].shown // what lies in the slots is written all the same
			if lines, ok := v.strips(p, coils, w, h); ok {
				return lines, f.words
			}
		}
	}
	return nil, "the picture needs more rows than there are"
}

// newStrip is a strip that shows the current coil.
func (v *View) newStrip(t kit.Theme, d *sheet, coilRows bool) *strip {
	p := &strip{theme: t, plan: d.plan, coilRows: coilRows, inner: 2}
	p.step, p.coil, _ = v.current(d)
	p.turns = turnsText(d, p.step.Turns)
	if d.plan.Spec().Sets == 2 || d.plan.Spec().Slots > 99 {
		p.inner = 3
	}
	return p
}

// mostPitch keeps a few slots from being drawn too far apart.
const mostPitch = 12

// strips shows all slots in one row or several where they fit, else as many as fit
// round the current coil.
func (v *View) strips(p *strip, coils []layout.Coil, w, h int) ([]string, bool) {
	slots := p.plan.Spec().Slots
	room := w - gutter - 2
	for _, roomy := range [2]int{3, 1} {
		for m := 1; m <= slots; m++ {
			p.n = (slots + m - 1) / m
			p.pitch = min(mostPitch, room/p.n)
			if p.pitch < p.inner+roomy {
				continue
			}
			if lines, ok := p.stack(coils, (slots+p.n-1)/p.n, h); ok {
				return lines, true
			}
			break
		}
	}
	p.pitch = p.inner + 1
	p.n = min(slots, room/p.pitch)
	if p.n < slots {
		p.first = v.follow(p, slots)
	}
	_, p.lanes = arcs(coils, slots, p.first, p.n)
	if p.rows() > h {
		return nil, false
	}
	return p.lines(coils), true
}

// stack draws m strips one under the other, if they fit in h rows.
func (p *strip) stack(coils []layout.Coil, m, h int) ([]string, bool) {
	slots, n := p.plan.Spec().Slots, p.n
	p.lanes = 0
	for i := range m {
		_, lanes := arcs(coils, slots, i*n, min(n, slots-i*n))
		p.lanes = max(p.lanes, lanes)
	}
	if m*(p.rows()+1)-1 > h {
		return nil, false
	}
	var lines []string
	for i := range m {
		if i > 0 {
			lines = append(lines, "")
		}
		p.first, p.n = i*n, min(n, slots-i*n)
		lines = append(lines, p.lines(coils)...)
	}
	p.first, p.n = 0, n
	return lines, true
}

// follow moves the visible slots no more than needed to hold the current coil, with a slot to spare at
// each side; then the coil is put in the middle.
func (v *View) follow(p *strip, slots int) int {
	left, length := reach(p.coil, slots)
	at := (left - 1 - v.left + 2*slots) % slots
	if at < 1 || at+length > p.n-2 {
		v.left = (left - 1 - max(0, p.n-length)/2 + 2*slots) % slots
	}
	return v.left
}

// filter is which coils are drawn.
type filter struct {
	shown func(layout.Coil) bool
	words string // what is left out
}

func (f filter) keep(coils []layout.Coil) []layout.Coil {
	var kept []layout.Coil
	for _, c := range coils {
		if c.Turns > 0 && f.shown(c) {
			kept = append(kept, c)
		}
	}
	return kept
}

// filters are what is asked for, then less and less round the current coil, for windings whose coils
// stack higher than the screen.
func (v *View) filters(d *sheet) []filter {
	_, now, _ := v.current(d)
	alone := func(c layout.Coil) bool { return c.Number == now.Number }
	return []filter{
		{func(c layout.Coil) bool { return v.shown(c.Phase) }, ""},
		{func(c layout.Coil) bool { return c.Phase == now.Phase && c.Set == now.Set },
			"for want of height only " + d.plan.PhaseName(now.Set, now.Phase) + " is drawn"},
		{func(c layout.Coil) bool { return d.coils[c.Number].Group == now.Group },
			"for want of height only this group"},
		{alone, "for want of height only this coil"},
	}
}
