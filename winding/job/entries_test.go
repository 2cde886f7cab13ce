package job

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Trials with unknown keys, repeated keys and comments anywhere in them: what is removed goes with all
// its keys, what is added comes after all those of the one before it, and the others' stay where they
// were.
func TestEntriesTakeAllTheirKeysAlong(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 15))
	for range times(t, 400) {
		trials := make([]string, 1+r.IntN(3)) // a job may have four
		for i := range trials {
			lines := []string{fmt.Sprintf("name = \"T%d\"", i), "turns = 11", "turns = 12",
				fmt.Sprintf("zz%d = 5", i), fmt.Sprintf("colour%d = '''\nred\n'''", i), "# a note", fmt.Sprintf("list%d = [\n 1,\n]", i)}
			r.Shuffle(len(lines), func(a, b int) { lines[a], lines[b] = lines[b], lines[a] })
			lines = append(lines[:r.IntN(len(lines)+1)], fmt.Sprintf("own%d = 1", i))
			trials[i] = "[[trial]]\n" + strings.Join(lines, "\n") + "\n"
			for n := range r.IntN(3) { // tables under it, which are nobody's else
				trials[i] += fmt.Sprintf("# more of it\n[trial.more%d]\nturns = 5\n[[trial.list]]\nspan = 2\n", n)
			}
		}
		head, tail := "name = \"x\"\n\n", "\n[target]\ncurrent_a = 5\n"
		d := Parse(head + strings.Join(trials, "\n") + tail)
		gone := r.IntN(len(trials))
		n := d.Remove("trial", gone)
		left := append(append([]string{}, trials[:gone]...), trials[gone+1:]...)
		require.Equal(t, strings.Fields(head+strings.Join(left, "\n")+tail), strings.Fields(n.Text()), "%d taken from\n%s", gone, d.Text())

		n = d.Add("trial", -1)
		require.Equal(t, strings.Fields(head+strings.Join(append(trials, "[[trial]]"), "\n")+tail), strings.Fields(n.Text()), "added to\n%s", d.Text())
		require.Equal(t, d.Text(), n.Remove("trial", len(trials)).Text(), "there and back")
	}
}

// A table under an entry may stand behind another table, and goes with its entry all the same;
// one whose name only looks so stays.
func TestTablesUnderAnEntryGoWithIt(t *testing.T) {
	text := `[[trial]]
name = "A"

[target]
current_a = 5

[trial.more]
a = 1

["trial.more"]
b = 2
%s`
	second := `
[[trial]]
name = "B"
[trial.more]
c = 3
`
	d := Parse(fmt.Sprintf(text, second))
	assert.Equal(t, `[target]
current_a = 5

["trial.more"]
b = 2

[[trial]]
name = "B"
[trial.more]
c = 3
`, d.Remove("trial", 0).Text())
	assert.Equal(t, fmt.Sprintf(text, ""), d.Remove("trial", 1).Text())
	assert.Equal(t, d.Text()+"\n[[trial]]\n", d.Add("trial", -1).Text())
	assert.Equal(t, strings.Replace(fmt.Sprintf(text, ""), "a = 1\n", "a = 1\n\n[[trial]]\n", 1), Parse(fmt.Sprintf(text, "")).Add("trial", -1).Text())
}
