package charge

import (
	"errors"
	"fmt"
	"math"
)

// Diode is a diode given by its law. [Shockley] and [DiodeTable] are the two kinds.
type Diode interface {
	// Tangent gives the constant drop, V, and slope, Ω, of the straight line that touches the
	// law at a current, A, above 0.
	Tangent(amps float64) (volts, ohms float64)
	// Check says what is wrong with the law, or nil.
	Check() error
}

// Shockley is an exponential diode with series resistance:
// v = Ideality·(kT/q)·ln(1 + i/SaturationAmps) + SeriesOhms·i
// (Shockley, Bell System Technical Journal 28, 1949; from memory).
type Shockley struct {
	SaturationAmps float64 // A, [1e-30, 1]
	Ideality       float64 // emission coefficient, [0.1, 10]
	SeriesOhms     float64 // Ω, [0, 1e9]
	Celsius        float64 // of the junction, °C, [-100, 500]
}

// DiodeTable is a diode's curve as read from a data sheet: two readings or more, rising in amps and not
// falling in volts. Beyond its ends the last stretch is extended.
type DiodeTable []DiodeReading

// DiodeReading is one point of a diode's curve.
type DiodeReading struct {
	Amps  float64 // A, [0, 1e9]
	Volts float64 // V, [0, 1e9]
}

// voltsPerKelvin is k/q, V/K, exact since the SI of 2019.
const voltsPerKelvin = 1.380649e-23 / 1.602176634e-19

// Check says which number is out of range, or nil.
func (d Shockley) Check() error {
	return errors.Join(
		checkBetween("Shockley.SaturationAmps", d.SaturationAmps, 1e-30, 1),
		checkBetween("Shockley.Ideality", d.Ideality, 0.1, 10),
		checkBetween("Shockley.SeriesOhms", d.SeriesOhms, 0, fieldMax),
		checkBetween("Shockley.Celsius", d.Celsius, -100, 500),
	)
}

func checkBetween(name string, value, low, high float64) error {
	if value >= low && value <= high {
		return nil
	}
	return fmt.Errorf("%s is %v: give a number from %g to %g", name, value, low, high)
}

// Tangent gives the drop at no current, V, and slope, Ω, of the line that touches the law at amps.
func (d Shockley) Tangent(amps float64) (volts, ohms float64) {
	scale := d.Ideality * voltsPerKelvin * (d.Celsius + 273.15)
	slope := scale / (amps + d.SaturationAmps)
	return scale*math.Log1p(amps/d.SaturationAmps) - slope*amps, slope + d.SeriesOhms
}

// Check says which reading is out of order, or nil.
func (d DiodeTable) Check() error {
	if len(d) < 2 {
		return fmt.Errorf("the diode's table has %d readings: give 2 or more", len(d))
	}
	for k, r := range d {
		name := fmt.Sprintf("reading %d of the diode's table", k+1)
		if err := errors.Join(checkField(name+", Amps", r.Amps, "A"), checkField(name+", Volts", r.Volts, "V")); err != nil {
			return err
		}
		if k > 0 && (r.Amps <= d[k-1].Amps || r.Volts < d[k-1].Volts) {
			return fmt.Errorf("%s is %g A at %g V after %g A at %g V: amps must rise, and volts not fall",
				name, r.Amps, r.Volts, d[k-1].Amps, d[k-1].Volts)
		}
	}
	return nil
}

// Tangent gives the drop at no current, V, and slope, Ω, of the table's stretch around amps. The drop
// is never below 0, where a curve bends the wrong way.
func (d DiodeTable) Tangent(amps float64) (volts, ohms float64) {
	k := 1
	for k < len(d)-1 && d[k].Amps < amps {
		k++
	}
	low, high := d[k-1], d[k]
	ohms = (high.Volts - low.Volts) / (high.Amps - low.Amps)
	return max(low.Volts-ohms*low.Amps, 0), ohms
}

// leastDiodeAmps is the current below which the charge counts as none: an exponential law never stops
// conducting, but such a current charges nothing.
const leastDiodeAmps = 1e-4

// SolveDiode is Solve for a diode given by its law; Load.DiodeVolts and Load.DiodeOhms are ignored.
//
// The law is replaced by its tangent at the conduction current, DCAmpsRMS²/DCAmps: the mean current
// weighted by itself, which is the mean while the current is smooth and the height of the pulses when
// it is not. That current has to agree with the answer it leads to: the higher it is taken, the higher
// the drop and the lower the answer, so there is exactly one, and bisection on its logarithm with
// secant steps finds it in about ten solutions. The amps come within 3 % of the exact law, worst just
// above cut-in, where the law is curved within a pulse. Below 0.1 mA the answer is Off.
func SolveDiode(s Source, l Load, d Diode) (Point, error) {
	if d == nil {
		return Point{}, errors.New("charge: no diode is given")
	}
	l.DiodeVolts, l.DiodeOhms = 0, 0
	if err := errors.Join(checkSource(s), checkLoad(l), d.Check()); err != nil {
		return Point{}, fmt.Errorf("charge: %w", err)
	}
	line := diodeLine{source: s, load: l, law: d}
	point, excess, err := line.try(math.Log(leastDiodeAmps))
	if err != nil || excess <= 0 {
		return point.offUnless(excess > 0, l), err
	}
	return line.settle(math.Log(leastDiodeAmps), excess)
}

// offUnless is the point, or one with no current.
func (p Point) offUnless(flows bool, l Load) Point {
	if flows || p.Mode == "" {
		return p
	}
	return Point{DCVolts: l.Volts, Mode: Off, Kappa: p.Kappa}
}

// diodeLine looks for the current at which the tangent agrees with its own answer.
type diodeLine struct {
	source Source
	load   Load
	law    Diode
}

// try solves with the tangent at a current, given by its logarithm, and returns by how much the
// logarithm of the conduction current exceeds it.
func (d diodeLine) try(logAmps float64) (Point, float64, error) {
	l := d.load
	l.DiodeVolts, l.DiodeOhms = d.law.Tangent(math.Exp(logAmps))
	p, err := Solve(d.source, l)
	if err != nil || p.DCAmps <= 0 {
		return p, -10, err
	}
	return p, 2*math.Log(p.DCAmpsRMS) - math.Log(p.DCAmps) - logAmps, nil
}

// settle closes in on the current from a logarithm at which the answer is above it.
func (d diodeLine) settle(low, lowExcess float64) (Point, error) {
	high := low + lowExcess + 1
	p, highExcess, err := d.try(high)
	for highExcess > 0 && err == nil && high < 60 {
		low, lowExcess = high, highExcess
		high += highExcess + 1
		p, highExcess, err = d.try(high)
	}
	for n := 0; err == nil && high-low > 1e-9 && n < 60; n++ {
		at := low + (high-low)*lowExcess/(lowExcess-highExcess)
		if n%3 == 2 {
			at = (low + high) / 2
		}
		var excess float64
		if p, excess, err = d.try(at); math.Abs(excess) < 1e-7 {
			break
		}
		if excess > 0 {
			low, lowExcess = at, excess
		} else {
			high, highExcess = at, excess
		}
	}
	return p, err
}
