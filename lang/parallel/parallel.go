// Package parallel spreads work that has no order over all processors.
package parallel

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Each calls do for every index below n, on all processors. What do makes goes
// into places of its own, so that the order of the results is not the order of
// the work. A panic of do is raised where Each was called.
func Each(n int, do func(i int)) {
	workers := min(n, runtime.GOMAXPROCS(0))
	if workers < 2 {
		for i := range n {
			do(i)
		}
		return
	}
	var next atomic.Int64
	var all sync.WaitGroup
	var fault atomic.Value
	for range workers {
		all.Go(func() {
			defer func() {
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

// Begin begins work beside what is done meanwhile, and gives what waits for its result.
// A panic of the work is raised there.
func Begin[T any](do func() (T, error)) (wait func() (T, error)) {
	var result T
	var err error
	var fault any
	done := make(chan struct{})
	go func() {
		defer close(done)
		defer func() { fault = recover() }()
		result, err = do()
	}()
	return func() (T, error) {
		if <-done; fault != nil {
			panic(fault)
		}
		return result, err
	}
}
