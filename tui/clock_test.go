package tui

import (
	"os"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// setClock has a program see that time; pauses of fractions of a second run by the system's other clock, which nobody sets.
func (b *bench) setClock(now time.Time) {
	b.Root.now = func() time.Time { return now }
	b.press("home") // a screen is told the time with what comes next
}

// A clock that is set back while the program runs: no wait is said to be over that has not been, what was done keeps its time, what is done afterwards is done, and
// ticked marks, the journal and what is saved go on.
func TestAClockSetBackWhileTheProgramRuns(t *testing.T) {
	job := vehicles.Demo()
	seat := job.Obstructions[0]
	seat.Name, seat.Kind = "seat mount, left", "seat mount" // seats come out once the van maker's wait is over
	job.Obstructions = job.Obstructions.Insert(0, seat)
	b, o := fuzzed(t, job.Format())
	b.send(tea.WindowSizeMsg{Width: 160, Height: 50})
	noon := time.Date(2026, 11, 27, 12, 0, 0, 0, time.Local)
	b.setClock(noon)
	b.desk.Put(b.desk.State.Job.WithDone(vehicles.Done{Step: "battery-off", At: vehicles.Moment(noon)}))
	b.do(b.changed())
	b.goTo(b.titled("Work"))
	b.press("home")
	waited := func() bool { return b.shows("min since battery off") }
	for n := 0; !waited(); n++ { // it stands by the field of the step that waits
		require.Less(t, n, 40, "%s", b.View())
		b.Root.now = func() time.Time { return noon.Add(20 * time.Minute) }
		b.press("esc", "down", "enter")
	}
	assert.True(t, b.shows("20 min since battery off"), "%s", b.View())
	for _, set := range []time.Time{noon.Add(-time.Hour), noon.AddDate(-40, 0, 0)} {
		b.setClock(set)
		assert.False(t, waited(), "at %v nobody knows how long it was\n%s", set, b.View())
		assert.Equal(t, vehicles.Moment(noon), b.desk.State.Job.DoneOf("battery-off").At)
	}

	b.press("esc", " ")
	b.goTo(b.titled("Place"))
	b.press("left")
	text := string(b.desk.State.Job.Format())
	kept, err := os.ReadFile(journals(t, o)[0])
	require.NoError(t, err)
	assert.True(t, strings.HasSuffix(string(kept), "\n"+text), "the journal has it")
	b.do(b.apply(desk.Change{Tick: "cut centre"}))
	ticked := len(b.desk.State.Ticked)
	assert.Positive(t, ticked, "%s", b.View())
	b.press("ctrl+s")
	assert.False(t, b.desk.State.Dirty, "%s", b.View())
	saved, err := os.ReadFile(o.Path)
	require.NoError(t, err)
	assert.Equal(t, text, string(saved))
	assert.Empty(t, journals(t, o))
	assert.Len(t, started(t, o).desk.State.Ticked, ticked, "the next day")
}

// Work of two windows of which the later wrote under a clock that had been set back: both are offered, one after the other.
func TestWorkLeftUnderAClockThatWasSetBackIsAllOffered(t *testing.T) {
	o := options(t)
	o.Screens = Screens()
	require.NoError(t, os.WriteFile(o.Path, vehicles.Demo().Format(), 0o600))
	var refs []string
	for n, ref := range []string{"first", "second"} {
		w := started(t, o)
		if w.overlay() != nil {
			w.press("3") // it stays where it is
		}
		job := w.desk.State.Job
		job.Ref = ref
		w.desk.Put(job)
		w.do(w.changed())
		w.Root.journal.lock.Unlock() //nolint:errcheck // as when a window is killed
		for _, path := range journals(t, o) {
			if text, err := os.ReadFile(path); err == nil && strings.Contains(string(text), `ref = "`+ref+`"`) {
				when := time.Now().Add(-time.Duration(n) * time.Hour)
				require.NoError(t, os.Chtimes(path, when, when))
			}
		}
	}
	for range 2 {
		w := started(t, o)
		require.NotNil(t, w.overlay())
		for _, ref := range []string{"first", "second"} {
			if w.shows("was found: " + ref) {
				refs = append(refs, ref)
			}
		}
		w.press("1", "ctrl+s")
		w.Root.journal.close()
	}
	assert.ElementsMatch(t, []string{"first", "second"}, refs)
}
