package winding_test

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// twoTrials is the example with two trials changed, the first the reference.
func twoTrials(t *testing.T, changes ...[2]string) winding.Outcome {
	t.Helper()
	d := job.Example()
	for _, c := range changes {
		d = d.Set(c[0], c[1], quantity.Choice{})
		require.Empty(t, d.Refused())
	}
	require.Empty(t, d.Problems())
	return winding.Evaluate(d.Job())
}

// An empty trial beside a full one says so; a half-filled one does not.
func TestAnEmptyTrialSaysSo(t *testing.T) {
	const empty = "is still empty: it waits for turns and a wire"
	b := [2]string{"trial[1].turns", ""}
	assert.Equal(t, empty, twoTrials(t, b, [2]string{"trial[1].gauge", ""}).Trials[1].Verdict)
	assert.NotEqual(t, empty, twoTrials(t, b).Trials[1].Verdict)
	assert.NotEqual(t, empty, twoTrials(t, [2]string{"trial[0].turns", ""}, [2]string{"trial[0].gauge", ""}).Trials[0].Verdict)
}

// The deciding reasons are stated, in order of importance.
func TestVerdictInWords(t *testing.T) {
	o := twoTrials(t)
	a, b, c := o.Trials[0].Verdict, o.Trials[1].Verdict, o.Trials[2].Verdict
	assert.Regexp(t, `^gains from \d+ alternator rpm, brings [\d.]+ A with full water, the wheel at \d+ rpm; begins after the slow speed, \d+ alternator rpm$`, a)
	assert.Regexp(t, `^gains \d+ alternator rpm sooner and brings [\d.]+ A more with full water`, b)
	assert.Regexp(t, `; gets to \d+ °C where class F allows 145$`, c)

	o = twoTrials(t, [2]string{"trial[0].turns", "24"})
	assert.Equal(t, "does not fit: 24 turns of 15 AWG where 17 go in", o.Trials[0].Verdict)
	assert.Regexp(t, `^gains from \d+ alternator rpm, brings `, o.Trials[1].Verdict, "nothing is held against what cannot be wound")
	o = twoTrials(t, [2]string{"slot.mouth", "1.0 mm"})
	assert.Regexp(t, `^does not go in: the mouth is [\d.]+ mm narrower than the wire needs$`, o.Trials[0].Verdict)

	o = twoTrials(t, [2]string{"trial[1].turns", "17"}, [2]string{"trial[1].gauge", "15 AWG"})
	assert.True(t, strings.HasPrefix(o.Trials[1].Verdict, "gains from the same speed and brings as much with full water"), o.Trials[1].Verdict)
	o = twoTrials(t, [2]string{"trial[1].turns", "9"}, [2]string{"trial[0].turns", "8"})
	assert.Contains(t, o.Trials[0].Verdict, "brings nothing with full water")
	assert.Contains(t, o.Trials[1].Verdict, "brings nothing with full water either")
	assert.Empty(t, winding.Evaluate(job.Parse("format = 1\n[[trial]]\nname = \"A\"\n").Job()).Trials[0].Verdict)
}

// numbers are the numbers of a sentence, wire and class left out.
var numbers = regexp.MustCompile(`\d+(\.\d+)?`)

// Each number in a verdict is one of the figures it refers to, or the difference of two, rounded as
// written.
func TestNumbersInVerdictsAreFigures(t *testing.T) {
	seen := 0
	jobs, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	for n, path := range jobs {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for turns := range 6 {
			if testing.Short() && turns%3 != n%3 {
				continue
			}
			j := job.Parse(string(text)).Job()
			for i := range j.Trials {
				j.Trials[i].Turns.Value = math.Ceil(j.Trials[i].Turns.Value * (0.6 + 0.3*float64((turns+2*i)%6)))
			}
			o := winding.Evaluate(j)
			for i := range o.Trials {
				seen += checkVerdict(t, &o, i, path, j.Drive.Watts.Value)
			}
		}
	}
	assert.Greater(t, seen, enough(200))
}

// gains is the speed from which a verdict may call a winding useful.
func gains(t *winding.TrialOutcome) float64 {
	if t.BreakEvenRPM.Known() {
		return t.BreakEvenRPM.Value
	}
	return t.CutInRPM.Value
}

func checkVerdict(t *testing.T, o *winding.Outcome, i int, path string, most float64) int {
	t.Helper()
	tr, ref, m := &o.Trials[i], &o.Trials[o.Reference], &o.Machine
	figures := []float64{gains(tr), gains(ref) - gains(tr), ref.CutInRPM.Value - tr.CutInRPM.Value, tr.AmpsUsual.Value, tr.AmpsUsual.Value - ref.AmpsUsual.Value,
		tr.YearKWh.Value - ref.YearKWh.Value, m.SlowRPM.Value, tr.LimitRPM.Value, tr.LimitAmps.Value, tr.SteadyAmps.Value, tr.HottestC.Value,
		m.MeanLimitC.Value, tr.Turns.Value, tr.TurnsThatFit.Value, tr.MouthSpareMM.Value, m.Conditions[1].X.Value}
	figures = append(figures, tr.WireFill.Value, tr.FillLimit.Value, tr.YearKWh.Value, tr.StartsAlone.Value, m.Conditions[2].X.Value)
	if len(tr.Operating) > 1 {
		figures = append(figures, tr.Operating[1].DriveRPM, tr.Operating[1].DriveWatts, most)
	}
	for _, p := range tr.Points {
		if p.TooHot { // the first wind without a steady temperature
			figures = append(figures, p.X)
			break
		}
	}
	for _, region := range []drive.Region{drive.Stalled, drive.Runaway} { // the first wind in that region
		if at := slices.IndexFunc(tr.Points, func(p winding.DrivePoint) bool { return p.Region == region }); at >= 0 {
			figures = append(figures, tr.Points[at].X)
		}
	}
	text := strings.ReplaceAll(strings.ReplaceAll(tr.Verdict, tr.Wire, ""), strings.TrimPrefix(tr.Wire, "1 × "), "")
	found := numbers.FindAllString(text, -1)
	for _, n := range found {
		v, err := strconv.ParseFloat(n, 64)
		require.NoError(t, err)
		_, places, _ := strings.Cut(n, ".")
		half, near := 0.5000001*math.Pow(10, -float64(len(places))), false
		for _, f := range figures {
			near = near || math.Abs(math.Abs(f)-v) <= half
		}
		assert.True(t, near, "%s %s: %s in %q is no figure", path, tr.Name, n, tr.Verdict)
	}
	sooner, more := gains(ref)-gains(tr), tr.AmpsUsual.Value-ref.AmpsUsual.Value
	for word, right := range map[string]bool{" sooner": sooner > 0, " later": sooner < 0, " A more with": more > 0, " A less ": more < 0,
		"does not fit": tr.Turns.Value > tr.TurnsThatFit.Value} {
		if strings.Contains(tr.Verdict, word) {
			assert.True(t, right, "%s %s: %q", path, tr.Name, tr.Verdict)
		}
	}
	assert.NotContains(t, tr.Verdict, "; burns in wind", "the gravest stands first")
	if strings.Contains("; "+tr.Verdict, "; passes its limit") {
		assert.Greater(t, tr.SteadyAmps.Value, tr.LimitAmps.Value, "%s %s: %q", path, tr.Name, tr.Verdict)
	}
	return len(found)
}

// Nothing of a winding that cannot be wound counts as better or worse, nor does anything compared with
// it.
func TestNothingIsBetterThatDoesNotFit(t *testing.T) {
	for _, which := range []string{"trial[0].turns", "trial[1].turns"} {
		o := twoTrials(t, [2]string{which, "60"})
		past := 0
		for _, r := range o.Comparison {
			v := r.Cells[1].Verdict
			assert.NotContains(t, []winding.Verdict{winding.Better, winding.Worse}, v, r.ID)
			if v == winding.Past || r.Cells[0].Verdict == winding.Past {
				past++
			}
		}
		assert.Positive(t, past, "what is past a limit says so all the same")
	}
}

// Against a reference of zero, a negligible amount is not better.
func TestNothingIsNotBeatenByAHair(t *testing.T) {
	o := winding.Outcome{Trials: make([]winding.TrialOutcome, 2)}
	o.Trials[0].Turns, o.Trials[1].Turns = quantity.Of(20), quantity.Of(30)
	f := winding.OutputOf("amps_dc_usual")
	o.Trials[0].AmpsUsual = quantity.Of(0)
	for amps, want := range map[float64]winding.Verdict{0.004: winding.Same, -0.004: winding.Same, 0.02: winding.Better, -0.02: winding.Worse} {
		o.Trials[1].AmpsUsual = quantity.Of(amps)
		assert.Equal(t, want, o.Row(f, false).Cells[1].Verdict, amps)
	}
	o.Trials[0].StartsAt, o.Trials[1].StartsAt = quantity.Of(6.5), quantity.Of(6.9)
	assert.Equal(t, winding.Worse, o.Row(winding.OutputOf("charges_from_x"), false).Cells[1].Verdict, "a slow wheel's tenths of a turn count")
}

// A winding that brings nothing where it is usually run, or costs more than it brings, is over its
// limit, even if its bridge never conducts; one whose bridge current is unknown is not.
func TestNothingInTheUsualConditionIsPast(t *testing.T) {
	f := winding.OutputOf("amps_dc_usual")
	for _, c := range []struct {
		bridge, net quantity.Figure
		past        bool
	}{
		{quantity.Of(0), quantity.Of(0), true}, {quantity.Of(0), quantity.Of(-2), true}, {quantity.Of(1), quantity.Of(-1), true},
		{quantity.Of(3), quantity.Of(1), false}, {quantity.Missing("no poles"), quantity.Of(0), false},
	} {
		o := winding.Outcome{Trials: []winding.TrialOutcome{{}}}
		o.Trials[0].BridgeUsual, o.Trials[0].AmpsUsual = c.bridge, c.net
		assert.Equal(t, c.past, o.Row(f, false).Cells[0].Verdict == winding.Past, "%v", c)
	}
}

// The old winding runs like a trial of the same turns and wire.
func TestTheOldWindingRuns(t *testing.T) {
	d := job.Example()
	j := d.Job()
	o := winding.Evaluate(j)
	require.NotNil(t, o.Old)
	require.Empty(t, o.Old.NoCharging)
	same := j.Trials[0]
	same.Wound, same.Circuits, same.Connection = j.Old.Wound, j.Old.Circuits, j.Old.Connection
	j.Trials = []job.Trial{same}
	a := winding.Evaluate(j).Trials[0]
	for _, id := range []string{"cut_in_rpm", "amps_dc_slow", "amps_dc_usual", "winding_c_usual", "limit_amps_dc", "bridge_amps_dc_most"} {
		f := winding.OutputOf(id)
		assert.InDelta(t, f.Of(&a).Value, f.Of(o.Old).Value, 1e-9, id)
	}
}
