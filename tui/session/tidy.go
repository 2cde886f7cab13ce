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
// A key and its frame leave some hundreds of kilobytes behind. Left to itself the collector
// comes every few keys, in the middle of one, and makes that one take twice its time. So it is
// called a moment after a frame is there, while the hand is on its way to the next key: what it
// finds then is little, and it is done before the next frame at any rate that keys repeat.

// Tidier calls the collector between keys. The zero value is ready; it is for several goroutines.
type Tidier struct{ waiting atomic.Bool }

const (
	// tidyAfter is time enough for the frame to be written, and less than keys repeat in.
	tidyAfter = 15 * time.Millisecond
	// tidyFrom is how much has to be left behind for a turn to be worth while, bytes. It is less
	// than a key and its frame leave, as what is counted lags behind by up to a megabyte; the
	// collector comes by itself at some three.
	tidyFrom = 256 << 10
)

// After is to be done after a key: it waits, and collects what there is. It has no message,
// so nothing is drawn for it; nil while one is still waiting.
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

// Tidy collects what was left behind since the collector's last turn, if that is worth one.
func (t *Tidier) Tidy() {
	asked := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}, {Name: "/gc/heap/live:bytes"}}
	metrics.Read(asked)
	if there, live := asked[0].Value.Uint64(), asked[1].Value.Uint64(); there >= live+tidyFrom {
		runtime.GC()
	}
}
