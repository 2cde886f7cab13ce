package parallel

import (
	"runtime"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
)

// With one processor and with several each thing is done once, and a panic in one is passed on.
func TestEach(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, cores := range []int{1, 2, 4} {
		runtime.GOMAXPROCS(cores)
		for _, n := range []int{0, 1, 2, 3, 100} {
			done := make([]atomic.Int32, n)
			Each(n, func(i int) { done[i].Add(1) })
			for i := range done {
				assert.EqualValues(t, 1, done[i].Load(), "%d of %d on %d", i, n, cores)
			}
		}
		assert.PanicsWithValue(t, "stop", func() {
			Each(5, func(i int) {
				if i == 3 {
					panic("stop")
				}
			})
		})
	}
}

// A worker that waits for another's result keeps no processor idle: two that wait for each other end on
// two.
func TestEachWhileOneWaits(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(2))
	first, second := make(chan bool), make(chan bool)
	Each(3, func(i int) {
		switch i {
		case 0:
			<-first
		case 1:
			<-second
			close(first)
		case 2:
			close(second)
		}
	})
}
