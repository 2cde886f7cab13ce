package winding

import (
	"math"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// # Insulation to cut
//
// Sizes follow from the slot, the stack and the former; what stands out of the iron and what a joint
// takes are habits of the bench, written below. All of them are common practice, no source, and are
// meant to be cut a little long and trimmed. The thickness is the one used for the room in the slot.

const (
	cuffMM      = 5.0  // liner, wedge and separator beyond the iron, at each end
	paperEdgeMM = 10.0 // phase paper beyond the coil's end, all round
	jointMM     = 40.0 // sleeve over one joint
	sleeveRoom  = 1.3  // bore of a sleeve over the diameter of what goes in
	jointBundle = 2.0  // wires side by side in a joint
	tieRounds   = 1.5  // ties round the side of a flat coil, with the knot
	lashings    = 3.0  // cord for an end of the winding, over its perimeter
)

// LeadMM is the length left at a coil's end, and of the sleeve over a lead, to where the cable begins.
const LeadMM = 200.0

// AsSold is the reason why a size is not cut.
const AsSold = "as the maker sells it"

// Cut is insulation of one kind and size. A length or width that needs something is
// missing with its reason.
type Cut struct {
	Name   string `json:"name"`
	Pieces int    `json:"pieces,omitempty"`
	// LengthMM is along the slot, or of the sleeve, or of all the cord; WidthMM is across, or the bore
	// of a sleeve; ThickMM is the sheet's.
	LengthMM quantity.Figure `json:"length_mm"`
	WidthMM  quantity.Figure `json:"width_mm"`
	ThickMM  quantity.Figure `json:"thickness_mm"`
	Note     string          `json:"note,omitempty"`
}

// insulation is what the cuts depend on.
type insulation struct {
	machine *machine
	slot    *job.SlotSpec
	room    *slotRoom
}

// cuts is the insulation of a winding, in the order it goes in; none without a layout.
func (p insulation) cuts(w *candidate, o *TrialOutcome) []Cut {
	plan := w.coils.plan
	if plan == nil {
		return nil
	}
	count := plan.Counts(o.Connection)
	if p.machine.flat() {
		return p.endCuts(plan, &count, w, o) // cast: no iron to keep the wire from
	}
	return append(p.slotCuts(plan, &count, w.coils.lie), p.endCuts(plan, &count, w, o)...)
}

// slotCuts is what goes into the slots.
func (p insulation) slotCuts(plan *layout.Layout, count *layout.Counts, lie lying) []Cut {
	s := p.slot
	along := p.machine.StackMM.Figure("needs the stack").Then(func(l float64) float64 { return l + 2*cuffMM })
	liner, wedge := s.LinerMM.OrReading(defaultLinerMM).Figure(""), s.WedgeMM.OrReading(defaultWedgeMM).Figure("")
	slots := plan.Spec().Slots
	list := []Cut{
		{Name: "slot liner", Pieces: slots, LengthMM: along, ThickMM: liner,
			WidthMM: p.across(lie, func(r *slot.Room) float64 { return r.PerimeterMM }), Note: "wide: slot wall"},
		{Name: "wedge", Pieces: slots, LengthMM: along, ThickMM: wedge,
			WidthMM: p.across(lie, func(r *slot.Room) float64 { return r.WedgeMM2 / wedge.Value })},
	}
	shared, sheet := count.SharedSlots, s.SeparatorMM.Or(0)
	if shared == 0 || sheet <= 0 {
		return list // left empty, none will be used, and no room is kept for one
	}
	return append(list, Cut{Name: "separator", Pieces: shared, LengthMM: along, ThickMM: s.SeparatorMM.Figure(""),
		WidthMM: p.across(lie, func(r *slot.Room) float64 { return r.SeparatorMM2 / sheet })})
}

// across is a width of the slot.
func (p insulation) across(lie lying, of func(*slot.Room) float64) quantity.Figure {
	room, why := p.room.of(lie)
	if why != "" {
		return quantity.Missing(why)
	}
	return quantity.Of(of(room), p.room.origin)
}

// endCuts is what goes on the coils' ends, the joints and the leads.
func (p insulation) endCuts(plan *layout.Layout, count *layout.Counts, w *candidate, o *TrialOutcome) []Cut {
	none := quantity.Missing(AsSold)
	bundle := w.trial.Bundle()
	round := quantity.Missing("needs the wire")
	if !bundle.IsZero() {
		round = quantity.Of(bundle.ThickestMM(w.trial.Build) * math.Sqrt(float64(bundle.Count())) * sleeveRoom)
	}
	list := []Cut{
		{Name: "sleeve, joint", Pieces: count.Joints, LengthMM: quantity.Of(jointMM), WidthMM: round.Times(jointBundle), ThickMM: none, Note: "wide: inside"},
		{Name: "sleeve, lead", Pieces: count.LeadsOut, LengthMM: quantity.Of(LeadMM), WidthMM: round, ThickMM: none, Note: "wide: inside"},
	}
	switch {
	case p.machine.flat():
		return append(list, p.flatCuts(plan)...)
	case roundTooth(w):
		return list
	}
	edge := func(v float64) float64 { return v + 2*paperEdgeMM }
	depth := o.StraightMM.With(o.RadiusMM, func(s, r float64) float64 { return s/2 + r }).
		With(p.machine.StackMM.Figure("needs the stack"), func(half, stack float64) float64 { return half - stack/2 })
	ring := p.machine.BoreMM.Figure("needs the bore").Then(func(d float64) float64 { return 2 * lashings * math.Pi * (d + p.machine.outward()*p.room.depthMM()) })
	return append(list,
		Cut{Name: "phase paper", Pieces: 2 * count.Groups, LengthMM: o.WidthMM.Then(edge), WidthMM: depth.Then(edge), ThickMM: none, Note: "between phases"},
		Cut{Name: "lacing cord", LengthMM: ring, WidthMM: none, ThickMM: none, Note: "3 × round each end"})
}

// flatCuts is what holds flat coils until they are cast, and in the casting: each is tied twice on each
// of its sides before it leaves the former, and lies between two rings of glass mat as wide as the
// coils.
func (p insulation) flatCuts(plan *layout.Layout) []Cut {
	m, none := p.machine, quantity.Missing(AsSold)
	side, thick := m.SideMM.Figure("needs the side of a coil"), m.ThickMM.Figure("needs its thickness")
	tie := side.With(thick, func(s, t float64) float64 { return tieRounds * 2 * (s + t) })
	reach := m.StackMM.Figure("needs the magnets' length").With(side, func(l, s float64) float64 { return l + 2*s })
	circle := m.BoreMM.Figure("needs the circle")
	return []Cut{
		{Name: "tie, coil", Pieces: 4 * len(plan.Coils()), LengthMM: tie, WidthMM: none, ThickMM: none, Note: "twice on each side"},
		{Name: "glass mat", Pieces: 2, LengthMM: circle.With(reach, func(d, r float64) float64 { return d + r }),
			WidthMM: circle.With(reach, func(d, r float64) float64 { return max(0, d-r) }), ThickMM: none, Note: "across: outside, hole"},
	}
}
