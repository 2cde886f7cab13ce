package winding

import (
	"fmt"
	"math"
	"slices"

	"slotwright/winding/heat"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
	"slotwright/wiretable"
)

// bounds is what the limits of every winding depend on.
type bounds struct {
	machine *machine
	room    *slotRoom
	air     *thermal
	form    plateForm
	drag    *drag
	rotor   *excitation
	usual   quantity.Figure // rpm
	top     quantity.Figure // rpm
	old     *oldWinding
	oldOhms *Ohms
	fanned  *fanned
	// temperature and slower are words of the limits that are the same for every winding; density and
	// proved are those of each metal.
	temperature, slower string
	density, proved     [2]string
	// oldPerDC is A/mm² in the old wire for one ampere DC, 0 where that is not known.
	oldPerDC float64
}

// newBounds makes the words that are the same for every winding.
func newBounds(b bounds) bounds {
	d := heat.DensityOf(b.air.cooling)
	for _, m := range wiretable.Metals() {
		b.density[m] = fmt.Sprintf("%.1f A/mm² (%.0f circular mils per ampere), %s", d.Mid(m), heat.CmilPerAmp(d.Mid(m)), b.air.cooling)
		if m != wiretable.Copper {
			b.density[m] += fmt.Sprintf(", for %s at the heat that %.1f make in copper", m, d.Mid(wiretable.Copper))
		}
	}
	b.fanned = newFanned(&b)
	b.temperature = fmt.Sprintf("reaches a mean of %.0f °C by its ohms, as class %s allows, in air of %.0f °C, iron and field counted%s", b.air.meanC, b.air.class, b.air.ambientC, b.fanned.said(b.old.RatedRPM.Value))
	if b.fanned != nil && b.old.RatedRPM.Value > b.fanned.usual {
		b.slower = fmt.Sprintf(", proved at %.0f rpm: slower its fan cools less, which the limit by temperature takes in", b.old.RatedRPM.Value)
	}
	if bundle := b.old.OldWinding.Bundle(); !bundle.IsZero() {
		b.oldPerDC = b.machine.phasePerDC(b.old.Connection) / float64(b.old.coils.circuits*b.machine.sets) / bundle.AreaMM2(b.old.Build)
		for _, m := range wiretable.Metals() {
			b.proved[m] = fmt.Sprintf("%.3g A/mm², the current density that the plate's amps made in the old wire", b.provedDensity(b.old.Metal))
			if m != b.old.Metal {
				b.proved[m] = fmt.Sprintf("%.3g A/mm², for %s at the heat of the %.3g that the plate's amps made in the old wire of %s", b.provedDensity(m), m, b.provedDensity(b.old.Metal), b.old.Metal)
			}
		}
	}
	return b
}

// Limit is one reason why the current must stop somewhere.
type Limit struct {
	Name   string          `json:"name"`
	AmpsDC quantity.Figure `json:"amps_dc"`
	Reason string          `json:"reason"`
	Source string          `json:"source"`
	// circles says what part of it a circulating current in the delta takes.
	circles string
	// sum is what it was computed with.
	sum limitSum
}

// limitSum is the numbers of a limit that are in no figure: form, the rms amps in the conductors, or in
// a phase, for one ampere DC; the density; the watts that the winding may dissipate and its ohms at
// that temperature; heat for one ampere relative to the old winding's.
type limitSum struct {
	form, density, watts, ohms, heat float64
}

// Limits is how much current the winding withstands.
type Limits struct {
	// Each is every limit that could be worked out, the lowest first.
	Each []Limit `json:"limits,omitempty"`
	// LimitAmps is the lowest, LimitBy its name.
	LimitAmps quantity.Figure `json:"limit_amps_dc"`
	LimitBy   string          `json:"limit_by,omitempty"`
	// DensityPerAmp is A/mm² in the wire for one ampere DC.
	DensityPerAmp quantity.Figure `json:"density_a_per_mm2_per_dc_amp"`
	// SecondsToClass is the time from warm to the class limit at the limit current
	// with no cooling at all.
	SecondsToClass quantity.Figure `json:"seconds_to_class_limit"`
	// ACFactor is AC over DC resistance at the top speed.
	ACFactor quantity.Figure `json:"ac_factor_top"`
	// ACFactorSplit is the AC factor with twice the strands of the same total area.
	ACFactorSplit quantity.Figure `json:"ac_factor_top_twice_the_strands"`
	// SkinDepthMM at the top speed.
	SkinDepthMM quantity.Figure `json:"skin_depth_top_mm"`
	// fanned is how a thermal limit grows with speed; nil where no fan helps.
	fanned *fanned
}

// provedDensity is the current density, A/mm², that the plate's amps made in the old wire, or in
// another metal at the same heat.
func (b *bounds) provedDensity(m wiretable.Metal) float64 {
	return b.rated().Value * b.oldPerDC * heat.AtEqualHeat(b.old.Metal, m)
}

// # Which limits there are
//
// A current density for a kind of cooling is a rule for machines of which nothing is known. Where the
// plate's amps and speed and the old wire are known, that machine has proved its own density at that
// speed, and replaces the rule as long as it is cooled as on the plate: the fan is kept, or it turns at
// least half as fast (thermal.go). Below the plate's speed a fan blows less, which the temperature
// limit accounts for: it is given at the usual speed, and follows the fan at others ([Limits.LimitAt]).
//
// A density stands for the heat per volume of wire, J²·ρ. So aluminium is allowed that of copper times
// √(ρ copper/ρ aluminium) = √0.61 = 0.78, whether the density is a rule's or was proved by the old
// wire.

// limits is how much current the winding withstands at the usual speed, each reason with its figure,
// stored in room. The smallest governs.
func (b *bounds) limits(w *candidate, o *TrialOutcome, room []Limit) Limits {
	var l Limits
	perDC := b.machine.phasePerDC(w.trial.Connection) / float64(w.coils.circuits*b.machine.sets)
	l.DensityPerAmp = o.ConductorAreaMM2.Then(func(a float64) float64 { return perDC / a })
	l.Each, l.fanned = slices.Grow(room, 4), b.fanned
	proved := b.byOldDensity(w, o, perDC)
	for _, lim := range [...]Limit{b.byDensity(w, o, perDC), b.bySameHeat(w, o, perDC), proved, b.byTemperature(w, o, perDC)} {
		if !lim.AmpsDC.Known() || lim.Name == limitDensity && proved.AmpsDC.Known() && b.air.asOnPlate {
			continue
		}
		at := len(l.Each)
		for at > 0 && lim.AmpsDC.Value < l.Each[at-1].AmpsDC.Value {
			at--
		}
		l.Each = slices.Insert(l.Each, at, lim)
	}
	l.LimitAmps = quantity.Missing("needs the wire, or the plate and the ohms")
	if len(l.Each) > 0 {
		l.LimitAmps, l.LimitBy = l.Each[0].AmpsDC.Because(l.Each[0].Reason), l.Each[0].Name
	}
	l.SecondsToClass = l.DensityPerAmp.With(l.LimitAmps, func(j, amps float64) float64 {
		return heat.Seconds(w.trial.Metal, j*amps, b.air.ambientC, b.air.classC)
	})
	b.atTopSpeed(w, o, &l)
	return l
}

// rated is the plate's amps.
func (b *bounds) rated() quantity.Figure { return b.old.RatedAmps.Figure("needs the plate's amps") }

// byDensity: A/mm² for the kind of cooling.
func (b *bounds) byDensity(w *candidate, o *TrialOutcome, perDC float64) Limit {
	d, metal := heat.DensityOf(b.air.cooling), w.trial.Metal
	amps := o.ConductorAreaMM2.Then(func(a float64) float64 { return heat.LimitAmps(b.air.cooling, metal, a) / perDC })
	return Limit{Name: limitDensity, AmpsDC: amps, Reason: b.density[metal], Source: d.Source, sum: limitSum{form: perDC, density: d.Mid(metal)}}
}

// bySameHeat: the copper loss of the plate's current in the old winding.
func (b *bounds) bySameHeat(w *candidate, o *TrialOutcome, _ float64) Limit {
	if b.old.OldWinding.Bundle().IsZero() {
		return Limit{}
	}
	// Heat for one ampere DC goes with R·(phase amps per DC amp)².
	k, ko := b.machine.phasePerDC(w.trial.Connection), b.machine.phasePerDC(b.old.Connection)
	per := o.PhaseOhms20.With(b.oldOhms.PhaseOhms20, func(n, p float64) float64 { return n * k * k / (p * ko * ko) })
	if !per.Known() {
		per = b.old.relativeOhms(w).Times(k * k / (ko * ko))
	}
	amps := b.rated().With(per, func(i, r float64) float64 { return heat.SameHeat(i, 1, r) })
	return Limit{Name: limitSameHeat, AmpsDC: amps, Reason: "makes the same heat as the plate's amps in the old winding" + b.slower, Source: "I·√(R old/R new)", sum: limitSum{heat: per.Value}}
}

// byOldDensity: the current density that the plate's current made in the old wire.
func (b *bounds) byOldDensity(w *candidate, o *TrialOutcome, perDC float64) Limit {
	if b.oldPerDC == 0 {
		return Limit{}
	}
	density := b.provedDensity(w.trial.Metal)
	amps := b.rated().With(o.ConductorAreaMM2, func(_, a float64) float64 { return density * a / perDC })
	return Limit{Name: limitOldDensity, AmpsDC: amps, Reason: b.proved[w.trial.Metal], Source: "same A/mm²", sum: limitSum{form: perDC, density: density}}
}

// byTemperature: the copper loss at which the winding's mean reaches what its class allows by
// resistance, at the usual speed, on top of what iron and field leave in it. The form of its current is
// that of the plate that gives the rise per watt, until it has a curve.
func (b *bounds) byTemperature(w *candidate, o *TrialOutcome, _ float64) Limit {
	hot := w.trial.Metal.TempFactor(20, b.air.meanC)
	k := b.form.at(b.machine, w.trial.Connection)
	rpm := b.usual.Value
	watts := b.air.copperWatts(b.air.meanC-b.air.ambientC, rpm, b.drag, b.rotor)
	ohms := b.machine.windings() * hot * o.PhaseOhms20.Value
	amps := o.PhaseOhms20.With(b.air.still, func(_, _ float64) float64 { return math.Sqrt(watts/ohms) / k })
	return Limit{Name: limitTemperature, AmpsDC: amps, Reason: b.temperature, Source: "IEC 60034-1 rise by resistance; steady heat balance", sum: limitSum{form: k, watts: watts, ohms: ohms}}
}

// atTopSpeed gives skin depth and AC factor. Only the part of the turn that lies in the slot is in the
// slot's field.
func (b *bounds) atTopSpeed(w *candidate, o *TrialOutcome, l *Limits) {
	metal := w.trial.Metal
	hz := b.machine.hertz(b.top)
	l.SkinDepthMM = hz.Then(func(f float64) float64 { return wiretable.SkinDepthMM(metal, 60, f) })
	room, why := b.room.of(w.coils.lie)
	for _, missing := range [...]quantity.Figure{quantity.Missing(why), o.Conductors, hz} {
		if !missing.Known() && missing.Why != "" {
			l.ACFactor, l.ACFactorSplit = missing, missing
			return
		}
	}
	deep, across := slot.LayersDeep(*room, o.OverallMM.Value, int(o.Conductors.Value))
	share := 1.0
	if b.machine.StackMM.Given() && o.MeanTurnMM.Known() {
		share = min(1, 2*b.machine.StackMM.Value/o.MeanTurnMM.Value)
	}
	factor := func(strands int) quantity.Figure {
		f := slot.ACFactorSplit(o.BareMM.Value, deep, hz.Value, metal.Resistivity(60), room.WidthMidMM, across, strands)
		return quantity.Of(1+(f-1)*share, b.room.origin)
	}
	l.ACFactor, l.ACFactorSplit = factor(1), factor(2)
}
