package readings

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"slotwright/winding/charge"
	"slotwright/winding/field"
)

// problem is the readings of one machine, ready to be fitted.
type problem struct {
	m     Machine
	reads []Reading
	share []float64 // each reading's EMF over that at the machine's field current
	doubt []float64 // relative uncertainty of that share
	sigma []float64 // one standard deviation of each residual
	ref   float64   // phase amps rms at which the inductance is given
	aside []Checked
}

// coverage is the number of standard deviations in a 95 % ±.
const coverage = 1.96

// prepare completes the readings, sets aside what cannot be used and finds the scale of the current.
func prepare(m Machine, given []Reading) (*problem, error) {
	p := &problem{m: m}
	most := 0.0
	for _, r := range given {
		if r.Kind == Loaded || r.Kind == Plate {
			most = max(most, r.Amps)
		}
	}
	p.fieldCurrent(given)
	share := p.shares(given)
	for _, r := range given {
		if r.Kind == Began && r.Amps == 0 {
			r.Amps = firstSight * most
		}
		if r.Kind == Began && r.Amps == 0 {
			p.aside = append(p.aside, Checked{Reading: r, Aside: "nobody says how many amps were seen, and there is no plate to take 1 % of"})
			continue
		}
		at, doubt := share(r)
		if doubt > 0 && r.loaded() {
			p.aside = append(p.aside, Checked{Reading: r, Aside: fmt.Sprintf("taken at %g A of field, the answer is for %g A: needs spin-up volts at both", r.FieldAmps, p.m.FieldAmps)})
			continue
		}
		p.reads, p.share, p.doubt = append(p.reads, r), append(p.share, at), append(p.doubt, doubt)
	}
	p.scale(most)
	if !slices.ContainsFunc(p.reads, func(r Reading) bool { return r.spin() || r.loaded() }) {
		return nil, fmt.Errorf("%w: nothing says what volts it makes; give spin-up volts at a known rpm, or amps into a battery", ErrReadings)
	}
	return p, nil
}

// scale finds the current at which the inductance is given: the strongest short circuit, else the
// strongest load. A lead of three phases into a held voltage carries 0.741 of the direct current (rms),
// that of a single phase about 1.1 of it, twice that before a doubler and at half wave. With a bridge
// alone it is what the flux would drive through the henries it read. 1 A where there is none of these:
// a then means nothing.
func (p *problem) scale(most float64) {
	p.ref = most * 0.741 * p.m.phasePerLine()
	if p.m.Phases == 1 {
		p.ref = most * 1.1
	}
	if p.m.Rectifier != charge.Bridge {
		p.ref *= 2
	}
	short := 0.0
	for n, r := range p.reads {
		if r.Kind == Short {
			short = max(short, r.Amps*p.m.phasePerLine()/p.share[n])
		}
	}
	if short > 0 || p.ref == 0 {
		p.ref = short
	}
	if p.ref == 0 {
		p.ref = cmp.Or(p.fluxOverBridge(), 1)
	}
}

// fluxOverBridge is the flux linkage of a phase by spin-up volts over the henries of a bridge, A rms:
// the short-circuit current at any speed at which reactance dominates; 0 without either.
func (p *problem) fluxOverBridge() float64 {
	flux, henries := 0.0, 0.0
	for n, r := range p.reads {
		switch {
		case r.spin():
			flux = max(flux, r.emf(p.m)/p.share[n]/(2*math.Pi*p.m.hertz(r.RPM)))
		case r.Kind == Bridge:
			henries = r.Henries / r.part()
		}
	}
	if henries == 0 {
		return 0
	}
	return flux / henries
}

// fieldCurrent decides which field current the fit is for: as given, else that of the strongest load or
// short circuit, else the highest of the spin-up readings.
func (p *problem) fieldCurrent(given []Reading) {
	if p.m.FieldAmps > 0 {
		return
	}
	most := 0.0
	for _, r := range given {
		switch {
		case r.FieldAmps == 0:
		case r.spin() && most == 0:
			p.m.FieldAmps = max(p.m.FieldAmps, r.FieldAmps)
		case !r.spin() && r.Amps > most:
			most, p.m.FieldAmps = r.Amps, r.FieldAmps
		}
	}
}

// sameField is the relative difference below which two field currents count as one.
const sameField = 0.03

// shares is the ratio of a reading's EMF to that at the machine's field current, and its uncertainty:
// by the magnetisation curve through the spin-up readings where they are at several currents, else by
// one assumed through the single one there is (package field, with its uncertainty). Without a curve
// the amps of a short circuit are scaled in proportion to the field, with no added uncertainty (IEC
// 60034-4 and IEEE Std 115, from memory). Amps into a battery are not scaled this way: near cut-in they
// would multiply the uncertainty by ten.
func (p *problem) shares(given []Reading) func(Reading) (share, doubt float64) {
	var flux []field.Reading
	for _, r := range given {
		if r.spin() && r.FieldAmps > 0 {
			flux = append(flux, field.Reading{Amps: r.FieldAmps, Flux: r.emf(p.m) / r.RPM})
		}
	}
	curve, err := field.Fit(flux)
	assumed := err != nil
	if assumed {
		one := field.Reading{Amps: p.m.FieldAmps, Flux: 1}
		if len(flux) > 0 {
			one = flux[0]
		}
		curve, err = field.Assumed(one)
	}
	return func(r Reading) (share, doubt float64) {
		switch {
		case err != nil, r.Kind == Bridge, r.FieldAmps == 0, p.m.FieldAmps == 0, math.Abs(r.FieldAmps/p.m.FieldAmps-1) <= sameField:
			return 1, 0
		case assumed && r.Kind == Short:
			return r.FieldAmps / p.m.FieldAmps, 0
		case assumed:
			doubt = field.AssumedDoubt(r.FieldAmps, p.m.FieldAmps)
		}
		return curve.At(r.FieldAmps) / curve.At(p.m.FieldAmps), doubt
	}
}

// at is the model at a point.
func (p *problem) at(x point) model {
	return model{Machine: p.m, ohms: p.m.Ohms, perK: math.Exp(x[0]), henries: math.Exp(x[1]), ref: p.ref, fall: x[2]}
}

// shows is what a reading would have shown on a model, in the reading's own quantity.
func (p *problem) shows(m model, n int) float64 {
	r := p.reads[n]
	if r.Ohms > 0 {
		m.ohms = r.Ohms
	}
	m.perK *= p.share[n]
	switch r.Kind {
	case SpinUp, TrialCoil:
		return m.perK * r.RPM * p.m.linePerPhase()
	case SpinUpDC:
		return math.Sqrt2*m.perK*r.RPM*p.m.peakPerPhase() - p.m.Rectifier.InLoop()*p.m.DiodeVolts
	case Bridge:
		henries := m.henries * r.part()
		if p.m.Wound {
			henries *= math.Exp(filled / 2)
		}
		return henries
	case Short:
		// With the inductance at the amps that were read: the current is known here, so nothing has to
		// settle. One set alone saturates the iron by its part only, and another field current is
		// scaled to the machine's.
		amps := r.part() * r.Amps * p.m.phasePerLine() / p.share[n]
		return m.joined(r.RPM, r.part()*m.henriesAt(amps)) / p.m.phasePerLine()
	}
	return m.into(r.RPM, p.m.load(r.Volts)).DCAmps
}

// residual is the relative distance of a model from a reading. Amps behind the bridge are compared by
// their roots: just above cut-in they grow with the square of the EMF.
func (p *problem) residual(m model, n int) float64 {
	r, got := p.reads[n], p.shows(m, n)
	switch r.Kind {
	case SpinUp, TrialCoil:
		return math.Log(got / r.Volts)
	case SpinUpDC:
		diodes := p.m.Rectifier.InLoop() * p.m.DiodeVolts
		return math.Log((got + diodes) / (r.Volts + diodes))
	case Bridge:
		return math.Log(got / r.Henries)
	case Short:
		return math.Log(got / r.Amps)
	}
	return 2 * (math.Sqrt(got/r.Amps) - 1)
}

// residuals are in standard deviations; the last is the prior on a.
func (p *problem) residuals(x point) []float64 { return p.residualsOf(p.at(x)) }

func (p *problem) residualsOf(m model) []float64 {
	rs := make([]float64, 0, len(p.reads)+1)
	for n := range p.reads {
		rs = append(rs, p.residual(m, n)/p.sigma[n])
	}
	usual, doubt := p.m.usualFall()
	return append(rs, (m.fall-usual)/doubt)
}

// mostSlope keeps a reading from losing its weight by a fit that puts it at cut-in.
const mostSlope = 60

// Saturation is the ratio of a wound-rotor alternator's phase inductance with the field off to that
// with its iron saturated: 0.299 mH against 0.170 mH at 4.75 A of field, a 180 A claw-pole machine
// (Sarafianos et al. 2015, as digitised in a public repository).
const Saturation = 0.299 / 0.170

// filled is how much higher, in logarithm, a bridge reads when the field is off and the iron
// unsaturated. Other machines saturate less, or more: half of it is deducted, and all of it is the
// uncertainty.
var filled = math.Log(Saturation)

// weigh finds the standard deviations. An error of speed, battery volts or diode drop acts like one of
// the EMF, and enters the amps by their slope there.
func (p *problem) weigh(x point) {
	p.sigma = make([]float64, len(p.reads))
	m := p.at(x)
	for n, r := range p.reads {
		own, slope := r.off(), 1.0
		volts := 0.0
		if r.loaded() {
			more := m
			more.perK *= 1.01
			slope = min(max(1, (p.residual(more, n)-p.residual(m, n))/0.01), mostSlope)
			volts = math.Hypot(battery, p.m.Rectifier.InLoop()*diodeVolts/max(r.Volts, 1))
		}
		switch {
		case r.Kind == Began:
			own *= slope
		case r.Kind == Bridge && p.m.Wound:
			own = math.Hypot(own, filled)
		}
		p.sigma[n] = math.Sqrt(sq(own)+sq(slope*tachometer)+sq(slope*volts)+sq(slope*p.doubt[n])) / coverage
	}
}

func sq(v float64) float64 { return v * v }
