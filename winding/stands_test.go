package winding_test

import (
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// everyJob is each stored job by its name, as stored and with half and with twice the turns; in short
// each in one of these ways.
func everyJob(t *testing.T) map[string]job.Job {
	t.Helper()
	paths, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	all := map[string]job.Job{}
	for n, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for way, name := range []string{"", " half", " twice"} {
			if testing.Short() && way != n%3 {
				continue
			}
			times := []float64{1, 0.5, 2}[way]
			j := job.Parse(string(text)).Job()
			for i := range j.Trials {
				j.Trials[i].Turns.Value = float64(int(1 + j.Trials[i].Turns.Value*times))
			}
			all[filepath.Base(path)+name] = j
		}
	}
	return all
}

// enough is how many are found at least over everyJob, where all of it gives n.
func enough(n int) int {
	if testing.Short() {
		return n / 3
	}
	return n
}

// worked is a stored job with what comes out of it. All tests share these and only read them: a
// test that changes a job takes it from everyJob.
type worked struct {
	job     job.Job
	bench   *winding.Bench
	outcome winding.Outcome
	// ladder is that of the first trial.
	ladder func() []winding.Rung
}

var (
	onceWorked  sync.Once
	workedOfAll map[string]*worked
)

// everyWorked is everyJob, each worked out once for all tests.
func everyWorked(t *testing.T) map[string]*worked {
	t.Helper()
	onceWorked.Do(func() {
		workedOfAll = map[string]*worked{}
		for name, j := range everyJob(t) {
			workedOfAll[name] = workOut(j)
		}
	})
	return workedOfAll
}

func workOut(j job.Job) *worked {
	b := winding.Prepare(j)
	return &worked{j, b, b.Outcome(), sync.OnceValue(func() []winding.Rung { return b.Ladder(0) })}
}

// speeds matches the speeds in a sentence, with the text before and behind.
var speeds = regexp.MustCompile(`(\S+ )?(\S+ )?[\d.]+ (\S+ )?rpm( of the \S+)?`)

// whose is how a speed says which shaft it is of.
var whose = regexp.MustCompile(`alternator|engine|wheel|pedals|drive|of the `)

// Wherever a sentence gives a speed it says whose: the alternator's, or the drive's by its name.
func TestEverySpeedSaysWhoseItIs(t *testing.T) {
	seen := 0
	check := func(name, text string) {
		for _, told := range speeds.FindAllString(text, -1) {
			seen++
			assert.Regexp(t, whose, told, "%s: %q", name, text)
		}
	}
	for name, w := range everyWorked(t) {
		o := &w.outcome
		for i := range o.Trials {
			check(name, o.Trials[i].Verdict)
			check(name, o.Trials[i].Mend)
		}
		for _, f := range o.Findings {
			if f.Trial != "" {
				check(name, f.Text)
				check(name, f.Fix)
			}
		}
		for _, c := range o.Cautions {
			check(name, c.Text)
		}
		for _, r := range w.ladder() {
			check(name, r.Holds)
		}
	}
	assert.Greater(t, seen, enough(500))
}

// What the winding does not withstand is no promise: the cell is past its limit, nothing there is
// better, the sentence is in the conditional, and a year of it is past its limit too.
func TestAmpsThatAreNotStoodAreNotPromised(t *testing.T) {
	burning, over := 0, 0
	for name, w := range everyWorked(t) {
		o := &w.outcome
		for _, r := range o.Comparison {
			for i, c := range r.Cells {
				tr := &o.Trials[i]
				k := map[string]int{"amps_dc_slow": 1, "amps_dc_usual": 2, "amps_dc_top": 3}[r.ID] - 1
				if k >= 0 && k < len(tr.Operating) && c.Figure.Known() {
					p := tr.Operating[k]
					assert.Equal(t, p.TooHot, c.Burns, "%s %s %s", name, tr.Name, r.ID)
					if p.TooHot || tr.LimitAmps.Known() && p.AmpsDC > 1.01*tr.LimitIn(&p.RunPoint) || p.WindingC > o.Machine.MeanLimitC.Value {
						assert.Equal(t, winding.Past, c.Verdict, "%s %s %s", name, tr.Name, r.ID)
						over++
					}
				}
				if r.ID == "year_kwh" && c.Figure.Known() && tr.Burns() {
					burning++
					assert.Equal(t, winding.Past, c.Verdict, "%s %s", name, tr.Name)
					assert.Contains(t, tr.Verdict, "burns ", name)
				}
				if ref := r.Cells[o.Reference]; ref.Verdict == winding.Past {
					assert.NotEqual(t, winding.Worse, c.Verdict, "%s %s: worse than what is past its limit", name, r.ID)
				}
			}
		}
		for i := range o.Trials {
			if tr := &o.Trials[i]; len(tr.Operating) > 1 && tr.AmpsUsual.Value > 0 && tr.BridgeUsual.Value > 1.01*tr.LimitIn(&tr.Operating[1].RunPoint) && tr.LimitAmps.Known() {
				assert.NotRegexp(t, `(, | )brings \d[\d.]* A (with|at|in|more|less)`, strings.ReplaceAll(tr.Verdict, "would brings", ""), "%s %s", name, tr.Name)
			}
		}
	}
	assert.Greater(t, burning, enough(4))
	assert.Greater(t, over, enough(40))
}

// A row of the ladder that meets what is wanted has no figure past a limit, and in a light wind, in
// which nothing needs to flow, none is.
func TestWhatMeetsBreaksNothing(t *testing.T) {
	meets := 0
	for name, w := range everyWorked(t) {
		o := &w.outcome
		for _, r := range w.ladder() {
			if !r.Meets {
				continue
			}
			meets++
			for _, id := range []string{"cut_in_rpm", "amps_dc_slow", "amps_dc_usual", "amps_dc_top", "winding_c_hottest", "year_kwh"} {
				assert.False(t, winding.OutputOf(id).Past(o, &r.TrialOutcome), "%s %s %s", name, r.Wire, id)
			}
		}
	}
	assert.Greater(t, meets, enough(100))
}

// Each row says why it brings what it does; where amps fall in strong wind because the rotor stalls, it
// says so, with the speed at which the rotor is held.
func TestTheLadderSaysWhatHoldsTheAmps(t *testing.T) {
	kinds, jobs := map[string]int{}, maps.Clone(everyWorked(t))
	weak := load(t, "engine.toml")
	weak.Drive.Watts.Value /= 20
	jobs["a weak engine"] = workOut(weak)
	for name, w := range jobs {
		for _, r := range w.ladder() {
			if len(r.Operating) == 0 {
				continue
			}
			assert.NotEmpty(t, r.Holds, "%s %s", name, r.Wire)
			for _, kind := range []string{"stalled, it gives", "holds the drive back", "takes all that the drive gives", "charging begins at", "by its ohms", "mostly by its inductance", "best speed"} {
				if strings.Contains(r.Holds, kind) {
					kinds[kind]++
				}
			}
		}
	}
	assert.Len(t, kinds, 7, "%v", kinds)
}

// A slot less than half full by its limit (common practice, no source) is called mostly empty; what
// would do better in such a slot fills it.
func TestAMostlyEmptySlotSaysSo(t *testing.T) {
	j := load(t, "wind-good.toml")
	o := winding.Evaluate(j)
	assert.Contains(t, o.Trials[0].Verdict, "fills only 0.15 of its room, 0.70 go in")
	require.NotNil(t, o.Trials[0].Offer)
	filled := winding.Evaluate(inPlace(j, 0, o.Trials[0].Offer)).Trials[0]
	assert.Greater(t, filled.WireFill.Value, 0.95*filled.FillLimit.Value*(filled.Turns.Value-1)/filled.Turns.Value)
	for turns, empty := range map[float64]bool{20: true, 23: false} { // 0.016 a turn, half the limit is 0.35
		j.Trials[0].Turns.Value = turns
		tr := winding.Evaluate(j).Trials[0]
		assert.Equal(t, empty, tr.WireFill.Value < 0.35)
		assert.Equal(t, empty, strings.Contains(tr.Verdict, "fills only"), "%v turns fill %v", turns, tr.WireFill.Value)
	}
}

// Where legs or water really run, a trial lies on its curve, even when no top speed is given.
func TestTheCurveReachesWhereItRuns(t *testing.T) {
	for _, name := range []string{"pedals.toml", "water.toml"} {
		j := load(t, name)
		j.Drive.TopRPM, j.Target.TopRPM = quantity.Reading{}, quantity.Reading{}
		for i := range j.Trials {
			j.Trials[i].Turns.Value = 4 // loads it so little that it runs far above its usual speed
		}
		o := winding.Evaluate(j)
		for _, tr := range o.Trials {
			assert.Greater(t, tr.RunsUsual.Value, 1.1*o.Machine.UsualRPM.Value, "%s: else it shows nothing", name)
			assert.GreaterOrEqual(t, tr.Curve[len(tr.Curve)-1].RPM, tr.RunsUsual.Value, name)
		}
	}
}

// No sentence writes a speed or watts with a power of ten: a drive of some thousand rpm and watts is
// written in whole digits.
func TestSentencesHaveNoPowersOfTen(t *testing.T) {
	raw := regexp.MustCompile(`\de[+-]\d`)
	for _, name := range []string{"engine", "engine-alternator-short", "water", "pedals", "car-stator-13-to-30"} {
		j := load(t, name+".toml")
		for _, r := range []*quantity.Reading{&j.Drive.SlowRPM, &j.Drive.UsualRPM, &j.Drive.TopRPM, &j.Drive.Watts} {
			r.Value *= 30
		}
		if j.Drive.Ratio.Given() {
			j.Drive.Ratio.Value /= 30
		}
		b := winding.Prepare(j)
		o := b.Outcome()
		var told []string
		for i := range o.Trials {
			told = append(told, o.Trials[i].Verdict, o.Trials[i].Suits, o.Trials[i].Mend)
		}
		for _, f := range o.Findings {
			told = append(told, f.Text, f.Fix)
		}
		for _, c := range o.Machine.Conditions {
			told = append(told, c.Label)
		}
		if law, ok := winding.DriveLawOf(&j); ok {
			told = append(told, law.Words)
		}
		for i, r := range b.Ladder(0) {
			if i%5 == 0 {
				told = append(told, r.Holds)
			}
		}
		for _, text := range told {
			assert.NotRegexp(t, raw, text, name)
		}
	}
}
