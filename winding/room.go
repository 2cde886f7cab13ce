package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
	"slotwright/wiretable"
)

// Defaults where nothing was measured; common practice, no source.
const (
	defaultLinerMM   = 0.25
	defaultWedgeMM   = 1.0
	defaultFillLimit = 0.70
	defaultEndRunMM  = 9.0
	defaultMouthMM   = 1.0 // height
)

// slotGuess says which of the slot's figures were not measured.
type slotGuess struct{ origin quantity.Origin }

// measureSlot lines the slot, with one layer and with two.
func (b *Bench) measureSlot() {
	s := b.job.Slot
	shape, err := slot.ParseShape(orWord(s.Shape, slot.AreaOnly.String()))
	why := ""
	switch {
	case err != nil:
		why = err.Error()
	case shape == slot.AreaOnly && !s.AreaMM2.Given():
		why = "needs the slot's area, or its shape and widths"
	case shape != slot.AreaOnly && (!s.TopMM.Given() || !s.DepthMM.Given()):
		why = "needs the slot's width and depth"
	case (shape == slot.Tapered || shape == slot.RoundBottom) && !s.BottomMM.Given():
		why = "needs the slot's width at the bottom"
	}
	b.slot.origin = guessedIf(s.AreaMM2, s.TopMM, s.DepthMM, s.BottomMM)
	if !s.LinerMM.Given() || !s.WedgeMM.Given() || shape == slot.AreaOnly {
		b.slot.origin = quantity.Guessed
	}
	body := slot.Slot{
		Shape: shape, AreaMM2: s.AreaMM2.Value, TopMM: s.TopMM.Value, BottomMM: s.BottomMM.Value,
		DepthMM: s.DepthMM.Value, MouthMM: s.MouthMM.Value, MouthHeightMM: s.MouthHeightMM.Or(defaultMouthMM),
		DepthPerWidth: s.DepthPerWidth.Value,
	}
	for layers := 1; layers <= 2; layers++ {
		if why != "" {
			b.roomWhy[layers-1] = why
			continue
		}
		room, err := slot.Measure(body, slot.Insulation{
			LinerMM: s.LinerMM.Or(defaultLinerMM), WedgeMM: s.WedgeMM.Or(defaultWedgeMM),
			SeparatorMM: s.SeparatorMM.Or(0), Layers: layers,
		})
		if err != nil {
			b.roomWhy[layers-1] = err.Error()
			continue
		}
		b.rooms[layers-1] = room
	}
}

func orWord(word, fallback string) string {
	if word == "" {
		return fallback
	}
	return word
}

// guessedIf is Guessed when one of the readings is.
func guessedIf(readings ...quantity.Reading) quantity.Origin {
	for _, r := range readings {
		if r.Origin == quantity.Guessed {
			return quantity.Guessed
		}
	}
	return quantity.Derived
}

// slotWires is a bundle as the slot sees it.
func slotWires(w job.Wound) [2]slot.Wire {
	var wires [2]slot.Wire
	for i, s := range w.Bundle().Strands {
		if s.Count > 0 {
			wires[i] = slot.Wire{OverallMM: s.Gauge.OverallMM(w.Build).NominalMM, Count: s.Count, BareMM: s.Gauge.BareMM(w.Build)}
		}
	}
	return wires
}

// cmilPerMM2 is circular mils in a square millimetre: 4/π/0.0254², by definition.
const cmilPerMM2 = 1973.5252413

// fit puts a trial's wire into the slot.
func (b *Bench) fit(t job.Trial, c coilSet, layers int) Fit {
	bundle := t.Bundle()
	why := b.roomWhy[layers-1]
	f := Fit{FillLimit: b.job.Slot.FillLimit.OrReading(defaultFillLimit).Figure("")}
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
	f.BareMM = quantity.Of(first.BareMM(t.Build))
	f.OverallMM = quantity.Of(first.OverallMM(t.Build).NominalMM)
	area := bundle.AreaMM2(t.Build)
	f.ConductorAreaMM2 = quantity.Of(area)
	f.ConductorAreaCmil = quantity.Of(area * cmilPerMM2)
	f.Conductors, f.CopperPerSlotMM2 = quantity.Missing("needs the turns"), quantity.Missing("needs the turns")
	sides := c.slotTurns * float64(layers)
	if c.slotTurns > 0 {
		f.Conductors = quantity.Of(sides * float64(bundle.Count()))
		f.CopperPerSlotMM2 = quantity.Of(sides * area)
	}
	if why != "" {
		return f
	}
	b.fillSlot(&f, t, bundle, int(sides), layers)
	return f
}

// mostThatPack is how many of a trial's wires a person could lay side by side in the
// slot at the very best. It costs more than all else in a trial, so it is left out of what
// a search pays for.
func (b *Bench) mostThatPack(t job.Trial) quantity.Figure {
	layers := b.keyOf(t).layers
	switch {
	case b.roomWhy[layers-1] != "":
		return quantity.Missing(b.roomWhy[layers-1])
	case t.Bundle().IsZero():
		return quantity.Missing("needs the wire")
	}
	return quantity.Of(float64(slot.MostThatPack(b.rooms[layers-1], t.Bundle().ThickestMM(t.Build))), b.slot.origin)
}

// fillSlot is the part of fit that needs a measured slot.
func (b *Bench) fillSlot(f *Fit, t job.Trial, bundle wiretable.Bundle, sides, layers int) {
	room, wires, o := &b.rooms[layers-1], slotWires(t.Wound), b.slot.origin
	square := slot.SquarePerTurnMM2(wires)
	f.TurnsThatFit = quantity.Of(float64(slot.TurnsThatFit(room.NetMM2, square, layers, f.FillLimit.Value)), o)
	if sides > 0 {
		fills := slot.Fill(*room, wires, sides)
		f.WireFill, f.RoundFill, f.CopperFill = quantity.Of(fills.Wire, o), quantity.Of(fills.Round, o), quantity.Of(fills.Copper, o)
	}
	mouth := slot.CheckMouth(*room, bundle.ThickestMM(t.Build))
	f.MouthText = mouth.Text
	f.MouthSpareMM = quantity.Missing("needs the width of the slot's mouth")
	if mouth.Known {
		f.MouthSpareMM = quantity.Of(mouth.SpareMM, b.job.Slot.MouthMM.Origin)
	}
}
