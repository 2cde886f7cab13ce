package tui

import (
	"os"
	"path/filepath"
	"testing"

	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Inches chosen in one job apply to that job: another one uses the units it is typed in, and the first
// has inches again when it is reopened. Units asked for at the start apply to every job.
func TestUnitsChosenInAJobStayThere(t *testing.T) {
	dir := t.TempDir()
	metric, other := filepath.Join(dir, "metric.toml"), filepath.Join(dir, "other.toml")
	for _, path := range []string{metric, other} {
		require.NoError(t, os.WriteFile(path, []byte(job.Example().Text()), 0o600))
	}
	inch := filepath.Join(dir, "inch.toml")
	require.NoError(t, os.WriteFile(inch, []byte("format = 1\n[machine]\nbore_in = 4.5\nstack_in = 1.25\n"), 0o600))
	m := New(session.NewExample(), recovery.Store{Dir: filepath.Join(dir, "state")})
	m.w, m.h = 120, 40
	open := func(path string) bool {
		m.open(path)
		require.Equal(t, path, m.s.Path)
		return m.s.Units.Inch
	}
	assert.False(t, open(metric))
	m.flipLengths()
	assert.True(t, m.s.Units.Inch)
	assert.False(t, open(other), "another metric job")
	assert.True(t, open(inch))
	assert.True(t, open(metric), "chosen there before")
	yes := true
	m.store.Inch = &yes
	assert.True(t, open(other), "asked for at the start")
}

// Units chosen before a job has a file become that file's once it is saved.
func TestUnitsChosenBeforeAFileIsNamedStay(t *testing.T) {
	t.Chdir(t.TempDir())
	store := recovery.Store{Dir: t.TempDir()}
	for _, chosen := range []bool{true, false} {
		m := New(session.NewExample(), store)
		m.w, m.h = 120, 40
		if chosen {
			m.flipLengths()
		}
		require.NoError(t, m.s.Save("named.toml", 0))
		m.isSaved()
		assert.Equal(t, chosen, store.Units("named.toml", m.s.Document()).Inch)
		require.NoError(t, os.Remove("named.toml"))
		store = recovery.Store{Dir: t.TempDir()}
	}
}

// The room for wire is in the unit of the area typed beside it, whatever unit is preferred: mm² beside
// mm², square inches beside square inches.
func TestTheSlotsLineSpeaksOneUnit(t *testing.T) {
	for typed, want := range map[string]string{"150 mm2": `Slot area 150 mm² room 1\d\d mm²`, ".25 in2": `Slot area \.25 in² room 0\.2\d+ in²`} {
		for _, units := range []string{"", "i"} {
			s := session.NewExample()
			s.Edit(s.Document().Set("slot.area", typed, quantity.Choice{}))
			m := opened(s, 120, 40, "Trials", units)
			assert.Regexp(t, want, tuitest.Words(m.View()), "%s, %q", typed, units)
			assert.Equal(t, units == "i", m.s.Units.Inch)
		}
	}
}
