package heat

import (
	"errors"
	"fmt"

	"slotwright/wiretable"
)

// # Rise per watt from the plate
//
// A machine with its maker's plate has been tested: at the plate's amps its winding reached no more
// than its class allows. The loss at that point, and that rise, give the kelvins per watt that a rewind
// with the same iron and cooling will have. As the maker may have left a margin, the figure is rather
// too high than too low, which is the safe side; on a worn fan or a choked housing it is worthless. A
// belt-driven alternator cools itself better the faster it turns: the figure is for the plate's speed,
// and a slow drive does not reach it.

// ErrPlate is wrapped by the errors about a plate.
var ErrPlate = errors.New("rise per watt")

// RiseK is the rise by resistance that a class allows a winding in air of 40 °C: A 60, E
// 75, B 80, F 105, H 125 K. Less than LimitC − 40, for the hottest spot is above the
// mean. Source: IEC 60034-1's table as printed in makers' pages. 0 for no class.
func (c Class) RiseK() float64 {
	switch c {
	case 'A':
		return 60
	case 'E':
		return 75
	case 'B':
		return 80
	case 'F':
		return 105
	case 'H':
		return 125
	}
	return 0
}

// HotWatts is the loss of all phases at a temperature, W:
//
//	m·I²·R20·(k + t)/(k + 20)
//
// phaseAmps rms, ohms20 of a phase at 20 °C. 0 when a value is not above 0.
func HotWatts(m wiretable.Metal, phases, phaseAmps, ohms20, celsius float64) float64 {
	if !(phases > 0 && phaseAmps > 0 && ohms20 > 0 && celsius > -k(m)) {
		return 0
	}
	return phases * phaseAmps * phaseAmps * ohms20 * (k(m) + celsius) / (k(m) + 20)
}

// KelvinPerWattFromPlate is the rise per watt, K/W, from the rise at the plate's load, K (above 0 to
// 400; Class.RiseK where only the class is known) and the watts lost in the winding then (above 0 to
// 1e7; HotWatts at its temperature then, plus the iron's where that heats the winding). The error wraps
// ErrPlate.
func KelvinPerWattFromPlate(riseK, watts float64) (kelvinPerWatt float64, err error) {
	if !(riseK > 0 && riseK <= 400) {
		return 0, fmt.Errorf("%w: rise: read %g K, expected above 0 to 400", ErrPlate, riseK)
	}
	if !(watts > 0 && watts <= 1e7) {
		return 0, fmt.Errorf("%w: loss at the plate's load: read %g W, expected above 0 to 10000000; it needs the plate's amps and the ohms of a phase", ErrPlate, watts)
	}
	return riseK / watts, nil
}
