package wound_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// checkOf is the check of a field of a record.
func checkOf(t *testing.T, r *wound.Record, field string) wound.Check {
	t.Helper()
	for _, c := range r.Checks() {
		if c.Field == field {
			return c
		}
	}
	require.Fail(t, field)
	return wound.Check{}
}

// asRead is the example's trial A with typed readings, over a plan of 3.27 Ω and 48 V.
func asRead(t *testing.T, ohms, volts [3]float64) (*wound.Record, winding.Outcome) {
	t.Helper()
	for i := range 3 {
		ohms[i] /= 3.27
		volts[i] /= 48
	}
	j := job.Example().Set("machine.mean_turn", "185", quantity.Choice{}).Job()
	j.Trials = j.Trials[:1]
	made := winding.Evaluate(j).Trials[0]
	r := job.AsWound{Trial: made.Name, LeadOhmsC: quantity.Known(20), RPM: quantity.Known(1000)}
	for i := range 3 {
		r.LeadPairs, r.LeadOhms = append(r.LeadPairs, ohms[i]*made.LeadOhms20.Value), quantity.Known(r.LeadOhms.Value+ohms[i]*made.LeadOhms20.Value/3)
		r.LinePairs, r.LineVolts = append(r.LinePairs, volts[i]*made.LinePerRPM.Value*1000), quantity.Known(r.LineVolts.Value+volts[i]*made.LinePerRPM.Value*1000/3)
	}
	j.AsWound = []job.AsWound{r}
	o := winding.Evaluate(j)
	return &o.Wound[0], o
}

// saidAt are the findings at a path, in one text.
func saidAt(o *winding.Outcome, path string) (text string) {
	for _, f := range o.Findings {
		if f.Path == path {
			text += f.Text + "; " + f.Fix + "\n"
		}
	}
	return text
}

// Readings of faulty stators: none is proved, each is reported at its field, and phase and fault are
// named. Half a coil of six missing leaves 11/12 of phase V, so that (1 + 11/12)/2 of 3.24 are 3.11; a
// coil of six shorted 5/6; a joint of 0.28 Ω in V adds as much to both its pairs.
func TestFaultyStatorsAreNotProved(t *testing.T) {
	sound := [3]float64{48, 47.8, 48.1}
	for name, c := range map[string]struct {
		ohms, volts [3]float64
		at, says    string
	}{
		"half a coil missing": {[3]float64{3.11, 3.10, 3.24}, [3]float64{46.1, 46.3, 48.1}, "lead", "phase V, in U-V and V-W, is 8 % low, by its ohms about"},
		"a coil shorted":      {[3]float64{3.05, 3.06, 3.33}, [3]float64{46, 46.1, 49.9}, "lead", "likely one coil of 6 of phase V shorted or left out"},
		"a cold joint":        {[3]float64{3.55, 3.55, 3.27}, sound, "lead", "phase V, in U-V and V-W, is 17 % high: a cold joint"},
		"a smaller one":       {[3]float64{3.40, 3.41, 3.27}, sound, "lead", "phase V, in U-V and V-W, is 7.9 % high: a cold joint"},
		"a larger one":        {[3]float64{3.60, 3.62, 3.27}, sound, "lead", "their mean is 6.9 % high): phase V, in U-V and V-W, is 20 % high: a cold joint"},
		"a quarter of a coil": {[3]float64{3.17, 3.27, 3.19}, [3]float64{46.5, 48, 46.6}, "line", "phase U, in W-U and U-V, is 5.8 % low, by its ohms about"},
		"all ohms 7 % high":   {[3]float64{3.50, 3.50, 3.50}, sound, "lead", "the finished winding reads"},
	} {
		r, o := asRead(t, c.ohms, c.volts)
		assert.False(t, r.Proved(), name)
		assert.Contains(t, saidAt(&o, "wound[0]."+c.at), c.says, name)
		assert.LessOrEqual(t, strings.Count(saidAt(&o, "wound[0]."+c.at), "read each pair again"), 1, name)
	}
	r, _ := asRead(t, [3]float64{3.27, 3.25, 3.28}, sound)
	assert.True(t, r.Proved(), "sound")
}

// Which phase is faulty and how, by hand: missing turns lower ohms and volts of a phase equally, a
// joint changes the ohms alone, a reversed coil the volts alone. In a star both pairs of the phase
// change by half as much; in a delta the pair across it by two thirds, the others by a sixth.
func TestThePatternOfPairsTellsTurnsFromJoints(t *testing.T) {
	one := [3]float64{1, 1, 1}
	off := func(phase int, own, next, last float64) [3]float64 { // of the pairs, beginning with that phase's own
		var each [3]float64
		each[phase], each[(phase+1)%3], each[(phase+2)%3] = own, next, last
		return each
	}
	names := []string{"phase U", "phase V", "phase W"}
	for phase, name := range names {
		for _, c := range []struct {
			connection  string
			ohms, volts [3]float64
			field, says string
		}{
			{"star", off(phase, 1.08, 1, 1.08), one, "lead", "a cold joint"},
			{"star", off(phase, 0.96, 1, 0.96), off(phase, 0.96, 1, 0.96), "line", "turns missing in a coil"},
			{"star", off(phase, 0.96, 1, 0.96), one, "lead", "thicker wire"},
			{"star", off(phase, 1.04, 1, 1.04), off(phase, 1.04, 1, 1.04), "lead", "more turns than counted"},
			{"star", one, off(phase, 0.925, 1, 0.925), "line", "the wrong way round"},
			{"delta", off(phase, 1+2*0.09/3, 1+0.09/6, 1+0.09/6), one, "lead", "a cold joint"},
			{"delta", off(phase, 1-2*0.08/3, 1-0.08/6, 1-0.08/6), off(phase, 1-2*0.08/3, 1-0.08/6, 1-0.08/6), "lead", "turns missing in a coil"},
		} {
			r, o := pairsRecord(t, c.connection, "1", c.ohms, c.volts)
			said := saidAt(&o, "wound[0]."+c.field)
			assert.Contains(t, said, name, "%+v", c)
			assert.Contains(t, said, c.says, "%+v", c)
			for _, other := range names {
				if other != name {
					assert.NotContains(t, said, other, "%+v", c)
				}
			}
			assert.False(t, r.Proved())
		}
	}
}

// A reversed coil is recognised by the pattern of the pairs, however far off all of them are: of six
// coils in phase one leaves k = 2/3, √(1 + k + k²)/√3 = 0.839; two leave 1/3, 0.694.
func TestACoilTurnedRoundIsKnownByItsPattern(t *testing.T) {
	sound := [3]float64{3.27, 3.27, 3.27}
	for says, volts := range map[string][3]float64{
		"one coil of 6 of phase V turned round: U-V and V-W read low (":                                       {40.1, 40.4, 47.9},
		"one coil of 6 of phase V turned round: U-V and V-W read low (mean volts ×0.89); and all volts are 7": {36.9, 37.1, 44.4},
		"one coil of 6 of phase U turned round: W-U and U-V read low (mean volts ×0.89); and all volts are 6": {42.9, 51.0, 42.6},
		"two coils of 6 of phase W turned round: V-W and W-U read low (":                                      {48.2, 33.4, 33.5},
	} {
		r, o := asRead(t, sound, volts)
		assert.Contains(t, saidAt(&o, "wound[0].line"), says)
		assert.False(t, r.Proved())
	}
	_, o := asRead(t, sound, [3]float64{45.5, 45.6, 48.1}) // one of twenty would: none of six
	assert.NotContains(t, saidAt(&o, "wound[0].line"), "turned round")
}

// Three equal pairs do not indicate a single phase. Ohms and volts low by the same share indicate fewer
// turns in every coil: 15 of the 17 planned leave 15/17 of both. If the wire used up shows that all of
// them are there, they do not.
func TestPairsAlikeSpeakOfNoSinglePhase(t *testing.T) {
	const k = 15.0 / 17
	ohms, volts := [3]float64{3.27 * k, 3.27 * k, 3.27 * k}, [3]float64{48 * k, 48.1 * k, 48 * k}
	r, o := asRead(t, ohms, volts)
	require.NotEmpty(t, r.Likely)
	assert.Equal(t, "15 turns in each coil, not 17", r.Likely[0].Fault)
	assert.Len(t, r.Likely, 1, "16 and 14 lie further off")
	assert.Contains(t, saidAt(&o, "wound[0].lead"), "likely 15 turns in each coil, not 17")
	assert.Contains(t, saidAt(&o, "wound[0].line"), "the same, as with its ohms; mend what makes its ohms so, and read the volts again")

	_, o = asRead(t, ohms, [3]float64{48, 48.1, 48})
	for _, word := range []string{"turned round", "in each coil", "shorted", "phase"} {
		assert.NotContains(t, saidAt(&o, "wound[0].lead"), word, "the volts are right, and the pairs alike")
	}
	r.MeanTurnMM.Read = r.MeanTurnMM.Expected
	r.Explain()
	assert.Empty(t, r.Likely, "as much wire went in as was planned")
}

// In a phase of several parallel circuits its two ends are swapped as easily as in one with a single
// circuit: its pairs read 1/√3 of the third.
func TestAPhaseOfSeveralCircuitsTurnedRound(t *testing.T) {
	j := job.Example().Set("trial[0].circuits", "2", quantity.Choice{}).Job()
	j.Trials = j.Trials[:1]
	made := winding.Evaluate(j).Trials[0]
	require.True(t, made.LinePerRPM.Known(), made.LinePerRPM.Why)
	e := made.LinePerRPM.Value * 1000
	pairs := []float64{e, e / math.Sqrt(3), e / math.Sqrt(3)}
	j.AsWound = []job.AsWound{{Trial: made.Name, RPM: quantity.Known(1000), LinePairs: pairs, LineVolts: quantity.Known((pairs[0] + pairs[1] + pairs[2]) / 3)}}
	o := winding.Evaluate(j)
	assert.Contains(t, saidAt(&o, "wound[0].line"), "likely phase W turned round: V-W and W-U read low, at 58 % of the third")
}

// In a phase spread over two slots of a pole the coils are 30° apart, each 15° from the middle of the
// phase. One of four reversed leaves 1 − 2·e^(±j15°)/(4·cos 15°) = 0.5 ∓ j0.134 of it: its pairs are
// then √(1² + (0.866 ± 0.134)²) of √3, 0.816 and 0.716, and which of them is lower tells which two
// coils it can be.
func TestWhereATurnedCoilLies(t *testing.T) {
	d := job.Example().Set("machine.slots", "24", quantity.Choice{}).Set("machine.poles", "4", quantity.Choice{}).Set("machine.span", "6", quantity.Choice{})
	require.Empty(t, d.Problems())
	j := d.Job()
	j.Trials = j.Trials[:1]
	j.Trials[0].Connection, j.Trials[0].Circuits, j.Trials[0].Span, j.Trials[0].Layers = layout.Star, quantity.Reading{}, quantity.Reading{}, quantity.Reading{}
	made := winding.Evaluate(j).Trials[0]
	require.Equal(t, 4.0, made.CoilsPerPhase.Value)
	wide, narrow := math.Hypot(1, math.Sqrt(3)/2+0.134)/math.Sqrt(3), math.Hypot(1, math.Sqrt(3)/2-0.134)/math.Sqrt(3)
	assert.InDelta(t, 0.8165, wide, 0.001)
	assert.InDelta(t, 0.7155, narrow, 0.001)
	places := map[string]bool{}
	for _, each := range [][3]float64{{wide, 1, narrow}, {narrow, 1, wide}} {
		plan := made.LinePerRPM.Value * 1000
		r := job.AsWound{Trial: j.Trials[0].Name, RPM: quantity.Known(1000), LeadOhms: quantity.Known(made.LeadOhms20.Value), LeadOhmsC: quantity.Known(20)}
		r.LineVolts = quantity.Known(plan * (each[0] + each[1] + each[2]) / 3)
		for _, k := range each {
			r.LinePairs = append(r.LinePairs, k*plan)
		}
		j.AsWound = []job.AsWound{r}
		list := winding.Evaluate(j).Wound[0].Likely
		require.NotEmpty(t, list, "%v", each)
		assert.Regexp(t, `^one coil of 4 of phase U turned round, that from slot \d+ or \d+: `, list[0].Fault)
		places[list[0].Fault] = true
	}
	assert.Len(t, places, 2, "each side of the middle its own")
}

// A coarse meter is not blamed on the winding: 0.4, 0.4 and 0.5 Ω may be equal ohms, 0.40, 0.40 and
// 0.50 are not; nor is a mean that a change of its last digit would bring within the limits.
func TestTheLastDigitIsNoFault(t *testing.T) {
	d := job.Example()
	j := d.Job()
	plan := winding.Evaluate(j).Trials[0].LeadOhms20.Value
	require.InDelta(t, 0.5, plan, 0.25, "of a size that one decimal is coarse for")
	read := func(typed string) wound.Proof {
		n := d.Add("wound", -1).Set("wound[0].trial", j.Trials[0].Name, quantity.Choice{}).Set("wound[0].lead", typed, quantity.Choice{}).Set("wound[0].lead_at", "20", quantity.Choice{})
		require.Empty(t, n.Problems())
		o := winding.Evaluate(n.Job())
		return o.Wound[0].LeadOhms20
	}
	coarse := fmt.Sprintf("%.1f %.1f %.1f", plan, plan, plan+0.1)
	assert.False(t, read(coarse).Unlike(), coarse)
	fine := fmt.Sprintf("%.2f %.2f %.2f", plan, plan, plan+0.1)
	assert.True(t, read(fine).Unlike(), fine)
	assert.False(t, read(fmt.Sprintf("%.0f %.0f %.0f mΩ", 1000*plan, 1000*plan, 1020*plan)).Unlike())
	one := math.Round(plan*10) / 10
	require.Greater(t, math.Abs(one/plan-1), 0.02)
	assert.Equal(t, wound.Good, read(fmt.Sprintf("%.1f", one)).Stand(), "%g of %g", one, plan)
}

// A field current is not mentioned for a winding with magnets, and is for one with a wound rotor.
func TestMagnetsHaveNoFieldCurrent(t *testing.T) {
	for kind, names := range map[string]bool{job.FieldWound: true, job.FieldMagnets: false} {
		j := job.Example().Job()
		j.Trials = j.Trials[:1]
		made := winding.Evaluate(j).Trials[0]
		j.AsWound = []job.AsWound{{RPM: quantity.Known(600), LineVolts: quantity.Known(made.LinePerRPM.Value * 600 * 0.83)}}
		j.Field.Kind = kind
		for _, times := range []float64{0.83, 1.3, 0.01} {
			o := winding.Evaluate(j)
			expected := o.Wound[0].LineVolts.Expected
			require.True(t, expected.Known(), expected.Why)
			j.AsWound[0].LineVolts = quantity.Known(expected.Value * times)
			o = winding.Evaluate(j)
			text := saidAt(&o, "wound[0].line") + checkOf(t, &o.Wound[0], "line").Speaks() + o.Checks(0)[3].Low + strings.Join(o.Signs(&o.Trials[0]), " ")
			assert.Equal(t, names, strings.Contains(text, "field current") || strings.Contains(text, "rotor's current"), "%s %g: %s", kind, times, text)
		}
	}
}
