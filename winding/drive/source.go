package drive

import (
	"fmt"
	"math"
)

// Source is a drive by what it can give at its own shaft at full power: Watts at a speed, the
// corresponding Torque (finite, also at rest), and the Top speed above which it gives nothing. A Curve
// of typed points is one; Yielding, Governed and a rotor InWind are the usual shapes where there is
// only one point.
type Source interface {
	Watts(rpm float64) float64
	Torque(rpm float64) float64
	Top() float64
}

// Yielding is a drive whose torque falls as it turns faster, in two straight lines: from rest to its
// usual speed so that its power is greatest there, P = P_usual·x·(2 − x), x = n/n_usual, and from there
// to zero at its free speed.
//
// An undershot water wheel behaves like that by the momentum of the water, P = ρ·Q·u·(v − u), greatest
// at half of the free speed (any text on hydraulics), and legs on pedals nearly so (Martin, Wagner and
// Coyle 1997, from memory; theirs is a short burst, sustained power is flatter). Where the free speed
// was read, it decides where the power ends, not the law; below the usual speed the line through it
// would promise more power than was measured, so there the law stays.
type Yielding struct {
	UsualRPM, UsualWatts float64
	// FreeRPM is its speed with the load off, above UsualRPM; 0 is twice UsualRPM.
	FreeRPM float64
}

// Check tests the numbers.
func (y Yielding) Check() error {
	if err := checkUsual(y.UsualRPM, y.UsualWatts); err != nil {
		return err
	}
	if y.FreeRPM != 0 && !(y.FreeRPM > y.UsualRPM && y.FreeRPM <= 1e6) {
		return fmt.Errorf("%w: free speed: read %g rpm, expected above the usual %g and at most 1e6", ErrPoints, y.FreeRPM, y.UsualRPM)
	}
	return nil
}

func checkUsual(rpm, watts float64) error {
	switch {
	case !(rpm > 0 && rpm <= 1e6):
		return fmt.Errorf("%w: usual speed: read %g rpm, expected above 0 and at most 1e6", ErrPoints, rpm)
	case !(watts > 0 && watts <= 1e9):
		return fmt.Errorf("%w: usual power: read %g W, expected above 0 and at most 1e9", ErrPoints, watts)
	}
	return nil
}

// Best is the point of most power of a drive that gives way: a Yielding one's usual speed, a point of a
// curve, which has no bump between its points; zero for any other.
func Best(s Source) Point {
	var best Point
	switch d := s.(type) {
	case Yielding:
		return Point{d.UsualRPM, d.UsualWatts}
	case *Curve:
		for _, p := range d.points {
			if p.Watts > best.Watts {
				best = p
			}
		}
	}
	return best
}

// Torque is what it can give, N·m; never below 0.
func (y Yielding) Torque(rpm float64) float64 {
	at := y.UsualWatts / radPerSecond(y.UsualRPM)
	if rpm <= y.UsualRPM {
		return at * (2 - max(0, rpm)/y.UsualRPM)
	}
	return at * max(0, (y.Top()-rpm)/(y.Top()-y.UsualRPM))
}

// Watts is the power of that torque.
func (y Yielding) Watts(rpm float64) float64 { return y.Torque(rpm) * radPerSecond(max(0, rpm)) }

// Top is the free speed.
func (y Yielding) Top() float64 {
	if y.FreeRPM > 0 {
		return y.FreeRPM
	}
	return 2 * y.UsualRPM
}

// Governed is an engine with the torque of its usual speed at all speeds, up to its top speed, where
// the governor closes the throttle: nothing is left at 1.04 times that (common practice, no source:
// governors of small engines droop by 3 to 6 %).
type Governed struct {
	UsualRPM, UsualWatts float64
	TopRPM               float64 // at least UsualRPM
}

const droop = 0.04

// Check tests the numbers.
func (g Governed) Check() error {
	if err := checkUsual(g.UsualRPM, g.UsualWatts); err != nil {
		return err
	}
	if !(g.TopRPM >= g.UsualRPM && g.TopRPM <= 1e6) {
		return fmt.Errorf("%w: top speed: read %g rpm, expected at least the usual %g and at most 1e6", ErrPoints, g.TopRPM, g.UsualRPM)
	}
	return nil
}

// Torque is what it can give, N·m.
func (g Governed) Torque(rpm float64) float64 {
	share := min(1, 1-(rpm-g.TopRPM)/(droop*g.TopRPM))
	return g.UsualWatts / radPerSecond(g.UsualRPM) * max(0, share)
}

// Watts is the power of that torque.
func (g Governed) Watts(rpm float64) float64 { return g.Torque(rpm) * radPerSecond(max(0, rpm)) }

// Top is the speed at which the governor has closed.
func (g Governed) Top() float64 { return g.TopRPM * (1 + droop) }

// InWind is a wind rotor in one steady wind.
type InWind struct {
	Rotor
	WindMPS, Density float64
}

// Watts is what the rotor takes from the wind; negative above Top.
func (w InWind) Watts(rpm float64) float64 { return w.Rotor.Watts(w.WindMPS, rpm, w.Density) }

// Torque is the torque of that power.
func (w InWind) Torque(rpm float64) float64 { return w.Rotor.Torque(w.WindMPS, rpm, w.Density) }

// Top is the speed of the free rotor.
func (w InWind) Top() float64 { return w.Rotor.RPM(w.WindMPS, w.Runaway()) }

// Geared is a source's torque on the alternator's shaft, against the alternator's speed. A
// transmission's loss is a loss of torque.
func Geared(s Source, t Transmission) (Torque, error) {
	turns, err := t.Turns()
	if err != nil {
		return nil, err
	}
	passes := t.Passes()
	return func(rpm float64) float64 { return geared(s.Torque(rpm/turns), turns, passes) }, nil
}

// geared is a torque behind a transmission. The loss adds to a negative (braking) torque.
func geared(torque, turns, passes float64) float64 {
	if torque < 0 {
		return torque / (turns * passes)
	}
	return torque * passes / turns
}

// finite reports whether all values are finite.
func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
