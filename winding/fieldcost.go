package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/field"
	"slotwright/winding/quantity"
)

func noField(why string) FieldRun {
	no := quantity.Missing(why)
	return FieldRun{FieldWatts: no, NetUsual: no, BreakEvenRPM: no, HoldSlow: no, HoldUsual: no, HoldTop: no, ExciteHoldRPM: no, ExciteBuildRPM: no}
}

// runField works out the field's side of a trial.
func (b *Bench) runField(r *charger, t *TrialOutcome) FieldRun {
	w, ok := rotorCoil(&b.job.Field)
	amps := fieldCurrent(&b.job.Field, &b.dc)
	switch {
	case b.job.Field.Kind != "wound":
		return noField("only for a wound rotor")
	case !ok:
		return noField("needs the rotor coil's ohms")
	}
	f := noField("needs spin-up readings at two field currents")
	f.FieldWatts = amps.Then(w.Watts)
	f.NetUsual = f.FieldWatts.With(b.speeds.usual, func(watts, rpm float64) float64 {
		return r.at(rpm, near(t.Curve, rpm).WindingC).BatteryWatts - watts
	})
	f.BreakEvenRPM = f.FieldWatts.Then(func(watts float64) float64 { return breakEven(r, t.Curve, watts) })
	if !f.BreakEvenRPM.Known() {
		f.BreakEvenRPM = quantity.Missing("it never gives more than the field takes in this range of speeds")
	}
	if b.flux.curve == nil {
		return f
	}
	holds := []*quantity.Figure{&f.HoldSlow, &f.HoldUsual, &f.HoldTop}
	for i, s := range []quantity.Figure{b.speeds.slow, b.speeds.usual, b.speeds.top} {
		if !s.Known() || !amps.Known() {
			continue
		}
		p := b.fieldPoint(r, t, w, s.Value, amps.Value)
		f.FieldPoints = append(f.FieldPoints, p)
		if *holds[i] = quantity.Of(p.HoldAmps, f.FieldWatts.Origin); !p.Enough {
			*holds[i] = quantity.Missing("full field does not hold it there")
		}
	}
	perFlux := t.PeakDCPerRPM.With(b.flux.perTurn, func(v, k float64) float64 { return v / k })
	if perFlux.Known() {
		hold, build := field.SelfExcitation(*b.flux.curve, w, b.dc.diodeVolts.Value, perFlux.Value, 1.5*b.flux.curve.High)
		f.ExciteHoldRPM, f.ExciteBuildRPM = quantity.Of(hold, quantity.Guessed), quantity.Of(build, quantity.Guessed)
		if !f.ExciteBuildRPM.Known() {
			f.ExciteBuildRPM = quantity.Missing("no residual flux was read: a battery must lend the first ampere")
		}
	}
	return f
}

// breakEven is where the battery gets what the field takes; NaN when nowhere.
func breakEven(r *charger, curve []RunPoint, watts float64) float64 {
	for i := 1; i < len(curve); i++ {
		if curve[i].BatteryWatts >= watts {
			warm := curve[i].WindingC
			return zeroOf(func(n float64) float64 { return r.at(n, warm).BatteryWatts - watts },
				curve[i-1].RPM, curve[i].RPM, curve[i-1].BatteryWatts-watts, curve[i].BatteryWatts-watts)
		}
	}
	return math.NaN()
}

// fieldPoint finds the field current that holds the regulated voltage at a speed.
func (b *Bench) fieldPoint(r *charger, t *TrialOutcome, w field.Wound, rpm, full float64) FieldPoint {
	warm := near(t.Curve, rpm).WindingC
	p := FieldPoint{RPM: rpm, NetWatts: w.NetWatts(r.at(rpm, warm).BatteryWatts, full)}
	wanted := b.job.Target.Amps.Or(0)
	load := r.load
	load.Volts, load.Ohms = b.dc.absorption.Value, b.dc.cable.Value*r.sets
	holds := func(amps float64) bool {
		weak := *r
		weak.peak *= b.flux.at(amps) / b.flux.perTurn.Value
		weak.load = load
		got := weak.solve(rpm, warm)
		if wanted == 0 {
			return got.Mode != charge.Off
		}
		return got.DCAmps*r.sets >= wanted
	}
	if p.Enough = holds(full); !p.Enough {
		p.HoldAmps = full
		return p
	}
	p.HoldAmps = bisect(0, full, holds)
	return p
}
