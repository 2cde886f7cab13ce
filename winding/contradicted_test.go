package winding

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// A short circuit and a bridge that differ by more than a third mark the inductance they leave, and
// what follows from it; one of the two alone, or both agreeing, does not.
func TestInductanceIsMarkedWhenItsReadingsPart(t *testing.T) {
	weak := func(change func(*job.Job)) bool {
		j := loadJob(t, "engine-alternator-short")
		change(&j)
		f := Evaluate(j).Trials[0].PhaseMilliHenries
		assert.True(t, f.Known())
		return f.Origin == quantity.Guessed
	}
	read := Prepare(loadJob(t, "engine-alternator-short")).henries
	apart := read.bridgeHenries().Value / read.shortHenries().Value
	bridge := func(times float64) func(*job.Job) {
		return func(j *job.Job) { j.Old.LeadMilliHenries.Value *= times / apart }
	}
	assert.True(t, weak(bridge(apart)), "as it was read")
	assert.False(t, weak(func(j *job.Job) { j.Old.LeadMilliHenries = quantity.Reading{} }))
	for times, marked := range map[float64]bool{0.7: true, 0.8: false, 1.3: false, 1.4: true} {
		assert.Equal(t, marked, weak(bridge(times)), "%g", times)
	}
}

// A slot that the old winding cannot have been in marks every fill, and no longer does once the old
// turns are corrected.
func TestFillIsMarkedWhenTheOldWindingCannotHaveBeenIn(t *testing.T) {
	j := loadJob(t, "round-slots")
	j.Slot.LinerMM, j.Slot.WedgeMM = quantity.Known(0.3), quantity.Known(0)
	j.Old.Wound = j.Trials[0].Wound
	b := Prepare(j)
	assert.Equal(t, quantity.Derived, b.Outcome().Trials[0].WireFill.Origin)
	turns := j.Old.Turns
	j.Old.Turns = quantity.Known(100 * turns.Value)
	b = b.With(j)
	assert.Equal(t, quantity.Guessed, b.Outcome().Trials[0].WireFill.Origin)
	j.Old.Turns = turns
	assert.Equal(t, quantity.Derived, b.With(j).Outcome().Trials[0].WireFill.Origin)
}

// A frequency that belongs to another machine marks the poles and what depends on them; one of these
// poles does not.
func TestPolesAreMarkedWhenAFrequencyContradictsThem(t *testing.T) {
	j := loadJob(t, "star-diodes")
	j.Spins[0].RPM = quantity.Known(600)
	for hertz, marked := range map[float64]bool{600 * j.Machine.Poles.Value / 120: false, 600 * (j.Machine.Poles.Value + 2) / 120: true} {
		j.Spins[0].Hertz = quantity.Known(hertz)
		o := Evaluate(j)
		assert.Equal(t, marked, o.Machine.HertzPerRPM.Origin == quantity.Guessed, "%g Hz", hertz)
	}
}

// Plate amps that the old winding's volts cannot drive through its ohms mark the limit that depends on
// them.
func TestPlateIsMarkedWhenTheReadingsContradictIt(t *testing.T) {
	j := loadJob(t, "star-diodes")
	j.Old.RatedRPM = quantity.Known(3000)
	for amps, marked := range map[float64]bool{30: false, 3000: true} {
		j.Old.RatedAmps = quantity.Known(amps)
		b := Prepare(j)
		assert.Equal(t, marked, b.old.RatedAmps.Origin == quantity.Guessed, "%g A", amps)
	}
}
