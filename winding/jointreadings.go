package winding

import (
	"math"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/readings"
)

// book is what the job says was read of the old winding, and what is needed to interpret it.
type book struct {
	machine *machine
	field   *job.FieldSpec
	old     *oldWinding
	oldOhms *Ohms
	dc      *dcSide
	flux    *flux // by one reading each
	henries *inductances
	spins   []job.SpinReading
	shorts  []job.ShortReading
	amps    []job.AmpsReading
	coils   []job.CoilReading
}

// tellable is the old machine and its readings, in the form of package readings; why says what is
// missing.
func (b *book) tellable() (m readings.Machine, list []told, why string) {
	o, ohms := b.old, oldPhaseOhms(b.machine, b.old, b.oldOhms)
	switch {
	case b.machine.phases != 1 && b.machine.phases != 3:
		return m, nil, "is done for one phase and three"
	case b.dc.why != "" && b.dc.rectifier.Takes(b.machine.phases) != nil:
		return m, nil, "needs a rectifier that takes the phases"
	case !b.machine.Poles.Given():
		return m, nil, "needs the poles"
	case o.coils.effective <= 0:
		return m, nil, "needs the old winding's turns"
	case !ohms.Known():
		return m, nil, "needs the old winding's ohms"
	}
	m = readings.Machine{
		Phases: b.machine.phases, Wound: b.field.Kind == job.FieldWound, Delta: o.Connection == layout.Delta && b.machine.phases == 3, Poles: b.machine.Poles.Value,
		Rectifier: b.dc.rectifier, Ohms: ohms.Value, DiodeVolts: b.dc.diodeVolts.Value, DiodeOhms: b.dc.diodeOhms.Value,
	}
	if b.flux.at != nil && b.flux.fieldAmps.Known() {
		m.FieldAmps = b.flux.fieldAmps.Value
	}
	warm := func(c quantity.Reading) float64 {
		if !c.Given() {
			return 0
		}
		return ohms.Value * o.Metal.TempFactor(20, c.Value)
	}
	list = slices.Concat(b.toldSpins(), b.toldCoils(), b.toldShorts(warm), b.toldAmps(warm), b.toldPlate(warm), b.toldBridge())
	return m, list, ""
}

// part is the combined relative ± of some readings, 0 where none has one.
func part(of ...quantity.Reading) float64 {
	sum := 0.0
	for _, r := range of {
		if r.Given() && r.Value != 0 {
			sum += sq(off(r) / r.Value)
		}
	}
	return min(math.Sqrt(sum), 10)
}

// fieldOf is a field current as package readings has it: 0 with magnets.
func (b *book) fieldOf(r quantity.Reading) float64 {
	if b.field.Kind == job.FieldMagnets {
		return 0
	}
	return r.Value
}

// inService is the field current of a reading on a battery of so many volts, where a curve through
// several can use it: as read, else what the supply drives, the supply being the battery at those volts
// if that is what feeds it.
func (b *book) inService(r quantity.Reading, volts float64) float64 {
	w, ok := rotorCoil(b.field)
	driven := w.Amps(b.field.Volts.Or(volts))
	if !r.Given() && b.flux.at != nil && ok && driven > 0 {
		return driven
	}
	return b.fieldOf(r)
}

func (b *book) toldSpins() (list []told) {
	for i, s := range b.spins {
		if !s.RPM.Given() || !s.LineVolts.Given() || b.field.Kind == job.FieldMagnets && s.FieldAmps.Given() {
			continue
		}
		r := readings.Reading{Kind: readings.SpinUp, RPM: s.RPM.Value, Volts: s.LineVolts.Value, FieldAmps: b.fieldOf(s.FieldAmps), PlusMinus: part(s.RPM, s.LineVolts)}
		if r.PlusMinus == 0 && s.Meter != "" && s.Meter != job.MeterRMS {
			r.PlusMinus = otherMeter
		}
		list = append(list, told{r, job.PathOf("spin", i, "line")})
	}
	return list
}

// otherMeter is the relative ± of a meter that does not show true rms, on a machine's wave; common
// practice, no source.
const otherMeter = 0.04

// toldCoils is the trial coils as the old winding's volts between leads.
func (b *book) toldCoils() (list []told) {
	if b.old.coils.relative {
		return nil
	}
	for i, c := range b.coils {
		one := fluxRoutes{machine: b.machine, rotor: b.field, coils: b.coils[i : i+1]}
		for _, p := range one.coilPoints() {
			volts := p.perTurn * b.old.coils.effective * c.RPM.Value * b.machine.linePerPhase(b.old.Connection)
			list = append(list, told{readings.Reading{Kind: readings.TrialCoil, RPM: c.RPM.Value, Volts: volts, FieldAmps: b.fieldOf(c.FieldAmps), PlusMinus: part(c.RPM, c.Volts)},
				job.PathOf("coil", i, "voltage")})
		}
	}
	return list
}

// toldShorts is the short circuits; one with a single set of two shorted measures its part of the
// inductance.
func (b *book) toldShorts(warm func(quantity.Reading) float64) (list []told) {
	for i, s := range b.shorts {
		if !s.RPM.Given() || !s.LineAmps.Given() || s.LineAmps.Value == 0 {
			continue
		}
		list = append(list, told{readings.Reading{
			Kind: readings.Short, RPM: s.RPM.Value, Amps: s.LineAmps.Value, FieldAmps: b.fieldOf(s.FieldAmps), Ohms: warm(s.WindingC), PlusMinus: part(s.LineAmps),
			Part: 1 / b.henries.allSets(s.Sets.Or(float64(b.machine.sets))),
		}, job.PathOf("short", i, "line")})
	}
	return list
}

func (b *book) toldAmps(warm func(quantity.Reading) float64) (list []told) {
	for i, s := range b.amps {
		if !s.RPM.Given() || !s.Amps.Given() || !s.Volts.Given() {
			continue
		}
		list = append(list, told{readings.Reading{
			Kind: readings.Loaded, RPM: s.RPM.Value, Volts: s.Volts.Value, Amps: s.Amps.Value / float64(b.machine.sets),
			FieldAmps: b.inService(s.FieldAmps, s.Volts.Value), Ohms: warm(s.WindingC), PlusMinus: part(s.Amps),
		}, job.PathOf("amps", i, "current")})
	}
	return list
}

// toldPlate is the plate, and the speed at which charging began.
func (b *book) toldPlate(warm func(quantity.Reading) float64) (list []told) {
	o := b.old
	rated := o.RatedAmps.Value / float64(b.machine.sets)
	if volts := o.RatedVolts.Or(b.dc.absorption.Value); o.RatedAmps.Given() && o.RatedRPM.Given() && volts > 0 {
		list = append(list, told{readings.Reading{Kind: readings.Plate, RPM: o.RatedRPM.Value, Volts: volts, Amps: rated, FieldAmps: b.inService(quantity.Reading{}, volts), Ohms: warm(quantity.Known(plateC)), PlusMinus: part(o.RatedAmps)},
			"old.plate_current"})
	}
	if o.CutInRPM.Given() && b.dc.rest.Known() {
		amps := o.BeganAmps.Value / float64(b.machine.sets)
		if !o.BeganAmps.Given() && o.RatedAmps.Given() {
			amps = 0.01 * rated
		}
		list = append(list, told{readings.Reading{Kind: readings.Began, RPM: o.CutInRPM.Value, Volts: b.dc.rest.Value, Amps: amps, FieldAmps: b.inService(quantity.Reading{}, b.dc.rest.Value), PlusMinus: part(o.CutInRPM)}, "old.cut_in"})
	}
	return list
}

func (b *book) toldBridge() []told {
	mh := b.old.LeadMilliHenries
	h := b.henries.bridgeHenries()
	if !h.Known() || h.Value <= 0 {
		return nil
	}
	return []told{{readings.Reading{Kind: readings.Bridge, Henries: h.Value, PlusMinus: max(part(mh), readings.Usual(readings.Bridge))}, "old.inductance"}}
}
