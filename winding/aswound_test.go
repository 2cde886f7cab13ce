package winding

import (
	"math"
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Worked by hand: 18 coils of 17 turns are 306 turns; 56.61 m of wire in them is 185 mm a
// turn. 15 AWG has 1.652 mm², 8.89 g/cm³ of copper (IEC 60028) 14.68 g a metre: 831 g are
// 56.6 m again. 0.391 Ω at 18 °C is 0.391·254.5/252.5 = 0.394 Ω at 20 °C.
func TestAsWoundByHand(t *testing.T) {
	j := turnOf185()
	j.AsWound = []job.AsWound{
		{Trial: "A", Date: "2026-03-14", Filled: "full", Metres: quantity.Known(56.61), LeadOhms: quantity.Known(0.391), LeadOhmsC: quantity.Known(18)},
		{Trial: "A", Kg: quantity.Known(0.8313), LineVolts: quantity.Known(11.5), RPM: quantity.Known(600)},
	}
	o := Evaluate(j)
	require.Len(t, o.Wound, 2)
	one, two := o.Wound[0], o.Wound[1]
	assert.InDelta(t, 185, one.MeanTurnMM.Read.Value, 0.01)
	assert.InDelta(t, 0, one.MeanTurnMM.Off.Value, 0.01)
	assert.InDelta(t, 0.3941, one.LeadOhms20.Read.Value, 0.0001)
	assert.InDelta(t, o.Trials[0].WireFill.Value, one.WireFill.Value, 1e-12)
	assert.False(t, one.LineVolts.Read.Known())
	assert.InDelta(t, 185, two.MeanTurnMM.Read.Value, 0.5)
	assert.InDelta(t, o.Trials[0].LineAtTest.Value, two.LineVolts.Expected.Value, 1e-9)
	assert.InDelta(t, 100*(11.5/two.LineVolts.Expected.Value-1), two.LineVolts.Off.Value, 1e-9)
}

// A record with its own turns and wire is computed with those; the plan is unchanged.
func TestAsWoundOtherwiseThanPlanned(t *testing.T) {
	j := job.Example().Job()
	before := Evaluate(j)
	b := j.Trials[1]
	j.AsWound = []job.AsWound{{Trial: "A", Wound: job.Wound{Turns: b.Turns, Gauge: b.Gauge}, LeadOhms: quantity.Known(0.6)}, {Trial: "nowhere"}, {}}
	o := Evaluate(j)
	assert.Equal(t, before.Trials, o.Trials)
	assert.InDelta(t, before.Trials[1].LeadOhms20.Value, o.Wound[0].LeadOhms20.Expected.Value, 1e-12)
	assert.Equal(t, before.Trials[1].Wire, o.Wound[0].Wire)
	assert.False(t, o.Wound[1].Turns.Known())
	assert.Contains(t, o.Wound[1].Turns.Why, `no trial "nowhere"`)
	assert.Equal(t, "A", o.Wound[2].Trial, "the first where none is named")
}

// A record laid out differently from its trial is compared with such a trial: each way of laying
// implies other ohms and other volts than the trial's own.
func TestAsWoundLaidOtherwise(t *testing.T) {
	j := job.Example().Job()
	j.Machine.MeanTurnMM, j.Machine.Slots, j.Machine.Poles, j.Machine.Span = quantity.Reading{}, quantity.Known(36), quantity.Known(4), quantity.Known(9)
	j.Trials = j.Trials[:1]
	j.Trials[0].Turns, j.Trials[0].CoilTurns = quantity.Reading{}, []int{20, 10, 5}
	lay := func(span, layers float64, kind string) wound.Proof {
		is := j
		is.AsWound = []job.AsWound{{Span: quantity.Known(span), Layers: quantity.Known(layers), Kind: kind, LeadOhms: quantity.Known(1)}}
		planned := j
		planned.Trials = []job.Trial{j.Trials[0]}
		planned.Trials[0].Span, planned.Trials[0].Layers, planned.Trials[0].Kind = quantity.Known(span), quantity.Known(layers), kind
		got := Evaluate(is).Wound[0].LeadOhms20
		require.True(t, got.Expected.Known(), got.Expected.Why)
		assert.InDelta(t, Evaluate(planned).Trials[0].LeadOhms20.Value, got.Expected.Value, 1e-12, "%g %g %s", span, layers, kind)
		return got
	}
	one, two, nested := lay(9, 1, "lap"), lay(9, 2, "lap"), lay(9, 1, "concentric")
	assert.Greater(t, two.Expected.Value, 1.5*one.Expected.Value, "twice the coils")
	assert.Greater(t, math.Abs(nested.Expected.Value/one.Expected.Value-1), 0.001, "coils one inside the other have turns of other lengths")
}

// A guess in a record does not trigger a recomputation.
func TestRecordsMoveNoFigure(t *testing.T) {
	j := job.Example().Job()
	n := len(Prepare(j).shifted())
	j.AsWound = []job.AsWound{{Trial: "A", LeadOhms: quantity.Reading{Value: 0.4, PlusMinus: 0.1, Origin: quantity.Measured}}}
	assert.Len(t, Prepare(j).shifted(), n)
}

// The metres are those of all strands together: two in hand use twice as many for one turn.
func TestUsedWireCountsEveryStrand(t *testing.T) {
	j := turnOf185()
	j.Trials[0].Strands = quantity.Known(2)
	j.AsWound = []job.AsWound{{Trial: "A", Metres: quantity.Known(2 * 56.61)}, {Trial: "A", Kg: quantity.Known(2 * 0.8313)}}
	for _, r := range Evaluate(j).Wound {
		assert.InDelta(t, 185, r.MeanTurnMM.Read.Value, 0.5)
	}
}

// A record that names no trial, and readings that are far from its turns and wire, are reported; near
// ones are not.
func TestRecordsAreDoubted(t *testing.T) {
	j := turnOf185()
	j.AsWound = []job.AsWound{
		{Trial: "A", LeadOhms: quantity.Known(0.40), LineVolts: quantity.Known(10.8), RPM: quantity.Known(600)},
		{Trial: "A", LeadOhms: quantity.Known(0.30), LineVolts: quantity.Known(9), RPM: quantity.Known(600)},
		{Trial: "Z"},
	}
	var paths []string
	for _, f := range Evaluate(j).Findings {
		if len(f.Path) > 5 && f.Path[:5] == "wound" {
			paths = append(paths, f.Path)
		}
	}
	assert.ElementsMatch(t, []string{"wound[1].lead", "wound[1].line", "wound[2].trial"}, paths)
}

// A weight that contradicts its plan is reported even if the length is right, and ohms far below it are
// doubted, not only noted: 56.61 m of 15 AWG weigh 0.831 kg (worked above).
func TestRecordsThatContradictTheirPlanAreDoubted(t *testing.T) {
	j := turnOf185()
	j.AsWound = []job.AsWound{{Trial: "A", Metres: quantity.Known(56.61), Kg: quantity.Known(3.6), LeadOhms: quantity.Known(0.13), CutInRPM: quantity.Known(3000)}}
	o := Evaluate(j)
	assert.Equal(t, wound.Good, o.Wound[0].MeanTurnMM.Stand())
	assert.Equal(t, wound.High, o.Wound[0].WireKg.Stand())
	assert.InDelta(t, 0.8313, o.Wound[0].WireKg.Expected.Value, 0.0005)
	ranks := map[string]Severity{}
	for _, f := range o.Findings {
		if strings.HasPrefix(f.Path, "wound") {
			ranks[f.Path] = f.Severity
			assert.Equal(t, "A", f.Trial)
		}
		if f.Path == "wound[0].wire_weight" {
			assert.Contains(t, f.Text, "3.6 kg of wire, the plan has 0.831 kg, and the length that was used weighs 0.831 kg")
		}
	}
	assert.Equal(t, map[string]Severity{"wound[0].wire_weight": Doubt, "wound[0].lead": Doubt, "wound[0].cut_in": Doubt}, ranks)
}

// The weighed wire includes enamel, the plan does not: a tenth more is tolerated, and a weight alone is
// expressed as a mean turn.
func TestAWeightHasItsEnamelOn(t *testing.T) {
	j := turnOf185()
	j.AsWound = []job.AsWound{{Trial: "A", Metres: quantity.Known(56.61), Kg: quantity.Known(0.89)}, {Trial: "A", Kg: quantity.Known(3.6)}}
	o := Evaluate(j)
	assert.Equal(t, wound.Good, o.Wound[0].WireKg.Stand())
	assert.Equal(t, wound.NotRead, o.Wound[1].WireKg.Stand())
	assert.Equal(t, wound.High, o.Wound[1].MeanTurnMM.Stand())
	var paths []string
	for _, f := range o.Findings {
		if strings.HasPrefix(f.Path, "wound") {
			paths = append(paths, f.Path)
		}
	}
	assert.Equal(t, []string{"wound[1].wire_weight"}, paths)
}
