package card

import (
	"fmt"
	"maps"
	"os"
	"regexp"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// backwards is the stored engine with its two pulleys in each other's place.
func backwards(t *testing.T) (*winding.Bench, winding.Outcome) {
	t.Helper()
	read, err := os.ReadFile("../../testdata/jobs/engine.toml")
	require.NoError(t, err)
	d := job.Parse(strings.NewReplacer("driver_mm = 150", "driver_mm = 60", "driven_mm = 60", "driven_mm = 150").Replace(string(read)))
	require.Empty(t, d.Problems())
	b := winding.Prepare(d.Job())
	return b, b.Outcome()
}

// A drive that is probably the wrong way round is what the card says first: before what the winding
// brings, which is reckoned with that drive, and before what it lacks. No winding is named as a remedy.
func TestADriveBackwardsHeadsTheCard(t *testing.T) {
	b, o := backwards(t)
	for i := range o.Trials {
		card := flat(Text(b, &o, i, Options{}))
		assert.Contains(t, card, "NOT READY TO WIND. The drive is probably the wrong way round: 60 mm driving 150 mm,")
		assert.Contains(t, card, "To mend it: look which pulley is on the drive's shaft. With the pulleys swapped it would be 2.45, and 5390 alternator rpm at the top.")
		assert.NotContains(t, card, " fit: begins")
	}
	j := b.Job()
	j.Trials[0].Turns.Origin = 0 // not given
	j.Trials[0].Turns.Value = 0
	b = winding.Prepare(j)
	o = b.Outcome()
	require.NotNil(t, o.Reversed)
	card := flat(Text(b, &o, 0, Options{}))
	assert.Contains(t, card, "NOT READY TO WIND. The drive is probably")
	assert.Contains(t, card, "Missing: turns")
}

var sheetOf = regexp.MustCompile(`sheet 1 of (\d)`)

// What is called out besides the first is on the last sheet, in the order of its weight,
// and what has no room there is counted; folded the same. Nothing is said of sheets where nothing else is
// called out.
func TestTheCardListsWhatElseIsCalledOut(t *testing.T) {
	listed, left := 0, 0
	all := maps.Clone(jobs(t)) // the others share it
	b, o := backwards(t)
	all["backwards"] = worked{b: b, o: o}
	for name, work := range all {
		for i := range work.o.Trials {
			list := newWriter(work.b, &work.o, Options{}).against(work.o.Trials[i].Name)
			for _, wide := range []int{0, 60} {
				whole := Text(work.b, &work.o, i, Options{Width: wide})
				card := flat(whole)
				if len(list) < 2 {
					assert.NotContains(t, card, "ALSO called out", name)
					continue
				}
				_, also, some := strings.Cut(card, "ALSO called out: ")
				more := len(list) - 1
				if !some {
					assert.Contains(t, card, fmt.Sprintf("And %d more: in the report, under findings.", more), name)
					continue
				}
				assert.Contains(t, card, fmt.Sprintf("And %d more: on the last sheet.", more), name)
				listed++
				of := sheetOf.FindStringSubmatch(whole)[1]
				_, sheet, _ := strings.Cut(whole, "sheet "+of+" of "+of)
				assert.Contains(t, sheet, "ALSO", name)
				if wide == 0 {
					assert.LessOrEqual(t, strings.Count(sheet, "\n"), pageLines, name)
				}
				at := 0
				for k := range list[1:] {
					where := strings.Index(also, flat(text.Clean(list[1+k].Text))[1:])
					if where < 0 { // the first that is not there: what follows is counted
						assert.Contains(t, also, fmt.Sprintf("%d more: slotwright report, with --section findings.", more-k), name)
						left++
						break
					}
					assert.GreaterOrEqual(t, where, at, name)
					at = where
				}
			}
		}
	}
	assert.Greater(t, listed, 10)
	assert.Greater(t, left, 0)
}

// Of a drive whose ratio nobody gave, the card says that what the winding brings is not known, and what
// it would take, behind a lesser doubt and where there is none.
func TestTheCardSaysThatNobodyKnowsWhatItBrings(t *testing.T) {
	read, err := os.ReadFile("../../testdata/jobs/engine.toml")
	require.NoError(t, err)
	const unknown = "What it brings is not known: needs the ratio, both pulleys or the teeth of both wheels."
	d := job.Parse(string(read))
	whole := d.Job()
	b := winding.Prepare(whole)
	o := b.Outcome()
	assert.NotContains(t, flat(Text(b, &o, 1, Options{})), "What it brings is not known")
	d = d.Clear("drive.driver").Clear("drive.driven")
	b = winding.Prepare(d.Job())
	o = b.Outcome()
	assert.Regexp(t, `READY TO WIND, BUT: The .* `+regexp.QuoteMeta(unknown), flat(Text(b, &o, 1, Options{})))
	o.Findings = nil
	assert.Contains(t, flat(Text(b, &o, 1, Options{})), "READY TO WIND, BUT: "+unknown)
}
