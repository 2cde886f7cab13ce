package winding

import (
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/heat"
	"slotwright/winding/quantity"
)

func noSafety(why string) SafetyRun {
	no := quantity.Missing(why)
	none := Brake{no, no, no, no}
	return SafetyRun{Brake: none, BrakePair: none, BrakeSeconds: no, DumpOhms: no, DumpWatts: no, OverChargeAmps: no}
}

// runSafety works these out at the top speed.
func (b *Bench) runSafety(r *charger, t *TrialOutcome) SafetyRun {
	s := noSafety("needs the top speed")
	top := b.speeds.top
	if !top.Known() || top.Value <= 0 {
		return s
	}
	emf := t.PhasePerRPM.Value * top.Value
	ohms := r.ohms20 * r.factor(20, b.air.classC)
	x := 2 * math.Pi * r.hertz * top.Value * r.henries
	all := drive.ShortAll(emf, ohms, x, top.Value, b.machine.phases, r.delta)
	s.Brake = brakeFigures(all)
	if b.machine.phases == 3 {
		s.BrakePair = brakeFigures(drive.ShortPair(emf, ohms, x, top.Value, r.delta))
	}
	circuits := float64(t.Circuits)
	s.BrakeSeconds = t.ConductorAreaMM2.Then(func(area float64) float64 {
		return heat.Seconds(r.metal, all.CoilAmps/circuits/area, b.air.ambientC, b.air.classC)
	})
	s.OverChargeAmps = t.AmpsTop.With(b.dc.chargeLimit, func(i, limit float64) float64 { return i - limit })
	s.DumpWatts = t.AmpsTop.With(b.dc.absorption, func(i, v float64) float64 { _, w := drive.DumpLoad(v, i); return w })
	s.DumpOhms = t.AmpsTop.With(b.dc.absorption, func(i, v float64) float64 { o, _ := drive.DumpLoad(v, i); return o })
	return s
}

// brakeFigures is a brake for the outcome; nothing where no current flows.
func brakeFigures(b drive.Brake) Brake {
	if b.LeadAmps <= 0 {
		no := quantity.Missing("nothing flows")
		return Brake{no, no, no, no}
	}
	return Brake{quantity.Of(b.LeadAmps), quantity.Of(b.CoilAmps), quantity.Of(b.TorqueNm), quantity.Of(b.Watts)}
}
