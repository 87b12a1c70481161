package tui

import (
	"os"
	"path/filepath"
	"runtime"
	"strconv"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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

// aDay makes n edits of many kinds by keys, as over a long day: the cut is moved, typed and moved back, readings are typed, every tenth edit
// is undone and done again, every hundredth job saved. After each lap it tells how much memory was in use and how long an edit took.
func aDay(b *bench, n, lap int, told func(edits int, bytes uint64, each time.Duration)) {
	place, under := b.titled("Place"), b.titled("Underneath")
	begun := time.Now()
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
			each := time.Since(begun) / time.Duration(lap)
			told(i, inUse(), each)
			begun = time.Now()
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
	var first, last uint64
	aDay(b, edits, edits/5, func(n int, bytes uint64, each time.Duration) {
		if first == 0 {
			first = bytes
		}
		last = bytes
		t.Logf("%6d edits: %5.1f MB in use, %v an edit, %d steps to undo", n, float64(bytes)/1e6, each.Round(time.Microsecond), len(b.desk.Steps()))
	})
	b.press("ctrl+s")
	saved, err := vehicles.Load(o.Path, o.Book)
	require.NoError(t, err)
	assert.Equal(t, string(b.desk.State.Job.Format()), string(saved.Job.Format()))
	assert.Empty(t, journals(t, o), "nothing is unsaved")
	left, err := os.ReadDir(filepath.Dir(o.Path))
	require.NoError(t, err)
	assert.LessOrEqual(t, len(left), 4, "no more files than after one save: %v", left)
	assert.Less(t, last, first+uint64(edits)*perStep, "each edit keeps no more than an undo step")
}

// perStep is how many bytes one undo step may keep.
const perStep = 8 << 10
