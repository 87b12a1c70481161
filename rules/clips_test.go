package rules

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// straightRun is a run of a length straight back at a depth below the floor.
func straightRun(length, depth float64) *vehicles.LaidRun {
	path := []geometry.Point3{{X: length, Z: -depth}, {Z: -depth}}
	return &vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 60), Radius: 12}
}

// spreaderOf spreads the clips of a run under a floor with nothing else below it.
func spreaderOf(t testing.TB, of Sort, laid *vehicles.LaidRun) *spreader {
	job := vehicles.Demo()
	job.Obstructions, job.Ties, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil, nil
	r, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	j := newJudge(&r.Job, &r.Plan, r.Book)
	return newSpreader(&j, of, laid)
}

// The first clip comes within reach of the stub, the rest no farther apart than they may.
func TestClipsAreSpreadFromTheStub(t *testing.T) {
	run := func(length float64) *vehicles.LaidRun { return straightRun(length, 60) }
	spread := func(laid *vehicles.LaidRun) []float64 { return spreaderOf(t, TheExhaust, laid).spread().Along }
	assert.Equal(t, []float64{150, 425, 700}, spread(run(975)), "(975 - 150) / 3 = 275")
	unset := spreaderOf(t, TheExhaust, run(975))
	unset.first = 0
	assert.Equal(t, []float64{325, 650}, unset.spread().Along, "nobody has given a value")
	assert.Empty(t, spread(run(300)), "its end is within reach")
	assert.Equal(t, []float64{150}, spread(run(301)))
	held := run(975)
	held.Muffler = &vehicles.LaidMuffler{From: 290, To: 470}
	assert.Equal(t, []float64{723}, spread(held), "the muffler holds the stub")
	held.Muffler = &vehicles.LaidMuffler{From: 500, To: 680}
	assert.Equal(t, []float64{150}, spread(held))
}

// A clip is held within a reach only where what holds it is surely as near: by no more than the coverage of its distance's own uncertainty beyond that is none,
// held by the floor as by a rib.
func TestAClipIsHeldOnlyWhereThatIsSure(t *testing.T) {
	r := judged(t, vehicles.Demo())
	j := newJudge(&r.Job, &r.Plan, r.Book)
	byThing, byFloor := 0, 0
	for _, of := range []Sort{TheExhaust, TheIntake, TheFuel} {
		laid := j.run(of)
		for along := 0.0; along < laid.Line.Length(); along += 20 {
			clip := laid.Line.At(along)
			s, by := j.holdOf(clip, laid.Radius)
			var f Finding
			if f.Spread.Height = j.runMark(clip)[2]; by >= 0 {
				byThing++
				f = Finding{}
				j.spread(&f, putting{mark: j.runMark(s.A)}, &j.plan.Obstructions[by], false, s.B.Plan(), s.N)
			} else {
				byFloor++
			}
			sigma := math.Sqrt(f.Spread.Sum())
			require.Greater(t, sigma, 0.5, "%v, %g mm along: no tape is that true", of, along)
			sure := s.value + 1.645*sigma
			assert.True(t, j.heldWithin(sure+0.01, clip, laid.Radius), "%v, %g mm along", of, along)
			assert.False(t, j.heldWithin(sure-0.01, clip, laid.Radius), "%v, %g mm along", of, along)
		}
	}
	assert.Greater(t, byThing, 2)
	assert.Greater(t, byFloor, 20)
}

// A clip takes 20 mm of straight pipe: one whose half would lie in a bend counts as bent, at either end of a leg.
func TestAClipStandsClearOfABend(t *testing.T) {
	path := []geometry.Point3{{X: 900, Z: -60}, {X: 400, Z: -60}, {X: 400, Y: 500, Z: -60}}
	laid := &vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 60), Radius: 12}
	s := spreaderOf(t, TheExhaust, laid)
	require.Len(t, laid.Line.Legs, 2)
	end, begin := laid.Line.Legs[0].End, laid.Line.Legs[1].Begin
	require.InDelta(t, 440, end, 1e-9, "the bend takes 60 mm of either leg")
	for at, bent := range map[float64]int{
		end - 10.01: 0, end - 9.99: 1, end + 10: 1, begin - 10: 1, begin + 9.99: 1, begin + 10.01: 0, 9.99: 1, 10.01: 0,
	} {
		assert.Equal(t, bent, s.at(at).bent, "%g mm along", at)
	}
}

// A fuel line has its stub at its end, and its pump holds it.
func TestAFuelLinesClipsAreSpreadFromItsStub(t *testing.T) {
	line := straightRun(1000, 60)
	s := spreaderOf(t, TheFuel, line)
	s.first = 100
	clips := s.spread().Along
	assert.Equal(t, 950.0, clips[len(clips)-1], "100 / 2 before the stub")
	line.Pump = vehicles.Some(940)
	s = spreaderOf(t, TheFuel, line)
	s.first = 100
	assert.Equal(t, []float64{235, 470, 705}, s.spread().Along, "940 / 300 is more than 3, so there are 4 parts; the pump is near the stub")
}

// Clips stand where something holds them: 230 mm below a bare floor none has anything within 200 mm, below a crossmember one has.
func TestClipsStandWhereSomethingHoldsThem(t *testing.T) {
	job := vehicles.Demo()
	job.Ties, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil
	beam := slices.IndexFunc(job.Obstructions, func(o vehicles.Obstruction) bool { return o.Kind == "crossmember" })
	job.Obstructions = vehicles.List[vehicles.Obstruction]{job.Obstructions[beam]}
	r, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	low, high := r.Plan.Obstructions[0].Prism.Footprint.Bounds()
	middle := low.Add(high).Scale(0.5)
	path := []geometry.Point3{{X: middle.X + 520, Y: middle.Y, Z: -230}, {X: middle.X - 480, Y: middle.Y, Z: -230}}
	laid := &vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 60), Radius: 12}
	clips := SpreadClips(&r, vehicles.ExhaustRun, laid)
	nearest := math.Inf(1)
	for _, at := range clips.Along {
		nearest = min(nearest, math.Abs(laid.Line.At(at).X-middle.X))
	}
	assert.Less(t, nearest, (high.X-low.X)/2+150, "even spacing would have none there: %v", clips.Along)
	assert.Less(t, clips.Loose, len(clips.Along), "%v", clips)
	assert.Positive(t, clips.Loose, "the others have nothing")
}

// By hand: clips are thought of every 5 mm, every quarter of the span where that is less, and where the fewest would be evenly spaced.
func TestWhereClipsAreThoughtOf(t *testing.T) {
	for _, c := range []struct {
		apart, from, to float64
		want            []float64
	}{
		{100, 3, 24, []float64{3, 5, 10, 15, 20, 24}},
		{100, 4, 11, []float64{4, 5, 10, 11}},
		{20, 0, 22, []float64{0, 5, 10, 11, 15, 20, 22}}, // 22 is two spans
		{12, 1, 16, []float64{1, 3, 6, 9, 12, 15, 16}},   // a quarter of 12; 8.5 is two spans, in whole mm
		{3, 0, 3, []float64{0, 1, 2, 3}},
	} {
		s := spreader{apart: c.apart}
		assert.Equal(t, c.want, s.places(c.from, c.to), "%+v", c)
	}
}

// No stretch without a clip is longer than the span and the first clip is within its reach, whatever the run; of all choices of as many
// clips in steps of 20 mm none has fewer in the air, and fewer clips do not reach.
func TestNoOtherClipsHoldMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		of := rapid.SampledFrom(allRuns).Draw(t, "run")
		r, _ := Judge(vehicles.Demo(), Builtin())
		laid := drawnRun(t, of)
		j := newJudge(&r.Job, &r.Plan, r.Book)
		s := newSpreader(&j, of, laid)
		s.apart = rapid.Float64Range(60, 500).Draw(t, "apart")
		s.first = math.Floor(rapid.Float64Range(0, 300).Draw(t, "first"))
		clips := s.spread()
		held := append(s.held(), clips.Along...)
		slices.Sort(held)
		for i := 1; i < len(held); i++ {
			if m := laid.Muffler; m == nil || held[i-1] < m.From || held[i] > m.To {
				require.LessOrEqual(t, held[i]-held[i-1], s.apart+1e-6, "%v", clips)
			}
		}
		next := held[1]
		if of == TheFuel {
			next = laid.Line.Length() - held[len(held)-2]
		}
		if s.first >= 1 {
			require.LessOrEqual(t, next, s.first+1e-6)
		}
		s.first = 0
		bare := s.spread()
		for _, fewer := range [...]int{0, 1} {
			if n := len(bare.Along) - fewer; n >= 0 && n <= 3 && laid.Muffler == nil && !laid.Pump.Set {
				least := fewestLoose(s, n, 0, laid.Line.Length(), 20)
				require.LessOrEqual(t, bare.Loose, least, "%d clips: %v", n, bare)
			}
		}
	})
}

// drawnRun is a run of some corners under the sample van, sometimes with what holds it.
func drawnRun(t *rapid.T, of Sort) *vehicles.LaidRun {
	axis := rapid.Float64Range(0, 1500)
	var path []geometry.Point3
	for range rapid.IntRange(2, 4).Draw(t, "corners") {
		path = append(path, geometry.Point3{X: axis.Draw(t, "x"), Y: axis.Draw(t, "y") - 750, Z: -axis.Draw(t, "z") / 4})
	}
	laid := &vehicles.LaidRun{Path: path, Line: geometry.Rounded(path, 40), Radius: 12}
	if length := laid.Line.Length(); rapid.Bool().Draw(t, "held") {
		at := rapid.Float64Range(0, length).Draw(t, "at")
		if of == TheFuel {
			laid.Pump = vehicles.Some(at)
		} else {
			laid.Muffler = &vehicles.LaidMuffler{From: at / 2, To: (at + length) / 2}
		}
	}
	return laid
}

// fewestLoose is the least number of clips in the air that n of them can have between two places, in steps, by trying all; no number
// that can be reached when that many do not span it.
func fewestLoose(s *spreader, n int, from, to, step float64) (least int) {
	least = math.MaxInt
	if n == 0 {
		if to-from <= s.apart {
			return 0
		}
		return least
	}
	for at := from + step; at < to && at-from <= s.apart; at += step {
		if rest := fewestLoose(s, n-1, at, to, step); rest < least {
			least = min(least, rest+s.loose(at))
		}
	}
	return least
}

// Above the finished floor a clip is in sight, and whatever stands there may hold it: nothing is asked of it, and a run is spread clips along there too.
func TestAClipAboveTheFloorIsAskedNothing(t *testing.T) {
	r := judged(t, vehicles.Demo())
	j := newJudge(&r.Job, &r.Plan, r.Book)
	thick := r.Job.Floor.Thickness
	assert.True(t, j.heldWithin(150, geometry.Point3{X: 1700, Y: 300, Z: thick + 300}, 2))
	assert.False(t, j.heldWithin(1, geometry.Point3{X: 1700, Y: 300, Z: thick - 5}, 2), "within the floor")

	line := *r.Job.Fuel
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: -300}, {X: 1700, Y: 150, Drop: 100}, {X: 1460, Y: 250, Drop: 80}}
	line.Clips, line.Pump, line.Filter, line.Supply.From = []float64{100}, nil, nil, ""
	after, faults := Judge(r.Job.WithRun(vehicles.FuelRun, &line), r.Book)
	require.Empty(t, faults)
	for _, f := range after.Findings {
		assert.False(t, f.Rule == clipHold && f.Subject.Sort == TheFuel, f.About())
	}
}

// A pump that is said to be within the floor holds the line for neither the key that spreads clips nor the rule that asks how far they are apart.
func TestAPumpWithinTheFloorHoldsNothing(t *testing.T) {
	line := *vehicles.Demo().Fuel
	line.Clips, line.Filter, line.Supply.From = []float64{}, nil, ""
	line.Path = []vehicles.RunPoint{{X: 1900, Y: 150, Drop: -200}, {X: 1700, Y: 150, Drop: -200}, {X: 1700, Y: 150, Drop: 60}, {X: 1460, Y: 250, Drop: 80}}
	demo := vehicles.Demo()
	for start, holds := range map[float64]bool{185: false, 230: true} {
		line.Pump = &vehicles.Pump{Leg: 2, Start: start, Tilt: 30}
		r := judged(t, demo.WithRun(vehicles.FuelRun, &line))
		at := r.Plan.Fuel.Pump.Value
		j := newJudge(&r.Job, &r.Plan, r.Book)
		require.Equal(t, !holds, j.inThickness(r.Plan.Fuel.Line.At(at)))
		places, _ := j.held(TheFuel)
		assert.Equal(t, holds, slices.Contains(places, at), "the rule")
		assert.Equal(t, holds, slices.Contains(newSpreader(&j, TheFuel, r.Plan.Fuel).held(), at), "the key")
	}
}

// Within the floor no clip can be put, whether or not a book asks that something holds it: none is spread there.
func TestNoClipIsSpreadWithinTheFloor(t *testing.T) {
	line := *vehicles.Demo().Fuel
	line.Clips, line.Pump, line.Filter, line.Supply.From = []float64{}, nil, nil, ""
	for above := 100.0; above <= 300; above += 10 {
		line.Path = []vehicles.RunPoint{{X: 1700, Y: 150, Drop: -above}, {X: 1700, Y: 150, Drop: 300}, {X: 1460, Y: 250, Drop: 80}}
		demo := vehicles.Demo()
		r := judged(t, demo.WithRun(vehicles.FuelRun, &line))
		j := newJudge(&r.Job, &r.Plan, r.Book)
		s := newSpreader(&j, TheFuel, r.Plan.Fuel)
		for _, hold := range []*Limit{s.hold, {}} {
			s.hold = hold
			for _, at := range s.spread().Along {
				drop := s.laid.Station(at).Drop
				assert.False(t, PointInFloor(&r.Job, drop), "%v above, clip at drop %v", above, drop)
			}
		}
	}
}
