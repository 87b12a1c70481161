package tui

import (
	"math/rand/v2"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// With the hook 400 below the floor no tape of 300 mm reaches a rib whose near edge hangs 60 below: they are 340 apart. With
// the hook at 150 it does.
func TestARefusedReadingIsTriedAgainWhenSomethingElseChanges(t *testing.T) {
	b, _ := van(t)
	b.keys(`2 home down enter s 400 esc`)
	b.keys(`1 n c 300 enter +84 enter -850 enter 850 enter 0 enter 60 esc`)
	drop := func() vehicles.Span { return b.desk.State.Job.Obstructions[0].Drop }
	require.False(t, drop().Set)
	require.NotEmpty(t, b.desk.State.Job.Refused())
	before := b.desk.State.Job

	b.keys(`2 home down enter down 150`)
	assert.False(t, drop().Set, "while it is typed nobody knows what it will be")
	b.keys(`esc`)
	assert.Equal(t, vehicles.Span{From: 0, To: 60, Set: true}, drop())
	assert.Empty(t, b.desk.State.Job.Refused())
	assert.Contains(t, b.say, "now taken: top of crossmember, 0; bottom of crossmember, 60")
	b.keys(`ctrl+z`)
	assert.Equal(t, before, b.desk.State.Job, "it is a part of the step that made it fit")
	b.keys(`ctrl+y`)
	require.True(t, drop().Set)

	b.keys(`ctrl+z home down enter l esc`)
	require.True(t, drop().Set, "a choice is whole at once")
	assert.Equal(t, vehicles.Number{}, b.desk.State.Job.Datum.HookBelow)
}

// A row more or less above the foot, a cursor that moves within the text: the field is still being typed in, and the step that it is stays one.
func TestAFieldIsLeftByWhatTakesItsKeysAlone(t *testing.T) {
	for name, meanwhile := range map[string]func(b *bench){
		"another window":   func(b *bench) { b.send(tea.WindowSizeMsg{Width: 80, Height: 21}) },
		"a row of message": func(b *bench) { b.tell(strings.Repeat("long ", 100)); b.send(struct{}{}) },
		"the cursor":       func(b *bench) { b.keys(`left right`) },
	} {
		t.Run(name, func(t *testing.T) {
			b, _ := van(t)
			b.keys(`2 home down enter s 400 esc`)
			b.keys(`1 n c 300 enter +84 enter -850 enter 850 enter 0 enter 60 esc`)
			require.NotEmpty(t, b.desk.State.Job.Refused())
			steps := len(b.desk.Steps())

			b.keys(`2 home down enter down 150`)
			meanwhile(b)
			assert.NotEmpty(t, b.desk.State.Job.Refused(), "while it is typed nobody knows what it will be")
			b.keys(`backspace backspace 40 enter`)
			assert.Empty(t, b.desk.State.Job.Refused())
			assert.Len(t, b.desk.Steps(), steps+1)
		})
	}
}

// What stays refused has the reason that it has now.
func TestTheReasonOfARefusedReadingIsThatOfNow(t *testing.T) {
	b, _ := van(t)
	b.keys(`2 home down enter s 400 esc`)
	b.keys(`1 n c 300 enter +84 enter -850 enter 850 enter 0 enter 60 esc`)
	require.Contains(t, b.desk.State.Job.Refused()[0].Why, "340 mm apart")
	b.keys(`2 home down enter down 380 esc`)
	assert.Contains(t, b.desk.State.Job.Refused()[0].Why, "320 mm apart")
}

// A job may come with a refused reading whose reason is another by now; what was typed and rubbed out again is no step that this could be a part of.
func TestWhatWasRubbedOutLeavesNothingToTryAgain(t *testing.T) {
	b, o := van(t)
	b.keys(`2 home down enter s 400 esc`)
	b.keys(`1 n c 300 enter +84 enter -850 enter 850 enter 0 enter 60 esc`)
	job := b.desk.State.Job
	refused := job.Refused()
	for i := range refused {
		refused[i].Why = "as somebody had it"
	}
	b.desk.Begin(job.WithRefused(refused), true)
	b.keys(`8 enter end x backspace esc`)
	assert.Empty(t, b.desk.Steps())
	assert.Equal(t, refused, b.desk.State.Job.Refused())

	b.keys(`enter end x ctrl+z esc`)
	assert.Empty(t, b.desk.Steps(), "nor is what was taken back while it was typed")
	assert.FileExists(t, o.Path)
}

// What a field that was left brings into the job is in the journal as all else is, and so is what comes after it.
func TestTheJournalGoesOnAfterAFieldWasLeft(t *testing.T) {
	b, o := fuzzed(t, vehicles.Demo().Format())
	r := rand.New(rand.NewPCG(8, 0)) // these events leave a field whose refused text is tried again
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	w := watch(b, o)
	for range 600 {
		for _, msg := range anything(r, 60, 20) {
			w.does(msg, func() string { return "" })
		}
		if b.overlay() != nil && r.IntN(4) == 0 {
			w.does(namedKey("esc"), func() string { return "" })
		}
	}
}
