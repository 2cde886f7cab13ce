// Package parallel runs independent pieces of work concurrently.
package parallel

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Each does n things, counted from 0, on all processors, in no particular order, and returns when all
// are done. A panic in one is a panic of the caller.
func Each(n int, do func(int)) {
	hands := 1
	if cores := runtime.GOMAXPROCS(0); cores > 1 {
		hands = min(n, cores+1) // one extra, since one may wait for another's result
	}
	if hands <= 1 {
		for i := range n {
			do(i)
		}
		return
	}
	var next atomic.Int64
	var broken atomic.Pointer[any]
	var all sync.WaitGroup
	for range hands {
		all.Add(1)
		go func() {
			defer all.Done()
			defer func() {
				if r := recover(); r != nil {
					broken.Store(&r)
				}
			}()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		}()
	}
	all.Wait()
	if r := broken.Load(); r != nil {
		panic(*r)
	}
}
