// Package beside does work on other cores beside one's own.
package beside

import (
	"fmt"
	"runtime/debug"
	"sync"
	"sync/atomic"
)

// Work is what goes on beside one's own. What falls over in it falls over in Wait, so that whoever began it can go on without.
type Work struct {
	others sync.WaitGroup
	fault  atomic.Pointer[string]
}

// Go begins something.
func (w *Work) Go(do func()) {
	w.others.Go(func() {
		defer func() {
			if fault := recover(); fault != nil {
				where := fmt.Sprintf("%v\n%s", fault, debug.Stack())
				w.fault.CompareAndSwap(nil, &where)
			}
		}()
		do()
	})
}

// Wait returns when all of it is done, and panics where some of it did.
func (w *Work) Wait() {
	w.others.Wait()
	if fault := w.fault.Load(); fault != nil {
		panic(*fault)
	}
}
