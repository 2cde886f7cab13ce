package main

import (
	"bytes"
	"path/filepath"
	"testing"

	"slotwright/tui"
	"slotwright/tui/recovery"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A job is computed once the program has taken the terminal; problems of its file are reported before.
func TestOpeningWaitsForTheTerminal(t *testing.T) {
	store := recovery.Store{Dir: t.TempDir()}
	_, err := openSession(filepath.Join(t.TempDir(), "none.toml"), store, false)
	require.ErrorContains(t, err, "to begin one: slotwright new")

	path := filepath.Join(t.TempDir(), "hub.toml")
	_, err = job.Save(path, job.Example().Text(), job.Mark{}, 0)
	require.NoError(t, err)
	begin, err := openSession(path, store, false)
	require.NoError(t, err)
	assert.Empty(t, store.Last(), "it is not open yet")
	o := &opening{begin: func() *tui.Model { return tui.New(begin(), store) }}
	require.Nil(t, o.Model)
	o.Init()
	require.NotNil(t, o.Model)
	assert.Equal(t, path, o.Session().Path)
	assert.Len(t, o.Session().Outcome().Trials, 3)
	assert.Equal(t, path, store.Last())
}

// A failure while the job is opened restores the terminal and is reported as a fault, without mention
// of unsaved work, for there was none.
func TestAFaultInOpening(t *testing.T) {
	var out bytes.Buffer
	o := &opening{begin: func() *tui.Model { panic("a fault") }}
	_, err := tea.NewProgram(o, tea.WithInput(nil), tea.WithOutput(&out), tea.WithAltScreen(), tea.WithoutSignalHandler()).Run()
	require.ErrorIs(t, err, tea.ErrProgramPanic)
	assert.Contains(t, out.String(), "\x1b[?1049l", "the person's own screen is back")
	require.Nil(t, o.Model)
	assert.EqualError(t, notOpened(err), "the program failed while it opened the job, which is a fault in it")
	assert.EqualError(t, notOpened(assert.AnError), "the screen failed: "+assert.AnError.Error())
}
