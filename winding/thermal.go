package winding

import (
	"slotwright/winding/heat"
	"slotwright/winding/quantity"
)

// thermal is what the winding's temperature goes by.
type thermal struct {
	ambientC float64
	classC   float64
	class    heat.Class
	cooling  heat.Cooling
	// perWatt is the rise of the winding per watt lost in it.
	perWatt quantity.Figure
}

// newThermal fills in what was not given.
func newThermal(m *machine, room *slotRoom) thermal {
	s := thermal{ambientC: m.AmbientC.Or(defaultAmbientC)}
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
	depth := room.depthMM()
	perWatt, err := heat.FromSurface(s.cooling, m.BoreMM.Value, m.StackMM.Value, depth)
	s.perWatt = quantity.OrError(perWatt, err, quantity.Guessed).
		Because("a guess from its surface and cooling")
	return s
}
