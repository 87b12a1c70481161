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

// measuredPilot is the trial job with its pilot hole drilled and measured.
func measuredPilot(t *testing.T) *screentest.Driver {
	d := screentest.New(t, New(), screentest.State(t).Job, 100, 27)
	d.Type("m1222<enter>L652<enter>")
	require.NotNil(t, d.State.Job.Cut.Drilled)
	d.State.Camera = desk.Camera{Middle: geometry.Point{X: 1210, Y: 240}, Scale: 4}
	return d
}

func TestADrilledCutMovesOnlyOnPurpose(t *testing.T) {
	d := measuredPilot(t)
	at := d.State.Job.Cut.At
	d.Tap(20, 5)
	assert.Equal(t, at, d.State.Job.Cut.At, "not by a tap")
	assert.Contains(t, d.Said, "The pilot is drilled: the cut stays with it.")
	for _, arrow := range []string{"<right>", "<left>", "<up>", "<down>", "n", "j"} {
		d.Type(arrow)
		assert.Equal(t, at, d.State.Job.Cut.At, "not by %s", arrow)
	}
	d.Type("r")
	assert.Contains(t, d.View(100, 27), "Arrows and taps move the drilled cut")
	d.Type("r<right>")
	assert.Equal(t, at, d.State.Job.Cut.At, "and holds it again")
	d.Type("r<right>")
	assert.NotEqual(t, at, d.State.Job.Cut.At, "a key has said so")
	assert.NotNil(t, d.State.Job.Cut.Old, "the hole is an old one now")
	assert.Nil(t, d.State.Job.Cut.Drilled)
	assert.Contains(t, d.View(100, 27), "beside the old pilot hole")
	at = d.State.Job.Cut.At
	d.Type("t1300<enter>L652<enter>")
	assert.NotEqual(t, at, d.State.Job.Cut.At, "a place that is typed is meant")

	d.Type("m1223<enter>L652<enter>")
	at = d.State.Job.Cut.At
	d.Type("<right>")
	assert.Equal(t, at, d.State.Job.Cut.At, "another hole is held again")
}

// The heater turns about its hole, so its heading may be chosen after the pilot is drilled, and that is said; not once its bolts have holes.
func TestTheHeadingTurnsAboutADrilledPilot(t *testing.T) {
	d := measuredPilot(t)
	cut, yaw := *d.State.Job.Cut, d.State.Job.Heater.Yaw
	for _, key := range []string{",", ","} {
		d.Type(key)
		assert.Contains(t, d.Said, "Turned about the hole, which stays: warm air ")
	}
	assert.Equal(t, cut, *d.State.Job.Cut)
	assert.InDelta(t, yaw-2*desk.TurnStep, d.State.Job.Heater.Yaw, 1e-9, "anticlockwise as seen from below")
	d.Undo()
	assert.InDelta(t, yaw, d.State.Job.Heater.Yaw, 1e-9, "turns in a row are one step")

	job := d.State.Job.WithDone(vehicles.Done{Step: vehicles.BoltsDrilled, At: "2026-11-25T10:00"})
	bolted := screentest.New(t, New(), job, 100, 27)
	for _, key := range []string{",", "."} {
		bolted.Said = ""
		bolted.Type(key)
		assert.Equal(t, isBolted, bolted.Said)
		assert.InDelta(t, yaw, bolted.State.Job.Heater.Yaw, 1e-9)
	}
}

// A thumb on the screen may have meant nothing: what it moved is said, and how to take that back.
func TestATapSaysWhatItMoved(t *testing.T) {
	d := screentest.New(t, New(), screentest.State(t).Job, 100, 27)
	d.State.Camera = desk.Camera{Middle: geometry.Point{X: 1210, Y: 240}, Scale: 4}
	d.Tap(20, 5)
	assert.Regexp(t, `^Cut moved .* (forward|back), .* (left|right), to x .*\. Ctrl-Z takes it back\. Gone along: exhaust .*intake \(J on Runs: anew\)\.$`, d.Said)
	d.Undo()
	d.Said = ""
	d.Tap(90, 5)
	assert.Empty(t, d.Said, "beside the plan nothing moves")

	none := screentest.New(t, New(), withoutCut(screentest.State(t).Job), 100, 27)
	none.State.Camera = d.State.Camera
	none.Tap(20, 5)
	assert.Regexp(t, `^Cut placed at x .*Ctrl-Z takes it back\.$`, none.Said)

	hole := measuredPilot(t)
	hole.Type("r")
	hole.Tap(20, 5)
	assert.Contains(t, hole.Said, rules.OutsideTheCut.Why(), "and what becomes of the hole")
}

func TestAWheelOnThePlanIsNoneOnTheList(t *testing.T) {
	d := measuredPilot(t)
	d.Send(tea.MouseMsg{X: 5, Y: 5, Button: tea.MouseButtonWheelDown, Action: tea.MouseActionPress})
	assert.Zero(t, d.Screen.(screen).top)
}
