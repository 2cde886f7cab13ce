package winding

import (
	"slotwright/winding/drive"
	"slotwright/winding/heat"
	"slotwright/winding/quantity"
	"sort"
)

// noDrive is every figure missing for one reason.
func noDrive(why string) Driven {
	no := quantity.Missing(why)
	return Driven{StartsAt: no, YearKWh: no, RunRPM: no, RunAmps: no, RunWatts: no, FieldRun: noField(why), SafetyRun: noSafety(why)}
}

// meetAll lets every trial that can run meet the drive.
func (b *Bench) meetAll(o *Outcome, runners []*charger) {
	for i, r := range runners {
		t := &o.Trials[i]
		if r == nil {
			t.Driven = noDrive(t.NoCharging)
			b.highestVolts(&t.SafetyRun, t) // known without charging
			continue
		}
		b.meet(r, t)
		if len(t.Points) > 0 {
			t.XUnit = OutputOf("charges_from_x").DimFor(b.drive.kind == "wind")[0].Name
		}
		t.readHeat(b)
		t.FieldRun = b.runField(r, t)
		t.SafetyRun = b.runSafety(r, t)
	}
}

// meet is one trial against the drive: where it runs, and how that suits both.
func (b *Bench) meet(r *charger, t *TrialOutcome) {
	s := &b.drive
	weak := quantity.Of(0, t.PhasePerRPM.Origin, t.PhaseOhms20.Origin, t.PhaseMilliHenries.Origin, b.dc.charging.Origin, b.dc.diodeVolts.Origin).Origin
	spots := s.held(b.air.ambientC)
	switch {
	case s.kind == "":
		t.Driven = noDrive("needs what turns it")
	case s.why != "":
		t.Driven = noDrive(s.why)
	case s.kind == "wind":
		spots = b.meetWind(r, t)
	case s.source == nil:
		b.meetFixed(r, t)
	default:
		spots = b.meetShaft(r, t)
	}
	no := quantity.Missing("needs the speeds")
	t.readOperating(s.operate(r, spots, &b.dc), weak, b.air.still, no)
	t.ThirdAmps = r.third(t)
	if why := b.dc.notBattery; why != "" {
		t.EmptyUsual, t.FullUsual = quantity.Missing(why), quantity.Missing(why)
	}
	t.suit(s)
}

// readHeat is the hottest anywhere, and how long the copper stands its limit from there.
func (t *TrialOutcome) readHeat(b *Bench) {
	t.HottestC = quantity.Missing("needs the speeds")
	t.limitByForm(&b.machine)
	if !b.air.still.Known() {
		t.HottestC = b.air.still
		return
	}
	hottest, never := 0.0, false
	add := func(celsius float64, tooHot bool) {
		hottest, never = max(hottest, celsius), never || tooHot
	}
	for i := range t.Operating {
		add(t.Operating[i].WindingC, t.Operating[i].TooHot)
	}
	for i := range t.Points {
		if b.drive.within(&t.Points[i]) {
			add(t.Points[i].WindingC, t.Points[i].TooHot)
		}
	}
	switch {
	case never:
		t.HottestC = quantity.Missing("it finds no steady temperature: it goes on getting hotter")
	case hottest > 0:
		t.HottestC = quantity.Of(hottest, quantity.Guessed)
	}
	if warm := t.HotUsualC; warm.Known() {
		t.SecondsToClass = t.DensityPerAmp.With(t.LimitAmps, func(j, amps float64) float64 {
			return heat.Seconds(t.metal, j*amps, warm.Value, b.air.classC)
		})
	}
}

// torque is a trial as a shaft meets it: its torque against speed, and samples of that up
// to a speed. The winding's warmth at each sample is kept, and taken between them when
// the torque is asked for exactly.
func (r *charger) torque(cutIn, high float64) (drive.Load, *warmth) {
	w := &warmth{ambient: r.air.ambientC}
	idea := trend{ambient: r.air.ambientC}
	samples := drive.Sample(func(rpm float64) float64 {
		p := r.at(rpm, idea.next(rpm))
		idea.add(rpm, p.WindingC)
		w.rpm, w.celsius = append(w.rpm, rpm), append(w.celsius, p.WindingC)
		return p.TorqueNm
	}, high, driveSamples, cutIn)
	return drive.Load{Taken: func(rpm float64) float64 { return r.at(rpm, w.at(rpm)).TorqueNm }, CutInRPM: cutIn, Samples: samples}, w
}

// driveSamples is how finely a trial's torque is sampled for the drive.
const driveSamples = 48

// warmth is a winding's temperature against speed.
type warmth struct {
	ambient      float64
	rpm, celsius []float64
}

// at is the temperature at a speed, in a straight line between two known.
func (w *warmth) at(rpm float64) float64 {
	n := len(w.rpm)
	i := sort.SearchFloat64s(w.rpm, rpm)
	switch {
	case n == 0:
		return w.ambient
	case i == 0:
		return w.celsius[0]
	case i == n:
		return w.celsius[n-1]
	}
	part := (rpm - w.rpm[i-1]) / (w.rpm[i] - w.rpm[i-1])
	return w.celsius[i-1] + part*(w.celsius[i]-w.celsius[i-1])
}
