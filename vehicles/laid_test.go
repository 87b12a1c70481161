package vehicles

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// laid is a job with a cut, a heater and runs that turn by right angles, so that every place along them is plain sums.
func laid() Job {
	heater, _ := HeaterClass("2 kW")
	job := Job{Floor: Floor{Length: 3000, Width: 1700, Thickness: 30, Ground: 400}, Heater: &heater}
	job = job.WithCut(Cut{At: [2]float64{1000, 200}, Across: 127})
	exhaust := Run{Across: 26, Bend: Some(60), Path: []RunPoint{{1035, 225, 145}, {1035, -375, 145}, {235, -375, 145}}}
	job.Exhaust = &exhaust
	job.Intake = &Run{Across: 25, Path: []RunPoint{{965, 625, 45}}}
	job.Fuel = &Run{Across: 5, Path: []RunPoint{{2000, 0, 80}, {1000, 0, 80}, {1000, 165, 45}}}
	job.Fuel.Pump = &Pump{Leg: 2, Start: 100}
	return job
}

func at3(x, y, z float64) geometry.Point3 { return geometry.Point3{X: x, Y: y, Z: z} }

// Plain sums: the stubs of the 2 kW class stand 35 mm before and behind the cut's centre, 25 to the left; a bend of 60 mm
// takes 60 mm off both of its legs and is 30 pi long.
func TestRunsLieWhereTheirPointsSay(t *testing.T) {
	plan, faults := Reduce(laid())
	require.Empty(t, faults)
	e := plan.Exhaust
	assert.Equal(t, []geometry.Point3{at3(1035, 225, -45), at3(1035, 225, -145), at3(1035, -375, -145), at3(235, -375, -145)}, e.Path)
	assert.Equal(t, 13.0, e.Radius)
	assert.InDelta(t, 40+30*math.Pi+480+30*math.Pi+740, e.Line.Length(), 1e-9)
	assert.Equal(t, at3(965, 225, -45), plan.Intake.Path[0])
	assert.InDelta(t, 400, plan.Intake.Line.Length(), 1e-9)
	assert.Equal(t, 2.5, plan.Fuel.Radius)
	require.True(t, plan.Fuel.Pump.Set)
	assert.InDelta(t, 1100, plan.Fuel.Pump.Value, 1e-9)
}

// A muffler is the pipe on its leg's straight part alone: what of it lies in a bend at either end is counted there by the pipe. By hand, of the second leg of 600,
// which both bends take 60 of: it is straight from 40 + 30 pi to 480 farther along the run.
func TestAMufflerIsThePipeWhereItsLegIsStraight(t *testing.T) {
	straight := 40 + 30*math.Pi
	for _, c := range []struct{ start, length, begin, end float64 }{
		{160, 180, straight + 100, straight + 280},
		{20, 180, straight, straight + 140},
		{380, 200, straight + 320, straight + 480},
		{30, 560, straight, straight + 480},
	} {
		job := laid()
		job.Exhaust.Muffler = &Muffler{Leg: 2, Start: c.start, Length: c.length, Across: 68}
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		m := plan.Exhaust.Muffler
		assert.InDelta(t, c.begin, m.Begin, 1e-9, "%v", c)
		assert.InDelta(t, c.end, m.End, 1e-9, "%v", c)
		assert.InDelta(t, c.length, m.Axis[1].Sub(m.Axis[0]).Norm(), 1e-9)
	}
}

func TestStubsTurnWithTheHeater(t *testing.T) {
	job := laid()
	for yaw, want := range map[float64]geometry.Point{0: {X: 1035, Y: 225}, 90: {X: 975, Y: 235}, 180: {X: 965, Y: 175}, -90: {X: 1025, Y: 165}} {
		heater := *job.Heater
		heater.Yaw = yaw
		turned := job.WithHeater(heater)
		plan, faults := Reduce(turned)
		require.Empty(t, faults)
		assert.InDelta(t, 0, plan.Exhaust.Path[0].Plan().Sub(want).Norm(), 1e-9, "yaw %v", yaw)
	}
	drilled := Pair{mustSay("1010", 0), mustSay("203", 1)}
	plan, faults := Reduce(job.WithDrilled(&drilled))
	require.Empty(t, faults)
	assert.InDelta(t, 0, plan.Exhaust.Path[0].Plan().Sub(geometry.Point{X: 1045, Y: 228}).Norm(), 1e-9, "they stand at the hole there is")
}

func TestRunsNeedACutAndAHeater(t *testing.T) {
	job := laid()
	job.Cut = nil
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	assert.Nil(t, plan.Exhaust)
	assert.Nil(t, plan.Intake)
	assert.NotNil(t, plan.Fuel, "the fuel line has both its ends in its path")
	job = laid()
	job.Heater = nil
	plan, _ = Reduce(job)
	assert.Nil(t, plan.Exhaust)
	job = laid()
	job.Exhaust, job.Intake, job.Fuel = nil, nil, nil
	plan, faults = Reduce(job)
	require.Empty(t, faults)
	assert.Nil(t, plan.Exhaust)
	assert.Nil(t, plan.Intake)
	assert.Nil(t, plan.Fuel)
}

// The muffler sits on the unrounded leg; along the run its ends are as far apart as on the leg.
func TestTheMufflerSitsOnItsLeg(t *testing.T) {
	with := func(leg int, start, length float64) Job {
		job := laid()
		job.Exhaust.Muffler = &Muffler{Leg: leg, Start: start, Length: length, Across: 70}
		return job
	}
	plan, faults := Reduce(with(3, 200, 300))
	require.Empty(t, faults)
	m := plan.Exhaust.Muffler
	require.NotNil(t, m)
	assert.Equal(t, 2, m.Leg)
	assert.Equal(t, 35.0, m.Radius)
	assert.InDelta(t, 0, m.Axis[0].Sub(at3(835, -375, -145)).Norm()+m.Axis[1].Sub(at3(535, -375, -145)).Norm(), 1e-9)
	assert.InDelta(t, 300, m.To-m.From, 1e-9)
	assert.InDelta(t, 0, plan.Exhaust.Line.At(m.From).Sub(m.Axis[0]).Norm(), 1e-9)

	plan, faults = Reduce(with(3, 500, 300))
	require.Empty(t, faults, "up to the very end")
	assert.InDelta(t, plan.Exhaust.Line.Length(), plan.Exhaust.Muffler.To, 1e-9)
	_, faults = Reduce(with(3, 500, 300+1e-5))
	require.Len(t, faults, 1, "and not a hair farther")
	_, faults = Reduce(with(3, 500, 300+1e-8))
	require.Empty(t, faults, "but for rounding")
	for _, leg := range []int{0, 4} {
		plan, faults = Reduce(with(leg, 0, 10))
		require.Len(t, faults, 1)
		assert.Nil(t, plan.Exhaust.Muffler)
	}
	flat := laid()
	flat.Exhaust.Path[1] = flat.Exhaust.Path[0] // a leg without length holds nothing
	flat.Exhaust.Muffler = &Muffler{Leg: 2, Length: 1e-7, Across: 70}
	_, faults = Reduce(flat)
	require.Len(t, faults, 1)
	assert.Equal(t, "exhaust.muffler.start", faults[0].Key)
}

func TestClipsAndPumpMayStandAtTheVeryEnd(t *testing.T) {
	job := laid()
	plan, _ := Reduce(job)
	end := plan.Exhaust.Line.Length()
	for past, ok := range map[float64]bool{-1: true, 0: true, 1e-8: true, 1e-5: false} {
		run := *job.Exhaust
		run.Clips = []float64{100, end + past}
		_, faults := Reduce(job.WithRun(ExhaustRun, &run))
		assert.Equal(t, ok, len(faults) == 0, "clip %v past the end", past)
		fuel := *job.Fuel
		fuel.Pump = &Pump{Leg: 1, Start: 1000 + past}
		_, faults = Reduce(job.WithRun(FuelRun, &fuel))
		assert.Equal(t, ok, len(faults) == 0, "pump %v past the leg's end", past)
	}
}

// Of a rectangle measured edge by edge every edge has its own uncertainty, of a turned one and of a pipe the largest.
func TestEdgesHaveTheirOwnUncertainty(t *testing.T) {
	p := Placed{Axis: true, Edges: [4]Taped{{U: 1}, {U: 2}, {U: 3}, {U: 4}}, X: Taped{U: 2}, Y: Taped{U: 4}}
	p.Prism.Footprint = geometry.NewRectangle(geometry.Point{X: 100, Y: -50}, geometry.Point{X: 300, Y: 50}, 0)
	for _, c := range []struct{ x, y, ux, uy float64 }{
		{100, 0, 1, 3}, {300, 10, 2, 4}, {300, -10, 2, 3}, {150, 50, 1, 4}, {100, -50, 1, 3},
	} {
		ux, uy := edgeU(&p, geometry.Point{X: c.x, Y: c.y})
		assert.Equal(t, [2]float64{c.ux, c.uy}, [2]float64{ux, uy}, "%v, %v", c.x, c.y)
	}
	turned := p // a fitting carried down by a quarter turn: its near edge is now its right one
	turned.Prism.Footprint = p.Prism.Footprint.Moved(90, geometry.Point{})
	ux, _ := edgeU(&turned, geometry.Point{X: 0, Y: 100})
	assert.Equal(t, 1.0, ux)
	p.Axis = false
	ux, uy := edgeU(&p, geometry.Point{X: 100})
	assert.Equal(t, [2]float64{2, 4}, [2]float64{ux, uy})
}

// A turn moves a point of the outline across the arm from the middle: by the arm for each radian, along the arm not at all.
func TestATurnMovesAcrossTheArm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Placed{UTurn: 0.01}
		p.Prism.Footprint = geometry.NewRectangle(geometry.Point{X: 100}, geometry.Point{X: 500, Y: 200}, 30)
		arm := geometry.Point{X: rapid.Float64Range(1, 300).Draw(t, "arm")}.Turn(rapid.Float64Range(0, 360).Draw(t, "way"))
		q := p.Prism.Footprint.Middle.Add(arm)
		n := geometry.Point{X: 1}.Turn(rapid.Float64Range(0, 360).Draw(t, "direction"))
		const step = 1e-6 // degrees
		moved := arm.Turn(step).Sub(arm).Scale(180 / math.Pi / step)
		assert.InDelta(t, math.Abs(0.01*moved.Dot(n)), math.Abs(p.TurnTerm(q, n)), 1e-5)
	})
}
