package trials

import (
	"os"
	"path/filepath"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The fill that this winder reaches is offered at the fill limit if none was given, and accepted only
// by its key.
func TestTheFillOfThisHandIsOffered(t *testing.T) {
	file := filepath.Join("..", "..", "testdata", "shelf", "planned.toml")
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	s, v := session.New(job.Parse(string(text)), file, job.Mark{}), New()
	v.row = rowFill
	for range 2 { // the records, then what they have for this job
		tuitest.Draw(t, v, s, 80, 21)
		tuitest.Work(t, s)
	}
	frame := tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	assert.Contains(t, frame, "(your last 2 jobs). f9 takes it, as a guess.")
	assert.False(t, s.Job().Slot.FillLimit.Given())
	assert.Empty(t, tuitest.Clashes(v.Bindings(s)))
	tuitest.Press(t, v, s, 80, 21, "f9")
	assert.InDelta(t, 0.7, s.Job().Slot.FillLimit.Value, 0.03)
	assert.False(t, v.Key(s, tuitest.KeyMsg("f9")), "it is given now")
}
