package job

import (
	"math"
	"strings"
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a person reads off a rule or a meter is understood; what is ambiguous is not.
func TestNumbersAsTheyStandOnRules(t *testing.T) {
	for text, want := range map[string]float64{
		"7/16": 0.4375, "1 3/16": 1.1875, "1-3/16": 1.1875, `7/16"`: 0.4375, "~7/16 in": 0.4375,
		"0,204": 0.204, "0,204 ohm": 0.204, "1,2": 1.2, "-0,125": -0.125,
	} {
		q, err := parseQuantity(text)
		require.NoError(t, err, text)
		assert.InDelta(t, want, q.value, 1e-12, text)
	}
	for _, text := range []string{"1,204", "7/0", "7/16/2", "/16", "7/", "1 2"} {
		_, err := parseQuantity(text)
		assert.Error(t, err, text)
	}
}

// Counts that are told in volts or as a throw are answered by how to count.
func TestCountsAreAnsweredByWhatToCount(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"[battery]\ncells = \"24 V\"\n", "24 V is 12 or 8"},
		{"[machine]\nspan = \"3 slots\"\n", "throw of 1 to 4 is 3"},
	} {
		p := Parse("format = 1\n" + c.text).Problems()
		require.Len(t, p, 1, c.text)
		assert.Contains(t, p[0].Error(), c.says)
	}
}

// What is counted has no ±; the turns of an old coil, which are guessed from what was cut, do.
func TestACountHasNoPlusMinus(t *testing.T) {
	for key, typed := range map[string]string{"machine.slots": "36±1", "machine.poles": "12 ± 10 %", "battery.cells": "6±1"} {
		table, name, _ := strings.Cut(key, ".")
		d := Parse("format = 1\n[" + table + "]\n" + name + " = \"" + typed + "\"\n")
		require.Len(t, d.Problems(), 1, key)
		assert.Contains(t, d.Problems()[0].Error(), "a count, which has no ±", key)
		assert.Contains(t, d.Problems()[0].Error(), "alone", key)
	}
	d := Parse("format = 1\n[machine]\nslots = \"~36\"\n[old]\nturns = \"11 ±1\"\n")
	assert.Empty(t, d.Problems())
	assert.InDelta(t, 1, d.Job().Old.Turns.PlusMinus, 0)
}

// A slot's area may be given as width × depth, in the unit behind either, behind both, or in that of the
// key; fractions of an inch too. What was typed stays. 0.33 × 0.9 in is 0.297 in², with 25.4 mm to
// the inch (international yard and pound agreement, 1959) 191.61 mm².
func TestAnAreaAsWidthTimesDepth(t *testing.T) {
	inch := quantity.Choice{Inch: true}
	for _, c := range []struct {
		typed, stays, unit string
		choice             quantity.Choice
		mm2                float64
	}{
		{"0.33x0.9in", "0.33 x 0.9", "in²", quantity.Choice{}, 0.297 * 645.16},
		{"0.33 in × 0.9 in", "0.33 x 0.9", "in²", quantity.Choice{}, 0.297 * 645.16},
		{`7/16" x 15/16"`, "7/16 x 15/16", "in²", quantity.Choice{}, 7. / 16 * 15. / 16 * 645.16},
		{"8 x 9", "8 x 9", "mm²", quantity.Choice{}, 72},
		{"~8,5*9 mm", "~8,5 x 9", "mm²", inch, 76.5},
		{"0.33 x 0.9", "0.33 x 0.9", "in²", inch, 0.297 * 645.16},
		{"0.8 x 0.9 cm", "8 x 9", "mm²", inch, 72},
		{"300 x 500 thou", "7.62 x 12.7", "mm²", quantity.Choice{}, 96.774},
	} {
		d := Parse("").Set("slot.area", c.typed, c.choice)
		require.Empty(t, d.Problems(), c.typed)
		typed, u, _ := d.Typed("slot.area")
		assert.Equal(t, c.stays+" "+c.unit, typed+" "+u.Name, c.typed)
		assert.InEpsilon(t, c.mm2, d.Job().Slot.AreaMM2.Value, 1e-9, c.typed)
		assert.Equal(t, strings.HasPrefix(c.typed, "~"), d.Job().Slot.AreaMM2.Origin == quantity.Guessed)
		assert.Equal(t, d.Job(), Parse(d.Text()).Job(), "read again")
	}
	assert.InEpsilon(t, 72, Parse("[slot]\narea_mm2 = \"8 x 9 mm\"\n").Job().Slot.AreaMM2.Value, 1e-12)
	assert.InEpsilon(t, 72, Parse("[slot]\narea_mm2 = \"0.8 x 0.9 cm\"\n").Job().Slot.AreaMM2.Value, 1e-12, "10 mm to the centimetre, 100 mm² to its square")
	for _, typed := range []string{"8 x", "8 x 9 kg", "8 mm x 9 in", "8 x 9 x 2", "0 x 9"} {
		assert.Len(t, Parse("").Set("slot.area", typed, quantity.Choice{}).Problems(), 1, typed)
	}
	assert.Len(t, Parse("[slot]\narea_mm2 = \"8 x 9 in\"\n").Problems(), 1, "not the key's unit")
}

// Two cables side by side have the copper of both; a gauge says its own: 6 AWG is 0.1620 in and 13.30 mm²,
// 2/0 AWG 0.3648 in and 67.43 mm² (ASTM B258). What was typed stays.
func TestCablesSideBySideAndByTheirGauge(t *testing.T) {
	inch := quantity.Choice{Inch: true}
	for _, c := range []struct {
		typed, stays, unit string
		choice             quantity.Choice
		mm2                float64
	}{
		{"2 x 16", "2 x 16", "mm²", quantity.Choice{}, 32},
		{"2x16mm2", "2 x 16", "mm²", inch, 32},
		{"~3 × 2,5 mm²", "~3 x 2.5", "mm²", quantity.Choice{}, 7.5},
		{"2 * 0.05 in²", "2 x 0.05", "in²", quantity.Choice{}, 0.1 * 645.16},
		{"2 x 0.05", "2 x 0.05", "in²", inch, 0.1 * 645.16},
		{"6 AWG", "6 AWG", "", quantity.Choice{}, 13.30},
		{"6awg", "6 AWG", "", inch, 13.30},
		{"2 x 6 AWG", "2 x 6 AWG", "", quantity.Choice{}, 26.60},
		{"2/0 AWG", "2/0 AWG", "", inch, 67.43},
		{"~2 x 2/0 awg", "~2 x 2/0 AWG", "", quantity.Choice{}, 134.86},
	} {
		d := Parse("").Set("battery.cable_area", c.typed, c.choice)
		require.Empty(t, d.Problems(), c.typed)
		typed, u, _ := d.Typed("battery.cable_area")
		assert.Equal(t, c.stays+" "+c.unit, strings.Replace(typed, ",", ".", 1)+" "+u.Name, c.typed)
		assert.InEpsilon(t, c.mm2, d.Job().Battery.CableMM2.Value, 5e-4, c.typed)
		assert.Equal(t, strings.HasPrefix(c.typed, "~"), d.Job().Battery.CableMM2.Origin == quantity.Guessed)
		assert.Equal(t, d.Job(), Parse(d.Text()).Job(), "read again")
	}
	for _, typed := range []string{"2 x", "x 16", "2 x 16 kg", "2 x 16 x 2", "0 x 16", "100 x 16", "2 x 500", "6 WG", "99 AWG", "2 x ~16"} {
		assert.Len(t, Parse("").Set("battery.cable_area", typed, quantity.Choice{}).Problems(), 1, typed)
	}
	assert.Len(t, Parse("[battery]\ncable_area_mm2 = \"2 x 0.05 in2\"\n").Problems(), 1, "not the key's unit")
	assert.InEpsilon(t, 13.30, Parse("[battery]\ncable_area_in2 = \"6 AWG\"\n").Job().Battery.CableMM2.Value, 5e-4)
	assert.Len(t, Parse("").Set("slot.area", "6 AWG", quantity.Choice{}).Problems(), 1, "a slot has no gauge")
}

// A width × depth is a parallel slot as wide and as deep, each side with its own ± or with the one at the
// end, in the unit that was typed; the area is their product, and ± of the two add in quadrature
// (ISO/IEC Guide 98-3, 5.1.2: independent inputs). 4.2 × 11 mm is 46.2 mm².
func TestASlotOfWidthTimesDepthIsParallel(t *testing.T) {
	for _, c := range []struct {
		typed                    string
		choice                   quantity.Choice
		width, depth, wPM, dPM   float64
		guessedWide, guessedDeep bool
		unit                     string
	}{
		{typed: "4.2x11", width: 4.2, depth: 11, unit: "mm"},
		{typed: "4.2 X 11 mm", choice: quantity.Choice{Inch: true}, width: 4.2, depth: 11, unit: "mm"},
		{typed: "0.42*1.1cm", width: 4.2, depth: 11, unit: "mm"},
		{typed: "4.2±0.1 × 11 ±0.2", width: 4.2, depth: 11, wPM: 0.1, dPM: 0.2, unit: "mm"},
		{typed: "4.2 x 11 mm ±0.1", width: 4.2, depth: 11, wPM: 0.1, dPM: 0.1, unit: "mm"},
		{typed: "4.2 ±0.1 x 11", width: 4.2, depth: 11, wPM: 0.1, unit: "mm"},
		{typed: "~4.2 x 11", width: 4.2, depth: 11, guessedWide: true, guessedDeep: true, unit: "mm"},
		{typed: "4.2 x ~11", width: 4.2, depth: 11, guessedDeep: true, unit: "mm"},
		{typed: "0.33 x 0.9 ±0.01", choice: quantity.Choice{Inch: true}, width: 0.33 * 25.4, depth: 0.9 * 25.4, wPM: 0.254, dPM: 0.254, unit: "in"},
		{typed: `7/16" x 15/16"`, width: 7. / 16 * 25.4, depth: 15. / 16 * 25.4, unit: "in"},
	} {
		typed := Parse("# mine\n[slot]\n").Set("slot.area", c.typed, c.choice)
		area := typed.Job().Slot.AreaMM2
		assert.InEpsilon(t, c.width*c.depth, area.Value, 1e-9, c.typed)
		assert.InDelta(t, math.Hypot(c.wPM*c.depth, c.dPM*c.width), area.PlusMinus, 1e-4*area.Value, c.typed)
		d, _, _, ok := typed.Shaped()
		require.True(t, ok, c.typed)
		require.Empty(t, d.Problems(), c.typed)
		s := d.Job().Slot
		assert.Equal(t, "parallel", s.Shape, c.typed)
		assert.False(t, s.AreaMM2.Given(), c.typed)
		assert.InEpsilon(t, c.width, s.TopMM.Value, 1e-9, c.typed)
		assert.InEpsilon(t, c.depth, s.DepthMM.Value, 1e-9, c.typed)
		assert.InDelta(t, c.wPM, s.TopMM.PlusMinus, 1e-6, c.typed)
		assert.InDelta(t, c.dPM, s.DepthMM.PlusMinus, 1e-6, c.typed)
		assert.Equal(t, c.guessedWide, s.TopMM.Origin == quantity.Guessed, c.typed)
		assert.Equal(t, c.guessedDeep, s.DepthMM.Origin == quantity.Guessed, c.typed)
		_, u, _ := d.Typed("slot.top")
		assert.Equal(t, c.unit, u.Name, c.typed)
		assert.Contains(t, d.Text(), "# mine\n", "nothing else is touched")
	}
	for _, text := range []string{"", "[slot]\narea_mm2 = 72\n", "[slot]\narea_mm2 = \"0.1 x 90\"\n", "[slot]\narea_mm2 = \"9 x\"\n"} {
		d, _, _, ok := Parse(text).Shaped()
		assert.False(t, ok, text)
		assert.Equal(t, text, d.Text())
	}
}

// Ohms and volts of a finished winding may be given for each pair: their mean is used, each is kept,
// and what was typed stays, its unit in the key. Where one value is asked for several are refused.
func TestReadingsOfEachPair(t *testing.T) {
	base := Parse("[[wound]]\ntrial = \"A\"\n")
	for _, c := range []struct {
		path, typed, stays string
		mean, spread       float64
		each               []float64
		guessed            bool
	}{
		{"wound[0].line", "12.1 12.0 12.3", "12.1 12.0 12.3 V", 36.4 / 3, 0, []float64{12.1, 12, 12.3}, false},
		{"wound[0].line", "12,1  12,0 12,3 V", "12,1 12,0 12,3 V", 36.4 / 3, 0, []float64{12.1, 12, 12.3}, false},
		{"wound[0].line", "12.1, 12.0, 12.3", "12.1, 12.0, 12.3 V", 36.4 / 3, 0, []float64{12.1, 12, 12.3}, false},
		{"wound[0].line", "~12.1; 12.0; 12.3 ±0.2 V", "~12.1 12.0 12.3 ±0.2 V", 36.4 / 3, 0.2, []float64{12.1, 12, 12.3}, true},
		{"wound[0].lead", "412 415 409 mΩ", "412 415 409 mΩ", 0.412, 0, []float64{0.412, 0.415, 0.409}, false},
		{"wound[0].lead", "0.412", "0.412 Ω", 0.412, 0, nil, false},
	} {
		d := base.Set(c.path, c.typed, quantity.Choice{})
		require.Empty(t, d.Problems(), c.typed)
		typed, u, _ := d.Typed(c.path)
		assert.Equal(t, c.stays, typed+" "+u.Name, c.typed)
		r := d.Job().AsWound[0]
		mean, each := r.LineVolts, r.LinePairs
		if c.path == "wound[0].lead" {
			mean, each = r.LeadOhms, r.LeadPairs
		}
		assert.InEpsilon(t, c.mean, mean.Value, 1e-9, c.typed)
		assert.InDelta(t, c.spread, mean.PlusMinus, 1e-9, c.typed)
		assert.Equal(t, c.guessed, mean.Origin == quantity.Guessed, c.typed)
		assert.InDeltaSlice(t, c.each, each, 1e-12, c.typed)
		assert.Equal(t, d.Job(), Parse(d.Text()).Job(), "read again")
	}
	for _, typed := range []string{"12.1 12.0 x", "12.1 12.0 12.3 A", "12 0.0001 12", "1 2 3 4 5 6 7", "12.1 12.0 3000"} {
		assert.Len(t, base.Set("wound[0].line", typed, quantity.Choice{}).Problems(), 1, typed)
	}
	assert.Len(t, Parse("").Set("old.lead", "0.412 0.415 0.409", quantity.Choice{}).Problems(), 1)
}
