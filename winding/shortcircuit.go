package winding

import (
	"fmt"
	"math"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # Short-circuit readings
//
// With its leads shorted the machine drives E through R and ωL, so volts and amps at one speed and one
// field current give L. The two are seldom read at the same field current. The short-circuit
// characteristic, amps against field current, is a straight line through the origin: the armature's own
// current cancels most of the field and leaves the iron far from saturation (IEC 60034-4 and IEEE Std
// 115, both from memory). Amps read at another field current than the volts are therefore scaled to it.
// Where a magnetisation curve was read there is no need: it gives the volts at the current of the
// reading.

// shortHenries is the mean over the short-circuit readings, with all sets carrying current.
func (b *inductances) shortHenries() quantity.Figure {
	if b.old.coils.effective <= 0 || !b.flux.perTurn.Known() || !b.machine.Poles.Given() {
		return quantity.Missing("needs the flux and the poles")
	}
	sum, n := 0.0, 0.0
	for _, s := range b.shorts {
		if henries, err := b.shortHenriesOf(s); err == nil {
			sum += henries
			n++
		}
	}
	if n == 0 {
		return quantity.Missing("needs a short-circuit reading")
	}
	return quantity.Of(sum/n, b.flux.perTurn.Origin)
}

// shortHenriesOf is the inductance by one reading.
func (b *inductances) shortHenriesOf(s job.ShortReading) (henries float64, err error) {
	if !s.RPM.Given() || !s.LineAmps.Given() || s.LineAmps.Value == 0 {
		return 0, fmt.Errorf("the reading is not whole")
	}
	amps := s.LineAmps.Value * b.carriedBy(s.FieldAmps)
	if b.machine.phases == 3 && b.old.Connection == layout.Delta {
		amps /= math.Sqrt(3)
	}
	volts := b.perRPMAt(s.FieldAmps) * b.old.coils.effective * s.RPM.Value
	henries, err = field.FromShort(volts, amps, b.oldPhaseOhms().Value, s.RPM.Value*b.machine.Poles.Value/120)
	return henries * b.allSets(s.Sets.Or(float64(b.machine.sets))), err
}

// carriedBy is the factor from amps read at a field current to those at the volts' field current; 1
// where they are the same to fieldApart, or where either is not known.
func (b *inductances) carriedBy(at quantity.Reading) float64 { return carriedBy(b.flux, b.rotor, at) }

func carriedBy(f *flux, rotor *job.FieldSpec, at quantity.Reading) float64 {
	of := f.fieldAmps
	if f.curve != nil || !at.Given() || at.Value <= 0 || !of.Known() || rotor.Kind == job.FieldMagnets {
		return 1
	}
	if k := of.Value / at.Value; math.Abs(k-1) > fieldApart {
		return k
	}
	return 1
}

// perRPMAt is the source's volts per rpm and turn at a field current, where readings at several give
// it.
func (b *inductances) perRPMAt(field quantity.Reading) float64 {
	if b.flux.curve != nil && field.Given() {
		return b.flux.at(field.Value)
	}
	return b.flux.perTurn.Value
}

// allSets is a phase's inductance with all sets carrying current over that with the given number.
func (b *inductances) allSets(joined float64) float64 {
	w := &b.old.coils.waves
	if joined >= float64(b.machine.sets) || w.One <= 0 {
		return 1
	}
	if p := b.geometry(&b.old.candidate); p.working > 0 {
		return p.phase(w.All) / p.phase(w.One)
	}
	return w.All / w.One
}
