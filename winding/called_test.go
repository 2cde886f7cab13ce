package winding_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// severityOf is the worst that is said of a trial with some words in it; Note for nothing.
func severityOf(o *winding.Outcome, trial, words string) (worst winding.Severity) {
	for _, f := range o.Findings {
		if f.Trial == trial && strings.Contains(f.Text, words) {
			worst = max(worst, f.Severity)
		}
	}
	return worst
}

// A winding that leaves the battery nothing in the usual condition is not one to wind, and its rows of
// that condition are marked, whatever the reference does.
func TestAWindingThatLeavesNothingIsBroken(t *testing.T) {
	o := winding.Evaluate(load(t, "wind-wound-rotor.toml"))
	for _, trial := range []string{"A", "B"} {
		assert.Equal(t, winding.Broken, severityOf(&o, trial, "the battery runs down"), trial)
	}
	for _, f := range o.Findings {
		if strings.Contains(f.Text, "runs down") {
			i := slices.IndexFunc(o.Trials, func(t winding.TrialOutcome) bool { return t.Name == f.Trial })
			assert.Contains(t, f.Fix, fmt.Sprintf("from %.0f rpm", o.Trials[i].BreakEvenRPM.Value))
		}
	}
	for _, id := range []string{"amps_dc_usual", "net_w_usual", "efficiency_usual"} {
		for i, c := range rowOf(t, &o, id).Cells {
			assert.Equal(t, winding.Past, c.Verdict, "%s %d", id, i)
		}
	}
	o = winding.Evaluate(load(t, "no-slots-known.toml"))
	assert.Equal(t, winding.Broken, severityOf(&o, "B", "does not charge in the usual condition"))
	assert.Equal(t, winding.Past, rowOf(t, &o, "amps_dc_usual").Cells[1].Verdict)
	assert.Positive(t, o.Trials[0].AmpsUsual.Value, "A does charge, if over its limit")
	assert.Equal(t, winding.Past, rowOf(t, &o, "amps_dc_slow").Cells[1].Verdict)

	j := load(t, "no-slots-known.toml")
	j.Drive = job.DriveSpec{}
	j.Target.SlowRPM, j.Target.UsualRPM, j.Target.TopRPM = quantity.Known(400), quantity.Known(700), quantity.Known(1200)
	o = winding.Evaluate(j)
	assert.Equal(t, winding.Broken, severityOf(&o, "B", "nothing comes in"), "held at the speed")
	assert.Equal(t, winding.Note, severityOf(&o, "A", "nothing comes in"))
}

// In a light wind none has to charge, and one that needs more than the mean wind may still have its
// year from stronger winds.
func TestWindThatIsTooLightIsNoFault(t *testing.T) {
	j := load(t, "wind-good.toml")
	j.Trials[0].Turns, j.Trials[1].Turns = quantity.Known(4), quantity.Known(4)
	o := winding.Evaluate(j)
	for i, c := range rowOf(t, &o, "amps_dc_slow").Cells {
		require.Zero(t, c.Figure.Value)
		assert.NotEqual(t, winding.Past, c.Verdict, "%d", i)
	}
	j.Drive.MeanWindMS = quantity.Known(2.6)
	o = winding.Evaluate(j)
	require.Zero(t, o.Trials[0].AmpsUsual.Value)
	require.Positive(t, o.Trials[0].YearKWh.Value)
	assert.LessOrEqual(t, severityOf(&o, "A", "nothing comes in"), winding.Doubt)
}

// A wire that does not pass the mouth cannot be put in.
func TestAWireTooThickForTheMouthIsBroken(t *testing.T) {
	text, err := os.ReadFile("../testdata/doubtful/thick-wire.toml")
	require.NoError(t, err)
	o := winding.Evaluate(job.Parse(string(text)).Job())
	assert.Equal(t, winding.Broken, severityOf(&o, "A", "does not pass the mouth"))
}

// Cogging comes of magnets: nothing is said of it to a wound rotor, and it is a caution only
// where magnets turn. 36 slots on 12 poles: all poles pull at once.
func TestCoggingIsOfMagnets(t *testing.T) {
	plan, why := winding.Prepare(plain()).Plan(0)
	require.NotNil(t, plan, why)
	for rotor, want := range map[string]string{"wound": "", "magnets": "caution", "": "note"} {
		said := ""
		for _, n := range winding.NotesOf(plan, rotor, layout.Star) {
			if n.Topic == layout.Cogging {
				said = map[bool]string{true: "caution", false: "note"}[n.Caution]
			}
		}
		assert.Equal(t, want, said, rotor)
	}
}

// A third harmonic circulates in a delta, and counts in the choice of one only. Full pitch on three
// slots a pole: kw3 is 1.
func TestThirdHarmonicWeighsInADelta(t *testing.T) {
	plan, why := winding.Prepare(plain()).Plan(0)
	require.NotNil(t, plan, why)
	for connected, want := range map[layout.Connection]bool{layout.Star: false, layout.Delta: true} {
		notes := winding.NotesOf(plan, "wound", connected)
		i := slices.IndexFunc(notes, func(n layout.Note) bool { return n.Topic == layout.ThirdHarmonic })
		require.NotEqual(t, -1, i)
		assert.Equal(t, want, notes[i].Caution, connected)
	}
}

// One turn is said as one.
func TestOneTurnFits(t *testing.T) {
	j := plain()
	over := evaluateA(j).OverallMM.Value
	for fits, words := range map[float64]string{0: "not one turn fits", 1: "1 turn fits;", 2: "2 turns fit;"} {
		j.Slot = job.SlotSpec{AreaMM2: quantity.Known((fits + 0.5) * over * over), LinerMM: quantity.Known(0), WedgeMM: quantity.Known(0), FillLimit: quantity.Known(1)}
		o := winding.Evaluate(j)
		f := finding(&o, "trial[0].turns")
		require.NotNil(t, f)
		assert.Contains(t, f.Fix, words)
	}
}

// A count of cells that reads like volts is said in volts, and one that makes no usual battery
// is doubted, unless its voltage was given.
func TestCellsThatReadLikeVolts(t *testing.T) {
	for _, c := range []struct {
		chemistry string
		cells     float64
		words     string
		severity  winding.Severity
	}{
		{"flooded", 24, "a battery of 48 V", winding.Note}, {"agm", 12, "a battery of 24 V", winding.Note}, {"flooded", 6, "", 0},
		{"lfp", 24, "76.8 V, which is not a usual one", winding.Doubt}, {"flooded", 48, "96 V, which is not a usual one", winding.Doubt}, {"lfp", 8, "", 0}, {"custom", 24, "", 0},
	} {
		j := ready()
		j.Battery = job.BatterySpec{Chemistry: c.chemistry, Cells: quantity.Known(c.cells)}
		o := winding.Evaluate(j)
		f := finding(&o, "battery.cells")
		if c.words == "" {
			assert.Nil(t, f, "%+v", c)
			continue
		}
		require.NotNil(t, f, "%+v", c)
		assert.Contains(t, f.Text, c.words)
		assert.Equal(t, c.severity, f.Severity)
		j.Battery.RestVolts = quantity.Known(50)
		o = winding.Evaluate(j)
		assert.Nil(t, finding(&o, "battery.cells"), "its voltage was given")
	}
}

// Where no winding that fits begins in time, what the drive would have to do is said.
func TestLateChargingSaysTheRatioItWants(t *testing.T) {
	j := load(t, "spin-up-seven-ways.toml")
	o := winding.Evaluate(j)
	a := &o.Trials[0]
	f := finding(&o, "trial[0].turns")
	require.NotNil(t, f)
	require.Empty(t, a.Mend)
	want := o.Machine.Ratio.Value * a.CutInRPM.Value / o.Machine.SlowRPM.Value
	assert.Contains(t, f.Fix, fmt.Sprintf("%.3g turns of the alternator for one of the drive", want))
}

// A load that is no battery has no post, and its reason speaks of it.
func TestFuseOfALoadThatIsNoBattery(t *testing.T) {
	for name, words := range map[string]string{"bus.toml": "converter", "lamp-half-wave.toml": "resistor"} {
		o := winding.Evaluate(load(t, name))
		assert.Contains(t, o.Machine.FuseAmps.Why, words)
		assert.NotContains(t, o.Machine.FuseAmps.Why, "what it does with the amps")
		for _, c := range o.Cautions {
			assert.NotContains(t, c.Text, "battery", name)
		}
	}
}

// Sentences read like speech: no field of the file by its key, no source, no two blanks, no symbol
// without its word.
func TestSentencesAreForPeople(t *testing.T) {
	files, err := filepath.Glob("../testdata/*/*.toml")
	require.NoError(t, err)
	key := regexp.MustCompile(`\b(slot|machine|trial|old|spin|short|amps|coil|field|drive|battery|target)(\[\d+\])?\.[a-z_]+`)
	sentences := 0
	for _, file := range files {
		if !strings.Contains(file, "/jobs/") && !strings.Contains(file, "/doubtful/") {
			continue
		}
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		o := winding.Evaluate(job.Parse(string(text)).Job())
		var said []string
		for _, f := range o.Findings {
			said = append(said, f.Text, f.Fix)
		}
		for _, c := range o.Cautions {
			said = append(said, c.Text)
		}
		for i := range o.Trials {
			said = append(said, o.Trials[i].Verdict, o.Trials[i].Suits, o.Trials[i].Mend)
		}
		for _, s := range said {
			sentences++
			assert.NotContains(t, s, "  ", file)
			assert.NotContains(t, s, "kw1", file)
			assert.NotContains(t, s, "kw3", file)
			assert.NotRegexp(t, `\b1 turns\b`, s, file)
			assert.Empty(t, key.FindString(s), "%s: %s", file, s)
		}
	}
	assert.Greater(t, sentences, 300)
	for _, f := range winding.Outputs() {
		assert.NotContains(t, winding.HowOf(f.ID).Source, "in the source", f.ID)
	}
}

// Where the wind turns the rotor and nothing comes in, the rotor's own speed there is given, and a drag
// that nobody measured is asked for first: no winding cures it.
func TestAGuessedDragIsAskedForWhereNothingComes(t *testing.T) {
	for _, measured := range []bool{false, true} {
		j := load(t, "wind-good.toml")
		j.Trials = j.Trials[:1]
		j.Trials[0].Turns = quantity.Known(5)
		j.Machine.IronWatts, j.Machine.IronRPM = quantity.Reading{}, quantity.Reading{}
		if measured {
			j.Machine.IronWatts, j.Machine.IronRPM = quantity.Known(8), quantity.Known(300)
		}
		o := winding.Evaluate(j)
		at := slices.IndexFunc(o.Findings, func(f winding.Finding) bool { return strings.HasPrefix(f.Text, "nothing comes in") })
		require.GreaterOrEqual(t, at, 0, "%v: %+v", measured, o.Findings)
		f := o.Findings[at]
		p := o.Trials[0].Operating[1]
		require.Zero(t, p.AmpsDC)
		assert.Contains(t, f.Text, fmt.Sprintf("iron and drag hold it at %s rpm of the wind rotor", quantity.Number(p.DriveRPM, quantity.AtMost(3))))
		assert.Equal(t, !measured, strings.Contains(f.Fix, "measure the drag"), f.Fix)
	}
}

// A slot that is too full is mended by fewer strands where there is more than one.
func TestFewerStrandsAreNamedWhereThereAreSome(t *testing.T) {
	for strands, said := range map[float64]bool{1: false, 2: true} {
		j := load(t, "engine.toml")
		j.Trials = j.Trials[:1]
		j.Trials[0].Strands, j.Trials[0].Turns = quantity.Known(strands), quantity.Known(200)
		o := winding.Evaluate(j)
		at := slices.IndexFunc(o.Findings, func(f winding.Finding) bool { return strings.Contains(f.Text, "is over the limit of") })
		require.GreaterOrEqual(t, at, 0, "%v", o.Findings)
		assert.Equal(t, said, strings.Contains(o.Findings[at].Fix, "fewer strands"), o.Findings[at].Fix)
	}
}

// A density that is passed while the class is kept says how much the class would allow; one that is
// passed with the class says nothing of it.
func TestADensityPassedSaysWhatTheClassAllows(t *testing.T) {
	o := winding.Evaluate(load(t, "pedals-hub.toml"))
	allows := 0.0
	for _, l := range o.Trials[0].Each {
		if l.Name == "temperature" {
			allows = l.AmpsDC.Value
		}
	}
	require.Greater(t, allows, o.Trials[0].SteadyAmps.Value)
	assert.NotZero(t, severityOf(&o, "A", fmt.Sprintf("its class would allow %.1f A", allows)))

	o = winding.Evaluate(load(t, "wind-good.toml"))
	require.NotZero(t, severityOf(&o, "A", "is over its limit"))
	assert.Zero(t, severityOf(&o, "A", "its class would allow"))
}
