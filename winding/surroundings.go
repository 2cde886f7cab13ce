package winding

import (
	"slotwright/winding/heat"
	"slotwright/winding/quantity"
)

// surroundings is what the winding's temperature goes by.
type surroundings struct {
	ambientC float64
	classC   float64
	class    heat.Class
	cooling  heat.Cooling
	// perWatt is the rise of the winding per watt lost in it.
	perWatt quantity.Figure
}

// findSurroundings fills in what was not given.
func (b *Bench) findSurroundings() surroundings {
	m := b.job.Machine
	s := surroundings{ambientC: m.AmbientC.Or(defaultAmbientC)}
	s.class, _ = heat.ParseClass(orWord(m.ThermalClass, defaultClass))
	s.classC = s.class.LimitC()
	s.cooling, _ = heat.ParseCooling(orWord(m.Cooling, heat.Open.String()))
	s.perWatt = m.KelvinPerWatt.Figure("")
	if s.perWatt.Known() {
		return s
	}
	if !m.BoreMM.Given() || !m.StackMM.Given() {
		s.perWatt = quantity.Missing("needs the rise per watt, or the bore and the stack to guess it")
		return s
	}
	depth := b.rooms[0].DepthMM
	s.perWatt = quantity.Of(heat.FromSurface(s.cooling, m.BoreMM.Value, m.StackMM.Value, depth), quantity.Guessed).
		Because("a guess from its surface and cooling")
	return s
}
