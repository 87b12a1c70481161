//go:build !windows

package main

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
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
	b.Run("Place", func(b *testing.B) { readHome(b).start(b, 120, 40).lagsOnPlace(b) })
	b.Run("Place, 60 obstructions, 160x50", func(b *testing.B) {
		readHome(b).start(b, 160, 50, crowded(b, 60)).lagsOnPlace(b)
	})
}

// crowded is a file of the sample job with brackets of 40 mm strewn over its floor, 80 mm apart, until there are n obstructions.
func crowded(b *testing.B, n int) string {
	job := vehicles.Demo()
	text := bytes.NewBuffer(job.Format())
	for i := len(job.Obstructions); i < n; i++ {
		x, y := 300+i/16*80, i%16*80-640
		fmt.Fprintf(text, "\n[[obstruction]]\nname = \"bracket %d\"\nkind = \"other\"\nx = [%d, \"+40\"]\ny = [%d, %d]\ndrop = [0, 40]\n", i, x, y, y+40)
	}
	file := filepath.Join(b.TempDir(), "crowded.toml")
	require.NoError(b, os.WriteFile(file, text.Bytes(), 0o600))
	return file
}

func (s *terminal) lagsOnPlace(b *testing.B) {
	s.wait(b, "[1 Underneath]")
	s.keys(b, "4")
	s.wait(b, "[4 Place]")
	s.lags(b, "\x1b[C", "\x1b[D")
}

// lags presses keys by turns, a moment apart as by a hand that holds one, and reports how long the picture of each took to begin. The moments
// differ, by golden sections of the time between two pictures: evenly apart, each key would come as long after a picture as the one before.
func (s *terminal) lags(b *testing.B, keys ...string) {
	const apart, pictures, section = 40 * time.Millisecond, time.Second / 120, 0.618034
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		_, after := math.Modf(float64(i) * section)
		time.Sleep(apart + time.Duration(after*float64(pictures)))
		select {
		case <-s.wrote: // what came later of the key before
		default:
		}
		begun := time.Now()
		s.keys(b, keys[i%len(keys)])
		select {
		case <-s.wrote:
		case <-time.After(patience):
			b.Fatalf("key %d changed nothing that is shown:\n%s", i, s.picture())
		}
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
