package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/layout"
)

// # Diodes at the star point
//
// Some alternators have two more diodes, from the star point to either side of the bridge. What they
// add comes from the third harmonic alone. While current flows the leads are at +V/2 and -V/2, V being
// the load's volts plus two diodes, and sine EMFs sum to zero, so the star point is at the mean of the
// leads: at most V/6 from the middle, ±V/6 with three leads conducting, and with two half of the third
// phase's EMF, which is less (any power electronics text shows the star point of a bridge). It never
// reaches a side of the bridge. The third harmonics are equal in the three phases and move the star
// point by as much, so its diodes conduct only where their peak exceeds V/2 - V/6,
//
//	√2·E3 ≥ V/3,  E3 as in thirdharmonic.go
//
// and that speed is given. Above it the eight diodes are solved as one circuit (charge.StarSolver), and
// amps, rms in the windings, watts and warmth all follow from that. The current of the star point is
// limited by the zero-sequence inductance L0, taken as its share of the phase's own (thirdharmonic.go:
// by geometry, else from the waves alone, which is low and gives high amps), and falling with it where
// the iron saturates. Car alternators are said to gain some 10 % at high speed by such diodes (from
// memory); the third harmonic here is that of an assumed shape of the flux, so the gain is no better
// known than that.

// neutral is what the star point's diodes see: the third harmonic over the working volts, and L0 over
// the phase's inductance. Zero where there are none.
type neutral struct{ third, alike float64 }

// neutralOf is a winding's neutral; zero where the third harmonic is not known.
func (b *inductances) neutralOf(w *candidate) neutral {
	third, ok := thirdOfEMF(b.rotor, &w.coils)
	if b.machine.phases != 3 || w.trial.Connection != layout.Star || !ok {
		return neutral{}
	}
	share, _ := b.alikeShare(w)
	return neutral{third, share}
}

// bridge solves the source on its rectifier, with the star point's diodes where they can conduct.
func (r *charger) bridge(s charge.Source) (charge.Point, error) {
	if r.star.third == 0 {
		return r.near.Solve(s, r.load)
	}
	return r.eight.Solve(charge.StarSource{Source: s, ThirdPeak: r.star.third * s.EMFPeak, ZeroHenries: r.star.alike * s.Henries}, r.load)
}

// aboutStar makes the findings about the star point's diodes.
type aboutStar struct {
	fitted bool
	field  *job.FieldSpec
	dc     *dcSide
	speeds *speeds
}

// beginRPM is the speed from which they carry current; ok is false where it is not known.
func (a aboutStar) beginRPM(o *TrialOutcome) (rpm float64, ok bool) {
	if !o.Kw1.Known() || !o.Kw3.Known() || !o.PhasePerRPM.Known() || !a.dc.works.Known() || !a.dc.diodeVolts.Known() {
		return 0, false
	}
	perRPM := math.Sqrt2 * o.PhasePerRPM.Value * thirdWave(a.field) * o.Kw3.Value / o.Kw1.Value
	return (a.dc.works.Value + 2*a.dc.diodeVolts.Value) / 3 / perRPM, perRPM > 0
}

// callOut says from which speed they add something.
func (a aboutStar) callOut(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	const source = "the star point of a bridge stands a sixth of its volts from the middle; only the third harmonic moves it further"
	if !a.fitted || a.dc.why != "" {
		return
	}
	rpm, ok := a.beginRPM(o)
	switch top := a.speeds.top; {
	case t.Connection == layout.Delta:
		d.add(Finding{Severity: Doubt, Path: at("connection"), Trial: t.Name, Fix: "leave them off, or join it in star"},
			"diodes at the star point: a delta has none")
	case !ok && o.Kw3.Known() && o.Kw3.Value < 1e-9:
		d.add(Finding{Severity: Note, Path: at("connection"), Trial: t.Name, Source: source},
			"the star point's diodes add nothing: this winding lets no third harmonic through (kw3 is 0)")
	case !ok && !o.Kw3.Known():
		d.add(Finding{Severity: Note, Path: at("connection"), Trial: t.Name, Fix: "give slots, poles and span", Source: source},
			"what the star point's diodes add is not counted: the third harmonic of the EMF is not known without the coils' layout")
	case !ok:
	case top.Known() && top.Value < rpm:
		d.add(Finding{Severity: Note, Path: at("connection"), Trial: t.Name, Source: source},
			"the star point's diodes add nothing up to the top speed of %.0f rpm: they begin at about %.0f rpm (%s)", top.Value, rpm, thirdWaveText(a.field))
	default:
		d.add(Finding{Severity: Note, Path: at("connection"), Trial: t.Name, Source: source},
			"from about %.0f alternator rpm, at the earliest, the star point's diodes can add amps: what they add is counted (%s)", rpm, thirdWaveText(a.field))
	}
}
