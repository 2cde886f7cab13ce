package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

const (
	metresPerFoot    = 0.3048     // by definition, 1959
	kilogramPerPound = 0.45359237 // by definition, 1959
	defaultAllowance = 0.10       // common practice, no source
	defaultSpoolKg   = 1.0
	defaultTestC     = 20.0
)

// ohms is the resistance of a phase, R = ρ(t)·N·l/(a·s·A), and between leads.
func (b *Bench) ohms(t job.Trial, c coilSet) Ohms {
	var o Ohms
	o.MeanTurnMM, o.MeanTurnFrom = b.meanTurn(c.span)
	bundle := t.Bundle()
	switch {
	case bundle.IsZero():
		o.PhaseOhms20 = quantity.Missing("needs the wire")
	case c.series <= 0 && c.plan != nil:
		o.PhaseOhms20 = quantity.Missing("needs the turns")
	case c.plan == nil:
		o.PhaseOhms20 = quantity.Missing(c.why)
	default:
		perMetre := wiretable.OhmsPerMetre(bundle.AreaMM2(t.Build), t.Metal, 20)
		o.PhaseOhms20 = o.MeanTurnMM.Then(func(l float64) float64 {
			return perMetre * c.series * l / 1000 / float64(c.circuits)
		})
	}
	o.LeadOhms20 = o.PhaseOhms20.Times(b.leadPerPhase(t.Connection))
	hot := t.Metal.TempFactor(20, b.job.Target.TestC.Or(defaultTestC))
	o.PhaseOhmsT, o.LeadOhmsT = o.PhaseOhms20.Times(hot), o.LeadOhms20.Times(hot)
	return o
}

// purchase is the wire to buy, size by size: m·N·a·s·l·(1 + allowance).
func (b *Bench) purchase(t job.Trial, c coilSet, mean quantity.Figure) Purchase {
	p := Purchase{Allowance: b.job.Target.Allowance.Or(defaultAllowance)}
	bundle := t.Bundle()
	turnsOfAll := c.series * float64(c.circuits) * float64(b.phases*b.sets)
	one := quantity.Missing("needs the wire")
	switch {
	case bundle.IsZero():
	case c.plan == nil:
		one = quantity.Missing(c.why)
	case c.series <= 0:
		one = quantity.Missing("needs the turns")
	default:
		one = mean.Times(turnsOfAll / 1000)
	}
	p.CopperKg = one
	var kg quantity.Figure
	for i, s := range bundle.Parts() {
		metres := one.Times(float64(s.Count))
		mass := metres.Times(wiretable.KgPerMetre(s.Gauge.AreaMM2(t.Build), t.Metal))
		p.Buy = append(p.Buy, b.spools(s.Gauge.String(), metres.Times(1+p.Allowance), mass.Times(1+p.Allowance)))
		if i == 0 {
			kg = mass
		} else {
			kg = kg.With(mass, func(a, c float64) float64 { return a + c })
		}
	}
	if len(p.Buy) > 0 {
		p.CopperKg = kg
	}
	return p
}

// spools is one size as a shop sells it.
func (b *Bench) spools(gauge string, metres, kg quantity.Figure) Spools {
	spool := b.job.Target.SpoolKg.Or(defaultSpoolKg)
	return Spools{
		Gauge: gauge, Metres: metres, Feet: metres.Times(1 / metresPerFoot),
		Kg: kg, Pounds: kg.Times(1 / kilogramPerPound), SpoolKg: spool,
		Spools: kg.Then(func(v float64) float64 { return ceil(v / spool) }),
	}
}

// ceil is the next whole number, forgiving the last bits of rounding.
func ceil(v float64) float64 {
	n := float64(int(v))
	if v > n+1e-9 {
		n++
	}
	return n
}
