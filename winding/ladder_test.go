package winding_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A rung equals a trial of that wire and those turns: every figure that both have.
func TestRungsAreTrials(t *testing.T) {
	for _, j := range []job.Job{job.Example().Job(), load(t, "wind-good.toml"), load(t, "engine.toml"), load(t, "fixed.toml")} {
		rungs := winding.Prepare(j).Ladder(0)
		require.NotEmpty(t, rungs)
		for i, r := range rungs {
			if i%4 != 0 && !r.Present {
				continue
			}
			k := j
			k.Trials = []job.Trial{r.Trial}
			a := winding.Evaluate(k).Trials[0]
			for _, f := range winding.Outputs() {
				if f.Group != "Fit" && f.Group != "Amps" && f.Group != "Limits" && f.ID != "cut_in_rpm" && f.ID != "year_kwh" ||
					f.ID == "target_rpm" || f.ID == "cross_reference_rpm" || f.ID == "limit_rpm" || f.ID == "most_wires_that_pack" {
					continue // these need the curve, another trial, or a search
				}
				mine, theirs := f.Of(&r.TrialOutcome), f.Of(&a)
				require.Equal(t, theirs.Known(), mine.Known(), "%s of %s", f.ID, r.Wire)
				if mine.Known() {
					within := 1e-9 * max(1, theirs.Value)
					if f.Group == "Limits" {
						within = 1e-3 * theirs.Value // interpolated on the curve, which is drawn up to the job's top
					}
					assert.InDelta(t, theirs.Value, mine.Value, within, "%s of %s", f.ID, r.Wire)
				}
			}
		}
	}
}

// Thickest wire and fewest turns first; every slot is full, so that one turn more would not fit; the
// trial's own wire is one of the rungs.
func TestTheLadderFillsTheSlot(t *testing.T) {
	j := job.Example().Job()
	rungs := winding.Prepare(j).Ladder(1)
	require.Greater(t, len(rungs), 10)
	present, best := 0, 0
	for i, r := range rungs {
		assert.LessOrEqual(t, r.WireFill.Value, r.FillLimit.Value)
		assert.Greater(t, r.WireFill.Value*(r.Turns.Value+1)/r.Turns.Value, r.FillLimit.Value, "one more goes in: %s", r.Wire)
		if i > 0 {
			assert.Less(t, r.BareMM.Value, rungs[i-1].BareMM.Value)
			assert.GreaterOrEqual(t, r.Turns.Value, rungs[i-1].Turns.Value)
		}
		if r.Present {
			present++
		}
		if r.BestUsual {
			best++
			for _, other := range rungs {
				if other.Meets {
					assert.GreaterOrEqual(t, r.AmpsUsual.Value, other.AmpsUsual.Value)
				}
			}
		}
	}
	assert.Equal(t, 1, present)
	assert.Equal(t, 1, best)
	assert.Nil(t, winding.Prepare(j).Ladder(9))
	j.Slot.AreaMM2 = quantity.Reading{}
	assert.Empty(t, winding.Prepare(j).Ladder(0), "no slot, no ladder")
}

// Wire that does not pass the slot opening is on the ladder, since more strands of thinner wire do; but
// none of it is best, and it meets no requirement.
func TestWhatDoesNotPassTheMouthIsNotBest(t *testing.T) {
	j := load(t, "engine.toml")
	j.Slot.MouthMM = quantity.Known(2.2)
	barred, best := 0, 0
	for _, r := range winding.Prepare(j).Ladder(0) {
		if r.CannotBeWound() != "" {
			barred++
			assert.Contains(t, r.CannotBeWound(), "the mouth is ", r.Wire)
			assert.False(t, r.Meets || r.BestSlow || r.BestUsual || r.BestTop, r.Wire)
		} else if r.BestSlow || r.BestUsual || r.BestTop || r.Meets {
			best++
		}
	}
	assert.Greater(t, barred, 3)
	j = load(t, "pedals.toml")
	for _, r := range winding.Prepare(j).Ladder(0) {
		if r.BestUsual {
			j.Slot.MouthMM = quantity.Known(j.Slot.MouthMM.Value - r.MouthSpareMM.Value - 0.01) // the best one no longer passes it
		}
	}
	for _, r := range winding.Prepare(j).Ladder(0) {
		if r.BestUsual {
			best++
			assert.Empty(t, r.CannotBeWound())
		}
	}
	assert.Positive(t, best)
}

// A winding that charges only above its usual speed is best of nothing, however much it brings there:
// in these the thickest that is within its limits at the top brings nothing below.
func TestNothingIsBestThatBringsNothingUsually(t *testing.T) {
	marked := 0
	for _, name := range []string{"amps-readings", "axial-air-core", "trial-coil"} {
		for _, r := range winding.Prepare(load(t, name+".toml")).Ladder(0) {
			if r.BestSlow || r.BestUsual || r.BestTop {
				marked++
				assert.Positive(t, r.AmpsUsual.Value, "%s: %s", name, r.Wire)
			}
		}
	}
	assert.Positive(t, marked)
}

// against are the objections of a verdict that a rung which meets the requirement never has.
var against = regexp.MustCompile(`does not (fit|go in)|passes its limit|gets too hot|burns|drags the|stops the|holds the|stalls|runs away|gets to|begins after|brings nothing|runs the battery down|would bring|takes .* more for its rotor`)

// The word of a rung agrees with the trial's verdict once it is taken as a trial: there is no objection
// to one that meets, and one that stalls is said to, at the same wind or speed. Every job, every sixth
// rung, in short every fourteenth, and the present one, each starting with another.
func TestTheWordOfARungIsTheVerdictOfItsTrial(t *testing.T) {
	jobs, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	words, each := map[string]int{}, 6
	if testing.Short() {
		each = 14
	}
	for n, path := range jobs {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		j := job.Parse(string(text)).Job()
		for of := range j.Trials {
			for i, r := range winding.Prepare(j).Ladder(of) {
				if (i+n)%each != 0 && !r.Present {
					continue
				}
				k := j
				k.Trials = []job.Trial{r.Trial}
				o := winding.Evaluate(k)
				a, what := &o.Trials[0], filepath.Base(path)+" "+r.Wire
				words[r.Word]++
				if r.Meets {
					assert.Equal(t, "meets", r.Word, what)
					assert.NotRegexp(t, against, a.Verdict, what)
					for _, f := range winding.Outputs() {
						assert.False(t, f.ID == "amps_dc_usual" && f.Past(&o, a), "%s: %s", what, f.ID)
					}
				}
				for _, word := range []string{"stalls", "runs away"} {
					if j.Drive.Kind == job.DriveWind && a.CannotBeWound() == "" {
						assert.Equal(t, r.Word == word, strings.Contains(a.Verdict, word+" in wind"+r.Where), "%s is said to be %q%s: %q", what, r.Word, r.Where, a.Verdict)
					}
				}
				if r.Word == "stalls" && j.Drive.Kind != job.DriveWind {
					assert.Regexp(t, "^holds the .* to "+strings.TrimPrefix(r.Where, " at ")+": ", a.Suits, what)
				}
			}
		}
	}
	for _, word := range []string{"", "meets", "stalls", "runs away"} {
		assert.Greater(t, words[word], enough(2), "rungs that say %q", word)
	}
}

// A series controller is modelled as one that burns the voltage difference; where it matters, the
// figures for a controller that switches are stated beside them, and nowhere else.
func TestWhatASwitchingControllerMakesOfItIsSaid(t *testing.T) {
	j := load(t, "wind-good.toml")
	j.Battery.MostAmps = quantity.Known(1)
	for held, series := range map[string]bool{job.HeldBySeries: true, job.HeldByShunt: false} {
		j.Battery.HeldBy = held
		said := 0
		for _, r := range winding.Prepare(j).Ladder(0) {
			if strings.Contains(r.Holds, winding.IfItSwitches) {
				said++
			}
		}
		assert.Equal(t, series, said > 0, held)
	}
}
