package charge

import (
	"fmt"
	"math"
)

// Rectifier is how the diodes are connected between winding and load.
type Rectifier uint8

const (
	// Bridge is six diodes on three leads, or four on two. Two conduct in series.
	Bridge Rectifier = iota
	// HalfWave is one diode in series with each single phase: one pulse a cycle.
	HalfWave
	// Doubler is two diodes on one lead of each single phase, and two capacitors in series across the
	// load with the other lead between them: each half wave fills one of them.
	Doubler
)

// String is the name in the trade.
func (r Rectifier) String() string {
	switch r {
	case Bridge:
		return "bridge"
	case HalfWave:
		return "half wave"
	case Doubler:
		return "doubler"
	}
	return fmt.Sprintf("rectifier %d", uint8(r))
}

// UnfitError is a rectifier that does not go with the machine's phases, or an unknown one.
type UnfitError struct {
	Rectifier Rectifier
	Phases    int
}

// Error says which phases it takes.
func (e UnfitError) Error() string {
	if e.Rectifier > Doubler {
		return fmt.Sprintf("%s: expected bridge, half wave or doubler", e.Rectifier)
	}
	return fmt.Sprintf("%s takes a single phase, this machine has %d: join a bridge", e.Rectifier, e.Phases)
}

// Takes returns an [UnfitError] where the rectifier does not take so many phases, else nil.
func (r Rectifier) Takes(phases int) error {
	if r > Doubler || r != Bridge && phases == 3 {
		return UnfitError{r, phases}
	}
	return nil
}

// inPath is the number of diodes in series with one phase.
func (r Rectifier) inPath(phases int) float64 {
	if r == Bridge && phases != 3 {
		return 2
	}
	return 1
}

// InLoop is the number of diodes in the path of the direct current, 1 or 2; the doubler's two each
// carry it in their own half wave.
func (r Rectifier) InLoop() float64 {
	if r == HalfWave {
		return 1
	}
	return 2
}

// held is the voltage that opposes the current: the load's and the diodes'.
func (l Load) held() float64 { return l.Volts + l.Rectifier.InLoop()*l.DiodeVolts }

// peakPerPhase is the highest open-circuit voltage behind the rectifier over the peak EMF of one phase.
func (l Load) peakPerPhase(phases int, delta bool) float64 {
	if l.Rectifier == Doubler {
		return 2
	}
	return linePerPhase(phases, delta)
}

// linePerPhase is the EMF that drives the bridge over the EMF of one phase.
func linePerPhase(phases int, delta bool) float64 {
	if phases == 3 && !delta {
		return math.Sqrt(3)
	}
	return 1
}
