package winding

import (
	"math"
	"os"
	"testing"

	"slotwright/winding/charge"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asPlated are jobs with a plate, each with its old winding put back as the only trial and turned at
// the plate's speed, in the air of 40 °C to which rises refer, with no loss in the cable.
func asPlated(t *testing.T) map[string]job.Job {
	all := map[string]job.Job{"fan": platedJob(t)}
	for _, name := range []string{"water", "plate-and-began"} {
		text, err := os.ReadFile("../testdata/jobs/" + name + ".toml")
		require.NoError(t, err)
		all[name] = job.Parse(string(text)).Job()
	}
	delta := platedJob(t)
	delta.Old.Connection = layout.Delta
	all["delta"] = delta
	fewer := platedJob(t)
	fewer.Old.RatedAmps = quantity.Known(45)
	all["fewer amps"] = fewer
	slower := platedJob(t)
	slower.Old.RatedRPM, slower.Machine.ThermalClass = quantity.Known(4500), "H"
	all["slower, class H"] = slower
	for name, j := range all {
		j.Drive = job.DriveSpec{}
		rpm := j.Old.RatedRPM
		j.Target.SlowRPM, j.Target.UsualRPM, j.Target.TopRPM = rpm, rpm, rpm
		j.Machine.AmbientC = quantity.Known(40)
		j.Battery.ChargingVolts, j.Battery.CableM = j.Old.RatedVolts, quantity.Known(0)
		j.Trials = []job.Trial{{Name: "A", Wound: j.Old.Wound, Connection: j.Old.Connection, Circuits: j.Old.Circuits}}
		all[name] = j
	}
	return all
}

// Put back as it was, a winding withstands its own plate: at the plate's amps and speed it reaches
// exactly what its class allows, and its temperature limit there is the plate's amps, whether or not it
// has been run.
func TestTheOldWindingPutBackStandsItsPlate(t *testing.T) {
	for name, j := range asPlated(t) {
		t.Run(name, func(t *testing.T) {
			b := Prepare(j)
			o := b.Static(j.Trials[0])
			byTemperature := func(o *TrialOutcome) float64 {
				for _, l := range o.Each {
					if l.Name == limitTemperature {
						return l.AmpsDC.Value
					}
				}
				return math.NaN()
			}
			rated, rpm := j.Old.RatedAmps.Value, j.Old.RatedRPM.Value
			assert.InEpsilon(t, rated, byTemperature(&o), 1e-6, "not run")
			r, why := b.bed.charger(j.Trials[0], &o)
			require.NotNil(t, r, why)
			r.load.Volts, r.load.Ohms = j.Old.RatedVolts.Value, 0
			low, high := 0.3, 3.0 // the flux that brings the plate's amps, by bisection
			for range 40 {
				if middle := (low + high) / 2; r.excited(middle, r.field).at(rpm, 40).AmpsDC < rated {
					low = middle
				} else {
					high = middle
				}
			}
			p := r.excited(low, r.field).at(rpm, 40)
			require.InEpsilon(t, rated, p.AmpsDC, 1e-3)
			assert.InDelta(t, 40+b.air.class.RiseK(), p.WindingC, 1)
			run := b.Outcome().Trials[0]
			assert.InEpsilon(t, rated, byTemperature(&run), 0.015, "run")
		})
	}
}

// The watts at the plate are those of the true rms, hand-worked: with 0.742 A rms of one ampere
// DC, nearly the π/(3√2) of a sine, 60 A are 44.5 A in each of three phases of half of 0.173 Ω,
// at 145 °C by copper's 234.5. Blocks would have it cool better by what √(2/3) squared is over that.
func TestThePlatesCurrentIsTheBridges(t *testing.T) {
	j := platedJob(t)
	b := Prepare(j)
	form := b.bounds.form
	require.Empty(t, form.why)
	assert.InDelta(t, math.Pi/(3*math.Sqrt2), form.perDC, 0.01)
	copper := 3 * sq(60*form.perDC) * 0.173 / 2 * (234.5 + 145) / (234.5 + 20)
	other := 0.7*b.drag.at(6000) + 0.5*b.rotor.takes()
	assert.InEpsilon(t, 105/(copper+other), b.air.perWatt(6000), 1e-9)
	assert.Less(t, copper, 0.87*heat.HotWatts(j.Old.Metal, 3, 60*math.Sqrt(2.0/3), 0.173/2, 145))
}

// The plate applies at the alternator's posts: what the job has behind them, cable, battery and its
// volts, does not affect its form factor. Only if the plate has no volts are the job's used.
func TestThePlateIsReadAtItsPosts(t *testing.T) {
	j := platedJob(t)
	j.Old.RatedAmps, j.Old.RatedRPM = quantity.Known(12), quantity.Known(1200)
	want := Prepare(j).bounds.form.perDC
	require.Positive(t, want)
	j.Battery.ChargingVolts, j.Battery.Ohms = quantity.Known(16), quantity.Known(0.2)
	j.Battery.CableM, j.Battery.CableMM2 = quantity.Known(60), quantity.Known(1.5)
	assert.InDelta(t, want, Prepare(j).bounds.form.perDC, 1e-12)
	j.Old.RatedVolts = quantity.Reading{}
	assert.Greater(t, math.Abs(Prepare(j).bounds.form.perDC-want), 5e-4)
}

// Two equal sets are two machines in parallel: one of half the ohms and half the henries, behind diodes
// of half the slope, brings the plate's amps of both, and each set carries half of its rms. The flux is
// found by bisection.
func TestThePlateOfTwoSets(t *testing.T) {
	j := loadJob(t, "two-sets")
	j.Old.RatedAmps, j.Old.RatedVolts, j.Old.RatedRPM = quantity.Known(40), quantity.Known(14), quantity.Known(2000)
	j.Battery.DiodeOhms = quantity.Known(0.003)
	b := Prepare(j)
	form := b.bounds.form
	require.Empty(t, form.why)
	old := b.Static(job.Trial{Name: "old", Wound: j.Old.Wound, Connection: j.Old.Connection})
	hot := old.PhaseOhms20.Value * (234.5 + 20 + b.air.class.RiseK()) / 254.5
	low, high := 0.1, 10.0
	var both charge.Point
	for range 50 {
		flux := (low + high) / 2
		var err error
		both, err = charge.Solve(charge.Source{EMFPeak: flux * math.Sqrt2 * old.PhasePerRPM.Value * 2000, Hertz: 200, Ohms: hot / 2,
			Henries: old.PhaseMilliHenries.Value / 2000, Phases: 3}, charge.Load{Volts: 14, DiodeVolts: 0.8, DiodeOhms: 0.0015})
		require.NoError(t, err)
		if both.DCAmps < 40 {
			low = flux
		} else {
			high = flux
		}
	}
	require.InEpsilon(t, 40, both.DCAmps, 1e-6)
	assert.InEpsilon(t, both.PhaseAmpsRMS/2/40, form.perDC, 1e-3)
}

// A plate that cannot be run is taken in blocks, and says why.
func TestAPlateThatCannotBeRunIsTakenInBlocks(t *testing.T) {
	for name, spoil := range map[string]func(*job.Job){
		"no volts":     func(j *job.Job) { j.Spins = nil },
		"no flux near": func(j *job.Job) { j.Old.RatedAmps = quantity.Known(2000) },
	} {
		j := platedJob(t)
		spoil(&j)
		b := Prepare(j)
		require.NotEmpty(t, b.bounds.form.why, name)
		assert.Zero(t, b.bounds.form.perDC, name)
		rise := fromPlate(&b.machine, &b.old, &b.oldOhms, b.bounds.form, &b.drag, &b.rotor)
		require.True(t, rise.Known(), name)
		assert.Contains(t, rise.Why, "taken in blocks", name)
		watts := heat.HotWatts(j.Old.Metal, 3, j.Old.RatedAmps.Value*math.Sqrt(2.0/3), b.oldOhms.PhaseOhms20.Value, 145) + 0.7*b.drag.at(6000) + 0.5*b.rotor.takes()
		assert.InEpsilon(t, 105/watts, rise.Value, 1e-9, name)
	}
}

// A temperature limit is where the true rms makes the allowed heat, at more amps than by blocks where
// the current is nearly a sine: run there, the winding reaches what its class allows.
func TestTheLimitByTemperatureGoesUpWithTheForm(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/wind-good.toml")
	require.NoError(t, err)
	j := job.Parse(string(text)).Job()
	j.Machine.KelvinPerWatt = quantity.Known(0.9)
	b := Prepare(j)
	static, o := b.Static(j.Trials[0]), b.Outcome()
	a := &o.Trials[0]
	of := func(o *TrialOutcome) *Limit {
		for i := range o.Each {
			if o.Each[i].Name == limitTemperature {
				return &o.Each[i]
			}
		}
		return nil
	}
	was, now := of(&static), of(a)
	require.NotNil(t, now)
	assert.Greater(t, now.AmpsDC.Value, 1.02*was.AmpsDC.Value)
	assert.InEpsilon(t, was.AmpsDC.Value*was.sum.form, now.AmpsDC.Value*now.sum.form, 1e-9, "the same rms")
	assert.Contains(t, now.Reason, "true rms")
}

// The plate's form factor applies to a winding connected as the old one was; with another connection
// the current is taken in blocks, √(2/3) of an ampere DC in star, of which each of two sets carries
// half.
func TestThePlatesFormIsOfItsConnection(t *testing.T) {
	m := &machine{phases: 3, sets: 2}
	form := plateForm{perDC: 0.24, conn: layout.Delta}
	assert.InDelta(t, 0.24, form.at(m, layout.Delta), 0)
	assert.InEpsilon(t, math.Sqrt(2.0/3)/2, form.at(m, layout.Star), 1e-12)
	assert.InEpsilon(t, math.Sqrt(2.0/3)/2, plateForm{}.at(m, layout.Star), 1e-12)
}

// By hand: a density limit of 20 A DC is 20·√(2/3)/2 = 8.16 A rms in a phase of each of two sets. 9 A
// rms exceed it at 19 A DC already, 8 A do not.
func TestADensityOfTwoSetsIsPassedByItsRMS(t *testing.T) {
	m := &machine{phases: 3, sets: 2}
	l := &Limits{Each: []Limit{{Name: limitDensity, AmpsDC: quantity.Of(20)}}}
	assert.True(t, l.over(RunPoint{AmpsDC: 19, PhaseAmpsRMS: 9}, layout.Star, m))
	assert.False(t, l.over(RunPoint{AmpsDC: 19, PhaseAmpsRMS: 8}, layout.Star, m))
	assert.True(t, l.over(RunPoint{AmpsDC: 21, PhaseAmpsRMS: 8}, layout.Star, m))
}
