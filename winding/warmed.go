package winding

import (
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
)

// # The rise per watt of a record
//
// After an hour's charging a winding of this size is within a few per cent of its steady temperature
// (common practice, no source). The temperature is read by a probe, or from its ohms: a metal's
// resistance is linear in temperature, R ∝ k + t, so
//
//	t = (k + 20)·Rwarm/R20 − k
//
// with k 234.5 for copper (IEC 60028) and R20 the cold ohms of the same winding. Its loss is then the
// copper's heat at that temperature and the stator's share of iron and rotor, as everywhere else; the
// amps in a phase are the amps DC read, times the form factor that the bridge gives at that speed. The
// rise over the air per watt is
//
//	Rth = (t − air)/(m·I²·R20·(k + t)/(k + 20) + iron + field)
//
// the heat balance by which every temperature here is computed, solved for Rth.

// warmed is the rise per watt by a record, K/W, beside the one assumed.
func (b *bed) warmed(r *job.AsWound, plan job.Trial, made *TrialOutcome, lead quantity.Figure) wound.Proof {
	rpm := r.WarmRPM.Figure("needs the speed of that hour")
	expected := rpm.With(b.air.still, func(n, _ float64) float64 { return b.air.perWatt(n) })
	phase := made.PhaseOhms20
	if lead.Known() && made.LeadOhms20.Known() {
		phase = lead.Over(made.LeadOhms20.Times(1 / phase.Value))
	}
	celsius := warmC(r, plan, lead)
	air := r.WarmAirC.OrReading(b.air.ambientC).Figure("")
	amps := r.WarmAmps.Figure("needs the amps of that hour")
	for _, need := range []quantity.Figure{celsius, amps, rpm, phase} {
		if !need.Known() {
			return wound.Compare(quantity.Missing(need.Why), expected)
		}
	}
	form := b.form(plan, made, rpm.Value, celsius.Value)
	watts := heat.HotWatts(plan.Metal, b.machine.windings(), amps.Value*form, phase.Value, celsius.Value) +
		ironThroughStator*b.drag.at(rpm.Value) + fieldThroughStator*b.rotor.takes()
	k, err := heat.KelvinPerWattFromPlate(celsius.Value-air.Value, watts)
	return wound.Compare(quantity.OrError(k, err, celsius.Origin, amps.Origin, rpm.Origin, phase.Origin), expected)
}

// warmC is the winding's temperature, by a probe, else by its ohms.
func warmC(r *job.AsWound, plan job.Trial, lead quantity.Figure) quantity.Figure {
	hot := r.WarmLeadOhms.Figure("needs the temperature after an hour, or the ohms then")
	switch {
	case r.WarmC.Given():
		return r.WarmC.Figure("")
	case !hot.Known():
		return hot
	case !lead.Known():
		return quantity.Missing("needs the cold ohms too")
	}
	zero := plan.Metal.InferredZeroC()
	return hot.With(lead, func(warm, cold float64) float64 { return zero + (20-zero)*warm/cold })
}

// form is the rms amps of a phase per ampere DC: by the bridge at a speed, else, where it cannot be run
// or gives nothing, for a current in blocks.
func (b *bed) form(plan job.Trial, made *TrialOutcome, rpm, celsius float64) float64 {
	if r, _ := b.charger(plan, made); r != nil {
		if p := r.solve(rpm, celsius); p.DCAmps > 0 {
			return p.PhaseAmpsRMS / (p.DCAmps * r.sets)
		}
	}
	return b.machine.phasePerDC(plan.Connection) / float64(b.machine.sets)
}
