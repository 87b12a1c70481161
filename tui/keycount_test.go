package tui

import (
	"fmt"
	"os"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// What the main jobs cost in keys, each letter and figure one. Who lies under a van with a phone in one hand counts them: a
// change that makes one longer needs a reason that is worth it.

// walk counts what somebody does from the very first key after the start: keys, and what was asked on the way.
type walk struct {
	*bench
	pressed int
	asked   []string // questions and gates, by what they say first
}

// walked starts the program as it is on a tablet where it never ran, with whatever it shows first.
func walked(t *testing.T, o Options, w, h int) *walk {
	require.NoError(t, os.RemoveAll(o.StateDir))
	o.Screens = Screens()
	b := started(t, o)
	b.send(tea.WindowSizeMsg{Width: w, Height: h})
	return &walk{bench: b}
}

// keys presses and counts.
func (w *walk) keys(names string) *walk {
	for _, name := range strings.Fields(names) {
		if _, known := keyNamed(name); known {
			w.pressed++
		} else {
			w.pressed += len([]rune(name))
		}
		if asks := asking(w.bench); asks != "" && (len(w.asked) == 0 || w.asked[len(w.asked)-1] != asks) {
			w.asked = append(w.asked, asks)
		}
		w.press(name)
	}
	return w
}

// asking is what has to be read or answered before anything else can be done: a question, cautions, what stands before the first mark.
func asking(b *bench) string {
	rows := b.rows()
	switch over := b.overlay().(type) {
	case *question:
		return over.asks
	case *reader:
		return over.title
	}
	if text := strings.Join(rows, " "); strings.Contains(text, "Before the ") {
		if strings.Contains(text, "is there any") {
			return "not looked for"
		}
		return "how it stands"
	}
	return ""
}

// TestKeysFromTheSampleToAllMarks walks the sample, from its foul cut to every mark made that can be, the pilot hole measured in between:
// clips and muffler wait until the runs, which the cut left behind, are laid anew.
func TestKeysFromTheSampleToAllMarks(t *testing.T) {
	o := options(t)
	o.Path = ""
	w := walked(t, o, 100, 30).keys(`enter 4 n`)
	place := w.desk.State.Job.Cut.At
	w.keys(`6 l m enter d`)
	below := w.desk.State.Marks.Marks[0].Below
	w.keys(fmt.Sprintf(`%.0f enter l%.0f enter 6`, below.Bumper, below.Left))
	assert.Equal(t, place, w.desk.State.Job.Cut.At)
	for _, f := range rules.ForPeople(w.desk.State.Result.Findings) {
		require.False(t, f.Rule.AtCut && f.Verdict == rules.Foul, f.About())
	}
	require.NotNil(t, w.desk.State.Job.Cut.Drilled)
	w.allMarks()
	t.Log(w.pressed, w.asked)
	assert.LessOrEqual(t, w.pressed, 32)
}

// allMarks makes every mark that is left.
func (w *walk) allMarks() {
	for !strings.Contains(strings.Join(w.rows(), " "), "All made") {
		w.keys(`enter`)
		require.Less(w.t, w.pressed, 100)
	}
}

// The same with the runs laid, too: clips and muffler are marks. A layout puts the cut where they can be, and whoever has measured the pilot hole from the marks
// goes on with them. Drilling it made its mark.
func TestKeysFromTheSampleToAllMarksOfALayout(t *testing.T) {
	o := options(t)
	o.Path = ""
	w := walked(t, o, 100, 30).keys(`enter ` + strings.Join(screentest.SampleToThePilot, " "))
	require.NotEqual(t, rules.Foul, w.desk.State.Result.Verdict)
	below := w.desk.State.Marks.Marks[0].Below
	w.keys(fmt.Sprintf(`%.0f enter l%.0f enter`, below.Bumper, below.Left))
	require.NotNil(t, w.desk.State.Job.Cut.Drilled)
	require.Equal(t, w.titled("Marks"), w.at, "the tapes explain the hole: on with the marks")
	w.allMarks()
	made := strings.Join(w.rows(), "\n")
	for _, mark := range []string{"[x] cut centre", "[x] clip 1", "[x] muffler 1", "[x] bolt hole 4"} {
		assert.Contains(t, made, mark)
	}
	assert.NotContains(t, made, "[ ]")
	t.Log(w.pressed, w.asked)
	assert.LessOrEqual(t, w.pressed, 35)
	assert.Equal(t, []string{"Read this before working on a van", "not looked for", "how it stands", drillingTitle}, w.asked,
		"what the sample leaves open is asked once, before the first mark")
}

// An obstruction with six readings of three figures, from its list until it is in the job.
func TestKeysOfAnObstruction(t *testing.T) {
	w := walked(t, empty(t), 60, 20).keys(`enter`)
	w.pressed = 0
	w.keys(`n c 652 enter 736 enter 100 enter 300 enter 110 enter 195`)
	require.Len(t, w.desk.State.Job.Obstructions, 1)
	assert.Equal(t, vehicles.Span{From: 110, To: 195, Set: true}, w.desk.State.Job.Obstructions[0].Drop)
	t.Log(w.pressed)
	assert.LessOrEqual(t, w.pressed, 25)

	w.keys(`enter`) // the next in README's order, from its letter to the Enter that goes on
	w.pressed = 0
	w.keys(`c 852 enter 936 enter 100 enter 300 enter 110 enter 195 enter`)
	require.Len(t, w.desk.State.Job.Obstructions, 2)
	assert.Contains(t, strings.Join(w.rows(), " "), "Obstruction 3")
	t.Log(w.pressed)
	assert.LessOrEqual(t, w.pressed, 25)
}

// empty are the options of a program that is started on an empty job.
func empty(t *testing.T) Options {
	o := options(t)
	require.NoError(t, os.WriteFile(o.Path, vehicles.NewJob("TL-07").Format(), 0o644))
	return o
}

// steps presses the keys of each step of a journey, and tells how many they are: none leaves a text behind that was refused.
func (w *walk) steps(t *testing.T, journey []string) {
	for _, keys := range journey {
		before := w.pressed
		w.keys(keys)
		t.Log(w.pressed-before, keys)
		require.Empty(t, w.desk.State.Job.Refused(), keys)
	}
}

// A van from nothing, each step in the keys of its screen: a file that is not there yet, the floor, ten obstructions with their readings, the heater, three
// matching points, the cut, exhaust and intake.
func TestKeysOfAVanFromNothing(t *testing.T) {
	w := walked(t, options(t), 60, 20)
	w.steps(t, screentest.VanFromNothing)
	job := w.desk.State.Job
	require.Len(t, job.Obstructions, 10)
	for _, o := range job.Obstructions {
		assert.True(t, o.Drop.Set, o.Name)
	}
	require.Len(t, job.Ties, 3)
	require.NotNil(t, job.Heater)
	require.NotNil(t, job.Cut)
	require.Len(t, job.Exhaust.Path, 3)
	require.Len(t, job.Intake.Path, 2)
	require.Empty(t, w.desk.State.Faults)
	t.Log(w.pressed, w.asked)
	assert.LessOrEqual(t, w.pressed, 437, "450 is the goal")
	assert.Len(t, w.asked, 2, "whether to begin a job, and the cautions")
}

// Who marks first and drills then, as most do, with a pilot 1 mm off: no mark is made twice, and each question of the sample is answered by itself.
func TestKeysOfWhoeverMarksFirst(t *testing.T) {
	o := options(t)
	o.Path = ""
	w := walked(t, o, 100, 30).keys(`enter 4 n 6 n n m enter`)
	for !strings.Contains(w.say, "drill the pilot") {
		w.keys(`enter`)
		require.Less(t, w.pressed, 100)
	}
	below := w.desk.State.Marks.Marks[0].Below
	w.keys(fmt.Sprintf(`d %.0f enter l%.0f enter`, below.Bumper+1, below.Left))
	require.NotNil(t, w.desk.State.Job.Cut.Drilled)
	if w.at != w.titled("Marks") {
		w.keys(`6`)
	}
	if !strings.Contains(strings.Join(w.rows(), " "), "All made") {
		w.allMarks()
	}
	t.Log(w.pressed, w.asked)
	assert.LessOrEqual(t, w.pressed, 37)
}

// The same in README's order: the tape is said to be level, each other kind is looked for, the cut goes to the best place and the runs are found.
func TestKeysOfAVanInTheOrderOfTheSteps(t *testing.T) {
	w := walked(t, options(t), 60, 20)
	w.steps(t, screentest.VanInOrder)
	job := w.desk.State.Job
	require.Len(t, job.Obstructions, 10)
	require.Len(t, job.Ties, 3)
	require.Empty(t, w.desk.State.Result.OpenIn(vehicles.AtCut), "every kind was entered or looked for")
	require.NotNil(t, job.Heater)
	require.NotNil(t, job.Cut)
	require.NotNil(t, job.Exhaust)
	require.NotNil(t, job.Intake)
	require.Empty(t, w.desk.State.Faults)
	for _, f := range rules.ForPeople(w.desk.State.Result.Findings) {
		require.False(t, f.Rule.AtCut && f.Verdict == rules.Foul, f.About())
	}
	t.Log(w.pressed, w.asked)
	assert.LessOrEqual(t, w.pressed, 400, "450 is the goal")
}
