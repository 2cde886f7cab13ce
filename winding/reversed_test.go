package winding_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// storedJob is a job of testdata.
func storedJob(t *testing.T, name string) job.Job {
	t.Helper()
	text, err := os.ReadFile("../testdata/jobs/" + name + ".toml")
	require.NoError(t, err)
	d := job.Parse(string(text))
	require.Empty(t, d.Problems(), name)
	return d.Job()
}

// woundAs is a job with other windings: its own; one of 400 turns of hair-thin wire, which begins to
// charge at speeds for which nobody winds; the same on a stator of whose old winding nothing is known;
// or only the old winding.
func woundAs(t *testing.T, j job.Job, how string) job.Job {
	t.Helper()
	if strings.HasPrefix(how, "thin") {
		first := j.Trials[0]
		g, err := wiretable.Parse("32 AWG")
		require.NoError(t, err)
		first.Turns, first.Gauge, first.CoilTurns = quantity.Known(400), g, nil
		j.Trials = []job.Trial{first}
	}
	switch how {
	case "thin, old gone":
		j.Old, j.Spins = job.OldWinding{}, nil
		j.Field.GapTesla = quantity.Known(0.35)
	case "old alone":
		j.Trials = nil
	}
	return j
}

// backwards is a drive the other way round.
func backwards(d job.DriveSpec) job.DriveSpec {
	if d.Ratio.Given() {
		d.Ratio.Value = 1 / d.Ratio.Value
		return d
	}
	d.DriverMM, d.DrivenMM = d.DrivenMM, d.DriverMM
	return d
}

// Every kind of drive with each kind of winding: as stored, at 2.5 to 10.2 turns of the
// alternator for one of the drive, nothing is asked. Backwards, whatever is wound, the drive comes first of all findings and
// nothing is offered. (150 mm onto 60 mm is 2.5, 2.45 with the slip.)
func TestADriveBackwardsComesFirstWhateverIsWound(t *testing.T) {
	for drive, says := range map[string]string{
		"engine": "With the pulleys swapped it would be 2.45, and 5390", "water": "it would be 10.2, and 867",
		"pedals": "it would be 9, and 990", "wind-wound-rotor": "it would be 3, and 2406",
	} {
		for _, how := range []string{"own", "thin", "thin, old gone", "old alone"} {
			if drive == "pedals" && how == "old alone" {
				continue // nothing is known of it
			}
			name := drive + ", " + how
			right := woundAs(t, storedJob(t, drive), how)
			assert.Nil(t, winding.Evaluate(right).Reversed, name)
			wrong := right
			wrong.Drive = backwards(right.Drive)
			o := winding.Evaluate(wrong)
			if !assert.NotNil(t, o.Reversed, name) {
				continue
			}
			assert.Contains(t, o.Reversed.Check, says, name)
			first := o.Findings[0]
			assert.True(t, first.First && first.Severity == winding.Broken && first.Path == o.Reversed.Path, name)
			for i := range o.Trials {
				tr := &o.Trials[i]
				assert.Empty(t, tr.Better()+tr.InTheWay, name)
				assert.Nil(t, tr.Offer, name)
				assert.Nil(t, tr.Joints, name)
				if tr.Fits() {
					assert.True(t, strings.HasPrefix(tr.Verdict, "the drive is probably the wrong way round"), "%s: %s", name, tr.Verdict)
				}
			}
			for _, f := range o.Findings[1:] {
				assert.NotContains(t, f.Fix, "turns of", "%s: %s", name, f.Text)
			}
			bench := winding.Prepare(wrong)
			assert.Empty(t, bench.Elsewhere(0, bench.Ladder(0)), name)
			for _, r := range bench.Ladder(0) {
				assert.False(t, r.Meets || r.BestSlow || r.BestUsual || r.BestTop || r.BestYear || r.WhyBest != "", "%s: %s", name, r.Wire)
			}
		}
	}
}

// An engine at 3000 rpm, or a turbine, that is geared down to a winding which begins at some 400
// alternator rpm is as it should be, by any step at which that charges: with the old winding, which begins
// at 2110, and without. So is one of nearly equal pulleys, and a ratio that two tachometers read.
func TestADriveGearedDownOnPurposeIsNotAccused(t *testing.T) {
	for _, kind := range []string{"engine", "fixed", "water"} {
		for _, ratio := range []float64{0.2, 0.25, 0.3, 0.4, 0.5, 0.7, 0.9} {
			for _, old := range []bool{true, false} {
				for _, wanted := range []bool{true, false} {
					j := storedJob(t, "engine")
					g, err := wiretable.Parse("1.25 mm")
					require.NoError(t, err)
					j.Trials = j.Trials[:1]
					j.Trials[0].Turns, j.Trials[0].Gauge = quantity.Known(21), g
					j.Drive.Kind, j.Drive.DriverMM, j.Drive.DrivenMM, j.Drive.Ratio = kind, quantity.Reading{}, quantity.Reading{}, quantity.Known(ratio)
					j.Drive.SlowRPM, j.Drive.UsualRPM, j.Drive.TopRPM = quantity.Known(2700), quantity.Known(3000), quantity.Known(3600)
					if kind == "water" {
						j.Drive.TopRPM = quantity.Known(5400)
					}
					if !wanted {
						j.Target.Amps = quantity.Reading{}
					}
					if !old {
						j.Old, j.Spins, j.Field = job.OldWinding{}, nil, job.FieldSpec{Kind: job.FieldMagnets, GapTesla: quantity.Known(0.5)}
					}
					o := winding.Evaluate(j)
					name := fmt.Sprint(kind, ", ratio ", ratio, ", old winding ", old)
					require.InDelta(t, 400, o.Trials[0].CutInRPM.Value, 60, name)
					assert.Nil(t, o.Reversed, "%s, brings %v: %+v", name, o.Trials[0].AmpsUsual.Value, o.Reversed)
				}
			}
		}
	}
	read := storedJob(t, "engine")
	read.Drive = backwards(read.Drive)
	read.Drive.TachDriveRPM, read.Drive.TachAltRPM = quantity.Known(10), quantity.Known(4)
	assert.Nil(t, winding.Evaluate(read).Reversed, "two tachometer readings settle it")
	assert.NotNil(t, winding.Evaluate(read).Trials[0].Offer, "and then there is an offer")
	alike := storedJob(t, "water")
	alike.Drive.Ratio = quantity.Known(0.85) // reversed 1.18: 1.38 times as fast
	assert.Nil(t, winding.Evaluate(alike).Reversed, "nearly equal wheels")
}

// Before anything is read of a machine, wheels that slow an alternator down on legs, water or wind are
// asked about at their field, and so is nothing else: not an engine, nor a turbine that is fast itself.
func TestASlowDriveGearedDownIsAskedAtOnce(t *testing.T) {
	for _, c := range []struct {
		kind  string
		usual float64
		asked bool
	}{{job.DriveWind, 0, true}, {job.DrivePedals, 0, true}, {job.DrivePedals, 60, true}, {job.DriveWater, 500, true}, {job.DriveWater, 501, false}, {job.DriveEngine, 1200, false}, {job.DriveFixed, 60, false}} {
		var j job.Job
		j.Drive = job.DriveSpec{Kind: c.kind, Transmission: "belt", DriverMM: quantity.Known(60), DrivenMM: quantity.Known(300)}
		if c.usual > 0 {
			j.Drive.UsualRPM = quantity.Known(c.usual)
		}
		asked := false
		for _, f := range winding.Evaluate(j).Findings {
			asked = asked || f.Path == "drive.driver" && strings.Contains(f.Fix, "reversed? With the pulleys swapped it would be 4.9")
		}
		assert.Equal(t, c.asked, asked, "%+v", c)
	}
}
