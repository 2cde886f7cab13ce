package winding

import (
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// SafetyRun is what happens at the worst: leads joined to stop it, a battery that is
// full, a battery that comes off.
type SafetyRun struct {
	// Brake is all leads joined at the top speed, BrakePair only two of them.
	Brake     drive.Brake `json:"brake_at_top"`
	BrakePair drive.Brake `json:"brake_pair_at_top"`
	// BrakeSeconds is from warm to the class limit with all leads joined and no cooling.
	BrakeSeconds quantity.Figure `json:"brake_seconds_to_class_limit"`
	// DumpOhms and DumpWatts take all it gives at the top speed at the absorption voltage,
	// for a battery that is full.
	DumpOhms  quantity.Figure `json:"dump_load_ohms"`
	DumpWatts quantity.Figure `json:"dump_load_w"`
	// OverChargeAmps is how far the top speed is over the battery's charge limit.
	OverChargeAmps quantity.Figure `json:"over_charge_limit_a"`
}

func noSafety(why string) SafetyRun {
	no := quantity.Missing(why)
	return SafetyRun{BrakeSeconds: no, DumpOhms: no, DumpWatts: no, OverChargeAmps: no}
}

// runSafety works these out at the top speed.
func (b *Bench) runSafety(r *runner, t *TrialOutcome) SafetyRun {
	s := noSafety("needs the top speed")
	top := b.speeds.top
	if !top.Known() || top.Value <= 0 {
		return s
	}
	emf := t.PhasePerRPM.Value * top.Value
	ohms := r.ohms20 * r.factor(20, b.air.classC)
	x := 2 * math.Pi * r.hertz * top.Value * r.henries
	s.Brake = drive.ShortAll(emf, ohms, x, top.Value, b.phases, r.delta)
	if b.phases == 3 {
		s.BrakePair = drive.ShortPair(emf, ohms, x, top.Value, r.delta)
	}
	circuits := float64(t.Circuits)
	s.BrakeSeconds = t.ConductorAreaMM2.Then(func(area float64) float64 {
		return heat.Seconds(r.metal, s.Brake.CoilAmps/circuits/area, b.air.ambientC, b.air.classC)
	})
	s.OverChargeAmps = t.AmpsTop.With(b.dc.chargeLimit, func(i, limit float64) float64 { return i - limit })
	s.DumpWatts = t.AmpsTop.With(b.dc.absorption, func(i, v float64) float64 { _, w := drive.DumpLoad(v, i); return w })
	s.DumpOhms = t.AmpsTop.With(b.dc.absorption, func(i, v float64) float64 { o, _ := drive.DumpLoad(v, i); return o })
	return s
}

// doubt calls out charging above the battery's limit.
func (s *SafetyRun) doubt(d *doubts, _ func(string) string, t job.Trial) {
	if over := s.OverChargeAmps; over.Known() && over.Value > 0 {
		d.add(Doubt, "battery.charge_limit", t.Name, "a larger battery, a current limit, or a dump load", "the battery's charge limit",
			"at the top speed it charges %.1f A above the battery's limit; a dump load for all of it is %.2f Ω and %.0f W", over.Value, s.DumpOhms.Value, s.DumpWatts.Value)
	}
}
