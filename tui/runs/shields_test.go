package runs

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

func TestHeatShieldsAreSaidOnPlace(t *testing.T) {
	s := screentest.State(t)
	require.Zero(t, s.Job.Exhaust.Shielded)
	required := func(name string) float64 {
		for _, f := range s.Result.Findings {
			if f.Of(rules.ExhaustClearance) && f.Against.Name == name {
				return f.Required.Value
			}
		}
		require.Fail(t, name)
		return 0
	}
	bare := required("brake pipe, left")
	p, s, _ := screentest.After(New(), s, screentest.Keys("h")...)
	for _, size := range screentest.Sizes {
		view := screentest.Filled(t, p, s, size.W, size.H)
		assert.Contains(t, view, "heat shield stand before it?")
		assert.Contains(t, view, "chassis rail, left", "the nearest")
	}
	p, s, _ = screentest.After(p, s, screentest.Keys("down down space")...)
	require.Equal(t, []string{"brake pipe, left"}, s.Job.Exhaust.Shielded.Names)
	assert.Contains(t, screentest.Filled(t, p, s, 100, 27), "80.3 mm, YES")
	assert.Less(t, required("brake pipe, left"), bare)
	_, s, _ = screentest.After(p, s, screentest.Keys("space")...)
	assert.Zero(t, s.Job.Exhaust.Shielded, "the key says the other thing")

	run := *s.Job.Exhaust
	run.Shielded = vehicles.Shields{All: true}
	s = screentest.Judged(s, s.Job.WithRun(vehicles.ExhaustRun, &run))
	_, after, _ := screentest.After(p, s, screentest.Keys("space")...)
	assert.Len(t, after.Job.Exhaust.Shielded.Names, len(s.Job.Obstructions)-1)
	assert.False(t, after.Job.Exhaust.Shielded.For("brake pipe, left"))
	assert.True(t, s.Job.Exhaust.Shielded.All, "the old job is as it was")

	back, _, _ := screentest.After(p, s, screentest.Keys("esc")...)
	assert.False(t, back.Typing())
	intake, _, changes := screentest.After(New(), s, screentest.Keys("tab h")...)
	assert.False(t, intake.Typing(), "the intake has none")
	assert.Nil(t, changes[1].Job)
}

// Each row says the other thing of its own thing and of no other, all is taken back by the same key, and by undo to the byte.
func TestEachShieldIsSaidForItsOwn(t *testing.T) {
	job := screentest.Full(t)
	r := screentest.New(t, New(), job, 60, 17)
	r.Type("h")
	list := shieldable(r.State)
	require.Greater(t, len(list), 2)
	for i, f := range list {
		was := r.State.Job.Exhaust.Shielded
		r.Type("<home>")
		for range i {
			r.Type("<down>")
		}
		r.Type("<space>")
		now := r.State.Job.Exhaust.Shielded
		for _, o := range job.Obstructions {
			assert.Equal(t, was.For(o.Name) != (o.Name == f.Against.Name), now.For(o.Name), "%s, at %s", o.Name, f.Against.Name)
		}
		assert.Contains(t, r.Said, f.Against.Name)
		r.Type("<enter>")
		again := r.State.Job.Exhaust.Shielded
		for _, o := range job.Obstructions {
			assert.Equal(t, was.For(o.Name), again.For(o.Name), o.Name)
		}
	}
	r.Type("<esc>")
	assert.False(t, r.Screen.Typing())
	for len(r.Steps()) > 0 {
		r.Undo()
	}
	assert.Equal(t, string(job.Format()), string(r.State.Job.Format()))
}

// The nearest stands first, and what is shielded stays in the list however far off it is.
func TestTheListOfShieldsIsByDistance(t *testing.T) {
	job := screentest.Full(t)
	run := *job.Exhaust
	run.Shielded = vehicles.Shields{Names: []string{"bracket"}} // more than a metre off
	s := screentest.New(t, New(), job.WithRun(vehicles.ExhaustRun, &run), 100, 27).State
	last := -1e9
	far := false
	for _, f := range shieldable(s) {
		assert.GreaterOrEqual(t, f.Value, last)
		last = f.Value
		if f.Value > shieldNear {
			assert.Equal(t, "bracket", f.Against.Name)
			far = true
		}
	}
	assert.True(t, far)
}

func TestWithoutAnythingNearThereIsNothingToShield(t *testing.T) {
	job := screentest.Full(t)
	run := *job.Exhaust
	run.Shielded = vehicles.Shields{}
	cut := *job.Cut
	cut.Direct = nil
	job = job.WithCut(cut).WithRun(vehicles.ExhaustRun, &run)
	job.Obstructions = job.Obstructions[1:2] // the bracket
	fuel := *job.Fuel
	fuel.Supply.From = ""
	r := screentest.New(t, New(), job.WithRun(vehicles.FuelRun, &fuel), 100, 27)
	r.Type("h")
	assert.Equal(t, "Nothing was entered within 500 mm of the exhaust.", r.Said)
	assert.False(t, r.Screen.Typing())
}
