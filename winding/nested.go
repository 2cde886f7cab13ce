package winding

import (
	"cmp"
	"slices"

	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # Coils that are not alike
//
// Nested coils have one former each. A coil of span y has the common mean turn, converted to its own
// width by the end turns, l(y) = l + 2.4·(W(y) - W), as a measured turn is converted to another span
// (turnlength.go). W is the width at the mean span weighted by turns, and l(y) is linear in it, so the
// wire of all coils adds up exactly to what the mean turn says. The inner ends of nested coils lie
// lower than the outer ones', which is not modelled: wind one of each, try it in the slots, and trust
// the slots.

// CoilShape is one kind of coil of a winding that has several.
type CoilShape struct {
	// Span is its throw in slots, Turns its turns, Count the number of such coils.
	Span  int `json:"span_slots"`
	Turns int `json:"turns"`
	Count int `json:"pieces"`
	// TurnMM is its mean turn; the former's sizes are as in [Former], mm.
	TurnMM     quantity.Figure `json:"turn_mm"`
	StraightMM quantity.Figure `json:"former_straight_mm"`
	WidthMM    quantity.Figure `json:"former_width_mm"`
	RadiusMM   quantity.Figure `json:"former_radius_mm"`
	// Metres is the length of each strand of one such coil, Kg the metal of all its strands.
	Metres quantity.Figure `json:"coil_length_m"`
	Kg     quantity.Figure `json:"coil_kg"`
}

// shapes are the kinds of coils of a winding, the widest first; none where all are alike, or where
// there is no coil list or no mean turn.
func (l *turnLength) shapes(w *candidate, mean quantity.Figure) []CoilShape {
	if w.coils.plan == nil || !mean.Known() {
		return nil
	}
	list := kindsOfCoil(w.coils.plan)
	if len(list) < 2 {
		return nil
	}
	if len(w.trial.CoilTurns) == 0 { // the list is of single turns
		for i := range list {
			list[i].Turns = int(w.coils.slotTurns)
		}
	}
	middle := l.coilWidthMM(w.coils.span)
	for i := range list {
		s := &list[i]
		wide := l.coilWidthMM(float64(s.Span)).With(middle, func(its, all float64) float64 { return 2.4 * (its - all) })
		s.TurnMM = mean
		if float64(s.Span) != w.coils.span {
			s.TurnMM = mean.With(wide, func(l, more float64) float64 { return l + more })
		}
		s.StraightMM, s.WidthMM, s.RadiusMM = l.formerOf(w, float64(s.Span), float64(s.Turns), s.TurnMM)
		s.Metres, s.Kg = wireOf(w, s.TurnMM, float64(s.Turns))
	}
	return list
}

// wireOf is the length of each strand in a coil of so many turns, m, and the metal of all of them, kg.
func wireOf(w *candidate, turn quantity.Figure, turns float64) (metres, kg quantity.Figure) {
	if turns <= 0 {
		no := quantity.Missing("needs the turns")
		return no, no
	}
	metres = turn.Times(turns / 1000)
	if w.trial.Bundle().IsZero() {
		return metres, quantity.Missing("needs the wire")
	}
	return metres, metres.Times(kgPerMetre(w))
}

// kindsOfCoil counts the wound coils by span and turns.
func kindsOfCoil(plan *layout.Layout) []CoilShape {
	var list []CoilShape
	for _, c := range plan.Coils() {
		if c.Turns == 0 {
			continue
		}
		span := plan.SpanOf(c)
		i := slices.IndexFunc(list, func(s CoilShape) bool { return s.Span == span && s.Turns == c.Turns })
		if i < 0 {
			list = append(list, CoilShape{Span: span, Turns: c.Turns})
			i = len(list) - 1
		}
		list[i].Count++
	}
	slices.SortStableFunc(list, func(a, b CoilShape) int {
		return cmp.Or(cmp.Compare(b.Span, a.Span), cmp.Compare(b.Turns, a.Turns))
	})
	return list
}
