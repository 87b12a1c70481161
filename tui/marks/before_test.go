package marks

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// Whoever has made marks is not told that the first one comes.
func TestBeforeTheNextMark(t *testing.T) {
	s := screentest.State(t)
	assert.Contains(t, screentest.Filled(t, New(), s, 100, 27), "Before the first mark")
	s.Ticked = map[string]bool{s.Marks.Marks[0].Name: true}
	assert.Contains(t, screentest.Filled(t, New(), s, 100, 27), "Before the next mark")
	later, _, _ := screentest.After(New(), s, screentest.Keys("l")...)
	assert.Contains(t, screentest.Filled(t, later, s, 100, 27), "Before the next mark")
	s.Ticked = nil
	drilled := *s.Job.Cut
	drilled.Drilled = &vehicles.Pair{}
	s.Job.Cut = &drilled
	assert.Contains(t, screentest.Filled(t, New(), s, 100, 27), "Before the next mark", "the pilot hole is one")
}
