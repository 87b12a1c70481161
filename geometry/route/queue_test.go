package route

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever is put in and taken out in turns, the least is taken first, and of those alike the one put in first.
func TestTheQueueGivesTheLeastFirst(t *testing.T) {
	const seed = 61
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	type leg struct {
		least float64
		disc  int32
	}
	for range 300 {
		var q queue
		var slow []leg // in the order in which they were put in
		for range r.IntN(40) {
			for range r.IntN(6) { // now and then a label has none
				l := leg{float64(r.IntN(12)), int32(len(q.steps))}
				q.push(step{disc: l.disc}, l.least)
				slow = append(slow, l)
			}
			q.end()
			for range r.IntN(5) {
				s, least, ok := q.pop()
				require.Equal(t, len(slow) > 0, ok)
				if !ok {
					continue
				}
				first := slices.MinFunc(slow, func(a, b leg) int { return cmp.Or(cmp.Compare(a.least, b.least), cmp.Compare(a.disc, b.disc)) })
				require.Equal(t, first, leg{least, s.disc})
				slow = slices.DeleteFunc(slow, func(l leg) bool { return l == first })
			}
		}
	}
	var empty queue
	empty.end()
	_, _, ok := empty.pop()
	assert.False(t, ok)
}
