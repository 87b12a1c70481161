//go:build !windows

package tui

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
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

// aDay makes n edits by keys, as over a long day: bag after bag of them (deeds), each drawn in another order. After each lap of whole bags it tells how much memory was
// in use and what an edit took.
func aDay(t *testing.T, b *bench, seed uint64, n, every int, told func(lap)) {
	drawn := rand.New(rand.NewPCG(seed, 0))
	begun := workNow(t)
	done := map[string]int{}
	b.goTo(b.titled("Runs"))
	b.press("tab") // the intake: a point may be put in anywhere
	for i := 0; i < n; {
		left := map[string]int{}
		for _, d := range bag(drawn) {
			d.do(b, done[d.name])
			done[d.name]++
			if left[d.name]++; left[d.name] == d.times {
				b.View() // once a bag for each kind: how much there is to paint depends on the screen
			}
			i++
		}
		if i%every == 0 {
			now := workNow(t)
			told(lap{edits: i, steps: len(b.desk.Steps()), bytes: inUse(), each: (now.time - begun.time) / time.Duration(every), work: now.since(begun, every)})
			begun = workNow(t)
		}
	}
}

// daySeed draws the order of a day's edits.
const daySeed = 1

// bagful is how many edits there are in a bag.
const bagful = 20

// bag is each deed as often as it is done in a bag, in an order that is drawn. A save is not the last: the journal is looked at then.
func bag(drawn *rand.Rand) (all []deed) {
	for _, d := range deeds {
		for range d.times {
			all = append(all, d)
		}
	}
	drawn.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	if last := len(all) - 1; all[last].name == saving {
		all[0], all[last] = all[last], all[0]
	}
	return all
}

// deed is one kind of edit, how often it is done in a bag, and how: the n-th time since the day began. Whatever is put in is taken out again, so that the
// job grows no larger.
type deed struct {
	name  string
	times int
	do    func(b *bench, n int)
}

const saving = "save"

var deeds = []deed{
	{"move the cut", 4, func(b *bench, n int) {
		b.goTo(b.titled("Place"))
		b.changes([]string{"left", "up", "right", "down"}[n%4])
	}},
	{"change a reading", 3, func(b *bench, n int) {
		b.goTo(b.titled("Underneath"))
		b.press("home", "down", "enter", "down", "down", "ctrl+u")
		b.changes(strconv.Itoa(640+n%20), "enter", "esc")
	}},
	{"enter an obstruction, or delete it", 2, func(b *bench, _ int) {
		b.goTo(b.titled("Underneath"))
		if own := len(b.desk.State.Job.Obstructions) - 1; b.desk.State.Job.Obstructions[own].Name == "of the day" {
			b.press("home").press(slices.Repeat([]string{"down"}, own)...).changes("x")
			return
		}
		b.changes(strings.Fields("end n c 652 enter 736 enter 100 enter 300 enter 110 enter 195 up up up up up up up up")...)
		b.press("ctrl+u").changes("of the day", "esc")
	}},
	{"enter a matching point, or delete it", 2, func(b *bench, _ int) {
		b.goTo(b.titled("Match"))
		if len(b.desk.State.Job.Ties) > len(vehicles.Demo().Ties) {
			b.press("end").changes("x")
			return
		}
		b.changes(strings.Fields("end n bolt enter 1502 enter L300 enter 1500 enter L295 esc")...)
	}},
	{"put a point into a run, and delete it", 1, func(b *bench, _ int) { b.onRun().changes("i").changes("x") }},
	{"raise a point of a run, and drop it", 2, func(b *bench, _ int) { b.onRun().changes("r").changes("d") }},
	{"spread clips, and delete one", 1, func(b *bench, _ int) { b.onRun().changes("c").changes("x") }},
	{"tick what is done, or untick it", 2, func(b *bench, _ int) {
		b.goTo(b.titled("Work"))
		b.press("home").changes(" ")
	}},
	{"undo and redo", 2, func(b *bench, _ int) {
		b.goTo(b.titled("Place"))
		b.changes("right").changes("ctrl+z").changes("ctrl+y").changes("ctrl+z")
	}},
	{saving, 1, func(b *bench, _ int) {
		b.press("ctrl+s")
		require.False(b.t, b.desk.State.Dirty)
	}},
}

// onRun goes to a point of a run.
func (b *bench) onRun() *bench {
	b.goTo(b.titled("Runs"))
	return b.press("n")
}

// changes presses keys that change the job, and sets what they do apart from what came before.
func (b *bench) changes(keys ...string) *bench {
	before := b.desk.State.Job.Format()
	b.press(keys...)
	require.NotEqual(b.t, string(before), string(b.desk.State.Job.Format()), "%q changes nothing on %s: %s", keys, b.screens[b.at].Title(), b.say)
	b.desk.Seal()
	return b
}

// worked is work that was counted, which no other program on the machine changes: pieces of memory asked for, their bytes, and how often a job was reduced; and time of a core.
type worked struct {
	pieces, bytes, reductions float64
	time                      time.Duration
}

func workNow(t testing.TB) worked {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return worked{float64(m.Mallocs), float64(m.TotalAlloc), float64(vehicles.Reductions.Load()), ofCores(t)}
}

// since is the work of each of n edits since then.
func (w worked) since(begun worked, n int) worked {
	each := func(now, then float64) float64 { return (now - then) / float64(n) }
	return worked{pieces: each(w.pieces, begun.pieces), bytes: each(w.bytes, begun.bytes), reductions: each(w.reductions, begun.reductions)}
}

// A long day: memory in use, the undo list and the journal stay within bounds, an edit takes no more work at the end than at the start, whatever is saved reads back, and undo
// still works. A short day runs with all tests and counts work alone; LONG_USE=50000 makes as many edits, times them too, and tells the figures.
func TestALongDayLeavesMemoryFlat(t *testing.T) {
	ofWholeRun(t)
	edits := tenths * bagful // each tenth is of the same edits
	if text := os.Getenv("LONG_USE"); text != "" {
		var err error
		edits, err = strconv.Atoi(text)
		require.NoError(t, err)
		require.Zero(t, edits%(tenths*bagful), "whole bags in each tenth")
	}
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, vehicles.Demo().Format(), 0o600))
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
	var laps []lap
	aDay(t, b, daySeed, edits, edits/tenths, func(l lap) {
		laps = append(laps, l)
		journal := boundedJournal(t, b, o)
		t.Logf("%6d edits: %5.1f MB in use, journal %.1f kB; an edit: %v of a core, %.0f pieces of memory, %.0f kB, %.1f reductions; %d steps to undo",
			l.edits, float64(l.bytes)/1e6, float64(journal)/1e3, l.each.Round(time.Microsecond), l.work.pieces, l.work.bytes/1e3, l.work.reductions, len(b.desk.Steps()))
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
	assert.Less(t, last.bytes, first.bytes+uint64(last.steps-first.steps)*perStep, "each edit keeps no more than an undo step")
	for _, l := range laps {
		assert.Less(t, l.work.pieces, first.work.pieces*noMore, "%d edits: pieces of memory an edit", l.edits)
		assert.Less(t, l.work.bytes, first.work.bytes*noMore, "%d edits: bytes an edit", l.edits)
		assert.Less(t, l.work.reductions, first.work.reductions*noMore, "%d edits: reductions an edit", l.edits)
		if l.edits >= 2*history.MostSteps { // the undo list is full
			assert.InDelta(t, l.bytes, last.bytes, 0.3*float64(l.bytes), "memory stays flat once undo reaches no further back: it holds up to a quarter more steps than that")
			assert.Less(t, last.each, l.each*3/2, "an edit takes no longer at the end")
		}
	}
}

// boundedJournal holds that unsaved work lies in one journal, which is no larger than the job and the lines that say what it is, and returns its size.
func boundedJournal(t *testing.T, b *bench, o Options) (size int64) {
	const heading = 1000 // bytes
	all := journals(t, o)
	require.Len(t, all, 1, "the work since the last save")
	info, err := os.Stat(all[0])
	require.NoError(t, err)
	require.LessOrEqual(t, info.Size(), int64(len(b.desk.State.Job.Format())+heading), "the journal is of the job as it is alone")
	return info.Size()
}

// lap is a part of a day: how many edits there were by its end, the memory in use then, and what an edit took of a core and of work.
type lap struct {
	edits int
	steps int // that can be undone
	bytes uint64
	each  time.Duration
	work  worked
}

// tenths are the laps of a day.
const tenths = 10

// noMore is how many times the work of the first lap's edits any later lap's may take: they are the same, at other places.
const noMore = 1.1

// perStep is how many bytes one undo step may keep: the list that it changed, of all obstructions at the most.
const perStep = 8 << 10

// What is tried again when a field is left takes no more work the more there is to undo.
func TestLeavingAFieldTakesNoMoreAfterALongDay(t *testing.T) {
	b, _ := demoOpened(t)
	left := func() uint64 {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		b.waits = true
		b.fieldLeft()
		runtime.ReadMemStats(&after)
		return after.TotalAlloc - before.TotalAlloc
	}
	edit := func(n int) {
		for i := range n {
			job := b.desk.State.Job
			job.Notes = strconv.Itoa(i)
			require.True(t, b.desk.Apply(desk.Change{Job: &job}).Edited)
		}
	}
	edit(1)
	once := left()
	edit(1000)
	assert.Less(t, left(), once+10_000, "bytes")
}
