package session

import (
	"runtime"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var kept [][]byte

// turns is the number of collector runs.
func turns() uint32 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.NumGC
}

// The collector runs after a key that has left garbage, only then, and one run at a time; it redraws
// nothing.
func TestTheCollectorsTurn(t *testing.T) {
	defer debug.SetGCPercent(debug.SetGCPercent(-1)) // it comes by itself not at all
	var tidier Tidier
	leave := func(bytes int) {
		kept = nil
		for range bytes / 1024 {
			kept = append(kept, make([]byte, 1024))
		}
	}
	leave(4 << 20)
	first, before := tidier.After(), turns()
	require.NotNil(t, first)
	require.Nil(t, tidier.After(), "one waits already")
	require.Nil(t, first())
	assert.Greater(t, turns(), before)
	second, before := tidier.After(), turns()
	require.NotNil(t, second)
	require.Nil(t, second())
	assert.Equal(t, before, turns(), "there is nothing to collect")
}
