package place

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestPointsOfARun(t *testing.T) {
	s := screentest.State(t)
	old := s.Job.Exhaust.Path

	p, after, _ := screentest.After(New(), s, screentest.Keys("tab a")...)
	require.Len(t, after.Job.Exhaust.Path, 5)
	assert.Equal(t, vehicles.RunPoint{X: 300, Y: 1070, Drop: 200}, after.Job.Exhaust.Path[4], "on in the same direction")
	assert.Equal(t, 4, p.(page).point, "the new point is the one the arrows move")
	assert.Equal(t, 3, after.Job.Exhaust.Muffler.Leg)

	_, after, _ = screentest.After(New(), s, screentest.Keys("tab n i")...)
	require.Len(t, after.Job.Exhaust.Path, 5)
	assert.Equal(t, vehicles.RunPoint{X: 1072.5, Y: 442.5, Drop: 135}, after.Job.Exhaust.Path[1])
	assert.Equal(t, 4, after.Job.Exhaust.Muffler.Leg, "the muffler stays on the leg it was on")

	_, after, changes := screentest.After(New(), s, screentest.Keys("tab n n i")...)
	assert.Nil(t, changes[3].Job)
	assert.Contains(t, changes[3].Say, "muffler")
	assert.Equal(t, old, after.Job.Exhaust.Path)

	_, after, _ = screentest.After(New(), s, screentest.Keys("tab n x")...)
	assert.Equal(t, vehicles.List[vehicles.RunPoint]{old[0], old[2], old[3]}, after.Job.Exhaust.Path)
	assert.Equal(t, 2, after.Job.Exhaust.Muffler.Leg)

	_, after, _ = screentest.After(New(), s, screentest.Keys("tab x x x")...)
	assert.Equal(t, 1, after.Job.Exhaust.Muffler.Leg)
	_, after, changes = screentest.After(New(), s, screentest.Keys("tab x x x x")...)
	assert.Nil(t, after.Job.Exhaust, "with its last point the run goes")
	assert.Contains(t, changes[4].Say, "takes it back")
}

func TestHeightOfAPoint(t *testing.T) {
	s := screentest.State(t)
	_, after, changes := screentest.After(New(), s, screentest.Keys("tab d pgdown r")...)
	assert.Equal(t, 120., after.Job.Exhaust.Path[0].Drop)
	assert.Equal(t, "height of exhaust point 1", changes[1].Step)
}

func TestPointsAreTypedAsTheTapeReads(t *testing.T) {
	s := screentest.State(t)
	// 3, 4, 5: the hook hangs 150 below the floor, the point 450, so that the tape slopes by 300 over 400.
	_, after, _ := screentest.After(New(), s, screentest.Keys("tab t 500 enter R300 enter backspace backspace backspace 450 enter")...)
	assert.Equal(t, vehicles.RunPoint{X: 400, Y: -590, Drop: 450}, after.Job.Exhaust.Path[0])
}

func TestANewRunStartsUnderItsStub(t *testing.T) {
	s := screentest.State(t)
	s.Job.Intake = nil
	s = screentest.Judged(s, s.Job)
	p, after, changes := screentest.After(New(), s, screentest.Keys("shift+tab up a")...)
	assert.Contains(t, changes[1].Say, "No intake")
	require.NotNil(t, after.Job.Intake)
	// the stub of the sample job: 35 behind the cut's centre, 25 to its left
	assert.Equal(t, vehicles.List[vehicles.RunPoint]{{X: 1175, Y: 265, Drop: 110}}, after.Job.Intake.Path)
	_, after, _ = screentest.After(p, after, screentest.Keys("a")...)
	assert.Equal(t, vehicles.RunPoint{X: 975, Y: 265, Drop: 110}, after.Job.Intake.Path[1])

	s = screentest.Judged(s, withoutCut(s.Job))
	_, after, changes = screentest.After(New(), s, screentest.Keys("shift+tab a")...)
	assert.Nil(t, after.Job.Intake)
	assert.Contains(t, changes[1].Say, "place a cut")
}

// What a fitter calls a thing does not make it a part of the exhaust.
func TestOnlyTheExhaustsFindingsStandBesideIt(t *testing.T) {
	s := screentest.State(t)
	o := s.Job.Obstructions[0]
	o.Name = "exhaust"
	job := s.Job
	job.Obstructions = job.Obstructions.With(0, o)
	s = screentest.Judged(s, job)
	for _, f := range s.Result.Findings {
		if f.Against.Is(rules.AnObstruction, 0) && f.Subject.Sort != rules.TheExhaust {
			assert.False(t, screen{moving: exhaust}.concerns(f), "%s: the vehicle's own", f.ID())
		}
		if f.Subject.Sort == rules.TheExhaust {
			assert.True(t, screen{moving: exhaust}.concerns(f), f.ID())
		}
	}
}
