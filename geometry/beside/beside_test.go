package beside

import (
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestWorkIsDoneOnceItWasWaitedFor(t *testing.T) {
	var done atomic.Int64
	var w Work
	for range 100 {
		w.Go(func() { done.Add(1) })
	}
	w.Wait()
	assert.Equal(t, int64(100), done.Load())
}

func TestWhatFallsOverDoesSoWhereItIsWaitedFor(t *testing.T) {
	var done atomic.Int64
	var w Work
	for i := range 100 {
		w.Go(func() {
			if i%30 == 7 {
				panic("a search fell over")
			}
			done.Add(1)
		})
	}
	defer func() {
		fault := recover()
		assert.Contains(t, fault, "a search fell over")
		assert.Contains(t, fault, "beside_test.go", "and says where")
		assert.Equal(t, int64(96), done.Load(), "the others end first")
	}()
	w.Wait()
	assert.Fail(t, "it was waited for as if nothing had happened")
}
