package machine

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every field's dim text has a form that fits the narrowest column of values.
func TestDimWordsHaveAFormInFew(t *testing.T) {
	for i := range job.Fields {
		words := job.Fields[i].Ghost
		if brief := inBrief[words]; kit.Width(words) > 10 {
			assert.NotEmpty(t, brief, words)
			assert.LessOrEqual(t, kit.Width(brief), 10, words)
		}
	}
}

// The dim text of an empty field, and the doubt about a value, are shown whole or shortened, never cut:
// every row of the forms of whole jobs, with and without the focus, each job in the narrowest terminal
// and in one of the others.
func TestNothingDimIsCut(t *testing.T) {
	cut := regexp.MustCompile(`\([^()\n]*…|doubt\w*…`)
	paths, err := filepath.Glob("../../testdata/jobs/*.toml")
	require.NoError(t, err)
	more, err := filepath.Glob("../../testdata/doubtful/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, more)
	texts := []string{job.Template("")}
	for i, path := range append(paths, more...) {
		if testing.Short() && i%12 != 0 {
			continue
		}
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		texts = append(texts, string(data))
	}
	others := [][2]int{{80, 24}, {100, 30}, {120, 40}}
	for n, text := range texts {
		for _, size := range [][2]int{{60, 20}, others[n%len(others)]} {
			for _, v := range []*View{NewMachine(), NewDrive()} {
				s := session.New(job.Parse(text), "", job.Mark{})
				tuitest.Draw(t, v, s, size[0], size[1])
				v.first = false
				for range v.form.Rows {
					shown := tuitest.Draw(t, v, s, size[0], size[1])
					if !assert.Empty(t, cut.FindAllString(shown, -1), "%s %v", s.Job().Name, size) {
						break
					}
					require.True(t, v.Key(s, tuitest.KeyMsg("down")))
				}
			}
		}
	}
}
