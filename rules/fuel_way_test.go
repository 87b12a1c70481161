package rules

import (
	"context"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// From the tank's fitting, which is higher than what lies between, the line goes down to its pump and from there up to the heater.
func TestAFuelLineIsFoundThatHasNoHumps(t *testing.T) {
	r := moved(t)
	for _, begin := range []vehicles.RunPoint{{X: 2170, Y: 600, Drop: 33}, {X: 2120, Y: 600, Drop: 133}} {
		found := FindRoute(context.Background(), r, vehicles.FuelRun, Target{At: &begin}, nil)
		require.True(t, found.Found())
		assert.Equal(t, Clear, found.Verdict)
		path := found.Run.Path
		assert.Equal(t, begin, path[0])
		mouth := r.Plan.Mouth(&r.Job, vehicles.FuelRun)
		assert.Equal(t, vehicles.RunPoint{X: mouth.X, Y: mouth.Y, Drop: -mouth.Z}, path[len(path)-1])
		pump := found.Run.Pump
		require.NotNil(t, pump)
		assert.Equal(t, r.Job.Fuel.Pump.Tilt, pump.Tilt)
		for i := 1; i < len(path); i++ {
			if i < pump.Leg {
				assert.GreaterOrEqual(t, path[i].Drop, path[i-1].Drop, "down to the pump")
			} else {
				assert.LessOrEqual(t, path[i].Drop, path[i-1].Drop, "up to the heater")
			}
		}
		after, faults := Judge(r.Job.WithRun(vehicles.FuelRun, found.Run), r.Book)
		require.Empty(t, faults)
		for _, f := range after.Findings {
			if f.Subject.Sort == TheFuel {
				assert.Equal(t, Clear, f.Verdict, f.About())
			}
		}
	}
}

func TestHumpsAreCounted(t *testing.T) {
	line := func(heights ...float64) (corners []geometry.Point3) {
		for i, z := range heights {
			corners = append(corners, geometry.Point3{X: float64(100 * i), Z: z})
		}
		return corners
	}
	assert.Zero(t, humps(line(-45, -80, -130, -90)), "one low place")
	assert.Zero(t, humps(line(-45, -45, -130)), "level, and down")
	assert.Equal(t, 20.0, humps(line(-45, -90, -70, -130, -100)), "up 20 before the lowest")
	assert.Equal(t, 30.0, humps(line(-45, -130, -70, -100, -60)), "down 30 behind it")
	var below trial
	assert.Equal(t, &vehicles.Pump{Leg: 1, Start: 100, Tilt: 30}, below.pumpOn(&vehicles.Pump{Tilt: 30}, line(-45, -145, -500)), "from the tank up")
	assert.Equal(t, &vehicles.Pump{Leg: 2, Start: 52, Tilt: 30}, below.pumpOn(&vehicles.Pump{Leg: 7, Tilt: 30}, line(-45, -75, -60)), "behind the low place, in the middle of a short leg")
	assert.Nil(t, below.pumpOn(nil, line(-45, -145)))
}

// A line from a can that stands on the floor: what is above stays, with its hole, and the part below is found from there; a pump above
// the floor stays where it hangs, and none stays within it.
func TestOfAFuelLineFromAboveThePartBelowIsFound(t *testing.T) {
	r := moved(t)
	line := *r.Job.Fuel
	line.Supply.From, line.Clips, line.Filter = "", nil, &vehicles.Filter{Leg: 1, Start: 20}
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: -100}, {X: 1700, Y: 150, Drop: 100}, {X: 1460, Y: 250, Drop: 80}}
	pump := vehicles.Pump{Leg: 3, Start: 100, Tilt: 30}
	for _, c := range []struct {
		pump  vehicles.Pump
		stays bool
	}{
		{pump, false},
		{vehicles.Pump{Leg: 1, Start: 50, Tilt: 30}, true},
		{vehicles.Pump{Leg: 2, Start: 50, Tilt: 30}, true},
		{vehicles.Pump{Leg: 2, Start: 80, Tilt: 30}, false}, // within the floor
		{vehicles.Pump{Leg: 2, Start: 101, Tilt: 30}, false},
	} {
		line.Pump = &c.pump
		job, faults := Judge(r.Job.WithRun(vehicles.FuelRun, &line), r.Book)
		require.Empty(t, faults)
		found := FindRoute(context.Background(), &job, vehicles.FuelRun, FuelTarget(&line), nil)
		require.True(t, found.Found(), "%v", found.Misses)
		assert.Equal(t, []vehicles.RunPoint(line.Path[:2]), []vehicles.RunPoint(found.Run.Path[:2]))
		assert.Equal(t, []vehicles.RunPoint{{X: 1700, Y: 150}, {X: 1700, Y: 150, Drop: 20}}, []vehicles.RunPoint(found.Run.Path[2:4]))
		assert.Equal(t, line.Filter, found.Run.Filter, "it is above")
		if c.stays {
			assert.Equal(t, c.pump, *found.Run.Pump)
		} else {
			assert.Greater(t, found.Run.Pump.Leg, 3)
		}
		after, faults := Judge(job.Job.WithRun(vehicles.FuelRun, found.Run), r.Book)
		require.Empty(t, faults)
		assert.Len(t, FuelHoles(&after.Job, &after.Plan), 1)
		for _, f := range after.Findings {
			if f.Subject.Sort == TheFuel {
				assert.Equal(t, Clear, f.Verdict, f.About())
			}
		}
	}
}

// Where the line passes the floor aslant its hole is on the underside.
func TestTheHoleOfAFuelLineIsOnTheUnderside(t *testing.T) {
	to := FuelTarget(&vehicles.Run{Path: []vehicles.RunPoint{{X: 100, Y: 10, Drop: -50}, {X: 400, Y: 40, Drop: 100}, {X: 500, Y: 40, Drop: 90}}})
	assert.Equal(t, vehicles.RunPoint{X: 200, Y: 20, Drop: 20}, *to.At)
	assert.Equal(t, []vehicles.RunPoint{{X: 100, Y: 10, Drop: -50}, {X: 200, Y: 20}}, to.Above)
	to = FuelTarget(&vehicles.Run{Path: []vehicles.RunPoint{{X: 100, Drop: 50}, {X: 400, Drop: 100}}})
	assert.Equal(t, vehicles.RunPoint{X: 100, Drop: 50}, *to.At)
	assert.Empty(t, to.Above)
}

// byABox is a job asked in full whose fuel line comes down from the van past a box whose right side is y mm left of the centreline, the line's being
// 300, and that line.
func byABox(t *testing.T, y float64) (with Result, line vehicles.Run) {
	r := moved(t)
	line = *r.Job.Fuel
	line.Supply.From, line.Clips, line.Pump, line.Filter = "", nil, nil, nil
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 300, Drop: -300}, {X: 1700, Y: 300, Drop: -300}, {X: 1700, Y: 300, Drop: 60}, {X: 1460, Y: 250, Drop: 80}}
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	box := vehicles.Fitting{Name: "battery box", Rise: vehicles.Span{From: 0, To: 400, Set: true}, Place: vehicles.Place{X: vehicles.Pair{at(1650), at(1850)}, Y: vehicles.Pair{at(y), at(600)}}}
	job := r.Job.WithRun(vehicles.FuelRun, &line)
	job.RunChecks, job.Fittings = vehicles.InFull, append(slices.Clone(job.Fittings), box)
	with, faults := Judge(job, r.Book)
	require.Empty(t, faults)
	return with, line
}

// What a line breaks above the floor no way below mends, and no layout: the way below is found as if it were not, and it is said alone.
// It is a line through a box.
func TestWhatALineBreaksAboveTheFloorIsSaidAloneAndKeepsNothingElseFromBeingFound(t *testing.T) {
	with, line := byABox(t, 280)
	found := FindRoute(context.Background(), &with, vehicles.FuelRun, FuelTarget(&line), nil)
	require.NotNil(t, found.Run)
	assert.False(t, found.Found(), "it breaks that")
	foul := func(list []Finding) (named []string) {
		for _, f := range list {
			if f.Verdict == Foul {
				named = append(named, f.About())
			}
		}
		return named
	}
	const said = "above the floor, fuel: battery box"
	for _, f := range []Finding{
		{Subject: the(TheFuel), Against: Thing{Sort: AFitting}, Places: 2, At: [2]geometry.Point3{{Z: 1}, {}}},
		{Subject: Thing{Sort: AFuelHole}, Against: Thing{Sort: AnObstruction}},
	} {
		f.Limit = Builtin().of(throughFitting)
		assert.True(t, f.stays() && !f.mendable(), "%v", f)
	}
	for _, f := range []Finding{
		{Subject: the(TheFuel), Against: Thing{Sort: AnObstruction}, Places: 2, At: [2]geometry.Point3{{Z: -1}, {Z: 1}}},
		{Subject: the(TheFuel), Against: the(TheExhaust), Places: 2, At: [2]geometry.Point3{{Z: 1}, {}}},
		{Subject: the(TheCut), Against: Thing{Sort: AnObstruction}, Places: 2},
	} {
		f.Limit = Builtin().of(throughFitting)
		assert.False(t, f.stays() || !f.mendable(), "%v: may be moved", f)
	}
	assert.Equal(t, []string{said}, foul(found.Misses))

	layouts, err := FindLayouts(context.Background(), &with, 2, func(Progress) {})
	require.NoError(t, err)
	require.Len(t, layouts.Best, mostLayouts)
	for _, l := range layouts.Best {
		assert.Zero(t, l.broken)
		assert.Equal(t, []string{said}, foul(l.Misses))
	}
}

// A line that falls short above the floor by less than is told apart is not said to be found: as for any run, that is a miss, though it may be too close
// to call.
func TestALineThatFallsALittleShortAboveTheFloorIsNotFound(t *testing.T) {
	short, found := 0, 0
	for y := 296.0; y <= 330; y += 2 {
		with, line := byABox(t, y)
		route := FindRoute(context.Background(), &with, vehicles.FuelRun, FuelTarget(&line), nil)
		for _, f := range route.Misses {
			if f.Rule == throughFitting && f.Margin.Value < 0 {
				assert.False(t, route.Found(), "%v: %v short", y, -f.Margin.Value)
				if f.Verdict == Doubtful {
					short++
				}
			}
		}
		if route.Found() {
			found++
		}
	}
	assert.Positive(t, short)
	assert.Positive(t, found)
}

// Within the floor is from just above its underside to its top.
func TestWhatIsWithinTheFloor(t *testing.T) {
	job := vehicles.Job{Floor: vehicles.Floor{Thickness: 31}}
	for drop, in := range map[float64]bool{1: false, 0: false, -0.01: true, -31: true, -31.01: false} {
		assert.Equal(t, in, PointInFloor(&job, drop), "%v", drop)
		assert.Equal(t, drop < -31, PointAbove(&job, drop), "%v", drop)
	}
}
