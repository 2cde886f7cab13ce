package session

import (
	"runtime"
	"runtime/metrics"
	"sync/atomic"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// # The collector's turn
//
// A key and its frame leave some hundreds of kilobytes of garbage. Left to itself the collector runs
// every few keys, in the middle of one, and doubles that key's time. So it is called a moment after a
// frame has been drawn, while the hand moves to the next key: it then finds little, and is done before
// the next frame at any rate at which keys repeat.

// Tidier calls the collector between keys. The zero value is ready; it is safe for several goroutines.
type Tidier struct{ waiting atomic.Bool }

const (
	// tidyAfter is time enough for the frame to be written, and less than the interval of repeated
	// keys.
	tidyAfter = 15 * time.Millisecond
	// tidyFrom is how much garbage makes a collection worth while, bytes. It is less than a key and its
	// frame leave, as the count lags by up to a megabyte; the collector runs by itself at some three.
	tidyFrom = 256 << 10
)

// After is to be done after a key: it waits, and collects what there is. It has no message, so nothing
// is drawn for it; nil while one is still waiting.
func (t *Tidier) After() tea.Cmd {
	if t.waiting.Swap(true) {
		return nil
	}
	return func() tea.Msg {
		time.Sleep(tidyAfter)
		t.waiting.Store(false)
		t.Tidy()
		return nil
	}
}

// Tidy collects what was left since the collector's last run, if that is worth while.
func (t *Tidier) Tidy() {
	asked := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}, {Name: "/gc/heap/live:bytes"}}
	metrics.Read(asked)
	if there, live := asked[0].Value.Uint64(), asked[1].Value.Uint64(); there >= live+tidyFrom {
		runtime.GC()
	}
}
