package vehicles

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// hungOn is the laid job with a muffler and clips on its exhaust: legs of 100 mm down, 600 to the right and 800 to the rear,
// bends of 60 mm between them.
func hungOn(muffler Muffler, clips ...float64) Job {
	job := laid()
	job.Exhaust.Muffler, job.Exhaust.Clips = &muffler, clips
	return job
}

// Plain sums along the laid job's exhaust: a bend of 60 mm round a right angle is 30 pi long in place of 120.
func TestWhatHangsOnARunWhenItsPathIsEdited(t *testing.T) {
	const bend = 30 * math.Pi
	const length = 40 + bend + 480 + bend + 740
	a, b, c := RunPoint{1035, 225, 145}, RunPoint{1035, -375, 145}, RunPoint{235, -375, 145}
	on2, on3 := RunPoint{1035, -75, 145}, RunPoint{935, -375, 145}
	lower := RunPoint{1035, -175, 145} // leaves legs of 400 and 824.62
	across := math.Hypot(800, 200)
	usual := hungOn(Muffler{3, 200, 300, 70, ""}, 30, 400, length-10)
	for _, k := range []struct {
		name    string
		job     Job
		path    List[RunPoint]
		muffler [2]float64 // leg and start
		clips   []float64
		rehung  []Rehung
	}{
		{"nothing", usual, List[RunPoint]{a, b, c}, [2]float64{3, 200}, []float64{30, 400, length - 10}, nil},
		{"a point on leg 2", usual, List[RunPoint]{a, on2, b, c}, [2]float64{4, 200}, []float64{30, 400, length - 10}, nil},
		{"a point before the muffler", usual, List[RunPoint]{a, b, on3, c}, [2]float64{4, 100}, []float64{30, 400, length - 10}, nil},
		{"a point behind the muffler", usual, List[RunPoint]{a, b, {435, -375, 145}, c}, [2]float64{3, 200}, []float64{30, 400, length - 10}, nil},
		{"a point at the muffler's end", usual, List[RunPoint]{a, b, {535, -375, 145}, c}, [2]float64{3, 200}, []float64{30, 400, length - 10}, nil},
		{
			"a point within the muffler, 50 mm from its end: there is room before it",
			usual, List[RunPoint]{a, b, {585, -375, 145}, c}, [2]float64{3, 150}, []float64{30, 400, length - 10},
			[]Rehung{{AMuffler, 0, 3, 150}},
		},
		{
			// 600, 800, 1000: from the muffler to the end there are 300 mm, and they stay; so do 400 from the stub and 10 from the end
			"point 2 deleted", usual, List[RunPoint]{a, c}, [2]float64{2, 400}, []float64{30, 400, 40 + bend + 940 - 10},
			[]Rehung{{AMuffler, 0, 2, 400}, {AClip, 1, 0, 400}, {AClip, 2, 0, 40 + bend + 940 - 10}},
		},
		{
			"point 2 moved", usual, List[RunPoint]{a, lower, c}, [2]float64{3, across - 600}, []float64{30, 400, 0},
			[]Rehung{{AMuffler, 0, 3, across - 600}, {AClip, 2, 0, 0}},
		},
		{"the end moved on", usual, List[RunPoint]{a, b, {135, -375, 145}}, [2]float64{3, 200}, []float64{30, 400, length - 10}, nil},
		{"a point added", usual, List[RunPoint]{a, b, c, {35, -375, 145}}, [2]float64{3, 200}, []float64{30, 400, length - 10}, nil},
		{
			// as far along as may be: the last 300 mm of leg 2, and its end
			"the end deleted", usual, List[RunPoint]{a, b}, [2]float64{2, 300}, []float64{30, 400, 40 + bend + 540},
			[]Rehung{{AMuffler, 0, 2, 300}, {AClip, 2, 0, 40 + bend + 540}},
		},
		{
			"a muffler that fits on no leg any more", hungOn(Muffler{3, 20, 700, 70, ""}), List[RunPoint]{a, b}, [2]float64{2, 0}, nil,
			[]Rehung{{AMuffler, 0, 2, 0}},
		},
		{"a clip past the end, and a muffler past its leg's, hang nowhere", hungOn(Muffler{3, 600, 300, 70, ""}, 5000), List[RunPoint]{a, c}, [2]float64{3, 600}, []float64{5000}, nil},
		{"a muffler past its leg's end goes with its leg", hungOn(Muffler{3, 600, 300, 70, ""}), List[RunPoint]{a, on2, b, c}, [2]float64{4, 600}, nil, nil},
	} {
		before := string(k.job.Format())
		next, rehung, ok := k.job.WithPath(ExhaustRun, k.path)
		require.True(t, ok, k.name)
		require.Equal(t, before, string(k.job.Format()), k.name)
		m := next.Exhaust.Muffler
		assert.Equal(t, int(k.muffler[0]), m.Leg, k.name)
		assert.InDelta(t, k.muffler[1], m.Start, 1e-6, k.name)
		if k.name == "point 2 moved" { // the bends are others: 10 mm from the end
			laid, _ := next.laidAlone(ExhaustRun, next.Exhaust)
			k.clips[2], k.rehung[1].Along = laid.Line.Length()-10, laid.Line.Length()-10
		}
		assert.InDeltaSlice(t, k.clips, next.Exhaust.Clips, 1e-6, k.name)
		require.Len(t, rehung, len(k.rehung), "%s: %v", k.name, rehung)
		for i, want := range k.rehung {
			assert.Equal(t, [2]any{want.Name(), want.Leg}, [2]any{rehung[i].Name(), rehung[i].Leg}, k.name)
			assert.InDelta(t, want.Along, rehung[i].Along, 1e-6, k.name)
		}
	}
}

// Its place there is a rounding past the end as often as before it: it goes with the end all the same.
func TestAClipAtTheVeryEndStaysThereThroughManyEdits(t *testing.T) {
	job := hungOn(Muffler{3, 200, 300, 70, ""})
	for i := range 60 {
		laid, _ := job.laidAlone(ExhaustRun, job.Exhaust)
		job.Exhaust.Clips = []float64{settled(laid.Line.Length())}
		end := job.Exhaust.Path[2]
		end.X += 5 * math.Sin(float64(i)) // the leg longer, and shorter
		next, _, ok := job.WithPath(ExhaustRun, job.Exhaust.Path.With(2, end))
		require.True(t, ok)
		_, faults := Reduce(next)
		require.Empty(t, faults, i)
		job = next
	}
}

func TestARunWithoutPointsHasNothingToHangOn(t *testing.T) {
	job := hungOn(Muffler{3, 200, 300, 70, ""}, 400)
	next, rehung, ok := job.WithPath(ExhaustRun, nil)
	assert.True(t, ok)
	assert.Empty(t, rehung)
	assert.Equal(t, job.Exhaust.Hanging, next.Exhaust.Hanging)
}

func TestAMufflerThatFitsNowhereIsAFault(t *testing.T) {
	job, _, _ := hungOn(Muffler{3, 20, 700, 70, ""}).WithPath(ExhaustRun, laid().Exhaust.Path.Without(2))
	_, faults := Reduce(job)
	require.Len(t, faults, 1)
	assert.Equal(t, "the muffler ends 700 mm along leg 2, which is 600 mm long: start it earlier, or make the leg longer", faults[0].Text)
}

// The pump hangs 100 mm along the last leg, which is hypot(165, 35) long. A leg before it counts from the tank.
func TestThePumpStaysWhenTheFuelLineIsEdited(t *testing.T) {
	job := laid()
	job.Heater = nil // the fuel line starts at the tank
	path := job.Fuel.Path
	inserted, rehung, ok := job.WithPath(FuelRun, path.Insert(1, RunPoint{1500, 0, 80}))
	require.True(t, ok)
	assert.Empty(t, rehung)
	assert.Equal(t, Pump{Leg: 3, Start: 100}, *inserted.Fuel.Pump)
	deleted, rehung, ok := job.WithPath(FuelRun, path.Without(1))
	require.True(t, ok)
	toEnd, leg := math.Hypot(165, 35)-100, math.Hypot(1000, math.Hypot(165, 35))
	assert.Equal(t, 1, deleted.Fuel.Pump.Leg)
	assert.InDelta(t, leg-toEnd, deleted.Fuel.Pump.Start, 1e-6)
	assert.Len(t, rehung, 1)
	other, rehung, _ := job.WithPath(FuelRun, List[RunPoint]{{5, 5, 5}, {5, 805, 5}}) // nothing of it stayed: 1100 mm from its beginning
	assert.Equal(t, Pump{Leg: 1, Start: 800}, *other.Fuel.Pump)
	assert.Equal(t, []Rehung{{APump, 0, 1, 800}}, rehung)
}

func TestWithoutAStubNobodyKnowsWhereThingsHang(t *testing.T) {
	for name, change := range map[string]func(*Job){
		"no heater": func(j *Job) { j.Heater = nil },
		"no cut":    func(j *Job) { j.Cut = nil },
		"a drilled hole that can't be": func(j *Job) {
			*j = j.WithDrilled(&Pair{mustSay("+3", 0), mustSay("203", 1)})
		},
	} {
		job := hungOn(Muffler{3, 200, 300, 70, ""})
		change(&job)
		path := job.Exhaust.Path.Without(1)
		next, _, ok := job.WithPath(ExhaustRun, path)
		assert.False(t, ok, name)
		assert.Equal(t, job, next, name)
		job.Exhaust.Hanging = Hanging{}
		next, _, ok = job.WithPath(ExhaustRun, path)
		assert.True(t, ok, "%s, and nothing hangs on it", name)
		assert.Equal(t, path, next.Exhaust.Path, name)
	}
}

// wanderer draws a job whose exhaust wanders about below the floor on legs that are long enough for its bends, with things hung
// on it to 0.00001 mm.
func wanderer(t *rapid.T) Job {
	whole := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
	job := laid()
	run := Run{Across: 26, Bend: Some(whole("bend", 0, 60))}
	at := RunPoint{1035, 225, 145}
	for heading := 0.0; len(run.Path) < 2 || len(run.Path) < 6 && rapid.Bool().Draw(t, "on"); {
		run.Path = append(run.Path, at)
		heading += whole("turn", -100, 100) * math.Pi / 180
		leg := whole("leg", 200, 500)
		at = RunPoint{at.X + leg*math.Cos(heading), at.Y + leg*math.Sin(heading), at.Drop + whole("fall", -20, 20)}
	}
	job = job.WithRun(ExhaustRun, &run)
	laid, there := job.laidAlone(ExhaustRun, &run)
	require.True(t, there)
	fine := func(name string, most float64) float64 {
		return float64(rapid.IntRange(0, int(most*1e5)).Draw(t, name)) / 1e5
	}
	if rapid.Bool().Draw(t, "muffler") {
		leg := rapid.IntRange(2, len(run.Path)).Draw(t, "muffler's leg")
		long := whole("long", 10, 150)
		run.Muffler = &Muffler{Leg: leg, Start: fine("start", laid.legLength(leg)-long), Length: long, Across: 70}
	}
	for range rapid.IntRange(0, 4).Draw(t, "clips") {
		run.Clips = append(run.Clips, fine("clip", laid.Line.Length()))
	}
	return job.WithRun(ExhaustRun, &run)
}

// A clip at the very end of a run is there still after any number of edits: their roundings don't add up past the end.
func TestAClipAtTheEndStaysOnTheRun(t *testing.T) {
	turned := func(p RunPoint, by, drop float64) RunPoint {
		return RunPoint{p.X + by*math.Cos(math.Pi/180), p.Y + by*math.Sin(math.Pi/180), p.Drop + drop}
	}
	first := RunPoint{1035, 225, 145}
	second := turned(first, 201, -7)
	job := laid().WithRun(ExhaustRun, &Run{
		Across: 26, Bend: Some(1), Path: List[RunPoint]{first, second, turned(second, 200, 0)}, Hanging: Hanging{Clips: []float64{300.6566}},
	})
	edits := []func(path List[RunPoint]) List[RunPoint]{
		func(path List[RunPoint]) List[RunPoint] { return path.Without(2) },
		func(path List[RunPoint]) List[RunPoint] {
			p := path[0]
			return path.Insert(0, RunPoint{p.X - 1, p.Y, p.Drop + 7})
		},
		func(path List[RunPoint]) List[RunPoint] {
			p := path[0]
			return path.Insert(0, RunPoint{p.X, p.Y, p.Drop + 7})
		},
	}
	for i, edit := range edits {
		next, _, ok := job.WithPath(ExhaustRun, edit(job.Exhaust.Path))
		require.True(t, ok)
		_, faults := Reduce(next)
		require.Empty(t, faults, "edit %d", i+1)
		job = next
	}
}

// pointBetween draws a point on the straight part of a leg of the exhaust, not within the muffler, and the place of the point before
// which it goes.
func pointBetween(t *rapid.T, job Job) (i int, p RunPoint) {
	run, _ := job.laidAlone(ExhaustRun, job.Exhaust)
	i = rapid.IntRange(0, len(job.Exhaust.Path)-1).Draw(t, "leg")
	leg := run.Line.Legs[i]
	along := leg.Begin + (leg.End-leg.Begin)*float64(rapid.IntRange(0, 16).Draw(t, "share"))/16
	if m := job.Exhaust.Muffler; m != nil && m.Leg == i+1 {
		from, to := run.Line.Along(i, m.Start), run.Line.Along(i, m.Start+m.Length)
		if along > from && along < to {
			along = to
		}
		if along > leg.End {
			t.Skip("the muffler reaches into the bend")
		}
	}
	return i, run.Station(along)
}

func TestAPointInsertedOnALegMovesNothingAndDeletedAgainLeavesTheSameJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := wanderer(t)
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		i, p := pointBetween(t, job)
		inserted, rehung, ok := job.WithPath(ExhaustRun, job.Exhaust.Path.Insert(i, p))
		require.True(t, ok)
		require.Empty(t, rehung)
		after, faults := Reduce(inserted)
		require.Empty(t, faults)
		was, is := plan.Exhaust, after.Exhaust
		require.InDelta(t, was.Line.Length(), is.Line.Length(), 1e-8)
		for k := range 50 {
			s := was.Line.Length() * float64(k) / 49
			require.Less(t, was.Station(s).apart(is.Station(s)), 1e-6)
		}
		for k, clip := range job.Exhaust.Clips {
			require.Equal(t, clip, inserted.Exhaust.Clips[k])
		}
		if m := was.Muffler; m != nil {
			require.InDelta(t, 0, m.Axis[0].Sub(is.Muffler.Axis[0]).Norm()+m.Axis[1].Sub(is.Muffler.Axis[1]).Norm(), 3e-6)
		}
		back, rehung, ok := inserted.WithPath(ExhaustRun, inserted.Exhaust.Path.Without(i))
		require.True(t, ok)
		require.Empty(t, rehung)
		require.Equal(t, job, back)
	})
}

// Whatever is done to a path, what hangs on the legs that both have stays, in space and in number, nothing is lost, and what is
// where it was is not spoken of.
func TestAnyEditOfAPathLeavesWhatHangsOnTheRest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := wanderer(t)
		path := job.Exhaust.Path
		i := rapid.IntRange(0, len(path)-1).Draw(t, "point")
		p := path[i]
		p.X, p.Y, p.Drop = p.X+float64(rapid.IntRange(-99, 99).Draw(t, "x")), p.Y+float64(rapid.IntRange(-99, 99).Draw(t, "y")), p.Drop+7
		switch rapid.IntRange(0, 2).Draw(t, "edit") {
		case 0:
			path = path.Insert(i, p)
		case 1:
			path = path.With(i, p)
		default:
			path = path.Without(i)
		}
		next, rehung, ok := job.WithPath(ExhaustRun, path)
		require.True(t, ok)
		require.Len(t, next.Exhaust.Clips, len(job.Exhaust.Clips))
		old, _ := job.laidAlone(ExhaustRun, job.Exhaust)
		is, _ := next.laidAlone(ExhaustRun, next.Exhaust)
		said := map[string]bool{}
		for _, s := range rehung {
			said[s.Name()] = true
		}
		for k, clip := range job.Exhaust.Clips {
			now := next.Exhaust.Clips[k]
			require.True(t, now >= 0 && now <= is.Line.Length()+AlongNoise)
			require.Equal(t, old.Station(clip).apart(is.Station(now)) > 2*AlongNoise, said[fmt.Sprint("clip ", k+1)])
		}
		if m := job.Exhaust.Muffler; m != nil && m.Leg < i { // before the leg to the first point edited
			require.Equal(t, *m, *next.Exhaust.Muffler)
			require.False(t, said["muffler"])
		}
	})
}
