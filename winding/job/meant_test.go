package job

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"slotwright/winding/quantity"
)

// What people write on paper is taken as they mean it.
func TestWhatAPersonWritesIsTaken(t *testing.T) {
	d := Parse("[machine]\nslots = 36\npoles = 12\n[[coil]]\nturns = 10\n[[trial]]\nname = \"A\"\n[[wound]]\ntrial = \"A\"\n")
	for _, c := range []struct {
		path, typed string
		want        float64 // in the base unit
	}{
		{"slot.top", `7/16"`, 11.1125}, {"slot.top", "1 1/4 in", 31.75}, {"machine.bore", "2.5 cm", 25},
		{"machine.air_gap", "25 mil", 0.635}, {"machine.air_gap", "25thou", 0.635}, {"slot.liner", "~10 mils", 0.254}, {"machine.bore", "4500 thou", 114.3},
		{"coil[0].voltage", "2190mV", 2.19}, {"drive.power", "0.43 hp", 320.651},
		{"coil[0].span", "1 to 2", 1}, {"machine.span", "1 to 4", 3}, {"machine.span", "2-5", 3},
		{"coil[0].speed", "70 Hz", 700}, {"wound[0].speed", "~50 hz", 500},
		{"old.lead", "0,204 ohm", 0.204}, {"old.lead", "0,012", 0.012},
	} {
		n := d.Set(c.path, c.typed, quantity.Choice{})
		require.Empty(t, n.Refused(), c.typed)
		_, bad := n.ProblemAt(c.path)
		require.False(t, bad, "%s %s", c.path, c.typed)
		f, _ := InputAt(c.path)
		j := n.Job()
		r := f.at(&j, 0).(*quantity.Reading)
		assert.InEpsilon(t, c.want, r.Value, 1e-5, "%s %s", c.path, c.typed)
		assert.Equal(t, n.Text(), Parse(n.Text()).Text())
	}
}

// A frequency's ± is carried into rpm with it: at 12 poles 70 Hz ±2 are 700 rpm ±20.
func TestAFrequencyKeepsItsTolerance(t *testing.T) {
	d := Parse("[machine]\nslots = 36\npoles = 12\n[[coil]]\nturns = 10\n").Set("coil[0].speed", "70 ±2 Hz", quantity.Choice{})
	require.Empty(t, d.Problems())
	assert.InDelta(t, 700, d.Job().Coils[0].RPM.Value, 1e-9)
	assert.InDelta(t, 20, d.Job().Coils[0].RPM.PlusMinus, 1e-9)
}

// What holds the amps is asked where a most current is given and no field can be lowered.
func TestWhatHoldsIsAskedWithMagnets(t *testing.T) {
	f, _ := InputAt("battery.held_by")
	for text, asked := range map[string]bool{
		"[field]\nkind = \"magnets\"\n[battery]\nmost_current_a = 8\n":                      true,
		"[field]\nkind = \"magnets\"\n":                                                     false,
		"[field]\nkind = \"wound\"\n[battery]\nmost_current_a = 8\n":                        false,
		"[field]\nkind = \"magnets\"\n[battery]\nload = \"resistor\"\nmost_current_a = 8\n": false,
	} {
		j := Parse(text).Job()
		assert.Equal(t, asked, f.Applies(&j), text)
	}
}

// What cannot be taken is answered with what may have been meant, and not with how to measure.
func TestWhatWasMeantIsOffered(t *testing.T) {
	d := Parse("[machine]\nslots = 36\n[[coil]]\nturns = 10\n[[trial]]\nname = \"A\"\n")
	for _, c := range []struct{ path, typed, fix string }{
		{"machine.stack", "1.25", "1.25 in? Write the unit behind it"},
		{"machine.air_gap", "25", "25 mil? Write the unit behind it"},
		{"machine.bore", "3000", "check the figure and its unit"}, // as inches it is further out yet
		{"trial[0].turns", "0.9", "write 1"}, {"trial[0].turns", "12.5", "write 12 or 13"},
		{"coil[0].speed", "70 Hz", "give the poles first: rpm = Hz × 120 / poles"},
		{"old.lead", "1,204", "write it like 12, ~12 for a guess, or 12 ±1 Ω"},
		{"drive.rotor", "63", "63 ft, or 63 in, or 63 cm? Write the unit behind it"},
		{"drive.rotor", "1600", "1600 cm, or 1600 mm? Write the unit behind it"},
		{"machine.span", "4 to 1", "write the slots that it spans: a throw of 1 to 4 is 3"},
	} {
		p, bad := d.Set(c.path, c.typed, quantity.Choice{}).ProblemAt(c.path)
		require.True(t, bad, "%s %s", c.path, c.typed)
		assert.Equal(t, c.fix, p.Fix, "%s %s", c.path, c.typed)
	}
}

// A wind rotor is measured with whatever is at hand: 63 in are 63 · 0.0254 = 1.6002 m.
func TestARotorIsGivenInAnyLength(t *testing.T) {
	d := Parse("[drive]\nkind = \"wind\"\n")
	for typed, want := range map[string]float64{"63 in": 1.6002, "5.25 ft": 1.6002, "160 cm": 1.6, "1600 mm": 1.6, "1.6": 1.6} {
		set := d.Set("drive.rotor", typed, quantity.Choice{})
		require.Empty(t, set.Problems(), typed)
		assert.InDelta(t, want, set.Job().Drive.RotorM.Value, 1e-9, typed)
		again := Parse(set.Text()).Job().Drive.RotorM.Value
		assert.InDelta(t, want, again, 1e-9, set.Text())
	}
}

// One length in mm among inches is noted; paper and gap are not, nor two in mm.
func TestALengthAloneInMillimetresIsNoted(t *testing.T) {
	lone := func(text string) []string { d := Parse(text); return d.Job().LoneMillimetres }
	assert.Equal(t, []string{"slot.bottom"}, lone("[machine]\nbore_in = 4.5\n[slot]\ntop_in = 0.44\nbottom_mm = 0.72\nliner_mm = 0.25\n"))
	assert.Empty(t, lone("[machine]\nbore_in = 4.5\n[slot]\ntop_in = 0.44\nbottom_in = 0.72\nliner_mm = 0.25\n"))
	assert.Empty(t, lone("[machine]\nbore_mm = 114\n[slot]\ntop_in = 0.44\nbottom_mm = 0.72\n"))
}

// The end run that is shown is the one that is used: another round one tooth.
func TestTheEndRunShownIsTheOneUsed(t *testing.T) {
	f, _ := InputAt("machine.end_run")
	u := f.Dim[0]
	d := Parse("[machine]\nslots = 27\npoles = 30\n")
	j := d.Job()
	assert.Equal(t, "1 mm", f.EmptyIn(&j, u))
	assert.Equal(t, "9 mm", f.EmptyIn(&Job{}, u))
}

// A ratio with both its sides is read as it is written, the drive's first, and stays as typed; on one
// wheel's size or teeth it is told where it goes.
func TestARatioMayHaveBothItsSides(t *testing.T) {
	for typed, want := range map[string]float64{"1:1.5": 1.5, "1 : 1.5": 1.5, "1,0:1,5": 1.5, "1.5:1": 1 / 1.5, "2:5": 2.5, "1:12": 12, "2.5": 2.5,
		"1.5/1": 1.5, "5/2": 2.5, "1/3": 1.0 / 3, "14/48": 14.0 / 48, "48/14 x 48/12": 48.0 * 48 / 14 / 12, "48:14 x 48:12": 14.0 * 12 / 48 / 48, "3 1/2": 3.5,
		"3 x 2.5": 7.5, "3x2.5": 7.5, "1:3 × 1:4": 12, "3,2*2": 6.4, "2 x 1:2 x 3": 12} {
		d := Parse("format = 1\n[drive]\nratio = \"" + typed + "\"\n")
		require.Empty(t, d.Problems(), typed)
		assert.InDelta(t, want, d.Job().Drive.Ratio.Value, 1e-12, typed)
		assert.Equal(t, quantity.Measured, d.Job().Drive.Ratio.Origin)
		kept, _, _ := d.Typed("drive.ratio")
		assert.Equal(t, typed, kept)
	}
	guessed := Parse("[drive]\nratio = \"~1:3\"\n").Job().Drive.Ratio
	assert.Equal(t, quantity.Reading{Value: 3, Origin: quantity.Guessed}, guessed)
	guessed = Parse("[drive]\nratio = \"~3 x 2\"\n").Job().Drive.Ratio
	assert.Equal(t, quantity.Reading{Value: 6, Origin: quantity.Guessed}, guessed)
	spread := Parse("[drive]\nratio = \"~1:3 ±2 %\"\n").Job().Drive.Ratio
	assert.Equal(t, quantity.Reading{Value: 3, PlusMinus: 0.06, Origin: quantity.Guessed}, spread)
	for _, typed := range []string{"1/0", "1/2/3", "1:0", "0:1", "1:", ":2", "1:2:3", "1:5000", "3 x", "x 3", "3 xx 2", "3 x -2", "3 x 0", "2 x a", "20 x 20"} {
		d := Parse("[drive]\nratio = \"" + typed + "\"\n")
		require.Len(t, d.Problems(), 1, typed)
		assert.Contains(t, d.Problems()[0].Read, typed)
	}
	for _, key := range []string{"driver_mm", "driven_mm", "driver_teeth", "driven_teeth"} {
		d := Parse("[drive]\n" + key + " = \"1:1.5\"\n")
		require.Len(t, d.Problems(), 1, key)
		assert.Contains(t, d.Problems()[0].Fix, "goes into the field Ratio instead: drive : alternator")
	}
}

// How to measure a field is a sentence of its own after what was expected; any other remedy continues
// the same sentence.
func TestAProblemIsWrittenAsSentences(t *testing.T) {
	d := Parse("[machine]\nslots = 36\n").Set("old.connection", "1.5 mm", quantity.Choice{}).Set("old.turns", "wi", quantity.Choice{})
	p, bad := d.ProblemAt("old.connection")
	require.True(t, bad)
	assert.Equal(t, `old.connection: read "1.5 mm", expected one of star, delta. A lump of three ends under varnish is the star point.`, p.Text())
	p, bad = d.ProblemAt("old.turns")
	require.True(t, bad)
	assert.Equal(t, `old.turns: read "wi", expected a number; write it like 12, ~12 for a guess, or 12 ±1`, p.Text())
}
