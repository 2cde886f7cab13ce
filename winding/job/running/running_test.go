package running

import (
	"os"
	"os/exec"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhetherAProgramRuns(t *testing.T) {
	self := Self()
	assert.Equal(t, Runs, self.State())
	assert.False(t, EndedShort(self.Short()))

	other := self
	other.Began += "x"
	if self.Began != "" {
		assert.Equal(t, Ended, other.State(), "the number has come again")
		assert.True(t, EndedShort(other.Short()))
	}
	other = self
	other.Host += "x"
	assert.Equal(t, Elsewhere, other.State())
	assert.False(t, EndedShort(other.Short()))

	cmd := exec.Command(os.Args[0], "-test.run", "^$")
	require.NoError(t, cmd.Start())
	child := Program{PID: cmd.Process.Pid, Host: self.Host}
	child.Began, _ = began(child.PID)
	if runtime.GOOS == "linux" {
		require.NoError(t, cmd.Process.Kill())
		assert.Eventually(t, func() bool { return child.State() == Ended }, 5e9, 1e6, "also while nobody has asked how it ended")
	}
	_ = cmd.Wait()
	assert.Equal(t, Ended, child.State())
	assert.True(t, EndedShort(child.Short()))
}

func TestOnlyOurNamesAreRead(t *testing.T) {
	for _, s := range []string{"", "x", "01234567-1-0123456", "01234567--1-01234567", "0123456-12-01234567", "zzzzzzzz-12-01234567"} {
		assert.False(t, EndedShort(s), s)
	}
}
