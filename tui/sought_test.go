package tui

import (
	"os"
	"sync"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// beside presses a key and has what it sets going go on beside the program, as the library does: what comes of it is heard when the test
// takes it from the channel, which is closed when nothing goes on any more.
func (b *bench) beside(name string) <-chan tea.Msg {
	msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
	b.deaf = time.Time{}
	_, cmd := b.Root.Update(msg)
	heard := make(chan tea.Msg, 256)
	var going sync.WaitGroup
	var run func(tea.Cmd)
	run = func(cmd tea.Cmd) {
		if cmd == nil {
			return
		}
		going.Go(func() {
			switch msg := cmd().(type) {
			case nil:
			case tea.BatchMsg:
				for _, c := range msg {
					run(c)
				}
			default:
				heard <- msg
			}
		})
	}
	run(cmd)
	go func() {
		going.Wait()
		close(heard)
	}()
	return heard
}

// While whole layouts are sought each key is answered at once, and none is lost: the whole program is asked while the search goes on beside it.
func TestKeysAreAnsweredWhileLayoutsAreSought(t *testing.T) {
	ofWholeRun(t)
	b := sampled(t)
	b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
	b.warned = true
	b.press("4")
	before := b.desk.State.Job
	heard := b.beside("c")
	require.True(t, b.shows("Looking for whole layouts"))
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	b.press("down", "x")
	assert.True(t, b.shows("still looked for"), "and is told so")
	b.press("enter", "ctrl+s")
	assert.Equal(t, before, b.desk.State.Job, "what acts on nothing there changes nothing")
	saved, err := os.ReadFile(b.desk.State.Path)
	require.NoError(t, err)
	_, err = vehicles.ParseJob(saved, "van.toml", b.desk.State.Book)
	require.NoError(t, err, "it is saved meanwhile")
	b.press("esc")
	assert.True(t, b.shows("Nothing was changed"))
	for msg := range heard { // the search has ended by itself
		b.Root.Update(msg) // who looks how far it is would look again and again
	}
	assert.Equal(t, before, b.desk.State.Job)

	b.press("right")
	moved := b.desk.State.Job
	require.NotEqual(t, before, moved, "the key after it moves the cut")
	heard = b.beside("c")
	b.press("down")
	for msg := range heard {
		b.Root.Update(msg)
	}
	require.False(t, b.shows("Looking for whole layouts"))
	b.press("enter")
	assert.NotEqual(t, rules.Foul, b.desk.State.Result.Verdict)
	b.press("ctrl+z")
	assert.Equal(t, moved, b.desk.State.Job)
	b.press("ctrl+z")
	assert.Equal(t, before, b.desk.State.Job, "nothing is lost")
}

// What a stray key was told of a search, or of what came of it, is gone once that is so no more, however soon.
func TestWhatIsSaidOfASearchGoesWithIt(t *testing.T) {
	ofWholeRun(t)
	for _, from := range []struct{ screen, asks, key, told, takes string }{
		{"4", "", "c", "Whole layouts", "takes the layout that is shown"},
		{"5", "/", "n", "No exhaust there keeps every rule", "put it in all the same, Esc"},
	} {
		b := sampled(t)
		b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
		b.warned = true
		b.press(from.screen)
		if from.asks != "" {
			b.press(from.asks)
		}
		heard := b.beside(from.key)
		b.press("x")
		require.True(t, b.shows("still looked for"), from.key)
		for msg := range heard {
			b.Root.Update(msg)
		}
		require.True(t, b.shows(from.told), b.View())
		assert.False(t, b.shows("still looked for"), b.View())
		b.press("x")
		require.True(t, b.shows(from.takes), b.View())
		b.press("esc")
		assert.False(t, b.shows(from.told), b.View())
		assert.False(t, b.shows(from.takes), b.View())
	}
}

// A digit goes to its screen from a list, too, and from a search, which it stops as Esc does; the help opens over both by its key.
func TestADigitLeavesAListForItsScreen(t *testing.T) {
	ofWholeRun(t)
	for _, from := range []struct{ screen, key, list string }{{"4", "c", "Looking for whole layouts"}, {"5", "J", "Looking for exhaust"}, {"5", "/", "come out?"}, {"5", "q", "Cut list"}} {
		b := sampled(t)
		b.send(tea.WindowSizeMsg{Width: 100, Height: 30})
		b.warned = true
		b.press(from.screen)
		before := b.desk.State.Job
		heard := b.beside(from.key)
		require.True(t, b.shows(from.list), from.key)
		b.press("?")
		require.NotNil(t, b.overlay(), from.key)
		b.press("esc", "7")
		assert.Equal(t, "Checks", b.screens[b.at].Title(), from.key)
		for msg := range heard {
			b.Root.Update(msg)
		}
		assert.Equal(t, before, b.desk.State.Job, "what comes late is heard by nobody")
		b.press(from.screen)
		assert.False(t, b.shows(from.list), from.key)
	}
}

// On the smallest screen a whole layout that was taken is seen in both pictures as soon as *Runs* is gone to: what is said of it takes a row.
func TestATakenLayoutIsSeenFalling(t *testing.T) {
	ofWholeRun(t)
	b := sampled(t)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	b.warned = true
	b.press("4")
	for msg := range b.beside("c") {
		b.Root.Update(msg)
	}
	require.False(t, b.shows("Looking for"))
	b.press("enter", "5")
	require.True(t, b.shows("Laid out: "), "it is still said: %s", b.View())
	assert.True(t, b.shows("SEEN FROM BELOW"), b.View())
	assert.True(t, b.shows("BESIDE THE RUN"), b.View())
	assert.True(t, b.shows("± "), "and the worst has its row: %s", b.View())
}

// On the smallest screen the fall of what was laid by one key is seen at once.
func TestWhatWasFoundIsSeenFalling(t *testing.T) {
	ofWholeRun(t)
	b := sampled(t)
	b.send(tea.WindowSizeMsg{Width: 60, Height: 20})
	b.warned = true
	b.press("4", "t", "1", "4", "0", "5", "enter", "1", "9", "5", "enter", "5", "X", "tab", "X", "tab", "X")
	for msg := range b.beside("J") {
		b.Root.Update(msg)
	}
	require.False(t, b.shows("Looking for"))
	assert.True(t, b.shows("BESIDE THE RUN"), b.View())
	assert.True(t, b.shows("↓"), b.View())
	b.press("n")
	assert.True(t, b.shows("Point 2"), "the next key is what it ever was")
}
