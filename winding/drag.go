package winding

import (
	"math"

	"slotwright/winding/quantity"
)

// # Iron and friction
//
// What it takes to turn the machine with nothing connected is measured, or guessed: it is never zero. A
// measured drag is scaled to other speeds by the power 1.5, between hysteresis and friction (1) and
// eddy currents (2); common practice, no source.
//
// The guess takes the stator's iron as a ring: teeth as deep as the slot, and a yoke that carries half
// a pole's flux at 1.3 T. Ordinary lamination loses 8 W/kg at 1.5 T and 50 Hz (grade M800-50A of IEC
// 60404-8-4, from memory), teeth and yoke of such machines work near 1.4 T, and bearings, brushes and
// air add half as much again (common practice, no source). It is right within a factor of two, and its
// figures are marked.

// drag is iron and friction loss against speed.
type drag struct {
	watts, rpm float64 // a point of it; 0 when nothing is known
	origin     quantity.Origin
}

// Numbers of the guess; see above.
const (
	ironDensity    = 7650.0 // kg/m³
	lossPerKg      = 8.0    // W/kg at 1.5 T, 50 Hz
	workingTesla   = 1.4
	yokeTesla      = 1.3
	ironInStack    = 0.95
	toothShare     = 0.5 // of the ring between bore and slot bottoms
	frictionOnTop  = 1.5
	fallbackDepthM = 0.012
)

// newDrag is the measured drag, else the guess.
func newDrag(m *machine, room *slotRoom, f *flux) drag {
	if m.IronWatts.Given() && m.IronRPM.Given() {
		return drag{m.IronWatts.Value, m.IronRPM.Value, guessedIf(m.IronWatts, m.IronRPM)}
	}
	wb := f.webers(m.Poles)
	if m.flat() || !m.BoreMM.Given() || !m.StackMM.Given() || !m.Poles.Given() || !wb.Known() {
		return drag{}
	}
	stack, bore := m.StackMM.Value/1000, m.BoreMM.Value/1000
	depth := room.depthMM() / 1000
	if depth == 0 {
		depth = fallbackDepthM
	}
	yoke := wb.Value / 2 / (yokeTesla * stack * ironInStack)
	out := m.outward() // the ring lies round the bore, or within it
	teeth := math.Pi * max(0, bore+out*depth) * depth * toothShare
	ring := math.Pi * max(0, bore+out*2*depth+out*yoke) * yoke
	kg := ironDensity * stack * ironInStack * (teeth + ring)
	return drag{kg * lossPerKg * sq(workingTesla/1.5) * frictionOnTop, 50 * 120 / m.Poles.Value, quantity.Guessed}
}

// atFlux is the drag with the flux times a factor: the iron's part goes with its square, friction
// stays.
func (d *drag) atFlux(flux float64) *drag {
	const iron = 1 / frictionOnTop
	return &drag{d.watts * (1 - iron + iron*sq(flux)), d.rpm, d.origin}
}

// at is the drag at a speed, W.
func (d *drag) at(rpm float64) float64 {
	if d.watts == 0 || rpm <= 0 {
		return 0
	}
	x := rpm / d.rpm
	if defaultIronPower == 1.5 { // the same in a tenth of the time
		return d.watts * x * math.Sqrt(x)
	}
	return d.watts * math.Pow(x, defaultIronPower)
}
