package tui

import (
	"fmt"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// What the main jobs cost in keys, each letter and figure one. Who lies under a van with a phone in one hand counts them: a
// change that makes one longer needs a reason that is worth it.

// counted is a bench that counts the keys pressed.
func counted(b *bench, names string) (keys int) {
	for _, name := range strings.Fields(names) {
		if _, known := keyNamed(name); known {
			keys++
		} else {
			keys += len([]rune(name))
		}
		b.press(name)
		require.False(b.t, asks(b), "a question after %s: %s", name, strings.Join(b.rows(), "\n"))
	}
	return keys
}

// asks tells whether a question lies over the screens.
func asks(b *bench) bool {
	_, question := b.overlay().(*question)
	return question
}

// The sample, from its foul cut to every mark made that can be, the pilot hole measured in between: clips and muffler wait until the
// runs, which the cut left behind, are laid anew.
func TestKeysFromTheSampleToAllMarks(t *testing.T) {
	b := sampled(t)
	b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
	b.warned = true // the start's cautions were read a moment ago
	keys := counted(b, `4 n`)
	place := b.desk.State.Job.Cut.At
	keys += counted(b, `6 l m enter enter d`)
	below := b.desk.State.Marks.Marks[0].Below
	keys += counted(b, fmt.Sprintf(`%.0f enter l%.0f enter 6`, below.Bumper, below.Left))
	assert.Equal(t, place, b.desk.State.Job.Cut.At)
	for _, f := range rules.ForPeople(b.desk.State.Result.Findings) {
		require.False(t, f.Rule.AtCut && f.Verdict == rules.Foul, f.About())
	}
	require.NotNil(t, b.desk.State.Job.Cut.Drilled)
	for !strings.Contains(strings.Join(b.rows(), " "), "All made") {
		keys += counted(b, `enter`)
		require.Less(t, keys, 100)
	}
	assert.LessOrEqual(t, keys, 35)
	t.Log(keys)
}

// The same with the runs laid, too: clips and muffler are marks. A layout puts the cut where they can be, and whoever has measured the pilot hole from the marks
// goes on with them.
func TestKeysFromTheSampleToAllMarksOfALayout(t *testing.T) {
	b := sampled(t)
	b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
	b.warned = true // the start's cautions were read a moment ago
	keys := counted(b, `4 c enter 6 l m enter enter d`)
	require.NotEqual(t, rules.Foul, b.desk.State.Result.Verdict)
	below := b.desk.State.Marks.Marks[0].Below
	keys += counted(b, fmt.Sprintf(`%.0f enter l%.0f enter`, below.Bumper, below.Left))
	require.NotNil(t, b.desk.State.Job.Cut.Drilled)
	require.Equal(t, b.titled("Marks"), b.at, "the tapes explain the hole: on with the marks")
	for !strings.Contains(strings.Join(b.rows(), " "), "All made") {
		keys += counted(b, `enter`)
		require.Less(t, keys, 100)
	}
	made := strings.Join(b.rows(), "\n")
	for _, mark := range []string{"[x] clip 1", "[x] muffler 1", "[x] bolt hole 4"} {
		assert.Contains(t, made, mark)
	}
	assert.NotContains(t, made, "[ ]")
	assert.LessOrEqual(t, keys, 35)
	t.Log(keys)
}

// An obstruction with six readings of three figures, in a row of them.
func TestKeysOfAnObstruction(t *testing.T) {
	b, _ := van(t)
	b.keys(`1 n`)
	keys := counted(b, `c 652 enter 736 enter 100 enter 300 enter 110 enter 195 enter`)
	require.Len(t, b.desk.State.Job.Obstructions, 1)
	assert.Equal(t, vehicles.Span{From: 110, To: 195, Set: true}, b.desk.State.Job.Obstructions[0].Drop)
	assert.LessOrEqual(t, keys, 25)
	t.Log(keys)
}

// A van from nothing, each step in the keys of its screen: the floor, ten obstructions with their readings, the heater, three
// matching points, the cut, exhaust and intake.
func TestKeysOfAVanFromNothing(t *testing.T) {
	b, _ := van(t)
	keys := 0
	for _, step := range vanFromNothing {
		n := counted(b, step)
		t.Log(n, step)
		keys += n
		require.Empty(t, b.desk.State.Job.Refused(), step)
	}
	job := b.desk.State.Job
	require.Len(t, job.Obstructions, 10)
	for _, o := range job.Obstructions {
		assert.True(t, o.Drop.Set, o.Name)
	}
	require.Len(t, job.Ties, 3)
	require.NotNil(t, job.Heater)
	require.NotNil(t, job.Cut)
	require.Len(t, job.Exhaust.Path, 3)
	require.Len(t, job.Intake.Path, 2)
	require.Empty(t, b.desk.State.Faults)
	assert.LessOrEqual(t, keys, 435, "450 is the goal")
	t.Log(keys)
}

var vanFromNothing = []string{
	`2 enter 40 enter 3200 enter 1780 enter 31 enter 460 esc`,
	`1 n c 652 enter +84 enter -850 enter 850 enter 0 enter 95 enter`,
	`c 1452 enter +84 enter -850 enter 850 enter 0 enter 95 enter`,
	`r 40 enter 3000 enter L300 enter +80 enter 0 enter 120 enter`,
	`r 40 enter 3000 enter R300 enter +80 enter 0 enter 120 enter`,
	`b 300 enter R410 enter 1500 enter R410 enter enter 8 enter 20 enter 30 enter`,
	`f 500 enter L410 enter 2500 enter L410 enter enter 10 enter 20 enter 30 enter`,
	`s 420 enter 0 enter 690 enter 100 enter 300 enter`,
	`k 1900 enter +700 enter 100 enter 500 enter 20 enter 250 enter`,
	`e 200 enter L600 enter 1500 enter L600 enter enter 60 enter 80 enter 140 enter`,
	`w 800 enter R200 enter 2600 enter R200 enter enter 20 enter 10 enter 30 esc`,
	`2 home down down down down enter 2 esc`,
	`3 n enter 1502 enter L300 enter 1500 enter L295 enter enter 2802 enter R310 enter 2800 enter R305 enter enter 2802 enter L310 enter 2800 enter L305 esc`,
	`4 enter t 1219 enter L640 enter`,
	`5 a t 1219 enter L650 enter 150 enter a t 1219 enter L90 enter 160 enter a t 1290 enter 930 enter 170 enter`,
	`tab a a t 1019 enter 300 enter 150 enter`,
}
