package charge

import (
	"errors"
	"fmt"
	"math"
)

// fieldMax bounds every field, in V, Hz, Ω or H: far past any bench, and it keeps products of
// fields well inside what a float64 holds.
const fieldMax = 1e9

// leastReactance is the smallest reactance solved, as a fraction of all the ohms in the loop. A smaller
// one, or none, is replaced by this: a time constant of 1e-9 rad, which changes each figure by about
// that relative amount.
const leastReactance = 1e-9

// circuit is source and load reduced to the fewest numbers: per phase of the equivalent star, EMF of
// peak 1, ohms in a unit that makes r + x + rb = 1, diode slope inside r.
type circuit struct {
	r, x, rb float64 // phase resistance, phase reactance, direct-current side
	v        float64 // load and two diodes, over the peak phase EMF
	// loops, trios and splits are the rates of the currents of three phases, see bridge3.go, or of one
	// of two phases, of their sum and of their difference, see pair.go.
	loops, trios, splits rate
	// volts and ohms are the units: star EMF peak and the sum of the ohms.
	volts, ohms float64
}

func checkField(name string, value float64, unit string) error {
	switch {
	case math.IsNaN(value) || math.IsInf(value, 0):
		return fmt.Errorf("%s is %v: give a finite number of %s", name, value, unit)
	case value < 0:
		return fmt.Errorf("%s is %g %s: it cannot be negative", name, value, unit)
	case value > fieldMax:
		return fmt.Errorf("%s is %g %s: it cannot be above %g", name, value, unit, fieldMax)
	}
	return nil
}

func checkPhases(phases int) error {
	if phases < 1 || phases > 3 {
		return fmt.Errorf("Source.Phases is %d: it must be 1, 2 or 3", phases)
	}
	return nil
}

// sound reports whether a source of two or three phases and a bridge load are valid: the fast check,
// without an error message.
func sound(s *Source, l *Load) bool {
	within := func(v float64) bool { return v >= 0 && v <= fieldMax }
	return (s.Phases == 3 || s.Phases == 2) && l.Rectifier == Bridge && within(s.EMFPeak) && within(s.Hertz) && within(s.Ohms) && within(s.Henries) &&
		within(l.Volts) && within(l.Ohms) && within(l.DiodeVolts) && within(l.DiodeOhms)
}

func checkSource(s Source) error {
	return errors.Join(
		checkField("Source.EMFPeak", s.EMFPeak, "V"),
		checkField("Source.Hertz", s.Hertz, "Hz"),
		checkField("Source.Ohms", s.Ohms, "Ω"),
		checkField("Source.Henries", s.Henries, "H"),
		checkPhases(s.Phases),
	)
}

func checkLoad(l Load) error {
	return errors.Join(
		checkField("Load.Volts", l.Volts, "V"),
		checkField("Load.Ohms", l.Ohms, "Ω"),
		checkField("Load.DiodeVolts", l.DiodeVolts, "V"),
		checkField("Load.DiodeOhms", l.DiodeOhms, "Ω"),
	)
}

// errShort is a circuit with EMF above the load and nothing to limit the current.
var errShort = errors.New("nothing limits the current: winding, diodes and load all have no ohms and no reactance; " +
	"give Source.Ohms or Source.Henries")

// reduce converts source and load to a circuit. A delta is a star of a third of the ohms and henries
// and 1/√3 of the EMF, exact for what the bridge sees.
func reduce(s Source, l Load) (circuit, error) {
	emf, ohms, reactance := s.EMFPeak, s.Ohms, 2*math.Pi*s.Hertz*s.Henries
	if s.Phases == 3 && s.Delta {
		emf, ohms, reactance = emf/math.Sqrt(3), ohms/3, reactance/3
	}
	ohms += l.Rectifier.inPath(s.Phases) * l.DiodeOhms
	sum := ohms + reactance + l.Ohms
	if !(sum > 0) {
		return circuit{}, errShort
	}
	c := circuit{
		r: ohms / sum, x: max(reactance/sum, leastReactance), rb: l.Ohms / sum,
		v:     l.held() / emf,
		volts: emf, ohms: sum,
	}
	if l.Rectifier == Doubler {
		c.v /= 2
	}
	c.loops, c.trios, c.splits = newRate(c.r+c.rb/2, c.x), newRate(c.r+2*c.rb/3, c.x), newRate(c.r, c.x)
	if s.Phases == 2 {
		c.loops, c.trios = newRate(c.r+c.rb, c.x), newRate(c.r+2*c.rb, c.x)
	}
	return c, nil
}
