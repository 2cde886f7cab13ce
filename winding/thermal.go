package winding

import (
	"cmp"
	"fmt"
	"math"

	"slotwright/winding/heat"
	"slotwright/winding/quantity"
)

// # How warm the winding gets
//
// t = ambient + Rth·P, P being all the heat that leaves through the stator: the copper's, most of the
// iron's, part of the rotor's field.
//
// Rth, the rise per watt, is typed, or guessed from the stator's surface and its cooling. A machine
// that keeps its fan is cooled better the faster it turns: a fan's air flow goes with speed, the film
// coefficient of turbulent air with the 0.8th power of it (Incropera and DeWitt, from memory), so the
// conductance grows with (n/n0)^0.8 from that of still air to that with the fan at n0. The plate, where
// there is one, gives it at the plate's speed; else 6000 rpm and package heat's film with a fan stand
// in. Where the shaft has no fan the plate counts only if the job turns it at least half as fast:
// slower, its cooling is not the plate's. Thin air at altitude cools less (heat.InThinAir): a rise that
// is guessed or follows from the plate is raised accordingly; a typed one is taken as measured there.

// thermal is what the winding's temperature depends on.
type thermal struct {
	ambientC float64
	class    heat.Class
	// classC is the hottest spot that the class allows (IEC 60085), meanC the mean measured by
	// resistance: the class's rise by resistance over air of 40 °C (IEC 60034-1).
	classC, meanC float64
	cooling       heat.Cooling
	// still is the rise per watt without a fan, K/W.
	still quantity.Figure
	// fanGain is the conductance, W/K, that a fan adds at fanRPM; 0 without one.
	fanGain, fanRPM float64
	// unsaid says that neither cooling nor rise was given.
	unsaid bool
	// asOnPlate says that it is cooled as at the plate's speed, or less by a known law.
	asOnPlate bool
}

// Shares of a loss that leave through the stator, the rest through shaft, bearings and end shields;
// common practice, no source.
const (
	ironThroughStator  = 0.7
	fieldThroughStator = 0.5
	coolantC           = 40.0 // the base of IEC 60034-1's rises
	fanFullRPM         = 6000.0
	fanPower           = 0.8
)

// newThermal fills in what was not given. plate is the rise per watt by the plate, at plateRPM; thin is
// the factor of the local air on a rise.
func newThermal(m *machine, room *slotRoom, plate quantity.Figure, plateRPM, topRPM quantity.Figure, thin float64) thermal {
	s := thermal{ambientC: m.AmbientC.Or(defaultAmbientC)}
	s.class = m.class()
	s.classC, s.meanC = s.class.LimitC(), coolantC+s.class.RiseK()
	s.cooling, s.unsaid = m.cooling(), m.Cooling == "" && !m.KelvinPerWatt.Given()
	s.asOnPlate = m.asOnPlate(plateRPM, topRPM)
	s.still = m.KelvinPerWatt.Figure("needs the rise per watt, or the bore and the stack to guess it")
	if s.still.Known() {
		return s
	}
	surface := func(c heat.Cooling) quantity.Figure {
		if m.flat() {
			return m.flatSurface(c).Because("a guess from its surface and cooling")
		}
		if !m.BoreMM.Given() || !m.StackMM.Given() {
			return s.still
		}
		k, err := heat.FromSurface(c, m.insideMM(room.depthMM()), m.StackMM.Value, room.depthMM())
		return quantity.OrError(k, err, quantity.Guessed).Because("a guess from its surface and cooling")
	}
	switch {
	case s.cooling == heat.Fan:
		s.fanned(surface(heat.Open), surface(heat.Fan), plate, plateRPM)
	case plate.Known() && s.asOnPlate:
		s.still = plate
	default:
		s.still = surface(s.cooling)
	}
	s.still, s.fanGain = s.still.Times(thin), s.fanGain/thin
	return s
}

// fanned sets up a machine cooled by its own fan.
func (s *thermal) fanned(still, blown, plate, plateRPM quantity.Figure) {
	s.still, s.fanRPM = still, fanFullRPM
	if plate.Known() {
		blown, s.fanRPM = plate, plateRPM.Value
	}
	switch {
	case still.Known() && blown.Known():
		s.fanGain = max(0, 1/blown.Value-1/still.Value)
		s.still = still.Because("a guess from its surface, and its fan by speed")
	case blown.Known(): // no bore and stack to guess by: still air takes a third, as the films do
		s.still = quantity.Of(blown.Value*heat.Film(heat.Fan)/heat.Film(heat.Open), quantity.Guessed).Because("from the plate, without the fan")
		s.fanGain = 1/blown.Value - 1/s.still.Value
	}
}

// taken says which cooling is assumed where none was given; "" where one was.
func (s *thermal) taken() string {
	if !s.unsaid {
		return ""
	}
	return fmt.Sprintf("; cooling taken as %s, none was said", s.cooling)
}

// perWatt is the rise per watt at a speed, K/W; 0 when it is not known.
func (s *thermal) perWatt(rpm float64) float64 {
	if !s.still.Known() {
		return 0
	}
	if s.fanGain == 0 {
		return s.still.Value
	}
	return 1 / (1/s.still.Value + s.fanGain*math.Pow(rpm/s.fanRPM, fanPower))
}

// fromPlate is the rise per watt by the plate: its amps bring the winding to what its class allows,
// with copper, iron and field, for a given form of the current.
func fromPlate(m *machine, old *oldWinding, oldOhms *Ohms, form plateForm, d *drag, e *excitation) quantity.Figure {
	class := m.class()
	rated, rpm := old.RatedAmps, old.RatedRPM
	if !rated.Given() || !rpm.Given() || !oldOhms.PhaseOhms20.Known() {
		return quantity.Missing("needs the plate's amps and speed, and the old ohms")
	}
	phase := rated.Value * form.at(m, old.Connection)
	watts := heat.HotWatts(old.Metal, m.windings(), phase, oldOhms.PhaseOhms20.Value, coolantC+class.RiseK()) +
		ironThroughStator*d.at(rpm.Value) + fieldThroughStator*e.takes()
	k, err := heat.KelvinPerWattFromPlate(class.RiseK(), watts)
	why := "the plate: its amps, its class"
	if form.why != "" {
		why += "; " + m.blocks() + ": " + form.why
	}
	return quantity.OrError(k, err, quantity.Guessed).Because(why)
}

// blocks is how a current is taken by convention, and what that does to a rise.
func (m *machine) blocks() string {
	if m.phases == 1 {
		return "its current taken as a sine, its pulses not counted"
	}
	return "its current taken in blocks, so the rise may be told too low"
}

// asOnPlate reports whether it is cooled as at the plate's speed, or less by a known law.
func (m *machine) asOnPlate(plateRPM, topRPM quantity.Figure) bool {
	return plateRPM.Known() && (m.cooling() == heat.Fan || topRPM.Known() && topRPM.Value >= plateRPM.Value/2)
}

// cooling is the job's cooling.
func (m *machine) cooling() heat.Cooling {
	c, _ := heat.ParseCooling(cmp.Or(m.Cooling, heat.Open.String()))
	return c
}

// class is its thermal class.
func (m *machine) class() heat.Class {
	class, _ := heat.ParseClass(cmp.Or(m.ThermalClass, defaultClass))
	return class
}
