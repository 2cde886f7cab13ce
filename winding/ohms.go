package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// How wire is sold.
var (
	metresPerFoot    = quantity.Metres[1].Base(1)
	kilogramPerPound = quantity.Kilograms[1].Base(1)
)

// Where nothing was given.
var (
	defaultAllowance = job.DefaultOf("target.allowance")
	defaultSpoolKg   = job.DefaultOf("target.spool")
	defaultTestC     = job.DefaultOf("target.test_at")
)

// Ohms is the copper's length and resistance.
type Ohms struct {
	MeanTurnMM   quantity.Figure `json:"mean_turn_mm"`
	MeanTurnFrom string          `json:"mean_turn_from,omitempty"`
	PhaseOhms20  quantity.Figure `json:"phase_ohms_20c"`
	LeadOhms20   quantity.Figure `json:"lead_ohms_20c"`
	PhaseOhmsT   quantity.Figure `json:"phase_ohms_test"`
	LeadOhmsT    quantity.Figure `json:"lead_ohms_test"`
}

// Spools is wire of one size to buy.
type Spools struct {
	Gauge  string          `json:"gauge"`
	Metres quantity.Figure `json:"metres"`
	Feet   quantity.Figure `json:"feet"`
	Kg     quantity.Figure `json:"kg"`
	Pounds quantity.Figure `json:"lb"`
	Spools quantity.Figure `json:"spools"`
	// SpoolKg is the copper on one spool.
	SpoolKg float64 `json:"spool_kg"`
}

// Purchase is what to buy.
type Purchase struct {
	Buy []Spools `json:"buy,omitempty"`
	// BuyKg is all sizes together, with the allowance.
	BuyKg quantity.Figure `json:"wire_to_buy_kg"`
	// CopperKg is the metal wound in, without the allowance.
	CopperKg quantity.Figure `json:"metal_kg"`
	// Allowance is the fraction added, 0.1 for 10 %.
	Allowance float64 `json:"allowance"`
}

// Used is the wire wound in, all strands and all sizes, without the allowance, m: what comes off the
// spools. It is missing where the metal is.
func (p *Purchase) Used() quantity.Figure {
	if len(p.Buy) == 0 {
		return p.BuyKg
	}
	used := p.Buy[0].Metres
	for _, b := range p.Buy[1:] {
		used = used.With(b.Metres, func(a, c float64) float64 { return a + c })
	}
	return used.Times(1 / (1 + p.Allowance))
}

// ohms is the resistance of a phase, R = ρ(t)·N·l/(a·s·A), and between leads.
func ohms(w *candidate, m *machine, turn *turnLength, testC float64) Ohms {
	var o Ohms
	t, c := &w.trial, &w.coils
	o.MeanTurnMM, o.MeanTurnFrom = turn.of(w)
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
	o.of(o.PhaseOhms20, t, m, testC)
	return o
}

// of fills in the rest from the ohms of a phase.
func (o *Ohms) of(phase quantity.Figure, t *job.Trial, m *machine, testC float64) {
	o.PhaseOhms20 = phase
	o.LeadOhms20 = phase.Times(m.leadPerPhase(t.Connection))
	hot := t.Metal.TempFactor(20, testC)
	o.PhaseOhmsT, o.LeadOhmsT = phase.Times(hot), o.LeadOhms20.Times(hot)
}

// purchase is the wire to buy, size by size: m·N·a·s·l·(1 + allowance).
func purchase(w *candidate, m *machine, mean quantity.Figure, target *job.Target) Purchase {
	p := Purchase{Allowance: target.Allowance.Or(defaultAllowance)}
	t, c := &w.trial, &w.coils
	bundle, spool := t.Bundle(), target.SpoolKg.Or(defaultSpoolKg)
	turnsOfAll := c.series * float64(c.circuits) * m.windings()
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
		p.Buy = append(p.Buy, spools(s.Gauge.String(), spool, metres.Times(1+p.Allowance), mass.Times(1+p.Allowance)))
		if i == 0 {
			kg = mass
		} else {
			kg = kg.With(mass, func(a, c float64) float64 { return a + c })
		}
	}
	p.BuyKg = quantity.Missing("needs the wire")
	if len(p.Buy) > 0 {
		p.CopperKg, p.BuyKg = kg, kg.Times(1+p.Allowance)
	}
	return p
}

// spools is one size as a shop sells it.
func spools(gauge string, spool float64, metres, kg quantity.Figure) Spools {
	return Spools{
		Gauge: gauge, Metres: metres, Feet: metres.Times(1 / metresPerFoot),
		Kg: kg, Pounds: kg.Times(1 / kilogramPerPound), SpoolKg: spool,
		Spools: kg.Then(func(v float64) float64 { return ceil(v / spool) }),
	}
}

// ceil rounds up to a whole number, ignoring the last bits of rounding.
func ceil(v float64) float64 {
	n := float64(int(v))
	if v > n+1e-9 {
		n++
	}
	return n
}
