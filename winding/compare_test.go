package winding_test

import (
	"fmt"
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func rowOf(t *testing.T, o *winding.Outcome, id string) winding.Row {
	t.Helper()
	for _, r := range o.Comparison {
		if r.ID == id {
			return r
		}
	}
	t.Fatalf("no row %s", id)
	return winding.Row{}
}

// Each row knows which side is better, how far, and what is past a limit.
func TestVerdicts(t *testing.T) {
	j := ready()
	j.Slot.AreaMM2 = quantity.Known(60)
	j.Target.SlowRPM = quantity.Known(10000) // so that no cut-in is past it
	b := j.Trials[0]
	b.Name, b.Turns = "B", quantity.Known(12)
	j.Trials = append(j.Trials, b)
	o := winding.Evaluate(j)
	cut := rowOf(t, &o, "cut_in_rpm").Cells
	assert.Equal(t, winding.Unsaid, cut[0].Verdict, "the reference itself")
	assert.Equal(t, winding.Better, cut[1].Verdict, "it charges earlier")
	assert.InEpsilon(t, 100*(10.0/12-1), cut[1].Percent.Value, 1e-9)
	assert.InEpsilon(t, o.Trials[1].CutInRPM.Value-o.Trials[0].CutInRPM.Value, cut[1].Difference.Value, 1e-12)
	assert.Equal(t, winding.Worse, rowOf(t, &o, "lead_ohms_20c").Cells[1].Verdict)
	assert.Equal(t, winding.Better, rowOf(t, &o, "copper_per_slot_mm2").Cells[1].Verdict)
	assert.Equal(t, winding.Unsaid, rowOf(t, &o, "mean_turn_mm").Cells[1].Verdict, "no better side")
	assert.Equal(t, winding.Same, rowOf(t, &o, "kw1").Cells[1].Verdict)
	assert.False(t, rowOf(t, &o, "winding_c_top").Cells[1].Percent.Known(), "a percentage of °C means nothing")

	j.Trials[1].Turns = quantity.Known(10.02) // a fifth of a percent
	o = winding.Evaluate(j)
	assert.Equal(t, winding.Same, rowOf(t, &o, "lead_ohms_20c").Cells[1].Verdict)
	j.Trials[1].Turns = quantity.Known(11)
	j.Target.SlowRPM = quantity.Known(1)
	j.Target.Reference = "B"
	o = winding.Evaluate(j)
	assert.Equal(t, 1, o.Reference)
	assert.Equal(t, winding.Past, rowOf(t, &o, "cut_in_rpm").Cells[0].Verdict)
}

// finding looks for one at a path.
func finding(o *winding.Outcome, path string) *winding.Finding {
	for i := range o.Findings {
		if o.Findings[i].Path == path {
			return &o.Findings[i]
		}
	}
	return nil
}

// Findings appear exactly at their limits: nothing just inside, a finding just outside.
func TestLimitsAreCalledOutWhereTheyLie(t *testing.T) {
	j := ready()
	j.Slot.AreaMM2 = quantity.Known(60)
	fits := winding.Evaluate(j).Trials[0].TurnsThatFit.Value
	j.Trials[0].Turns = quantity.Known(fits)
	o := winding.Evaluate(j)
	assert.NotEqual(t, winding.Broken, severity(finding(&o, "trial[0].turns")))
	j.Trials[0].Turns = quantity.Known(fits + 1)
	o = winding.Evaluate(j)
	assert.Equal(t, winding.Broken, severity(finding(&o, "trial[0].turns")))

	j = ready()
	j.Slot.AreaMM2 = quantity.Known(60)
	over := winding.Evaluate(j).Trials[0].OverallMM.Value
	j.Slot.LinerMM = quantity.Known(0.2)
	j.Slot.MouthMM = quantity.Known(over + 0.45)
	o = winding.Evaluate(j)
	spare := o.Trials[0].MouthSpareMM.Value
	assert.Greater(t, spare, 0.0)
	assert.Less(t, spare, 0.05, "the liner takes its thickness on both sides, and the wire may be as thick as its tolerance lets it")
	wide := len(o.Findings)
	j.Slot.MouthMM = quantity.Known(over + 0.35)
	o = winding.Evaluate(j)
	assert.Greater(t, len(o.Findings), wide)
}

func severity(f *winding.Finding) winding.Severity {
	if f == nil {
		return winding.Note
	}
	return f.Severity
}

// Spools are whole and enough; the seconds without cooling go with one over the density
// squared (IEC 60949).
func TestSpoolsAndSeconds(t *testing.T) {
	j := ready()
	j.Target.SpoolKg = quantity.Known(0.05)
	a := evaluateA(j)
	n := a.Buy[0].Spools.Value
	assert.Equal(t, math.Ceil(a.Buy[0].Kg.Value/0.05), n)
	density := a.DensityPerAmp.Value * a.LimitAmps.Value
	require.True(t, a.HotUsualC.Known())
	// From the temperature it has.
	want := math.Log((234.5+130)/(234.5+a.HotUsualC.Value)) * 385 * 8890 * 254.5 / (sq(density*1e6) * 1.7241e-8)
	require.True(t, a.SecondsToClass.Known())
	assert.InEpsilon(t, want, a.SecondsToClass.Value, 0.01)
}

func sq(v float64) float64 { return v * v }

// Volts of a wound rotor and where it begins to charge are for one current, which their meaning names;
// magnets have none.
func TestMeaningNamesTheRotorsCurrent(t *testing.T) {
	j := load(t, "wind-wound-rotor.toml")
	o := winding.Evaluate(j)
	for _, id := range []string{"volts_line_rms_per_1000rpm", "cut_in_rpm"} {
		r := o.Row(winding.OutputOf(id), false)
		assert.Contains(t, r.Help, fmt.Sprintf("With %.3g A in the rotor.", o.Machine.FieldAmps.Value), id)
		o.Machine.FieldAmps = quantity.Missing("magnets")
		assert.NotContains(t, o.Row(winding.OutputOf(id), false).Help, "in the rotor", id)
		o = winding.Evaluate(j)
	}
}
