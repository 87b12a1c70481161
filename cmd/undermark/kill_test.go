//go:build !windows

package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// fromEnv is a number that an environment variable sets for a longer round.
func fromEnv(t *testing.T, name string, usual int) int {
	text, set := os.LookupEnv(name)
	if !set {
		return usual
	}
	n, err := strconv.Atoi(text)
	require.NoError(t, err, name)
	return n
}

// lostAtMost is how old work may be that a kill loses.
const lostAtMost = time.Second

// KILLS=1000 go test ./cmd/undermark -run TestKilled -timeout 0 -v makes a long round of it; KILLS_SEED draws another.
func TestKilledAtAnyMomentItLosesNothingOlderThanASecond(t *testing.T) {
	notRaced(t)
	kills, seed := fromEnv(t, "KILLS", 8), fromEnv(t, "KILLS_SEED", 1)
	h := readHome(t)
	draw := rand.New(rand.NewPCG(uint64(seed), 0))
	var oldest, beyond time.Duration
	excused := 0
	for n := range kills {
		took := witness(t)
		age := h.killed(t, draw, fmt.Sprintf("kill %d of seed %d", n+1, seed))
		slow := took()
		oldest, beyond = max(oldest, age), max(beyond, age-slow)
		if age >= lostAtMost {
			excused++
		}
		if age > lostAtMost/2 {
			t.Logf("kill %d of seed %d: lost work was %v old; the machine took up to %v for a small file", n+1, seed, age.Round(time.Millisecond), slow.Round(time.Millisecond))
		}
	}
	t.Logf("%d kills, seed %d: the oldest work that was lost was %v old, %v beyond what the machine took for a small file meanwhile", kills, seed, oldest.Round(time.Millisecond), beyond.Round(time.Millisecond))
	t.Logf("%d of them had lost work as old as %v and are excused by what the machine took", excused, lostAtMost)
	require.Less(t, beyond, lostAtMost)
	require.LessOrEqual(t, excused, mayExcuse(kills), "a machine that is slow now and then does not excuse so many")
}

// mayExcuse is how many kills of a round the machine's own slowness may excuse: three in a hundred, and one of a few.
func mayExcuse(kills int) int { return max(1, kills*3/100) }

// A round in which many kills lost what was too old fails, however slow the machine was.
func TestFewKillsAreExcused(t *testing.T) {
	require.Equal(t, 1, mayExcuse(8))
	require.Equal(t, 30, mayExcuse(1000))
}

// witness writes a small file again and again, as the program does, until took is called: that is the longest that one took. A machine that has no core or no
// disk to give for so long gives the program none either.
func witness(t *testing.T) (took func() time.Duration) {
	file, done, longest := filepath.Join(t.TempDir(), "witness"), make(chan struct{}), make(chan time.Duration, 1)
	go func() {
		var worst time.Duration
		for last := time.Now(); ; last = time.Now() {
			select {
			case <-done:
				longest <- max(worst, time.Since(last))
				return
			case <-time.After(witnessed):
			}
			_ = vehicles.WriteFile(file, []byte("seen")) // how long it takes is all that is asked
			worst = max(worst, time.Since(last)-witnessed)
		}
	}()
	return func() time.Duration { close(done); return <-longest }
}

const witnessed = 20 * time.Millisecond // between two files

// killed works for a moment, kills the program and returns how old the oldest work is that is nowhere any more.
func (h home) killed(t *testing.T, draw *rand.Rand, which string) time.Duration {
	file := wideFloor(t)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	begun := cutAt(t, text)
	s := h.start(t, 100, 30, file)
	s.wait(t, "[1 Underneath]")
	s.keys(t, "4")
	s.wait(t, "[4 Place]")
	edits := s.worksOn(t, draw)
	s.signal(t, syscall.SIGKILL)
	dead := time.Now()
	s.ended(t)

	files := append(h.journals(t), file)
	found := 0 // steps that are on the disk
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		found = max(found, int(math.Round(moved(t, text, begun)/killStep)))
	}
	require.LessOrEqual(t, found, len(edits), which)
	for _, journal := range h.journals(t) {
		require.NoError(t, os.Remove(journal))
	}
	if found == len(edits) {
		return 0
	}
	t.Logf("%s: %d of %d edits found", which, found, len(edits))
	return dead.Sub(edits[found])
}

// killStep is how far an arrow moves the cut, in mm.
const killStep = 10

// worksOn moves the cut by arrows and, every other time, saves now and then, up to a moment that the draw chooses. It returns when each arrow was pressed.
func (s *terminal) worksOn(t *testing.T, draw *rand.Rand) (edits []time.Time) {
	end, saves := time.Now().Add(time.Duration(draw.IntN(2500))*time.Millisecond), draw.IntN(2) == 0
	for time.Now().Before(end) {
		edits = append(edits, time.Now())
		s.keys(t, "\x1b[C")
		if draw.IntN(4) == 0 && saves {
			s.keys(t, "\x13")
		}
		time.Sleep(min(time.Duration(draw.IntN(250))*time.Millisecond, time.Until(end)))
	}
	return edits
}

// moved is how far the cut of a job is from where it was, in mm.
func moved(t *testing.T, text []byte, from [2]float64) float64 {
	to := cutAt(t, text)
	return math.Hypot(to[0]-from[0], to[1]-from[1])
}

func cutAt(t *testing.T, text []byte) [2]float64 {
	job, err := vehicles.ParseJob(text, "job")
	require.NoError(t, err)
	require.NotNil(t, job.Cut)
	return job.Cut.At
}
