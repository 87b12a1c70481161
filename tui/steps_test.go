package tui

import (
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// A step has the time at which its key came; a key that bounces does not tick the next one, and what is done is saved and taken back like
// all else.
func TestAStepIsTickedWithTheTimeAndOnce(t *testing.T) {
	b, o := wholeVan(t, 100, 30)
	clock := time.Date(2026, 11, 27, 10, 15, 40, 0, time.UTC)
	b.now = func() time.Time { return clock }
	b.goTo(b.titled("Work"))
	before := len(b.desk.State.Job.Done)
	for range 3 {
		b.send(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
		clock = clock.Add(40 * time.Millisecond)
	}
	assert.Equal(t, "2026-11-27T10:15:00", b.desk.State.Job.DoneOf("instructions").At)
	assert.Len(t, b.desk.State.Job.Done, before+1, "the others bounced")
	clock = clock.Add(time.Minute)
	b.send(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune{' '}})
	assert.Equal(t, "2026-11-27T10:16:00", b.desk.State.Job.DoneOf("stands").At)
	b.press("ctrl+s")
	assert.False(t, b.desk.State.Dirty)
	data, err := vehicles.ReadFile(o.Path)
	require.NoError(t, err)
	assert.Contains(t, string(data), "[[done]]\nstep = \"stands\"\nat = 2026-11-27T10:16:00\n")
	b.press("ctrl+z")
	assert.True(t, b.shows("took back: stands done"))
	assert.Len(t, b.desk.State.Job.Done, before+1)
}
