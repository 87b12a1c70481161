package place

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// listed opens the list of places and waits for it.
func listed(t *testing.T, s desk.State) desk.Screen {
	p, change, cmd := New().Update(screentest.Keys("c")[0], s)
	require.Empty(t, change)
	require.NotNil(t, cmd)
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "Looking...")
	p, _, _ = p.Update(found(cmd), s)
	return p
}

// found runs the search that a command starts, and not what looks how far it is.
func found(cmd tea.Cmd) tea.Msg { return cmd().(tea.BatchMsg)[0]() }

// fitting are the places that the rules know for the heater of a job.
func fitting(t *testing.T, s desk.State) []rules.Option {
	said, err := rules.Assist(t.Context(), &s.Result, func(rules.Stage, int, int) {})
	require.NoError(t, err)
	return said.Options
}

// looking opens the list and returns the commands that seek the places and look how far they are.
func looking(t *testing.T, s desk.State) (p desk.Screen, seek, watch tea.Cmd) {
	p, _, cmd := New().Update(screentest.Keys("c")[0], s)
	both := cmd().(tea.BatchMsg)
	require.Len(t, both, 2)
	return p, both[0], both[1]
}

func TestTheSearchSaysHowFarItIsWhileItGoesOn(t *testing.T) {
	s := wishing(t, geometry.Point{X: 900, Y: 0}, 20)
	p, seek, watch := looking(t, s)
	look := watch()
	p, _, again := p.Update(look, s)
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "Looking...", "before it has begun")
	require.NotNil(t, again, "it is looked at again")
	answer := seek()
	p, _, _ = p.Update(again(), s)
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "Looking... the nearest place beyond.")
	p, _, _ = p.Update(answer, s)
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "No place holds every distance.")
	_, _, again = p.Update(look, s)
	assert.Nil(t, again, "there is nothing more to look at")
}

func TestEscStopsTheSearch(t *testing.T) {
	s := demo(t)
	p, seek, watch := looking(t, s)
	p, _, _ = p.Update(tea.KeyMsg{Type: tea.KeyEsc}, s)
	assert.False(t, p.Typing())
	assert.Nil(t, seek(), "what was stopped answers nothing")
	_, _, again := p.Update(watch(), s)
	assert.Nil(t, again)
}

func TestTheSearchStopsWhenTheJobChanges(t *testing.T) {
	s := demo(t)
	p, seek, _ := looking(t, s)
	job := s.Job
	job.Obstructions = job.Obstructions.Without(0)
	_, _, _ = p.Update(tea.KeyMsg{Type: tea.KeyF1}, screentest.Judged(s, job))
	assert.Nil(t, seek())
}

// wishing is the demo with a heater wanted at a place.
func wishing(t *testing.T, at geometry.Point, within float64) desk.State {
	s := demo(t)
	s.Job.Wish = &vehicles.Wish{At: [2]float64{at.X, at.Y}, Within: vehicles.Some(within)}
	return screentest.Judged(s, s.Job)
}

func TestAPlaceOfTheListIsTakenWithItsLetterAndTakenBack(t *testing.T) {
	s := demo(t)
	options := fitting(t, s)
	require.NotEmpty(t, options)
	for i, letter := range []string{"a", "b", "c"}[:len(options)] {
		_, after, changes := screentest.After(listed(t, s), s, screentest.Keys(letter)...)
		assert.Equal(t, options[i].Yaw.Value, after.Job.Heater.Yaw)
		assert.InDelta(t, options[i].At.X, after.Job.Cut.At[0], 0.02)
		assert.InDelta(t, options[i].At.Y, after.Job.Cut.At[1], 0.02)
		assert.GreaterOrEqual(t, leastAtCut(after), 0.)
		assert.Empty(t, changes[0].Step, "an undo step of its own")
		assert.Equal(t, vehicles.Demo().Cut.At, s.Job.Cut.At)
	}
}

func TestTheListInPictures(t *testing.T) {
	s := demo(t)
	list := listed(t, s)
	screentest.Golden(t, "options", list, s, planArea)
	for _, size := range screentest.Sizes {
		assert.Contains(t, screentest.Filled(t, list, s, size.W, size.H), "c x ", "no option is hidden, %s", size.Name)
	}
	s = wishing(t, geometry.Point{X: 900, Y: 0}, 20)
	require.Empty(t, fitting(t, s))
	screentest.Golden(t, "in-the-way", listed(t, s), s, planArea)
}

func TestTheListIsLeftWhenTheJobChanges(t *testing.T) {
	s := demo(t)
	p := listed(t, s)
	require.True(t, p.Typing())
	left, _, _ := screentest.After(p, s, tea.KeyMsg{Type: tea.KeyEsc})
	assert.False(t, left.Typing())
	fewer := s.Job
	fewer.Obstructions = fewer.Obstructions.Without(0)
	other := screentest.Judged(s, fewer)
	assert.NotContains(t, screentest.Filled(t, p, other, 100, 27), "whole heater")
	late, _, cmd := New().Update(screentest.Keys("c")[0], s)
	late, _, _ = late.Update(found(cmd), other)
	assert.False(t, late.Typing(), "what comes late is of another job")
}

func TestWithoutAHeaterTheListSaysSo(t *testing.T) {
	s := demo(t)
	job := s.Job
	job.Heater, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil
	_, _, changes := screentest.After(New(), screentest.Judged(s, job), screentest.Keys("c")...)
	assert.Contains(t, changes[0].Say, "No heater")
}
