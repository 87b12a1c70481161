//go:build !windows

package main

import (
	"os"
	"slices"
	"testing"
	"time"
)

// From a key to the first of its picture through a real terminal: a fitter sees a lag from some 50 ms on. The bare program of the same library
// is what that takes on this machine at this hour whoever paints; the pictures come 120 times a second, 8.3 ms apart. Run both with a few hundred keys:
// go test -run '^$' -bench ThroughATerminal -benchtime 300x ./cmd/undermark
func BenchmarkAKeyThroughATerminal(b *testing.B) {
	b.Run("bare", func(b *testing.B) {
		s := newHome(b).begin(b, &terminal{program: os.Args[0], envs: []string{bareEnv + "=1"}}, 120, 40)
		s.wait(b, "keys: 0")
		s.lags(b, "a", "b")
	})
	b.Run("Place", func(b *testing.B) {
		s := readHome(b).start(b, 120, 40)
		s.keys(b, "4")
		s.wait(b, "Place")
		s.lags(b, "\x1b[C", "\x1b[D")
	})
}

// lags presses keys by turns, a moment apart as by a hand that holds one, and reports how long the picture of each took to begin.
func (s *terminal) lags(b *testing.B, keys ...string) {
	const apart = 40 * time.Millisecond
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		time.Sleep(apart)
		select {
		case <-s.wrote: // what came later of the key before
		default:
		}
		begun := time.Now()
		s.keys(b, keys[i%len(keys)])
		<-s.wrote
		took = append(took, time.Since(begun))
	}
	slices.Sort(took)
	ms := func(share float64) float64 {
		return float64(took[int(share*float64(len(took)-1))].Microseconds()) / 1000
	}
	b.ReportMetric(ms(0.5), "ms/p50")
	b.ReportMetric(ms(0.99), "ms/p99")
	b.ReportMetric(0, "ns/op") // the pauses between the keys are no work
}
