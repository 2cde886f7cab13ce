package winding

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// withJoints is a job with one of its trials connected as given.
func withJoints(j job.Job, i int, to *Joints) job.Job {
	j.Trials = append([]job.Trial{}, j.Trials...)
	j.Trials[i].Connection, j.Trials[i].Circuits = to.Connection, quantity.Known(float64(to.Circuits))
	return j
}

// The same coils with other connections are reported where they do better, before any new winding, and
// do what is said of them: every stored job, its trials in star and in delta, with their turns and with
// about half of them.
func TestTheSameCoilsJoinedOtherwiseDoWhatIsSaid(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	told, ways := 0, map[string]int{}
	for _, file := range append(files, "example") {
		j := job.Example().Job()
		if file != "example" {
			j = loadJob(t, strings.TrimSuffix(filepath.Base(file), ".toml"))
		}
		for n, c := range []layout.Connection{layout.Star, layout.Delta, layout.Star, layout.Delta} {
			k := j
			k.Trials = append([]job.Trial{}, j.Trials...)
			for i := range k.Trials {
				if k.Trials[i].Connection = c; n > 1 && k.Trials[i].Turns.Value > 1 {
					k.Trials[i].Turns = quantity.Known(math.Round(0.55 * k.Trials[i].Turns.Value))
				}
			}
			o := Evaluate(k)
			for i := range o.Trials {
				a := &o.Trials[i]
				require.Equal(t, a.Joints == nil, a.Rejoin == "")
				if a.Joints == nil {
					continue
				}
				told++
				t.Log(file, a.Name, c, a.Rejoin)
				n := Prepare(withJoints(k, i, a.Joints)).WithoutOffers().Outcome().Trials[i]
				what := fmt.Sprintf("%s %s: %s", file, a.Name, a.Rejoin)
				assert.False(t, n.OverLimit() || n.Burns() || n.dragged(draggedFar) != nil, what)
				assert.Contains(t, a.Rejoin, fmt.Sprintf("begins at %.0f alternator rpm, %.3g A net", n.CutInRPM.Value, n.AmpsUsual.Value), what)
				assert.Equal(t, a.Turns, n.Turns)
				assert.Equal(t, a.Wire, n.Wire)
				assert.True(t, strings.HasPrefix(a.Better(), a.Rejoin), "what costs no wire comes first")
				if k.Drive.Kind == "wind" {
					assert.InDelta(t, n.YearKWh.Value, numberBefore(t, a.Rejoin, " kWh a year"), 0.5+0.02*n.YearKWh.Value, what)
				}
				was := a.stands(&o.Machine) && a.dragged(draggedFar) == nil && !OutputOf("cut_in_rpm").Past(&o, a)
				if was && k.Drive.Kind != "wind" {
					assert.Greater(t, n.AmpsUsual.Value, a.AmpsUsual.Value, what)
				}
				ways[strings.SplitN(a.Rejoin, ":", 2)[0]]++
				fixed := false
				for _, f := range o.Findings {
					fixed = fixed || f.Trial == a.Name && strings.HasPrefix(f.Fix, a.Rejoin)
				}
				assert.True(t, fixed, what)
			}
		}
	}
	assert.Greater(t, told, 5)
	assert.Positive(t, ways["the same coils in star"], "%v", ways)
	assert.Positive(t, ways["the same coils in delta"], "%v", ways)
	assert.Greater(t, len(ways), 2, "%v", ways)
}

// numberBefore is the number before some words.
func numberBefore(t *testing.T, text, words string) float64 {
	t.Helper()
	before, _, ok := strings.Cut(text, words)
	require.True(t, ok, text)
	n := 0.0
	_, err := fmt.Sscan(before[strings.LastIndexByte(before, ' ')+1:], &n)
	require.NoError(t, err)
	return n
}

// By hand: delta to star are √3 times the volts between leads for the same coils, so it begins at 1/√3 of
// the speed; half the circuits are twice the volts.
func TestStarBeginsRootThreeSooner(t *testing.T) {
	j := loadJob(t, "pedals-hub")
	j.Trials = j.Trials[:1]
	j.Trials[0].Connection = layout.Delta
	b := Prepare(j)
	of := offers{workshop: b, bed: &b.bed, slots: new(fullSlots), tried: new(trying)}
	o := b.Outcome().Trials[0]
	list := of.joinings(&j.Trials[0], &o, true)[0]
	require.NotEmpty(t, list)
	star := false
	for _, to := range list {
		n := b.Static(withJoints(j, 0, &to).Trials[0])
		times := float64(o.Circuits) / float64(to.Circuits)
		if to.Connection == layout.Star {
			times *= math.Sqrt(3)
			star = true
		}
		assert.Greater(t, times, 1.0, "where it begins too late only what makes more volts is tried")
		assert.InEpsilon(t, o.CutInRPM.Value/times, n.CutInRPM.Value, 1e-9)
	}
	assert.True(t, star)
}

// Of two joinings on the side of fewer volts the second, two circuits, is what the example's thin-many
// trial wants: delta, the nearer, leaves it past its limit. It is then trial B's winding, and brings what
// B does.
func TestTheSecondJoiningIsTriedToo(t *testing.T) {
	o := Evaluate(job.Example().Job())
	joints := o.Trials[2].Joints
	require.NotNil(t, joints)
	assert.Equal(t, Joints{layout.Star, 2}, *joints)
	there := Evaluate(withJoints(job.Example().Job(), 2, joints)).Trials[2]
	assert.InEpsilon(t, o.Trials[1].AmpsUsual.Value, there.AmpsUsual.Value, 0.01)
}
