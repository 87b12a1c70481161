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

// straightOut is a job whose exhaust goes straight to the left at x = 1000, y = 0 to 800, 120 mm below the floor; an intake's stub is so far ahead of it.
func straightOut(ahead float64) vehicles.Job {
	heater, _ := vehicles.HeaterClass("2 kW")
	heater.ExhaustStub, heater.IntakeStub, heater.StubDrop = [2]float64{0, 0}, [2]float64{ahead, 0}, 120
	return vehicles.Job{
		Floor:  vehicles.Floor{From: 0, Length: 3000, Width: 1600, Thickness: 30, Ground: 460},
		Heater: &heater, Cut: &vehicles.Cut{At: [2]float64{1000, 0}, Across: 127},
		Exhaust: &vehicles.Run{Across: 26, Path: vehicles.List[vehicles.RunPoint]{{X: 1000, Y: 800, Drop: 120}}},
	}
}

// alongside is that job with a box beside the exhaust, and the exhaust's profile.
func alongside(t *testing.T, box vehicles.Obstruction) (rules.Result, scene.Scene) {
	job := straightOut(0)
	job.Obstructions = vehicles.List[vehicles.Obstruction]{box}
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	s, ok := Along(result, vehicles.ExhaustRun, 1)
	require.True(t, ok)
	return result, s
}

// What lies beside a run nearer than is asked is seen at its stations and in its heights, and as foul with it; farther off it is not seen.
// By hand: a wiring loom asks 120 mm of the pipe's surface, 133 of its axis. One 60 mm beside it from y = 300 to 400 is within that
// from 300 - sqrt(133*133 - 60*60) = 181.3 to 518.7.
func TestWhatLiesBesideARunIsSeen(t *testing.T) {
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	loom := vehicles.Obstruction{
		Name: "wiring loom", Kind: "wiring", Measured: true, Drop: vehicles.Span{From: 100, To: 140, Set: true},
		Place: vehicles.Place{X: vehicles.Pair{at(1060), at(1200)}, Y: vehicles.Pair{at(300), at(400)}},
	}
	result, s := alongside(t, loom)
	var asked float64
	for _, f := range result.Findings {
		if f.Subject.Sort == rules.TheExhaust && f.Against.Sort == rules.AnObstruction {
			require.Equal(t, rules.Foul, f.Verdict)
			asked = f.Required.Value + 13
		}
	}
	require.InDelta(t, 133, asked, 1e-9)
	items := find(s, scene.Lines, "")
	require.Len(t, items, 1)
	assert.Equal(t, scene.Foul, items[0].State)
	require.NotNil(t, items[0].Measure, "how much it is short of what is asked: its edge is 60 mm beside the axis, 47 from the pipe, 120 are asked")
	assert.InDelta(t, 47-120, items[0].Measure.Value, 1e-9)
	assert.True(t, items[0].Measure.Spare)
	seen := shown(t, s, items[0])
	low, high := seen.Bounds()
	assert.InDelta(t, 181.3, low.X, 0.2)
	assert.InDelta(t, 518.7, high.X, 0.2)
	assert.Equal(t, [2]float64{-140, -100}, [2]float64{low.Y, high.Y})

	loom.X = vehicles.Pair{at(1160), at(1300)}
	_, s = alongside(t, loom)
	_, there := s.Projection.Seen(&find(s, scene.Lines, "")[0], 0.02)
	assert.False(t, there, "160 mm beside it nothing is asked")
	require.NotNil(t, find(s, scene.Lines, "")[0].Measure, "near enough to be looked for")
	assert.InDelta(t, 147-120, find(s, scene.Lines, "")[0].Measure.Value, 1e-9)

	loom.X = vehicles.Pair{at(1360), at(1500)}
	_, s = alongside(t, loom)
	assert.Nil(t, find(s, scene.Lines, "")[0].Measure, "347 mm from the pipe nobody looks for it")
}

// What is foul with the cut alone is not foul beside the run: a picture of a run is of that run.
func TestTheProfileMarksWhatIsFoulWithItsRun(t *testing.T) {
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	rail := vehicles.Obstruction{
		Name: "crossmember", Kind: "crossmember", Measured: true, Drop: vehicles.Span{From: 0, To: 40, Set: true},
		Place: vehicles.Place{X: vehicles.Pair{at(900), at(1100)}, Y: vehicles.Pair{at(-60), at(60)}},
	}
	result, s := alongside(t, rail)
	foul := map[rules.Sort]bool{}
	for _, f := range result.Findings {
		foul[f.Subject.Sort] = foul[f.Subject.Sort] || f.Against.Sort == rules.AnObstruction && f.Verdict == rules.Foul
	}
	require.True(t, foul[rules.TheCut])
	require.False(t, foul[rules.TheExhaust])
	assert.Equal(t, scene.Clear, find(s, scene.Steel, "")[0].State)
}

// The ground is seen where the run hangs near it, and the muffler says how level it is: 10 mm in 100 are 5.7 degrees.
func TestTheProfileHasGroundAndTheMufflersLevel(t *testing.T) {
	result := van(t, nil)
	job := result.Job
	exhaust := *job.Exhaust
	muffler := vehicles.Muffler{Leg: 2, Start: 10, Length: 100, Across: 60}
	exhaust.Hanging, exhaust.Bend = vehicles.Hanging{Muffler: &muffler}, vehicles.Number{}
	exhaust.Path = vehicles.List[vehicles.RunPoint]{exhaust.Path[0], {X: exhaust.Path[0].X, Y: exhaust.Path[0].Y + 300, Drop: exhaust.Path[0].Drop + 30}}
	ground := func(at float64) (scene.Scene, []scene.Item) {
		job.Floor.Ground = at
		after, faults := rules.Judge(job.WithRun(vehicles.ExhaustRun, &exhaust), rules.Builtin())
		require.Empty(t, faults)
		s, ok := Along(after, vehicles.ExhaustRun, 1)
		require.True(t, ok)
		var items []scene.Item
		for _, it := range s.Items {
			if it.Label == "ground" {
				items = append(items, it)
			}
		}
		return s, items
	}
	s, items := ground(exhaust.Path[1].Drop + 100)
	require.Len(t, items, 1)
	seen := shown(t, s, items[0])
	low, high := seen.Bounds()
	assert.Equal(t, [2]float64{-exhaust.Path[1].Drop - 100, -exhaust.Path[1].Drop - 100}, [2]float64{low.Y, high.Y})
	assert.Greater(t, high.X-low.X, 300.0, "all along the run")
	assert.LessOrEqual(t, s.Min.Y, low.Y, "it is in the picture")
	assert.Equal(t, "muffler 5.7°", find(s, scene.Muffler, "muffler 5.7°")[0].Label)
	s, items = ground(exhaust.Path[1].Drop + 400)
	assert.Empty(t, items, "far below the picture does not go down to it")
}

// Ground farther down than the picture goes stands at its lower edge with how much lower it is. By hand: the pipe's underside is 120 + 13 mm
// below the floor and the ground 460, so 327 mm lower; the picture ends 15 mm below the axis.
func TestFarGroundIsToldAtTheLowerEdge(t *testing.T) {
	result, s := alongside(t, vehicles.Obstruction{
		Name: "box", Kind: "crossmember", Measured: true,
		Place: vehicles.Place{X: vehicles.Pair{survey.FromNumber(2000, false), survey.FromNumber(2100, false)}, Y: vehicles.Pair{survey.FromNumber(-60, false), survey.FromNumber(60, false)}},
	})
	assert.Empty(t, find(s, scene.Floor, "ground"))
	far := FarGround(result, vehicles.ExhaustRun)
	require.Len(t, far, 1)
	require.NotNil(t, far[0].Measure)
	assert.Equal(t, "ground lower by", far[0].Label)
	assert.InDelta(t, 327, far[0].Measure.Value, 1e-9)
	assert.Equal(t, scene.MM, far[0].Measure.Unit)
	seen := shown(t, s, far[0])
	low, high := seen.Bounds()
	assert.InDelta(t, -135, low.Y, 1e-9)
	assert.InDelta(t, s.Min.Y, low.Y, 1e-9, "the picture's lower edge")
	assert.Greater(t, high.X-low.X, 799.0, "all along the run")

	result.Job.Floor.Ground = 250
	assert.Empty(t, FarGround(result, vehicles.ExhaustRun), "it is in the picture itself")
	assert.Empty(t, FarGround(result, vehicles.IntakeRun), "there is no such run")
}

// Which heights are seen beside a run: a little above the floor and below what is lowest, a run above the floor with as much above it, and the ground where it is
// 170 mm below the axis at the most.
func TestWhichHeightsAreSeenBesideARun(t *testing.T) {
	for _, c := range []struct {
		z               []float64
		ground          float64
		lowest, highest float64
	}{
		{[]float64{-100, -60}, 400, -100, 0},
		{[]float64{-100, 300}, 400, -100, 300},
		{[]float64{300, 20}, 400, 0, 300},
		{[]float64{-100, -230.5}, 400, -400, 0},
		{[]float64{-100, -229.5}, 400, -229.5, 0},
		{[]float64{-100, -410}, 400, -410, 0},
	} {
		var path []geometry.Point3
		for i, z := range c.z {
			path = append(path, geometry.Point3{X: float64(500 * i), Z: z})
		}
		low, high := heights(&vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 0)}, c.ground, nil)
		assert.InDelta(t, c.lowest-besideLow, low, 1e-9, "%v", c)
		assert.InDelta(t, c.highest+besideHigh, high, 1e-9, "%v", c)
	}
}

// Heights are drawn as many times as high as a picture has room for that shows all of the run. By hand: of a run of 1000 mm on 100 columns a column is 10 mm.
func TestHowManyTimesHeightsAreStretched(t *testing.T) {
	path := []geometry.Point3{{Z: -60}, {X: 1000, Z: -60}}
	run := &vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 0)}
	low, high := heights(run, 600, nil)
	result := rules.Result{Job: vehicles.Job{Floor: vehicles.Floor{Ground: 600}}}
	result.Plan.Exhaust = run
	for _, want := range []float64{10, 5, 4, 2.5, 2, 1} {
		rows := (high - low) * want / 10
		assert.InDelta(t, want, Stretch(&result, vehicles.ExhaustRun, 100, rows+1e-6), 0, "just enough rows")
		if want > 1 {
			assert.Less(t, Stretch(&result, vehicles.ExhaustRun, 100, rows-1e-6), want)
		}
	}
	assert.InDelta(t, 1, Stretch(&result, vehicles.ExhaustRun, 100, 0.1), 0, "no picture has room for its heights")
}
