package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// from is the scene of a job in a view that has no name yet.
func from(seen scene.Projection, result rules.Result, opts Options) scene.Scene {
	d := drawer{result: &result, job: &result.Job, plan: &result.Plan, opts: &opts, states: statesOf(&result), projection: seen}
	return d.draw()
}

func shown(t *testing.T, s scene.Scene, it scene.Item) scene.Seen {
	f, ok := s.Projection.Seen(&it, 0.02)
	require.True(t, ok, it.Label)
	return f
}

// Views from the right and from behind show the same items at their heights: drops below the floor, rises above it.
func TestASceneCanBeSeenFromTheSide(t *testing.T) {
	result := van(t, nil)
	below := Draw(result, Options{Shown: Worst(result.Findings, anything, 3)})
	for _, seen := range []scene.Projection{scene.FromRight.Projection(), scene.FromBehind.Projection()} {
		s := from(seen, result, Options{Shown: Worst(result.Findings, anything, 3)})
		require.Equal(t, below.Items, s.Items)
		for _, it := range s.Items {
			f := shown(t, s, it)
			low, high := f.Bounds()
			switch {
			case it.Code != "":
				assert.Equal(t, result.Plan.Obstructions[it.Ref].Prism.Low, low.Y, it.Label)
				assert.Equal(t, result.Plan.Obstructions[it.Ref].Prism.High, high.Y, it.Label)
			case it.Role == scene.Fitting, it.Role == scene.Plate, it.Role == scene.Body:
				assert.GreaterOrEqual(t, low.Y, result.Job.Floor.Thickness, "stands on the floor")
			case it.Role == scene.Wheel:
				assert.InDelta(t, -result.Job.Floor.Ground, low.Y, 1e-9, "stands on the ground")
			}
			if it.Role != scene.Space && it.Role != scene.Dimension {
				assert.True(t, low.X >= s.Min.X && low.Y >= s.Min.Y && high.X <= s.Max.X && high.Y <= s.Max.Y, it.Label)
			}
			assert.False(t, s.Projection.Hidden(&it), "the floor is seen edge on")
		}
	}
}

// Along the exhaust a scene shows how it falls: each of its legs as long as it is, each end at its drop.
func TestASceneCanBeSeenAlongARun(t *testing.T) {
	result := van(t, nil)
	run := &result.Plan.Exhaust.Line
	s := from(scene.Beside(run, 1, "stub", "outlet"), result, Options{})
	line := shown(t, s, find(s, scene.Exhaust, "")[0]).Area.Path
	last := line[len(line)-1]
	assert.InDelta(t, run.Length(), last.X, 1e-6)
	assert.InDelta(t, run.At(run.Length()).Z, last.Y, 1e-9)
	at := shown(t, s, find(s, scene.Outlet, "")[0]).Line[0]
	assert.InDelta(t, 0, at.Sub(last).Norm(), 1e-6)
}

// A run is drawn where it is, its bends too: at full size within the 0.2 mm that a template may be off, while chords
// of 10 mm were off by 0.21 mm.
func TestBendsAreDrawnWhereTheyAre(t *testing.T) {
	result := van(t, func(j *vehicles.Job) {
		run := *j.Exhaust
		run.Bend, run.Muffler, run.Clips = vehicles.Some(60), nil, nil
		run.Path = []vehicles.RunPoint{{X: 1300, Y: 265, Drop: 110}, {X: 900, Y: 620, Drop: 110}, {X: 500, Y: 100, Drop: 110}}
		j.Exhaust = &run
	})
	s := Draw(result, Options{})
	drawn := geometry.NewLine(shown(t, s, find(s, scene.Exhaust, "")[0]).Area.Path, 0)
	line, worst := result.Plan.Exhaust.Line, 0.0
	require.Less(t, line.Legs[1].End, line.Legs[2].Begin, "bends there are")
	for along := 0.0; along <= line.Length(); along++ {
		worst = max(worst, drawn.GapOnly(line.At(along).Plan()))
	}
	assert.Less(t, worst, 0.02+1e-9)
}

// A round opening is drawn as the circle it is.
func TestARoundOpeningIsDrawnRound(t *testing.T) {
	number := func(mm float64) survey.Reading { return survey.FromNumber(mm, false) }
	result := van(t, func(j *vehicles.Job) {
		j.Openings = []vehicles.Opening{{Name: "vent", Kind: "vent", Place: vehicles.Place{
			Shape: vehicles.Disc, Centre: vehicles.Pair{number(2000), number(-300)}, Across: vehicles.Some(120),
		}}}
	})
	s := Draw(result, Options{})
	edge := shown(t, s, find(s, scene.Opening, "vent")[0]).Line
	for _, p := range edge {
		assert.InDelta(t, 60, p.Sub(pt(2000, -300)).Norm(), 1e-9)
	}
}

// A wheel whose width was left out is still as long as it is.
func TestAWheelWithoutAWidth(t *testing.T) {
	result := van(t, func(j *vehicles.Job) {
		j.Wheels = []vehicles.Wheel{{At: [2]float64{900, 780}, Across: 690}, {At: [2]float64{900, -780}}}
	})
	s := Draw(result, Options{})
	f := shown(t, s, find(s, scene.Wheel, "")[0])
	low, high := f.Bounds()
	assert.InDelta(t, 690, high.X-low.X, 1e-9)
	assert.InDelta(t, 1, high.Y-low.Y, 1e-9)
}

// The front wheels stand ahead of the floor: they would make all else small.
func TestWheelsBeyondTheFloorAreNotDrawn(t *testing.T) {
	wheelsAt := func(x float64) int {
		result := van(t, func(j *vehicles.Job) { j.Wheels = []vehicles.Wheel{{At: [2]float64{x, 780}, Across: 690}} })
		return len(find(Draw(result, Options{}), scene.Wheel, ""))
	}
	floor := van(t, func(*vehicles.Job) {}).Plan
	assert.Equal(t, []int{1, 0}, []int{wheelsAt(floor.FloorMax.X + 344), wheelsAt(floor.FloorMax.X + 346)})
	assert.Equal(t, []int{1, 0}, []int{wheelsAt(floor.FloorMin.X - 344), wheelsAt(floor.FloorMin.X - 346)})
}
