package winding

import (
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A field current above all that were read makes volts and amps a guess, whatever is solved jointly;
// one within the readings does not, nor one for which a reading in service exists.
func TestAFieldBeyondTheReadingsIsAGuess(t *testing.T) {
	marked := func(change func(*job.Job)) (volts, flux quantity.Origin) {
		j := platedJob(t)
		change(&j)
		o := Evaluate(j)
		assert.True(t, o.Trials[0].AmpsUsual.Origin.Weak())
		return o.Trials[0].LinePer1000RPM.Origin, o.Machine.FluxMWb.Origin
	}
	noPlate := func(j *job.Job) { j.Old.RatedAmps = quantity.Reading{} }
	within := func(j *job.Job) { j.Field.Amps = quantity.Known(2.9) }
	for name, change := range map[string]func(*job.Job){
		"with the plate":              func(*job.Job) {},
		"without":                     noPlate,
		"one reading, with the plate": func(j *job.Job) { j.Spins = j.Spins[1:] },
		"one reading, without":        func(j *job.Job) { j.Spins = j.Spins[1:]; noPlate(j) },
	} {
		volts, flux := marked(change)
		assert.True(t, volts.Weak(), name)
		assert.True(t, flux.Weak(), name)
	}
	volts, flux := marked(within)
	assert.False(t, volts.Weak())
	assert.False(t, flux.Weak())
	volts, _ = marked(func(j *job.Job) { within(j); noPlate(j) })
	assert.False(t, volts.Weak())
}

// If nothing gives the flux, each way to it is named.
func TestEveryWayToTheFluxIsNamed(t *testing.T) {
	j := platedJob(t)
	j.Spins = nil
	why := Evaluate(j).Machine.FluxMWb.Why
	for _, way := range []string{"spin-up", "began to charge", "trial coil", "gap flux density", "magnets"} {
		assert.True(t, strings.Contains(why, way), "%s: %s", way, why)
	}
	j.Old.CutInRPM = quantity.Known(960)
	o := Evaluate(j)
	require.True(t, o.Machine.FluxMWb.Known())
	assert.Contains(t, o.Machine.FluxFrom, "began to charge")
}

// A drive that holds its speed still counts as holding it where the amps, at the top of their ±, would
// overload it: its speed is as accurate as ratio and tachometer. Amps have a ± wherever the drive holds
// the speed, at all three.
func TestASpeedThatIsHeldIsNoGuess(t *testing.T) {
	j := platedJob(t)
	j.Drive.UsualRPM = quantity.Known(2200)
	tight := Evaluate(j).Trials[0].in(usual).DriveWatts
	j.Drive.Watts = quantity.Known(1.02 * tight) // at 2200 rpm, and the amps are good to a fifth
	o := Evaluate(j)
	a := &o.Trials[0]
	require.False(t, a.in(usual).HeldBack)
	require.Greater(t, a.AmpsUsual.PlusMinus, 0.05*a.AmpsUsual.Value)
	assert.Zero(t, a.RunsUsual.PlusMinus)
	for i, f := range []quantity.Figure{a.AmpsSlow, a.AmpsUsual, a.AmpsTop, a.BridgeSlow, a.BridgeTop} {
		assert.Greater(t, f.PlusMinus, 0.02*f.Value, "%d", i)
		assert.Less(t, f.PlusMinus, 0.5*f.Value, "%d", i)
	}
	j.Drive.DriverMM.PlusMinus = 1.5 // of 150
	a = &Evaluate(j).Trials[0]
	assert.InEpsilon(t, 0.01*a.RunsUsual.Value, a.RunsUsual.PlusMinus, 0.02)
}

// Two conditions at one speed show the same amps with the same ±.
func TestTheSameConditionIsAsGood(t *testing.T) {
	a := &Evaluate(platedJob(t)).Trials[0]
	require.Positive(t, a.AmpsSlow.PlusMinus)
	assert.Equal(t, a.AmpsUsual.PlusMinus, a.AmpsSlow.PlusMinus)
}
