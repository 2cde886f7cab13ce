package winding

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/readings"
)

// # The readings of the old winding, solved together
//
// Where amps into a battery were read, or the plate has them together with the speed at which
// charging began or in the place of a short circuit, and the old ohms, turns and poles are
// known, volts per rpm, inductance and how that changes with current come out of
// all readings at once (package readings). They are then the flux and the inductance of
// every winding, and stand above the routes that take one reading each. Two sets are solved
// as one set with half of the amps.
//
// What was found is the old winding's; it hangs on its readings alone, so it is found once
// and handed on to every bench whose readings are the same (Bench.With), and to those that
// are moved by an error of another input. The errors of the readings themselves are in the
// covariance of what was found, and are told by moving that.

// told is a reading with the field of the job that it stands in.
type told struct {
	readings.Reading
	path string
}

// fitted is what the readings say together.
type fitted struct {
	machine readings.Machine
	told    []told
	fit     readings.Fit
	// ok is that they decide volts and inductance and stand above the single routes; why says
	// what is missing.
	ok     bool
	why    string
	advice func() string
}

// same reports whether another one would be found from the same readings.
func (f *fitted) same(m readings.Machine, list []told) bool {
	return f != nil && f.machine == m && slices.Equal(f.told, list)
}

// newFitted solves the readings of a bench, or takes what another bench found in the same.
func newFitted(b *Bench, before *fitted) *fitted {
	m, list, why := b.tellable()
	if before.same(m, list) {
		return before
	}
	f := &fitted{machine: m, told: list, why: why, advice: func() string { return "" }}
	if why != "" {
		return f
	}
	if !worthSolving(list) {
		return f
	}
	plain := make([]readings.Reading, len(list))
	for i, r := range list {
		plain[i] = r.Reading
	}
	fit, err := readings.Solve(m, plain)
	if err != nil {
		f.why = strings.TrimPrefix(err.Error(), readings.ErrReadings.Error()+": ")
		return f
	}
	f.fit, f.ok = fit, true
	volts, top := b.dc.charging.Value, b.speeds.top.Value
	f.advice = sync.OnceValue(func() string { return adviceOf(fit, volts, top) })
	return f
}

// worthSolving is where amps behind the bridge speak of the inductance.
func worthSolving(list []told) bool {
	has := func(k readings.Kind) bool {
		return slices.ContainsFunc(list, func(r told) bool { return r.Kind == k })
	}
	return has(readings.Loaded) || has(readings.Plate) && (has(readings.Began) || !has(readings.Short))
}

// adviceOf is the reading that would narrow the predicted amps most, in a sentence.
func adviceOf(fit readings.Fit, volts, top float64) string {
	if volts <= 0 {
		return ""
	}
	a, ok := fit.Next(volts, top)
	if !ok {
		return "no further reading would narrow the predicted amps by much"
	}
	what := string(a.Kind)
	if a.Kind == readings.Short {
		what = "a short circuit"
	}
	return fmt.Sprintf("%s of the old winding at about %.0f rpm (%.3g times the speed at which it begins to charge) would narrow the predicted amps most: from ±%.0f %% to ±%.0f %%",
		what, round2(a.RPM), a.CutIns, a.Now*100, a.Then*100)
}

// round2 is a number to two figures, for a sentence.
func round2(v float64) float64 {
	if v <= 0 {
		return 0
	}
	unit := math.Pow(10, math.Floor(math.Log10(v))-1)
	return math.Round(v/unit) * unit
}

// tellable is the old machine and what was read of it, as package readings takes them; why
// says what is missing.
func (b *Bench) tellable() (m readings.Machine, list []told, why string) {
	o, ohms := &b.old, oldPhaseOhms(&b.machine, &b.old, &b.oldOhms)
	switch {
	case b.machine.phases != 1 && b.machine.phases != 3:
		return m, nil, "is done for one phase and three"
	case b.dc.rectifier != charge.Bridge:
		return m, nil, "is done for a bridge of diodes"
	case !b.machine.Poles.Given():
		return m, nil, "needs the poles"
	case o.coils.effective <= 0:
		return m, nil, "needs the old winding's turns"
	case !ohms.Known():
		return m, nil, "needs the old winding's ohms"
	}
	m = readings.Machine{
		Phases: b.machine.phases, Wound: b.job.Field.Kind == "wound", Delta: o.Connection == layout.Delta && b.machine.phases == 3, Poles: b.machine.Poles.Value,
		Ohms: ohms.Value, DiodeVolts: b.dc.diodeVolts.Value, DiodeOhms: b.dc.diodeOhms.Value,
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

// part is the ± of some readings together as a fraction, 0 where none has one.
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
func (b *Bench) fieldOf(r quantity.Reading) float64 {
	if b.job.Field.Kind == "magnets" {
		return 0
	}
	return r.Value
}

// inService is the field current of a reading on a battery: as read, else what the supply
// drives, where a curve through several can make use of it.
func (b *Bench) inService(r quantity.Reading) float64 {
	if driven := supplyCurrent(&b.job.Field, &b.dc); !r.Given() && b.flux.at != nil && driven.Known() {
		return driven.Value
	}
	return b.fieldOf(r)
}

func (b *Bench) toldSpins() (list []told) {
	for i, s := range b.spins {
		if !s.RPM.Given() || !s.LineVolts.Given() || b.job.Field.Kind == "magnets" && s.FieldAmps.Given() {
			continue
		}
		r := readings.Reading{Kind: readings.SpinUp, RPM: s.RPM.Value, Volts: s.LineVolts.Value, FieldAmps: b.fieldOf(s.FieldAmps), PlusMinus: part(s.RPM, s.LineVolts)}
		if r.PlusMinus == 0 && s.Meter != "" && s.Meter != job.MeterRMS {
			r.PlusMinus = otherMeter
		}
		list = append(list, told{r, fmt.Sprintf("spin[%d].line", i)})
	}
	return list
}

// otherMeter is the ± of a meter that does not show true rms, on the wave of a machine, a
// fraction; common practice, no source.
const otherMeter = 0.04

// toldCoils is the trial coils as the old winding's volts between leads.
func (b *Bench) toldCoils() (list []told) {
	if b.old.coils.relative {
		return nil
	}
	r := fluxRoutes{machine: &b.machine, rotor: &b.job.Field, coils: b.job.Coils}
	for i, c := range b.job.Coils {
		one := fluxRoutes{machine: r.machine, rotor: r.rotor, coils: b.job.Coils[i : i+1]}
		for _, p := range one.coilPoints() {
			volts := p.perTurn * b.old.coils.effective * c.RPM.Value * b.machine.linePerPhase(b.old.Connection)
			list = append(list, told{readings.Reading{Kind: readings.TrialCoil, RPM: c.RPM.Value, Volts: volts, FieldAmps: b.fieldOf(c.FieldAmps), PlusMinus: part(c.RPM, c.Volts)},
				fmt.Sprintf("coil[%d].voltage", i)})
		}
	}
	return list
}

// toldShorts is the short circuits; one at another field current than the flux is carried to
// it, one with a single set of two joined is left to the other routes.
func (b *Bench) toldShorts(warm func(quantity.Reading) float64) (list []told) {
	for i, s := range b.shorts {
		if !s.RPM.Given() || !s.LineAmps.Given() || s.LineAmps.Value == 0 || int(s.Sets.Or(float64(b.machine.sets))) < b.machine.sets {
			continue
		}
		field, by := b.fieldOf(s.FieldAmps), carriedBy(&b.flux, &b.job.Field, s.FieldAmps)
		if by != 1 {
			field = b.flux.fieldAmps.Value
		}
		list = append(list, told{readings.Reading{Kind: readings.Short, RPM: s.RPM.Value, Amps: s.LineAmps.Value * by, FieldAmps: field, Ohms: warm(s.WindingC), PlusMinus: part(s.LineAmps)},
			fmt.Sprintf("short[%d].line", i)})
	}
	return list
}

func (b *Bench) toldAmps(warm func(quantity.Reading) float64) (list []told) {
	for i, s := range b.job.Amps {
		if !s.RPM.Given() || !s.Amps.Given() || !s.Volts.Given() {
			continue
		}
		list = append(list, told{readings.Reading{
			Kind: readings.Loaded, RPM: s.RPM.Value, Volts: s.Volts.Value, Amps: s.Amps.Value / float64(b.machine.sets),
			FieldAmps: b.inService(s.FieldAmps), Ohms: warm(s.WindingC), PlusMinus: part(s.Amps),
		}, fmt.Sprintf("amps[%d].current", i)})
	}
	return list
}

// toldPlate is the plate, and the speed at which charging began.
func (b *Bench) toldPlate(warm func(quantity.Reading) float64) (list []told) {
	o := &b.old
	rated := o.RatedAmps.Value / float64(b.machine.sets)
	if volts := o.RatedVolts.Or(b.dc.absorption.Value); o.RatedAmps.Given() && o.RatedRPM.Given() && volts > 0 {
		list = append(list, told{readings.Reading{Kind: readings.Plate, RPM: o.RatedRPM.Value, Volts: volts, Amps: rated, FieldAmps: b.inService(quantity.Reading{}), Ohms: warm(quantity.Known(plateC)), PlusMinus: part(o.RatedAmps)},
			"old.plate_current"})
	}
	if o.CutInRPM.Given() && b.dc.rest.Known() {
		amps := o.BeganAmps.Value / float64(b.machine.sets)
		if !o.BeganAmps.Given() && o.RatedAmps.Given() {
			amps = 0.01 * rated
		}
		list = append(list, told{readings.Reading{Kind: readings.Began, RPM: o.CutInRPM.Value, Volts: b.dc.rest.Value, Amps: amps, FieldAmps: b.inService(quantity.Reading{}), PlusMinus: part(o.CutInRPM)}, "old.cut_in"})
	}
	return list
}

func (b *Bench) toldBridge() []told {
	mh := b.old.LeadMilliHenries
	h := b.henries.bridgeHenries()
	if !h.Known() || h.Value <= 0 {
		return nil
	}
	return []told{{readings.Reading{Kind: readings.Bridge, Henries: h.Value, PlusMinus: max(part(mh), readings.Usual(readings.Bridge))}, "old.inductance"}}
}

// flux is the flux that the readings say together, where they do.
func (f *fitted) flux(single flux, old *oldWinding, rotor *job.FieldSpec) flux {
	if !f.ok {
		return single
	}
	k := f.fit.VoltsPerRPM()
	found := flux{
		perTurn: quantity.Of(k.Value/old.coils.effective, f.origin(old)), relative: old.coils.relative, fromOld: true,
		from: f.from(k.Why), fieldAmps: rotor.Amps.Figure("no field current given"), spread: single.spread, extrapolated: single.extrapolated, curve: single.curve,
	}
	found.perTurn.PlusMinus = k.PlusMinus / old.coils.effective
	if amps := f.fit.FieldAmps(); amps > 0 {
		found.fieldAmps = quantity.Of(amps)
	}
	if at := single.at; at != nil {
		by := found.perTurn.Value / at(f.fit.FieldAmps())
		found.at = func(amps float64) float64 { return by * at(amps) }
	}
	return found
}

// origin is Guessed where a guess decides with.
func (f *fitted) origin(old *oldWinding) quantity.Origin { return guessedIf(old.Turns) }

// from says what was solved, and which reading decided.
func (f *fitted) from(decided string) string {
	var kinds []string
	for _, c := range f.fit.Readings() {
		if c.Aside == "" && !slices.Contains(kinds, string(c.Kind)) {
			kinds = append(kinds, string(c.Kind))
		}
	}
	last := len(kinds) - 1
	all := kinds[last]
	if last > 0 {
		all = strings.Join(kinds[:last], ", ") + " and " + kinds[last]
	}
	return fmt.Sprintf("%s of the old winding, solved together; decided by %s", all, decided)
}

// moved is what was found, moved by its own ± along three errors that are independent.
func (f *fitted) moved() []*fitted {
	var all []*fitted
	for _, fit := range f.fit.Moved() {
		one := *f
		one.fit = fit
		all = append(all, &one)
	}
	return all
}

// doubtTogether is what the readings say of each other.
func (b *Bench) doubtTogether(d *doubts) {
	f := b.fit
	b.doubtWhole(d)
	if !f.ok {
		if f.why != "" && len(b.job.Amps) > 0 {
			d.add(Doubt, "amps[0].current", "", "", "", "the amps readings are not used: %s", f.why)
		}
		return
	}
	for _, c := range f.fit.Readings() {
		path := f.pathOf(c.Reading)
		switch {
		case c.Aside != "":
			d.add(Doubt, path, "", "", "", "%s, is not used: %s", kindWords(c.Kind), c.Aside)
		case c.Off > 1:
			read, unit := c.Amps, "A"
			switch c.Kind {
			case readings.SpinUp, readings.TrialCoil:
				read, unit = c.Volts, "V"
			case readings.Bridge:
				read, unit = c.Henries*1000, "mH"
				c.Shown *= 1000
			}
			d.add(Doubt, path, "", "take it again, its speed too", "least squares on the exact bridge",
				"%s does not agree with the others: %.3g %s where they speak of %.3g %s, %.1f times what such a reading may be off", kindWords(c.Kind), read, unit, c.Shown, unit, c.Off)
		}
	}
}

// doubtWhole is about readings that lack something.
func (b *Bench) doubtWhole(d *doubts) {
	for i, s := range b.job.Amps {
		if !s.RPM.Given() || !s.Amps.Given() || !s.Volts.Given() {
			d.add(Doubt, fmt.Sprintf("amps[%d].current", i), "", "an amps reading is a speed, amps and the volts at the bridge", "", "the amps reading is not whole and is not used")
		}
	}
	for i, s := range b.shorts {
		if b.fit.ok && s.LineAmps.Given() && int(s.Sets.Or(float64(b.machine.sets))) < b.machine.sets {
			d.add(Note, fmt.Sprintf("short[%d].sets", i), "", "join the leads of both sets, each among themselves", "", "read with one set alone, the other idle: it is not used along with amps that both gave")
		}
	}
}

// kindWords is a kind of reading at the head of a sentence.
func kindWords(k readings.Kind) string {
	switch k {
	case readings.Plate:
		return string(k)
	case readings.Began:
		return "the speed at which it began to charge"
	}
	return "the reading of " + string(k)
}

// pathOf is the field that a reading stands in.
func (f *fitted) pathOf(r readings.Reading) string {
	for _, t := range f.told {
		if t.Kind == r.Kind && t.RPM == r.RPM && (t.Volts == r.Volts || t.Kind == readings.Short) {
			return t.path
		}
	}
	return ""
}
