package winding

import (
	"cmp"
	"sync"

	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// Where nothing was measured.
var (
	defaultLinerMM   = job.DefaultOf("slot.liner")
	defaultWedgeMM   = job.DefaultOf("slot.wedge")
	defaultFillLimit = job.DefaultOf("slot.fill_limit")
	defaultEndRunMM  = job.DefaultOf("machine.end_run")
	defaultMouthMM   = job.DefaultOf("slot.mouth_height")
)

// slotRoom is the lined slot, for each way the coil sides can lie, or why there is none.
type slotRoom struct {
	rooms [beside]slot.Room
	why   [beside]string
	// permeance is that of the slot leakage, with the currents of two sides in quadrature and in phase;
	// it costs more than a trial, so it is worked out once, when a winding first lies that way.
	permeance *[beside]permeance
	// origin says whether a guess or a default affects the room, or what came out of it contradicts it;
	// measured is the same for the slot's readings alone.
	origin quantity.Origin
	// misread says that what came out of it cannot have been in.
	misread   bool
	measured  quantity.Origin
	mouth     quantity.Reading
	fillLimit quantity.Figure
}

// permeance belongs to one way in which sides lie.
type permeance struct {
	once       sync.Once
	apart, one float64
}

// Fit is the winding in its slot.
type Fit struct {
	BareMM            quantity.Figure `json:"bare_mm"`
	OverallMM         quantity.Figure `json:"overall_mm"`
	Conductors        quantity.Figure `json:"wires_per_slot"`
	WireFill          quantity.Figure `json:"wire_fill"`
	RoundFill         quantity.Figure `json:"round_fill"`
	CopperFill        quantity.Figure `json:"copper_fill"`
	FillLimit         quantity.Figure `json:"fill_limit"`
	TurnsThatFit      quantity.Figure `json:"turns_that_fit"`
	MostThatPack      quantity.Figure `json:"most_wires_that_pack"`
	CopperPerSlotMM2  quantity.Figure `json:"copper_per_slot_mm2"`
	MouthSpareMM      quantity.Figure `json:"mouth_spare_mm"`
	MouthText         string          `json:"mouth,omitempty"`
	ConductorAreaMM2  quantity.Figure `json:"conductor_area_mm2"`
	ConductorAreaCmil quantity.Figure `json:"conductor_area_cmil"`
}

// measureSlot lines the slot for each way the coil sides can lie.
func measureSlot(s job.SlotSpec) slotRoom {
	r := slotRoom{permeance: new([beside]permeance), mouth: s.MouthMM, fillLimit: s.FillLimit.OrReading(defaultFillLimit).Figure("")}
	shape, why := slotShape(s)
	r.origin = guessedIf(s.AreaMM2, s.TopMM, s.DepthMM, s.BottomMM)
	if !s.LinerMM.Given() || !s.WedgeMM.Given() || shape == slot.AreaOnly {
		r.origin = quantity.Guessed
	}
	r.measured = r.origin
	body := slot.Slot{
		Shape: shape, AreaMM2: s.AreaMM2.Value, TopMM: s.TopMM.Value, BottomMM: s.BottomMM.Value,
		DepthMM: s.DepthMM.Value, MouthMM: s.MouthMM.Value, MouthHeightMM: s.MouthHeightMM.Or(defaultMouthMM),
		DepthPerWidth: s.DepthPerWidth.Value,
	}
	for i := range r.rooms {
		if r.why[i] = why; why == "" {
			r.line(i, body, slot.Insulation{
				LinerMM: s.LinerMM.Or(defaultLinerMM), WedgeMM: s.WedgeMM.Or(defaultWedgeMM),
				SeparatorMM: s.SeparatorMM.Or(0), Layers: min(i+1, 2), Beside: lying(i+1) == beside,
			})
		}
	}
	return r
}

// slotShape is the slot's shape, and what of it is still to be measured.
func slotShape(s job.SlotSpec) (slot.Shape, string) {
	shape, err := slot.ParseShape(cmp.Or(s.Shape, slot.AreaOnly.String()))
	switch {
	case err != nil:
		return shape, err.Error()
	case shape == slot.AreaOnly && !s.AreaMM2.Given():
		return shape, "needs the slot's area, or its shape and widths"
	case shape != slot.AreaOnly && (!s.TopMM.Given() || !s.DepthMM.Given()):
		return shape, "needs the slot's width and depth"
	case shape != slot.AreaOnly && shape != slot.Parallel && !s.BottomMM.Given():
		return shape, "needs the slot's width at the bottom"
	}
	return shape, ""
}

// line puts the insulation in.
func (r *slotRoom) line(i int, body slot.Slot, lining slot.Insulation) {
	room, err := slot.Measure(body, lining)
	if err != nil {
		r.why[i] = err.Error()
		return
	}
	r.rooms[i] = room
}

// of is the slot for one way its sides lie; why says why there is none.
func (r *slotRoom) of(lie lying) (room *slot.Room, why string) {
	return &r.rooms[lie-1], r.why[lie-1]
}

// leakage is the permeance of the slot leakage for coils; 1 where the slot is not known. It is an even
// function of the currents' correlation, see package slot.
func (r *slotRoom) leakage(c *coilSet) float64 {
	room, why := r.of(c.lie)
	if why != "" {
		return 1
	}
	p := &r.permeance[c.lie-1]
	p.once.Do(func() {
		layers := min(int(c.lie), 2)
		p.apart, p.one = slot.LeakageParts(*room, layers, 0).Total, slot.LeakageParts(*room, layers, 1).Total
	})
	return p.one - (p.one-p.apart)*(1-c.together)
}

// depthMM is the slot's depth, 0 when it is not known.
func (r *slotRoom) depthMM() float64 { return r.rooms[0].DepthMM }

// guessedIf is Guessed when one of the readings is.
func guessedIf(readings ...quantity.Reading) quantity.Origin {
	for _, r := range readings {
		if r.Origin.Weak() {
			return quantity.Guessed
		}
	}
	return quantity.Derived
}

// slotWires is a bundle as package slot takes it.
func slotWires(w job.Wound) [2]slot.Wire {
	var wires [2]slot.Wire
	for i, s := range w.Bundle().Strands {
		if s.Count > 0 {
			wires[i] = slot.Wire{OverallMM: s.Gauge.OverallMM(w.Build).NominalMM, Count: s.Count, BareMM: s.Gauge.BareMM(w.Build)}
		}
	}
	return wires
}

// fit puts a trial's wire into the slot.
func (r *slotRoom) fit(w *candidate) Fit {
	bundle, layers := w.trial.Bundle(), w.key.layers
	_, why := r.of(w.coils.lie)
	f := Fit{FillLimit: r.fillLimit}
	none := quantity.Missing(why)
	if why == "" {
		none = quantity.Missing("needs the turns")
	}
	f.WireFill, f.RoundFill, f.CopperFill, f.TurnsThatFit, f.MostThatPack, f.MouthSpareMM = none, none, none, none, none, none
	if bundle.IsZero() {
		no := quantity.Missing("needs the wire")
		return Fit{no, no, no, no, no, no, f.FillLimit, no, no, no, no, "", no, no}
	}
	first := bundle.Strands[0].Gauge
	f.BareMM = quantity.Of(first.BareMM(w.trial.Build))
	f.OverallMM = quantity.Of(first.OverallMM(w.trial.Build).NominalMM)
	area := bundle.AreaMM2(w.trial.Build)
	f.ConductorAreaMM2 = quantity.Of(area)
	f.ConductorAreaCmil = quantity.Of(area * heat.CmilPerMM2)
	f.Conductors, f.CopperPerSlotMM2 = quantity.Missing("needs the turns"), quantity.Missing("needs the turns")
	sides := w.coils.slotTurns * float64(layers)
	if w.coils.slotTurns > 0 {
		f.Conductors = quantity.Of(sides * float64(bundle.Count()))
		f.CopperPerSlotMM2 = quantity.Of(sides * area)
	}
	if why != "" {
		return f
	}
	r.fill(&f, w, int(sides))
	return f
}

// heldAgainst marks a room that the old winding cannot have been in: slot, turns or wire is misread,
// and every fill with it.
func (r *slotRoom) heldAgainst(old *oldWinding) {
	r.origin, r.misread = r.measured, false
	if f := r.fit(&old.candidate).WireFill; f.Known() && f.Value > hexagonalWireFill {
		r.origin, r.misread = quantity.Guessed, true
	}
}

// mostThatPack is how many of a trial's wires could at best be laid side by side in the slot. It costs
// more than all else in a trial, so a search does without it.
func (r *slotRoom) mostThatPack(w *candidate) quantity.Figure {
	t := &w.trial
	room, why := r.of(w.coils.lie)
	switch {
	case why != "":
		return quantity.Missing(why)
	case t.Bundle().IsZero():
		return quantity.Missing("needs the wire")
	}
	return quantity.Of(float64(slot.MostThatPack(*room, t.Bundle().ThickestMM(t.Build))), r.origin)
}

// fill is the part of fit that needs a measured slot.
func (r *slotRoom) fill(f *Fit, w *candidate, sides int) {
	t, layers := &w.trial, w.key.layers
	room, wires, o := &r.rooms[w.coils.lie-1], slotWires(t.Wound), r.origin
	square := slot.SquarePerTurnMM2(wires)
	f.TurnsThatFit = quantity.Of(float64(slot.TurnsThatFit(room.NetMM2, square, layers, f.FillLimit.Value)), o)
	if sides > 0 {
		fills := slot.Fill(*room, wires, sides)
		f.WireFill, f.RoundFill, f.CopperFill = quantity.Of(fills.Wire, o), quantity.Of(fills.Round, o), quantity.Of(fills.Copper, o)
	}
	mouth := slot.CheckMouth(*room, t.Bundle().ThickestMM(t.Build))
	f.MouthText = mouth.Text
	f.MouthSpareMM = quantity.Missing("needs the width of the slot's mouth")
	if mouth.Known {
		f.MouthSpareMM = quantity.Of(mouth.SpareMM, r.mouth.Origin)
	}
}
