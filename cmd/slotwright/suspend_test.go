//go:build !windows

package main

import (
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Told to stop where no shell could wake it, the program restores the terminal, keeps the work, and
// soon continues by itself; woken from a stop that it could not catch, it redraws. A shell's own stop
// and fg are tested in .ci/e2e.
func TestStoppedAndWoken(t *testing.T) {
	const taken, handedBack = "\x1b[?1049h", "\x1b[?1049l"
	d := newDesk(t)
	w := start(t, d.state, usual, d.path)
	w.see("charging begins")
	takes := func(n int) bool {
		for range 300 {
			if text := w.text(); strings.Count(text, taken) == n && strings.Count(text, handedBack) == n-1 {
				return true
			}
			time.Sleep(50 * time.Millisecond)
		}
		return false
	}
	w.keys("+")
	w.see("not saved")
	require.NoError(t, w.cmd.Process.Signal(syscall.SIGTSTP))
	require.True(t, takes(2), "%q", w.text())
	copies, err := filepath.Glob(filepath.Join(d.store.Dir, "unsaved-*"))
	require.NoError(t, err)
	assert.Len(t, copies, 1, "kept before it sleeps")
	require.NoError(t, w.cmd.Process.Signal(syscall.SIGSTOP))
	require.NoError(t, w.cmd.Process.Signal(syscall.SIGCONT))
	require.True(t, takes(3), "%q", w.text())
	w.keys("q")
	w.see("Leave?")
	w.keys("d")
	assert.Equal(t, 0, w.wait())
}
