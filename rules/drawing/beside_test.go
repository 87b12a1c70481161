package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// An intake laid beside the exhaust, axes 60 mm apart, leaves 60 - 13 - 14 = 33 of the 50 mm that are asked. It is seen beside the exhaust, and that
// beside it, from the 150 mm that count as at the stub to where the intake ends, in its heights.
func TestAnotherRunIsSeenBesideARun(t *testing.T) {
	job := straightOut(60)
	job.Intake = &vehicles.Run{Across: 28, Path: vehicles.List[vehicles.RunPoint]{{X: 1060, Y: 500, Drop: 120}}}
	for _, c := range []struct {
		of     vehicles.RunKind
		other  scene.Role
		radius float64
	}{{vehicles.ExhaustRun, scene.Intake, 14}, {vehicles.IntakeRun, scene.Exhaust, 13}} {
		result, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		s, ok := Along(result, c.of, 1)
		require.True(t, ok)
		items := find(s, c.other, "")
		require.Len(t, items, 1)
		assert.Equal(t, scene.Foul, items[0].State)
		names := find(s, scene.Dimension, c.other.Pen().Means)
		require.Len(t, names, 1)
		require.NotNil(t, names[0].Measure)
		assert.InDelta(t, -17, names[0].Measure.Value, 1e-9)
		seen := shown(t, s, items[0])
		low, high := seen.Bounds()
		assert.InDelta(t, 150-c.radius, low.X, 1)
		assert.InDelta(t, 500+c.radius, high.X, nearStep, "past its end the intake has no place to be seen at")
		assert.InDelta(t, -120-c.radius, low.Y, 1e-6)
		assert.InDelta(t, -120+c.radius, high.Y, 1e-6)
	}
	job.Intake = &vehicles.Run{Across: 28, Path: vehicles.List[vehicles.RunPoint]{{X: 1400, Y: 0, Drop: 120}}}
	result, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	s, ok := Along(result, vehicles.ExhaustRun, 1)
	require.True(t, ok)
	assert.Empty(t, find(s, scene.Intake, ""), "it goes away from it")
}

// Another run that hangs lower is in the picture with all that is near, and what stretches the heights has room for it. By hand: an intake that goes 50 down
// beside its stub and on at 170 below the floor, 40 beside the exhaust, is 64.03 - 27 = 37.03 from it; its lowest is 184 down.
func TestHeightsTakeInAnotherRun(t *testing.T) {
	job := straightOut(40)
	lowest := func(intake *vehicles.Run) float64 {
		result, faults := rules.Judge(job.WithRun(vehicles.IntakeRun, intake), rules.Builtin())
		require.Empty(t, faults)
		s, ok := Along(result, vehicles.ExhaustRun, 1)
		require.True(t, ok)
		if intake != nil {
			items := find(s, scene.Dimension, scene.Intake.Pen().Means)
			require.Len(t, items, 1)
			require.NotNil(t, items[0].Measure)
			assert.InDelta(t, 37.03-50, items[0].Measure.Value, 0.01)
		}
		return s.Min.Y
	}
	assert.InDelta(t, -120-besideLow, lowest(nil), 1e-9)
	assert.InDelta(t, -184-besideLow, lowest(&vehicles.Run{Across: 28, Path: vehicles.List[vehicles.RunPoint]{{X: 1040, Y: 100, Drop: 170}, {X: 1040, Y: 500, Drop: 170}}}), 1e-6)
}

// A fuel line from a tank in the van passes a box at 4 - 2.25 = 1.75 of the 5 mm that are asked; one farther off, or that nothing is said of, is not in the picture.
func TestAFittingIsSeenBesideALine(t *testing.T) {
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	job := vehicles.Demo()
	line := *job.Fuel
	line.Hanging, line.Supply.From = vehicles.Hanging{}, ""
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: 100}, {X: 1460, Y: 250, Drop: 80}}
	box := job.Fittings[0]
	box.Name, box.Kind, box.Rise = "water tank", "", vehicles.Span{From: 200, To: 400, Set: true}
	for _, c := range []struct {
		y    float64
		seen bool
	}{{154, true}, {250, false}} {
		box.Place = vehicles.Place{X: vehicles.Pair{at(1750), at(1850)}, Y: vehicles.Pair{at(c.y), at(c.y + 100)}}
		changed := job.WithRun(vehicles.FuelRun, &line)
		changed.Fittings = vehicles.List[vehicles.Fitting]{box}
		result, faults := rules.Judge(changed, rules.Builtin())
		require.Empty(t, faults)
		s, ok := Along(result, vehicles.FuelRun, 1)
		require.True(t, ok)
		items := find(s, scene.Fitting, "water tank")
		if !c.seen {
			assert.Empty(t, items)
			continue
		}
		require.Len(t, items, 1)
		require.NotNil(t, items[0].Measure)
		assert.InDelta(t, 1.75-5, items[0].Measure.Value, 1, "the matching points turn what was read from above by as much")
		seen := shown(t, s, items[0])
		low, high := seen.Bounds()
		assert.Equal(t, [2]float64{231, 431}, [2]float64{low.Y, high.Y}, "on a floor of 31 mm")
		assert.InDelta(t, 50, low.X, 15)
		assert.InDelta(t, 150, high.X, 15)
	}
}

// What the outlet is too near to is told there: a door that reaches down past it 500 mm ahead, where 600 are asked, is 100 short.
// One that is far enough away, and one that nothing is asked of on this run, are not told.
func TestAnOpeningNearTheOutletIsToldBesideTheRun(t *testing.T) {
	door := vehicles.Opening{Name: "side door", Kind: "door", Drop: vehicles.Span{From: -500, To: 120, Set: true}}
	for _, c := range []struct {
		ahead float64
		told  bool
	}{{500, true}, {599, true}, {700, false}} {
		at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
		y := 800 + c.ahead
		door.Shape, door.Path = vehicles.Piped, []vehicles.Pair{{at(900), at(y)}, {at(1100), at(y)}}
		job := straightOut(-300)
		job.Openings = vehicles.List[vehicles.Opening]{door}
		job.Intake = &vehicles.Run{Across: 28, Path: vehicles.List[vehicles.RunPoint]{{X: 700, Y: 200, Drop: 120}}}
		result, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		s, ok := Along(result, vehicles.ExhaustRun, 1)
		require.True(t, ok)
		items := find(s, scene.Dimension, "side door")
		if !c.told {
			assert.Empty(t, items)
			continue
		}
		require.Len(t, items, 1)
		assert.Equal(t, map[bool]scene.State{true: scene.Foul, false: scene.Doubtful}[c.ahead == 500], items[0].State)
		assert.InDelta(t, c.ahead-600, items[0].Measure.Value, 1e-9)
		s, ok = Along(result, vehicles.IntakeRun, 1)
		require.True(t, ok)
		assert.Empty(t, find(s, scene.Dimension, "side door"), "no gas comes out there")
	}
}

// So is what the gas blows at straight ahead, an obstruction that is nowhere near the pipe: a splash guard 300 mm ahead of the outlet is 100 short.
func TestWhatTheOutletBlowsAtIsToldBesideTheRun(t *testing.T) {
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	for x, told := range map[float64]bool{950: true, 1300: false} {
		guard := vehicles.Obstruction{
			Name: "splash guard", Kind: "plastic part", Measured: true, Drop: vehicles.Span{From: 60, To: 240, Set: true},
			Place: vehicles.Place{X: vehicles.Pair{at(x), at(x + 100)}, Y: vehicles.Pair{at(1100), at(1110)}},
		}
		job := straightOut(0)
		job.Obstructions, job.RunChecks = vehicles.List[vehicles.Obstruction]{guard}, vehicles.InFull
		result, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		s, ok := Along(result, vehicles.ExhaustRun, 1)
		require.True(t, ok)
		items := find(s, scene.Dimension, "splash guard")
		if !told {
			assert.Empty(t, items)
			continue
		}
		require.Len(t, items, 1)
		assert.Equal(t, scene.Foul, items[0].State)
		assert.InDelta(t, -100, items[0].Measure.Value, 1e-9)
		assert.Equal(t, geometry.Point3{X: 1000, Y: 800, Z: -120}, items[0].At, "at the outlet, not where the gas goes")
	}
}

// The stretch of a run that is near another is that found place by place.
func TestTheStretchThatIsNearIsThatOfEveryPlace(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side, plan, drop := rapid.Float64Range(0, 900), rapid.Float64Range(-400, 400), rapid.Float64Range(-200, -20)
		run := func(name string) *vehicles.LaidRun {
			var path []geometry.Point3
			for range rapid.IntRange(2, 4).Draw(t, name) {
				path = append(path, geometry.Point3{X: side.Draw(t, "x"), Y: plan.Draw(t, "y"), Z: drop.Draw(t, "z")})
			}
			return &vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 0), Radius: 13}
		}
		of, to, within := run("of"), run("to"), rapid.Float64Range(20, 200).Draw(t, "within")
		s := stretchNear(of, to, rules.TheIntake, rules.TheExhaust, within)

		var other []geometry.Point3
		for at := float64(rules.AtStub); at <= to.Line.Length(); at++ {
			other = append(other, to.Line.At(at))
		}
		if len(other) == 0 {
			require.Nil(t, s.run)
			return
		}
		gap := func(at float64) float64 {
			return geometry.BetweenPaths([]geometry.Point3{of.Line.At(at)}, other).Gap - within - of.Radius
		}
		if s.run != nil {
			require.LessOrEqual(t, max(gap(s.from), gap(s.to)), 1.0)
		}
		for at, since := float64(rules.AtStub), 0.0; at <= of.Line.Length(); at++ {
			if since++; gap(at) > 0 {
				since = 0
			}
			if since > nearStep+1 { // so long a stretch is not stepped over
				require.NotNil(t, s.run)
				require.LessOrEqual(t, s.from, at)
				require.GreaterOrEqual(t, s.to, at-nearStep-1)
			}
		}
	})
}
