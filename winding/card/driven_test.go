package card

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The section on the drive tells what mends a trial without any other winding, and what stands in the
// way of another beside it: an engine too weak for a trial is mended by a regulator alone.
func TestTheDriveTellsWhatMendsWithoutRewinding(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/engine.toml")
	require.NoError(t, err)
	w := workOut(strings.Replace(string(text), "power_w = 2000", "power_w = 475", 1))
	told := 0
	said := flat(section(t, Report(w.b, &w.o, Options{}), "THE DRIVE"))
	for i := range w.o.Trials {
		if a := &w.o.Trials[i]; a.Calmer != "" && a.InTheWay != "" {
			told++
			assert.Contains(t, said, "- would do better: "+flat(a.Calmer))
			assert.Contains(t, said, "- "+flat(a.InTheWay))
		}
	}
	assert.Equal(t, 2, told)
}
