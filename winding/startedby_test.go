package winding

import (
	"fmt"
	"strings"
	"testing"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// vane is a hub of magnets round iron teeth under a small rotor, with unmeasured drag.
func vane(t *testing.T) job.Job { return loadJob(t, "vane-on-a-mast") }

// turns integrates the shaft's motion in a wind by small time steps, from an initial alternator speed,
// rpm. It is independent of the operating-point solver.
func turns(t *testing.T, b *Bench, trial int, wind, rpm float64) float64 {
	given := b.drive.shaft.Torque(wind)
	step, before := 4.0, 0.0
	for range 4000 {
		run, why := b.RunAt(trial, rpm)
		require.Empty(t, why)
		way := 1.0
		if given(rpm) < run.TorqueNm {
			way = -1
		}
		if way == -before {
			step /= 2
		}
		if before, rpm = way, max(0.01, rpm+way*step); step < 1e-3 {
			break
		}
	}
	return rpm
}

// A drag that is only guessed holds the rotor at rest in the mean wind; a gust starts it, and then it
// keeps running. Condition, year, row and ladder are those of the running rotor, and what starts it is
// stated.
func TestWhatAGustStartsIsToldAsItTurns(t *testing.T) {
	j := vane(t)
	b := Prepare(j)
	o := b.Outcome()
	require.True(t, b.drag.origin.Weak())
	for i := range o.Trials {
		a := &o.Trials[i]
		p := a.in(usual)
		require.True(t, p.Gust, a.Name)
		assert.Less(t, turns(t, b, i, 4.5, 0.01), 40.0, "%s: from rest it hangs", a.Name)
		ran := turns(t, b, i, 4.5, turns(t, b, i, a.StartsAlone.Value, 0.01))
		assert.InDelta(t, ran, p.RPM, 0.02*ran, "%s: what a gust starts runs on", a.Name)
		hangs, _ := b.RunAt(i, turns(t, b, i, a.StartsAlone.Value-windStep, 0.01))
		assert.Zero(t, hangs.AmpsDC, "%s: half a metre a second less does not start it", a.Name)
		at, _ := b.RunAt(i, p.RPM)
		assert.InDelta(t, at.NetAmps, a.AmpsUsual.Value, 0.03*at.NetAmps+0.01, a.Name)
		assert.Positive(t, a.AmpsUsual.Value)
		assert.Equal(t, b.drive.year.LinesKWh(windsOfPoints(a), keptOf(a)), a.YearKWh.Value)
		for _, id := range []string{"amps_dc_usual", "net_w_usual", "efficiency_usual"} {
			f := OutputOf(id)
			assert.False(t, f.Past(&o, a), id)
		}
		said := findingOf(&o, a.Name, "a gust has to start it")
		assert.Equal(t, Doubt, said.Severity)
		assert.Contains(t, said.Text, fmt.Sprintf("in less than %.3g m/s: iron and drag, as they are guessed, hold it", a.StartsAlone.Value))
		assert.Contains(t, said.Fix, "measure the drag")
		assert.Equal(t, "machine.drag", said.Path)
		assert.Empty(t, findingOf(&o, a.Name, "nothing comes in").Text)
		assert.Contains(t, a.Suits, fmt.Sprintf("starts by itself from %.1f m/s", a.StartsAlone.Value))
	}
	assert.Contains(t, o.Trials[0].Verdict, fmt.Sprintf("once a gust has started it (by itself from %.3g m/s)", o.Trials[0].StartsAlone.Value))
}

func windsOfPoints(a *TrialOutcome) (list []float64) {
	for _, p := range a.Points {
		list = append(list, p.X)
	}
	return list
}

func keptOf(a *TrialOutcome) (list []float64) {
	for _, p := range a.Points {
		watts := max(0, p.NetWatts)
		if p.TooHot {
			watts = 0
		}
		list = append(list, watts)
	}
	return list
}

// findingOf is the first finding of a trial with some words in it.
func findingOf(o *Outcome, trial, words string) Finding {
	for _, f := range o.Findings {
		if f.Trial == trial && strings.Contains(f.Text, words) {
			return f
		}
	}
	return Finding{}
}

// Every rung of a ladder that charges in the mean wind does so where it turns, and one that meets the
// requirement brings something there; where no speed charges, nothing comes in.
func TestALadderIsOfRotorsThatTurn(t *testing.T) {
	b := Prepare(vane(t))
	gusts, nothing := 0, 0
	for _, r := range b.Ladder(0) {
		p := r.in(usual)
		stays := false
		for _, e := range append([]drive.Equilibrium{{RPM: p.RPM, Stable: true}}, p.Others...) {
			o := b.Static(r.Trial)
			run, why := b.bed.charger(r.Trial, &o)
			require.Empty(t, why)
			stays = stays || e.Stable && run.at(e.RPM, 20).AmpsDC > leastNet
		}
		assert.Equal(t, stays, r.AmpsUsual.Value > leastNet, r.Wire)
		switch {
		case p.Gust:
			gusts++
			assert.Equal(t, p.AmpsDC > 0, strings.Contains(r.Holds, "wind 4.5 m/s: once started, the "), r.Holds)
		case p.AmpsDC == 0:
			nothing++
			assert.False(t, r.Meets)
		}
	}
	assert.Positive(t, gusts)
	assert.Positive(t, nothing)
}

// The part of a year from winds in which the rotor must already be turning is stated, and equals the
// difference of two sums.
func TestOfAYearItIsSaidWhatHasToTurnAlready(t *testing.T) {
	o := Evaluate(vane(t))
	a := &o.Trials[0]
	watts := keptOf(a)
	for i, p := range a.Points {
		if p.X < a.StartsAlone.Value {
			watts[i] = 0
		}
	}
	year := drive.Rayleigh(4.5)
	lent := a.YearKWh.Value - year.LinesKWh(windsOfPoints(a), watts)
	require.Greater(t, lent, 10.0)
	assert.Contains(t, findingOf(&o, "A", "a gust has to start it").Text, fmt.Sprintf("%.0f of its %.0f kWh a year come in winds too weak to start it", lent, a.YearKWh.Value))
}

// Where the rotor starts by itself nothing of this is stated; nor where it never charges.
func TestWhatStartsByItselfNeedsNoGust(t *testing.T) {
	j := vane(t)
	j.Machine.IronWatts, j.Machine.IronRPM = quantity.Known(2), quantity.Known(300)
	o := Evaluate(j)
	a := &o.Trials[0]
	require.Positive(t, a.AmpsUsual.Value)
	assert.False(t, a.in(usual).Gust)
	assert.False(t, a.StartsAlone.Known())
	assert.Empty(t, findingOf(&o, "A", "gust").Text)
	assert.NotContains(t, a.Suits+a.Verdict, "gust")

	j.Machine.IronWatts = quantity.Known(60)
	o = Evaluate(j)
	a = &o.Trials[0]
	assert.Zero(t, a.AmpsUsual.Value)
	assert.True(t, OutputOf("amps_dc_usual").Past(&o, a))
	assert.NotEmpty(t, findingOf(&o, "A", "nothing comes in").Text+findingOf(&o, "A", "never charges").Text)
}

// If no wind starts it from rest, it is described as running only while the drag is a guess.
func TestAGuessAloneSaysNotThatItNeverStarts(t *testing.T) {
	j := vane(t)
	j.Machine.StackMM, j.Machine.BoreMM = quantity.Known(45), quantity.Known(150)
	j.Drive.RotorM, j.Drive.MeanWindMS = quantity.Known(1.2), quantity.Known(7.5)
	j.Trials[0].Turns = quantity.Known(6)
	b := Prepare(j)
	o := b.Outcome()
	a := &o.Trials[0]
	require.True(t, a.in(usual).Gust)
	assert.False(t, a.StartsAlone.Known())
	assert.Less(t, turns(t, b, 0, b.drive.furl, 0.01), a.in(usual).RPM/2)
	assert.Contains(t, findingOf(&o, "A", "a push has to start it").Text, "no gust takes it past that")
	assert.Contains(t, a.Verdict, "once a push has started it")

	j.Machine.IronWatts, j.Machine.IronRPM = quantity.Known(b.drag.watts), quantity.Known(b.drag.rpm)
	o = Evaluate(j)
	a = &o.Trials[0]
	assert.Zero(t, a.AmpsUsual.Value)
	assert.True(t, OutputOf("amps_dc_usual").Past(&o, a))
}
