package winding

import (
	"fmt"
	"math"
	"sort"

	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
	"slotwright/wiretable"
)

// phasePerDC is rms amps in a winding for one ampere DC through the bridge, for
// currents that flow in blocks: star √(2/3), delta that over √3, one phase 1. Sine
// currents make 0.741 and 1.11; the limits keep to the higher of the two for three
// phases, and the pulses just above cut-in, which make more, are small.
// Source: the three-phase bridge with smooth current, any power electronics text.
func (b *Bench) phasePerDC(conn layout.Connection) float64 {
	switch {
	case b.phases == 1:
		return math.Pi / (2 * math.Sqrt2)
	case conn == layout.Delta:
		return math.Sqrt(2) / 3
	default:
		return math.Sqrt(2.0 / 3)
	}
}

// limits is how much current the winding can stand, each reason with its figure. The
// smallest governs.
func (b *Bench) limits(t job.Trial, c coilSet, o *TrialOutcome) Limits {
	var l Limits
	perDC := b.phasePerDC(t.Connection) / float64(c.circuits*b.sets)
	l.DensityPerAmp = o.ConductorAreaMM2.Then(func(a float64) float64 { return perDC / a })
	for _, add := range []func(job.Trial, *TrialOutcome, float64) Limit{b.byDensity, b.bySameHeat, b.byOldDensity, b.byTemperature} {
		if lim := add(t, o, perDC); lim.AmpsDC.Known() {
			l.Each = append(l.Each, lim)
		}
	}
	sort.SliceStable(l.Each, func(i, k int) bool { return l.Each[i].AmpsDC.Value < l.Each[k].AmpsDC.Value })
	l.LimitAmps = quantity.Missing("needs the wire, or the plate and the ohms")
	if len(l.Each) > 0 {
		l.LimitAmps, l.LimitBy = l.Each[0].AmpsDC.Because(l.Each[0].Reason), l.Each[0].Name
	}
	l.SecondsToClass = l.DensityPerAmp.With(l.LimitAmps, func(j, amps float64) float64 {
		return heat.Seconds(metalOf(t.Metal), j*amps, b.air.ambientC, b.air.classC)
	})
	b.atTopSpeed(t, o, &l)
	return l
}

// byDensity: A/mm² for the way it is cooled.
func (b *Bench) byDensity(_ job.Trial, o *TrialOutcome, perDC float64) Limit {
	d := heat.DensityOf(b.air.cooling)
	amps := o.ConductorAreaMM2.Then(func(a float64) float64 { return heat.LimitAmps(b.air.cooling, a) / perDC })
	mid := (d.Low + d.High) / 2
	return Limit{"density", amps, fmt.Sprintf("%.1f A/mm² (%.0f circular mils per ampere), %s", mid, heat.CmilPerAmp(mid), b.air.cooling), d.Source}
}

// bySameHeat: the copper loss of the plate's current in the old winding.
func (b *Bench) bySameHeat(t job.Trial, o *TrialOutcome, _ float64) Limit {
	old := b.oldTrial()
	rated := b.job.Old.RatedAmps.Figure("needs the plate's amps")
	if old == nil {
		return Limit{}
	}
	// Heat for one ampere DC goes with R·(phase amps per DC amp)².
	k, ko := b.phasePerDC(t.Connection), b.phasePerDC(b.job.Old.Connection)
	per := o.PhaseOhms20.With(old.PhaseOhms20, func(n, p float64) float64 { return n * k * k / (p * ko * ko) })
	if !per.Known() {
		per = b.relativeOhms(t).Times(k * k / (ko * ko))
	}
	amps := rated.With(per, func(i, r float64) float64 { return heat.SameHeat(i, 1, r) })
	return Limit{"same heat", amps, "makes the heat that the plate's amps made in the old winding", "I·√(R old/R new)"}
}

// byOldDensity: the current density that the plate's current made in the old wire.
func (b *Bench) byOldDensity(t job.Trial, o *TrialOutcome, perDC float64) Limit {
	bundle := b.job.Old.Bundle()
	rated := b.job.Old.RatedAmps.Figure("needs the plate's amps")
	if bundle.IsZero() {
		return Limit{}
	}
	oldPerDC := b.phasePerDC(b.job.Old.Connection) / float64(b.old.circuits*b.sets) / bundle.AreaMM2(b.job.Old.Build)
	amps := rated.With(o.ConductorAreaMM2, func(i, a float64) float64 { return i * oldPerDC * a / perDC })
	return Limit{"old density", amps, "the current density that the plate's amps made in the old wire", "same A/mm²"}
}

// byTemperature: the loss at which the winding comes to its class limit.
func (b *Bench) byTemperature(t job.Trial, o *TrialOutcome, _ float64) Limit {
	hot := t.Metal.TempFactor(20, b.air.classC)
	k := b.phasePerDC(t.Connection) / float64(b.sets)
	amps := o.PhaseOhms20.With(b.air.perWatt, func(r, rth float64) float64 {
		watts := (b.air.classC - b.air.ambientC) / rth
		return math.Sqrt(watts/(float64(b.phases*b.sets)*r*hot)) / k
	})
	return Limit{"temperature", amps, fmt.Sprintf("comes to %.0f °C, class %s, in air of %.0f °C", b.air.classC, b.air.class, b.air.ambientC), "IEC 60085; steady heat balance"}
}

// relativeOhms is a winding's ohms over the old one's where neither is known, from
// N/(a·s·A) at the same mean turn and metal.
func (b *Bench) relativeOhms(t job.Trial) quantity.Figure {
	c, wire, old := b.coils(t), t.Bundle(), b.job.Old.Bundle()
	if wire.IsZero() || old.IsZero() || c.series <= 0 || b.old.series <= 0 || c.relative != b.old.relative {
		return quantity.Missing("needs turns and wire, old and new")
	}
	n := c.series / (float64(c.circuits) * wire.AreaMM2(t.Build)) * t.Metal.Resistivity(20)
	p := b.old.series / (float64(b.old.circuits) * old.AreaMM2(b.job.Old.Build)) * b.job.Old.Metal.Resistivity(20)
	return quantity.Of(n/p, t.Turns.Origin, b.job.Old.Turns.Origin)
}

// oldTrial is the old winding's ohms, worked out once.
func (b *Bench) oldTrial() *TrialOutcome {
	if b.job.Old.Bundle().IsZero() {
		return nil
	}
	return &TrialOutcome{Ohms: b.oldOhms}
}

// atTopSpeed is skin depth and AC factor. Only the part of the turn that lies in the
// slot is in the slot's field.
func (b *Bench) atTopSpeed(t job.Trial, o *TrialOutcome, l *Limits) {
	hz := b.speeds.top.With(b.job.Machine.Poles.Figure("needs the poles"), func(n, poles float64) float64 { return n * poles / 120 })
	l.SkinDepthMM = hz.Then(func(f float64) float64 { return wiretable.SkinDepthMM(t.Metal, 60, f) })
	layers := o.Layers
	l.ACFactor = quantity.Missing("needs the slot, the turns and the top speed")
	l.ACFactorSplit = l.ACFactor
	if !hz.Known() || !o.Conductors.Known() || b.roomWhy[layers-1] != "" {
		return
	}
	room := &b.rooms[layers-1]
	deep, across := slot.LayersDeep(*room, o.OverallMM.Value, int(o.Conductors.Value))
	share := 1.0
	if b.job.Machine.StackMM.Given() && o.MeanTurnMM.Known() {
		share = min(1, 2*b.job.Machine.StackMM.Value/o.MeanTurnMM.Value)
	}
	factor := func(strands int) quantity.Figure {
		f := slot.ACFactorSplit(o.BareMM.Value, deep, hz.Value, t.Metal.Resistivity(60), room.WidthMidMM, across, strands)
		return quantity.Of(1+(f-1)*share, b.slot.origin)
	}
	l.ACFactor, l.ACFactorSplit = factor(1), factor(2)
}

func metalOf(m wiretable.Metal) heat.Metal {
	if m == wiretable.Aluminium {
		return heat.Aluminium
	}
	return heat.Copper
}
