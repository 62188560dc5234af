package main

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// parallel calls do for every index below n, on all processors. What do makes
// goes into places of its own, so that the order of the results is not the order
// of the work.
func parallel(n int, do func(i int)) {
	var next atomic.Int64
	var all sync.WaitGroup
	var fault atomic.Value
	for range min(n, runtime.GOMAXPROCS(0)) {
		all.Go(func() {
			defer func() { // a fault is reported from the goroutine that waits
				if f := recover(); f != nil {
					fault.CompareAndSwap(nil, &f)
				}
			}()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	all.Wait()
	if f, ok := fault.Load().(*any); ok {
		panic(*f)
	}
}
