package winding

import (
	"fmt"
	"math"
	"testing"

	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hidden is a machine by its numbers: V rms per rpm, ohms and henries of a phase with all sets carrying
// current, and how many windings of how many phases it has, each on its own rectifier.
type hidden struct {
	perRPM, ohms, henries float64
	phases, sets          int
	poles                 float64
	way                   charge.Rectifier
}

func (h hidden) hertz(rpm float64) float64 { return rpm * h.poles / 120 }

// into is its amps into a held voltage, all sets together.
func (h hidden) into(t *testing.T, rpm, volts float64) float64 {
	t.Helper()
	p, err := charge.Solve(charge.Source{EMFPeak: math.Sqrt2 * h.perRPM * rpm, Hertz: h.hertz(rpm), Ohms: h.ohms, Henries: h.henries, Phases: h.phases},
		charge.Load{Volts: volts, DiodeVolts: 0.7, Rectifier: h.way})
	require.NoError(t, err)
	return p.DCAmps * float64(h.sets)
}

// short is its amps in a lead with a part of its inductance in the way.
func (h hidden) short(rpm, part float64) float64 {
	return h.perRPM * rpm / math.Hypot(h.ohms, 2*math.Pi*h.hertz(rpm)*h.henries*part)
}

// read is the job of a person who read amps at 1.25, 2 and 4 times cut-in and a short circuit.
func (h hidden) read(t *testing.T, word string, part, setsJoined float64) job.Job {
	t.Helper()
	j := job.Job{}
	j.Machine.Phases, j.Machine.Poles = quantity.Known(float64(h.phases)), quantity.Known(h.poles)
	j.Field.Kind = "magnets"
	j.Old.Turns = quantity.Known(100)
	lead := 2.0
	if h.phases == 1 {
		lead = 1
	}
	j.Old.LeadOhms = quantity.Known(lead * h.ohms)
	j.Battery.Chemistry, j.Battery.RestVolts, j.Battery.ChargingVolts, j.Battery.AbsorptionVolts = "custom", quantity.Known(12.6), quantity.Known(13.4), quantity.Known(14.4)
	j.Battery.FloatVolts, j.Battery.DiodeVolts, j.Battery.DiodeOhms, j.Battery.Rectifier = quantity.Known(13.8), quantity.Known(0.7), quantity.Known(0), word
	peak := math.Sqrt2 * h.perRPM
	switch {
	case h.phases == 3:
		peak *= math.Sqrt(3)
	case h.way == charge.Doubler:
		peak *= 2
	}
	cutIn := (13.4 + h.way.InLoop()*0.7) / peak
	for _, x := range []float64{1.25, 2, 4} {
		j.Amps = append(j.Amps, job.AmpsReading{RPM: quantity.Known(x * cutIn), Amps: quantity.Known(h.into(t, x*cutIn, 13.4)), Volts: quantity.Known(13.4)})
	}
	j.Shorts = []job.ShortReading{{RPM: quantity.Known(3 * cutIn), LineAmps: quantity.Known(h.short(3*cutIn, part))}}
	if setsJoined > 0 {
		j.Shorts[0].Sets = quantity.Known(setsJoined)
	}
	j.Trials = []job.Trial{{Name: "A", Wound: j.Old.Wound}}
	return j
}

// found compares the outcome with the machine.
func (h hidden) found(t *testing.T, j job.Job) {
	t.Helper()
	o := Evaluate(j)
	a := o.Trials[0]
	assert.Contains(t, a.InductanceFrom, "solved together", "%v", o.Findings)
	assert.InEpsilon(t, h.perRPM, a.PhasePerRPM.Value, 0.01)
	assert.InEpsilon(t, h.henries*1000, a.PhaseMilliHenries.Value, 0.04)
	for _, f := range o.Findings {
		assert.NotContains(t, f.Text, "not used")
		assert.NotContains(t, f.Text, "does not agree")
	}
}

// Half wave, doubler and two phases, each on a bridge of its own, are solved jointly like a bridge of
// three phases: the volts and henries that made the readings are recovered.
func TestEveryRectifierIsSolvedTogether(t *testing.T) {
	one := hidden{perRPM: 0.02, ohms: 0.4, henries: 2e-3, phases: 1, sets: 1, poles: 8}
	for word, way := range map[string]charge.Rectifier{"bridge": charge.Bridge, "half-wave": charge.HalfWave, "doubler": charge.Doubler} {
		t.Run(word, func(t *testing.T) {
			h := one
			h.way = way
			h.found(t, h.read(t, word, 1, 0))
		})
	}
	two := one
	two.sets = 2
	j := two.read(t, "bridge", 1, 0)
	j.Machine.Phases = quantity.Known(2)
	two.found(t, j)
}

// twoSets is 48 slots on 8 poles in two sets of q = 1: with both carrying current they come to
// 2.046 working waves of one (layout/gapwaves.go), one alone to π²/9.
func twoSets(t *testing.T, setsJoined float64) (hidden, job.Job) {
	t.Helper()
	h := hidden{perRPM: 0.012, ohms: 0.08, henries: 0.4e-3, phases: 3, sets: 2, poles: 8}
	part := 1.0
	if setsJoined == 1 {
		part = math.Pi * math.Pi / 9 / 2.046
	}
	j := h.read(t, "bridge", part, setsJoined)
	j.Machine.Slots, j.Machine.Span, j.Machine.Sets = quantity.Known(48), quantity.Known(6), quantity.Known(2)
	return h, j
}

// A short circuit of one set with the other idle enters the solution as the part of the inductance that
// it meets, and one of both as all of it. Taken for the other it contradicts.
func TestOneSetShortedIsSolvedWithTheRest(t *testing.T) {
	for _, sets := range []float64{1, 2} {
		h, j := twoSets(t, sets)
		h.found(t, j)
		j.Shorts[0].Sets.Value = 3 - sets
		o := Evaluate(j)
		assert.Regexp(t, "disagrees with the others|contradict each other", fmt.Sprint(o.Findings), "%g sets joined, %g said", sets, 3-sets)
	}
}

// A bridge on one lead against two joined, on the star point, on two leads: one machine. With
// the other set's leads joined it is not used, and that is said.
func TestBridgeSaysItsLeads(t *testing.T) {
	j := job.Example().Job()
	j.Shorts, j.Old.RatedAmps = nil, quantity.Reading{}
	j.Old.Connection = 0
	j.Old.LeadMilliHenries = quantity.Known(0.6)
	two := Prepare(j).henries.bridgeHenries()
	assert.InEpsilon(t, 0.3e-3, two.Value, 1e-12)
	j.Old.LeadMilliHenries, j.Old.BridgeLeads = quantity.Known(0.45), job.BridgeOneTwo
	assert.InEpsilon(t, two.Value, Prepare(j).henries.bridgeHenries().Value, 1e-12)

	b := Prepare(j)
	share, ok := b.henries.alikeShare(&b.old.candidate)
	require.True(t, ok)
	require.Greater(t, share, 0.0)
	j.Old.LeadMilliHenries, j.Old.BridgeLeads = quantity.Known(0.3*(2+share)/3), job.BridgeStar
	assert.InEpsilon(t, two.Value, Prepare(j).henries.bridgeHenries().Value, 1e-12)

	blank := j
	blank.Machine.Slots = quantity.Reading{}
	assert.Contains(t, Prepare(blank).henries.bridgeHenries().Why, "needs the number of slots and poles: the bridge was on one phase alone")
	blank.Old.LeadMilliHenries, blank.Old.BridgeLeads = quantity.Known(0.6), ""
	assert.InEpsilon(t, two.Value, Prepare(blank).henries.bridgeHenries().Value, 1e-12, "between two leads no layout is asked for")

	j.Machine.Sets, j.Old.OtherSet = quantity.Known(2), job.OtherJoined
	o := Evaluate(j)
	said := ""
	for _, f := range o.Findings {
		if f.Path == "old.inductance" {
			said = f.Text
		}
	}
	assert.Contains(t, said, "the other set's leads were joined")
}

// The old winding's ohms are not among the readings solved; their ± moves the fit all the same, so that
// volts and inductance are off together with them as they would be.
func TestOhmsMoveWhatIsFound(t *testing.T) {
	h := hidden{perRPM: 0.02, ohms: 0.4, henries: 2e-3, phases: 1, sets: 1, poles: 8}
	j := h.read(t, "bridge", 1, 0)
	sure := Evaluate(j).Trials[0]
	j.Old.LeadOhms.PlusMinus = 0.04
	unsure := Evaluate(j).Trials[0]
	again := j
	again.Old.LeadOhms = quantity.Known(0.44)
	moved := Evaluate(again).Trials[0]
	added := math.Sqrt(sq(unsure.PhaseMilliHenries.PlusMinus) - sq(sure.PhaseMilliHenries.PlusMinus))
	assert.InEpsilon(t, math.Abs(moved.PhaseMilliHenries.Value-sure.PhaseMilliHenries.Value), added, 0.3, "as a solution with those ohms has it")
}

// The plate's amps with a resistor for a load and no volts on the plate say nothing of the
// inductance: at 0 V they would be a short circuit.
func TestPlateWithoutVolts(t *testing.T) {
	j := job.Example().Job()
	j.Shorts, j.Amps = nil, nil
	j.Old.RatedVolts = quantity.Reading{}
	known := Prepare(j).henries.plateHenries()
	require.True(t, known.Known(), known.Why)
	j.Battery.Load, j.Battery.ResistorOhms = "resistor", quantity.Known(1.5)
	none := Prepare(j).henries.plateHenries()
	assert.False(t, none.Known())
	assert.Contains(t, none.Why, "plate's volts")
}

// A wound rotor of one phase feeding itself: by hand, from the residual flux alone it builds up
// where the mean behind the diodes passes brushes and diodes. A bridge has 2/π of the peak and
// two diodes, half wave 1/π and one, a doubler twice the peak and two.
func TestSelfExcitationBehindEveryRectifier(t *testing.T) {
	build := map[string]float64{}
	for _, word := range []string{"bridge", "half-wave", "doubler"} {
		j := job.Example().Job()
		j.Machine.Phases, j.Battery.Rectifier = quantity.Known(1), word
		j.Battery.DiodeVolts, j.Field.Brush = quantity.Known(0.7), quantity.Known(1)
		j.Spins = append(j.Spins, job.SpinReading{RPM: quantity.Known(1200), LineVolts: quantity.Known(0.6), FieldAmps: quantity.Known(0)})
		f := Evaluate(j).Trials[0].ExciteBuildRPM
		require.True(t, f.Known(), f.Why)
		build[word] = f.Value
	}
	assert.InEpsilon(t, 1.7/2.4*2, build["half-wave"]/build["bridge"], 1e-6)
	assert.InEpsilon(t, 2/math.Pi/2, build["doubler"]/build["bridge"], 1e-6)
}

// Volts read at half of the field current that the rotor has while it charges: the amps say what
// they are in service, and the reading, carried there by an assumed curve, neither drags them off
// nor is passed over in silence. The iron here is Froelich's with I0 = 3 A: at 2 A of 4 it has 0.7
// of the flux, where half full iron would have 3/4.
func TestVoltsAtAnotherFieldCurrent(t *testing.T) {
	h := hidden{perRPM: 0.012, ohms: 0.08, henries: 0.4e-3, phases: 3, sets: 1, poles: 12}
	j := h.read(t, "bridge", 1, 0)
	j.Shorts = nil
	j.Field = job.FieldSpec{Kind: "wound", Amps: quantity.Known(4), Ohms: quantity.Known(2.5)}
	j.Spins = []job.SpinReading{{RPM: quantity.Known(2000), LineVolts: quantity.Known(0.7 * 0.012 * 2000 * math.Sqrt(3)), FieldAmps: quantity.Known(2)}}
	o := Evaluate(j)
	a := o.Trials[0]
	assert.InEpsilon(t, 0.012, a.PhasePerRPM.Value, 0.02)
	assert.InEpsilon(t, 0.4, a.PhaseMilliHenries.Value, 0.05)
	assert.InDelta(t, 4, o.Machine.FieldAmps.Value, 1e-12)

	alone := j
	alone.Amps = nil
	alone.Shorts = []job.ShortReading{{RPM: quantity.Known(2000), LineAmps: quantity.Known(h.short(2000, 1) / 2), FieldAmps: quantity.Known(2)}}
	b := Evaluate(alone)
	one := b.Trials[0]
	assert.InEpsilon(t, 0.7*4.0/3*0.012, one.PhasePerRPM.Value, 1e-3)
	assert.Greater(t, one.PhasePerRPM.PlusMinus/one.PhasePerRPM.Value, 0.35)
	assert.Contains(t, fmt.Sprint(b.Findings), "read at 2 A of field and the rotor will take 4 A")
	// Leads joined, the volts cancel: amps in proportion to the field are what is predicted.
	z := math.Hypot(0.08, 2*math.Pi*200*one.PhaseMilliHenries.Value/1000)
	assert.InEpsilon(t, h.short(2000, 1), one.PhasePerRPM.Value*2000/z, 0.01)
}

// BenchmarkPrepareWithReadings is Prepare where volts, short circuit and amps are solved together.
func BenchmarkPrepareWithReadings(b *testing.B) {
	d, _, err := job.Load("../testdata/jobs/amps-readings.toml")
	require.NoError(b, err)
	j := d.Job()
	for b.Loop() {
		Prepare(j)
	}
}
