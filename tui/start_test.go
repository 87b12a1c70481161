package tui

import (
	"bytes"
	"io"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/sparing"
	"bench.example/undermark/vehicles"
)

// broken is a screen with a fault of its own: it falls over when it sees an x.
type broken struct{ plain }

func (p broken) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	if k, ok := msg.(tea.KeyMsg); ok && k.String() == "x" {
		panic("a screen fell over")
	}
	_, change, cmd := p.plain.Update(msg, s)
	return p, change, cmd
}

func TestAFaultOfTheProgramKeepsTheWork(t *testing.T) {
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o644))
	o.Screens = []desk.Screen{broken{plain{title: "Place"}}}
	r, err := New(o)
	require.NoError(t, err)
	r.w, r.h = 100, 30
	var told bytes.Buffer
	err = r.show(r, &told, sparing.NewLeaving(), tea.WithInput(strings.NewReader("ex")), tea.WithOutput(io.Discard), tea.WithoutSignals())
	assert.ErrorIs(t, err, tea.ErrProgramPanic)
	require.Len(t, journals(t, o), 1)
	assert.Contains(t, told.String(), journals(t, o)[0])
	b := started(t, o)
	b.press("1")
	assert.Equal(t, "e", b.desk.State.Job.Notes)
}

func TestAFileThatCantBeReadIsAnError(t *testing.T) {
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, []byte("format = 1\n[job]\nreff = 1\n"), 0o644))
	_, err := New(o)
	var faults vehicles.FileErrors
	require.ErrorAs(t, err, &faults)
	assert.Empty(t, journals(t, o))
}

// A job whose readings contradict each other opens, so that it can be put right.
func TestReadingsThatContradictEachOtherOpen(t *testing.T) {
	o := options(t)
	text := string(vehicles.NewJob("TL-07").Format()) +
		"\n[[obstruction]]\nname = \"rib\"\nkind = \"floor rib\"\nx = [500, 400]\ny = [-100, 100]\n"
	require.NoError(t, os.WriteFile(o.Path, []byte(text), 0o644))
	b := started(t, o)
	assert.NotEmpty(t, b.desk.State.Faults)
	assert.True(t, b.shows("Can't be worked out"))
	job := b.desk.State.Job
	job.Obstructions = job.Obstructions.Without(0)
	b.do(b.apply(desk.Change{Job: &job}))
	assert.Empty(t, b.desk.State.Faults)
	good := b.desk.State.Result
	b.press("ctrl+z")
	assert.NotEmpty(t, b.desk.State.Faults)
	assert.Equal(t, good, b.desk.State.Result, "the last good result stays")
}

func TestNotesAreShownBeforeAnythingElse(t *testing.T) {
	o := options(t)
	o.Path = ""
	o.Notes = []string{"settings.toml: units is \"cubits\""}
	b := started(t, o)
	assert.True(t, b.shows("cubits"))
	b.press("enter")
	assert.True(t, b.shows("Underneath body"))
}

func TestChangesOfAScreenAreDone(t *testing.T) {
	b, _ := marked(t)
	three := 3
	camera := desk.Camera{Scale: 2}
	b.do(b.apply(desk.Change{Select: &three, Camera: &camera, Tick: "plate 1", Goto: "Checks", Say: "there"}))
	assert.Equal(t, 3, b.desk.State.Selected)
	assert.Equal(t, camera, b.desk.State.Camera)
	assert.True(t, b.desk.State.Ticked["plate 1"])
	assert.True(t, b.shows("[4 Checks]") && b.shows("there"))
	before := b.desk.State.Ticked
	b.do(b.apply(desk.Change{Tick: "plate 1"}))
	assert.False(t, b.desk.State.Ticked["plate 1"])
	assert.True(t, before["plate 1"], "a map that was handed out is never changed")
	b.do(b.apply(desk.Change{Ask: desk.Cautions}))
	assert.True(t, b.shows("All the cautions"))
	b.do(b.apply(desk.Change{Goto: "No such screen"}))
	assert.Equal(t, 3, b.at)
}

// marked is a job with a cut, and so with marks.
func marked(t *testing.T) (*bench, Options) {
	o := options(t)
	job := vehicles.NewJob("TL-07")
	job.Cut = &vehicles.Cut{At: [2]float64{1210, 240}, Across: 127}
	require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o644))
	return started(t, o), o
}

func TestAMarkThatHasMovedIsToBeMadeAgain(t *testing.T) {
	b, _ := marked(t)
	b.do(b.apply(desk.Change{Tick: "cut centre"}))
	assert.True(t, b.desk.State.Ticked["cut centre"])
	moved := b.desk.State.Job
	moved.Cut = &vehicles.Cut{At: [2]float64{1220, 240}, Across: 127}
	b.do(b.apply(desk.Change{Job: &moved}))
	assert.False(t, b.desk.State.Ticked["cut centre"], "it is not where it was made")
	b.press("ctrl+z")
	assert.True(t, b.desk.State.Ticked["cut centre"])
	b.press("e")
	assert.True(t, b.desk.State.Ticked["cut centre"], "an edit that moves no mark changes nothing")
}

func TestMarksMadeAreKnownTheNextDay(t *testing.T) {
	b, o := marked(t)
	b.do(b.apply(desk.Change{Tick: "cut centre"}))
	b.do(b.apply(desk.Change{Tick: "plate 1"}))
	b.do(b.apply(desk.Change{Tick: "plate 1"}))
	b.Root.journal.close()
	assert.Equal(t, map[string]bool{"cut centre": true}, started(t, o).desk.State.Ticked)
}
