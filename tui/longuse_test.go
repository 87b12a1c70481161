//go:build !windows

package tui

import (
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/history"
	"bench.example/undermark/vehicles"
)

// inUse is how many bytes of memory are in use once it is swept.
func inUse() uint64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// ofCores is how much time of the machine's cores this program has taken.
func ofCores(t testing.TB) time.Duration {
	var used syscall.Rusage
	require.NoError(t, syscall.Getrusage(syscall.RUSAGE_SELF, &used))
	return time.Duration(used.Utime.Nano() + used.Stime.Nano())
}

// aDay makes n edits of many kinds by keys, as over a long day: the cut is moved, typed and moved back, readings are typed, every tenth edit
// is undone and done again, every hundredth job saved. After each lap it tells how much memory was in use and how much of a core an edit took.
func aDay(t *testing.T, b *bench, n, lap int, told func(edits int, bytes uint64, each time.Duration)) {
	place, under := b.titled("Place"), b.titled("Underneath")
	begun := ofCores(t)
	for i := 1; i <= n; i++ {
		switch {
		case i%10 == 0:
			b.press("ctrl+z", "ctrl+y", "ctrl+z")
		case i%25 < 3:
			b.goTo(under)
			b.press("home", "down", "enter")
			b.press("down", "down", "ctrl+u")
			b.press(strconv.Itoa(640+i%20), "enter", "esc")
		default:
			b.goTo(place)
			b.press([]string{"left", "up", "right", "down"}[i%4])
			b.desk.Seal()
		}
		if i%10 == 0 {
			b.View()
		}
		if i%100 == 0 {
			b.press("ctrl+s")
		}
		if i%lap == 0 {
			each := (ofCores(t) - begun) / time.Duration(lap)
			told(i, inUse(), each)
			begun = ofCores(t)
		}
	}
}

// A long day: memory in use, the undo list and the journal stay within bounds, whatever is saved reads back, and undo still works. A short day
// runs with all tests; LONG_USE=50000 makes as many edits and tells the figures.
func TestALongDayLeavesMemoryFlat(t *testing.T) {
	ofWholeRun(t)
	edits := 300
	if text := os.Getenv("LONG_USE"); text != "" {
		var err error
		edits, err = strconv.Atoi(text)
		require.NoError(t, err)
	}
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, vehicles.Demo().Format(), 0o600))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
	var laps []lap
	aDay(t, b, edits, edits/tenths, func(n int, bytes uint64, each time.Duration) {
		laps = append(laps, lap{n, bytes, each})
		t.Logf("%6d edits: %5.1f MB in use, %v of a core an edit, %d steps to undo", n, float64(bytes)/1e6, each.Round(time.Microsecond), len(b.desk.Steps()))
	})
	b.press("ctrl+s")
	saved, err := vehicles.Load(o.Path, o.Book)
	require.NoError(t, err)
	assert.Equal(t, string(b.desk.State.Job.Format()), string(saved.Job.Format()))
	assert.Empty(t, journals(t, o), "nothing is unsaved")
	left, err := os.ReadDir(filepath.Dir(o.Path))
	require.NoError(t, err)
	assert.LessOrEqual(t, len(left), 4, "no more files than after one save: %v", left)
	first, last := laps[0], laps[len(laps)-1]
	assert.Less(t, last.bytes, first.bytes+uint64(edits)*perStep, "each edit keeps no more than an undo step")
	for _, l := range laps {
		if l.edits >= 2*history.MostSteps { // the undo list is full
			assert.InDelta(t, l.bytes, last.bytes, 0.3*float64(l.bytes), "memory stays flat once undo reaches no further back: it holds up to a quarter more steps than that")
			assert.Less(t, last.each, l.each*3/2, "an edit takes no longer at the end")
		}
	}
}

// lap is a part of a day: how many edits there were by its end, the memory in use then, and what an edit took of a core.
type lap struct {
	edits int
	bytes uint64
	each  time.Duration
}

// tenths are the laps of a day.
const tenths = 10

// perStep is how many bytes one undo step may keep.
const perStep = 8 << 10
