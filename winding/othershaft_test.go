package winding

import (
	"fmt"
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// twoSpeeds is what is called out of a trial that can stay at two speeds; nothing where nothing is.
func twoSpeeds(o *Outcome, trial string) (said Finding) {
	for _, f := range o.Findings {
		if f.Trial == trial && len(f.Text) > 24 && f.Text[:24] == "it can stay at two speed" {
			said = f
		}
	}
	return said
}

// holdsThere checks a trial's other balance against the torques themselves: given and taken agree there
// and hold it; between it and the one shown they agree at an unstable speed.
func holdsThere(t *testing.T, b *Bench, trial int, other *otherSpeed) {
	t.Helper()
	given := b.drive.given(b.drive.conditions[other.condition].X.Value)
	over := func(rpm float64) float64 {
		run, why := b.RunAt(trial, rpm)
		require.Empty(t, why)
		return given(rpm) - run.TorqueNm
	}
	assert.InDelta(t, 0, over(other.rpm), 5e-3*given(other.rpm))
	assert.Greater(t, over(other.rpm*0.98), 0.0)
	assert.Less(t, over(other.rpm*1.02), 0.0)
	assert.InDelta(t, 0, over(other.past), 5e-3*given(other.past))
	assert.Less(t, over(other.past*0.98), 0.0)
	assert.Greater(t, over(other.past*1.02), 0.0)
	run, _ := b.RunAt(trial, other.rpm)
	assert.InDelta(t, run.NetAmps, other.net, 0.02)
}

// An engine of 600 W at 1500 rpm turns B at 3000 rpm, twice that at the alternator, with 1168 of the 1200 W
// that it gives there. From rest with the field on it stays at 426 rpm, where it takes 170 W.
func TestAnEngineThatDoesNotComeToItsSpeed(t *testing.T) {
	b := Prepare(job.Parse(onBattery).Job()).WithoutOffers()
	o := b.Outcome()
	a := &o.Trials[1]
	p, other := a.in(top), a.other
	require.NotNil(t, other)
	require.Equal(t, top, other.condition)
	assert.False(t, p.HeldBack)
	assert.InDelta(t, 3000, p.DriveRPM, 0.5)
	assert.InDelta(t, 426, other.rpm/2, 1)
	holdsThere(t, b, 1, other)
	said := twoSpeeds(&o, "B")
	assert.Contains(t, said.Text, "(engine 3000 rpm): up to speed before the field is switched on it runs at 3000 rpm of the engine, "+netSaid(p.NetAmps))
	assert.Contains(t, said.Text, "from rest with it on it comes no further than 426")
	assert.Contains(t, said.Text, netSaid(other.net)+": in between it asks for more than is given")
	assert.Equal(t, fmt.Sprintf("the field switched on only past %.0f alternator rpm", other.past), said.Fix)
	require.Len(t, p.Others, 2)
	assert.InDelta(t, other.rpm, p.Others[0].RPM, 1e-6)
	assert.InDelta(t, other.past, p.Others[1].RPM, 1e-6)
	assert.True(t, p.Others[0].Stable)
	assert.False(t, p.Others[1].Stable)

	// Where it is held back from the start there is nothing above to come to, and A has one balance.
	assert.Empty(t, a.in(usual).Others)
	assert.Nil(t, o.Trials[0].other)
	assert.Empty(t, twoSpeeds(&o, "A").Text)
	strong := readBattery(t, func(j *job.Job) { j.Drive.Watts = quantity.Known(3000) })
	assert.Nil(t, strong.Trials[1].other, "more power passes the hump")
	assert.Empty(t, strong.Trials[1].in(top).Others)
}

// Magnets have no field to switch: it is the battery that is joined at speed.
func TestMagnetsAreJoinedAtSpeed(t *testing.T) {
	o := readBattery(t, func(j *job.Job) {
		j.Spins, j.Shorts = nil, nil
		j.Field = job.FieldSpec{Kind: job.FieldMagnets, GapTesla: quantity.Known(0.4)}
		j.Old.LeadMilliHenries = quantity.Known(0.7)
		j.Drive.Watts = quantity.Known(600)
	})
	said := twoSpeeds(&o, "B")
	assert.Contains(t, said.Text, "up to speed before the battery is joined it runs at 3000 rpm")
	assert.Contains(t, said.Fix, "the battery joined only past ")
}

// Legs and water settle from rest: the slower balance is shown, with how the faster one is reached.
func TestAWheelThatMayRunFaster(t *testing.T) {
	d := job.Parse(onBattery)
	j := d.Job()
	point := func(rpm, watts float64) job.PowerPoint {
		return job.PowerPoint{RPM: quantity.Known(rpm), Watts: quantity.Known(watts)}
	}
	j.Drive.Kind, j.Drive.Points = job.DriveWater, []job.PowerPoint{point(100, 40), point(1500, 600), point(3000, 1250), point(3600, 300)}
	b := Prepare(j).WithoutOffers()
	o := b.Outcome()
	a := &o.Trials[1]
	p, other := a.in(usual), a.other
	require.NotNil(t, other)
	require.Equal(t, usual, other.condition)
	assert.Greater(t, other.rpm, p.RPM)
	assert.Greater(t, other.net, 2*p.NetAmps)
	holdsThere(t, b, 1, other)
	said := twoSpeeds(&o, "B")
	assert.Contains(t, said.Text, "from rest it comes to ")
	assert.Contains(t, said.Text, "which is what is told here; at ")
	assert.Equal(t, fmt.Sprintf("the field switched on only past %.0f alternator rpm: it goes on to the faster", other.past), said.Fix)
	stable := 0
	for _, e := range p.Others {
		if e.Stable {
			stable++
		}
	}
	assert.Equal(t, 1, stable)
	assert.IsType(t, []drive.Equilibrium{}, p.Others)
}
