package winding

import (
	"sort"

	"slotwright/winding/drive"
	"slotwright/winding/quantity"
)

// noDrive is every figure missing for one reason.
func noDrive(why string) Driven {
	no := quantity.Missing(why)
	return Driven{StartsAt: no, YearKWh: no, RunRPM: no, RunAmps: no, RunWatts: no, Suits: "", FieldRun: noField(why), SafetyRun: noSafety(why)}
}

// drive lets every trial that can run meet the drive.
func (b *Bench) drive(o *Outcome, runners []*charger) {
	for i, r := range runners {
		t := &o.Trials[i]
		if r == nil {
			t.Driven = noDrive(t.NoCharging)
			t.OpenAtGaleVolts = quantity.Missing(t.NoCharging)
			continue
		}
		t.Driven = b.meet(r, t)
		if len(t.Points) > 0 {
			t.XUnit = OutputOf("charges_from_x").DimFor(b.job.Drive.Kind == "wind")[0].Name
		}
		t.FieldRun = b.runField(r, t)
		t.SafetyRun = b.runSafety(r, t)
		t.OpenAtGaleVolts = b.openAtGale(t)
	}
}

// meet is one trial against the drive.
func (b *Bench) meet(r *charger, t *TrialOutcome) Driven {
	switch b.job.Drive.Kind {
	case "":
		return noDrive("needs what turns it")
	case "wind":
		return b.meetWind(r, t)
	case "fixed":
		return b.meetFixed(r, t)
	default:
		return b.meetShaft(r, t)
	}
}

// torque is a trial as a shaft meets it: its torque against speed, and samples of that up
// to a speed. The winding's warmth at each sample is kept, and taken between them when
// the torque is asked for exactly.
func (r *charger) torque(cutIn, high float64) drive.Load {
	var w warmth
	idea := trend{ambient: r.air.ambientC}
	samples := drive.Sample(func(rpm float64) float64 {
		p := r.at(rpm, idea.next(rpm))
		idea.add(rpm, p.WindingC)
		w.rpm, w.celsius = append(w.rpm, rpm), append(w.celsius, p.WindingC)
		return p.TorqueNm
	}, high, driveSamples, cutIn)
	return drive.Load{Taken: func(rpm float64) float64 { return r.at(rpm, w.at(rpm)).TorqueNm }, CutInRPM: cutIn, Samples: samples}
}

// driveSamples is how finely a trial's torque is sampled for the drive.
const driveSamples = 48

// warmth is a winding's temperature against speed.
type warmth struct{ rpm, celsius []float64 }

// at is the temperature at a speed, in a straight line between two known.
func (w *warmth) at(rpm float64) float64 {
	n := len(w.rpm)
	i := sort.SearchFloat64s(w.rpm, rpm)
	switch {
	case n == 0:
		return defaultAmbientC
	case i == 0:
		return w.celsius[0]
	case i == n:
		return w.celsius[n-1]
	}
	part := (rpm - w.rpm[i-1]) / (w.rpm[i] - w.rpm[i-1])
	return w.celsius[i-1] + part*(w.celsius[i]-w.celsius[i-1])
}
