package readings

import (
	"errors"
	"fmt"
	"math"

	"slotwright/winding/charge"
)

// ErrReadings is wrapped by every error of this package.
var ErrReadings = errors.New("readings")

// Machine is what is known of the old machine before any reading.
type Machine struct {
	Phases int     // 3, or 1 for a single winding
	Wound  bool    // a field coil on the rotor, else magnets: decides how the inductance usually falls
	Delta  bool    // three phases in delta; ignored with one
	Poles  float64 // north and south together, 2 to 400
	// Ohms is one phase of the old winding, at its temperature when read, above 0 to 1e6.
	Ohms float64
	// Rectifier is the one in all readings behind diodes: a bridge if not given; half wave and doubler
	// take a single phase.
	Rectifier charge.Rectifier
	// DiodeVolts and DiodeOhms are of one diode, drop = volts + ohms·i, 0 to 1e3.
	DiodeVolts, DiodeOhms float64
	// FieldAmps is the field current that the fit is for; 0 takes that of the strongest loaded or
	// shorted reading. Not for magnets.
	FieldAmps float64
}

// check says what is wrong with the machine, or nil.
func (m Machine) check() error {
	switch {
	case m.Phases != 1 && m.Phases != 3:
		return fmt.Errorf("%w: a machine of %d phases cannot be solved; give 1 or 3, and a two-set machine one set at a time", ErrReadings, m.Phases)
	case m.Rectifier.Takes(m.Phases) != nil:
		return fmt.Errorf("%w: the %w", ErrReadings, m.Rectifier.Takes(m.Phases))
	case !within(m.Poles, 2, 400):
		return fmt.Errorf("%w: %g poles; give the number of poles, 2 to 400", ErrReadings, m.Poles)
	case !within(m.Ohms, math.SmallestNonzeroFloat64, 1e6):
		return fmt.Errorf("%w: %g ohms a phase; give the ohms of one phase, above 0", ErrReadings, m.Ohms)
	case !within(m.DiodeVolts, 0, 1e3), !within(m.DiodeOhms, 0, 1e3):
		return fmt.Errorf("%w: a diode of %g V and %g ohms; give the drop of one diode, 0 to 1000 V", ErrReadings, m.DiodeVolts, m.DiodeOhms)
	case !within(m.FieldAmps, 0, 1e6):
		return fmt.Errorf("%w: a field of %g A; give 0 or more", ErrReadings, m.FieldAmps)
	}
	return nil
}

// within reports whether v is a number between two others.
func within(v, low, high float64) bool { return v >= low && v <= high }

// hertz is the electrical frequency.
func (m Machine) hertz(rpm float64) float64 { return rpm * m.Poles / 120 }

// linePerPhase is the rms volts between leads per volt of a phase.
func (m Machine) linePerPhase() float64 {
	if m.Phases == 3 && !m.Delta {
		return math.Sqrt(3)
	}
	return 1
}

// phasePerLine is the amps of a phase per ampere in a lead.
func (m Machine) phasePerLine() float64 {
	if m.Phases == 3 && m.Delta {
		return 1 / math.Sqrt(3)
	}
	return 1
}

// cutIn is the volts (rms, of a phase) at which current begins into a voltage.
func (m Machine) cutIn(volts float64) float64 {
	return (volts + m.Rectifier.InLoop()*m.DiodeVolts) / math.Sqrt2 / m.peakPerPhase()
}

// peakPerPhase is the peak behind the rectifier, over its diodes, per volt peak of a phase.
func (m Machine) peakPerPhase() float64 {
	if m.Rectifier == charge.Doubler {
		return 2
	}
	return m.linePerPhase()
}

// load is a voltage held at the bridge.
func (m Machine) load(volts float64) charge.Load {
	return charge.Load{Volts: volts, DiodeVolts: m.DiodeVolts, DiodeOhms: m.DiodeOhms, Rectifier: m.Rectifier}
}
