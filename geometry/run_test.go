package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// drops makes a path from x, y, drop triples.
func drops(xyd ...float64) (path []pt3) {
	for i := 0; i < len(xyd); i += 3 {
		path = append(path, pt3{X: xyd[i], Y: xyd[i+1], Z: -xyd[i+2]})
	}
	return path
}

// Source: the sample jobs 18 to 21 that come with the contract of the job file, with their expected findings (four
// decimals). The stub stands before each path.
var sampleRuns = []struct {
	name                string
	bend                float64
	path                []pt3
	length, turns       float64
	short               int
	across, ground, gap float64 // the floor's ground and the finding, 0 where none is given
}{
	{"18 exhaust", 60, drops(1114.4, -468.3, 47, 1141, -430, 188, 1127, -148, 192, 359, 242, 256, 223, 276, 256),
		1414.7694, 148.6211, 0, 55, 0, 0},
	{"18 intake", 40, drops(1193.4, -480.3, 47, 1203, -449, 133, 1430, -355, 140, 1172, 285, 76, 444, 630, 31),
		1810.1678, 207.5712, 0, 28, 0, 0},
	{"19 exhaust", 80, drops(1240, -143, 46, 1222, -165, 101, 1933, -140, 131, 2015, 488, 172.5, 1933, 756, 189,
		1537, 823, 194), 2057.2997, 273.5997, 1, 30, 425, 216},
	{"19 intake", 110, drops(1174, -156, 46, 1066, -220, 48, 576, -138, 31.1, 136, -616, 78),
		1260.5776, 97.403, 0, 25, 425, 334.5},
	{"20 exhaust", 50, drops(582.7, 6.7, 60, 616, 166, 50.4, 420, 421, 46), 481.7966, 49.383, 0, 24, 0, 0},
	{"20 intake", 80, drops(509.7, 0.7, 60, 1147, -91, 21, 1845, -142, 64, 1845, -142, 184, 2460, 139, 196),
		2142.4672, 183.5174, 1, 28, 0, 0},
	{"21 exhaust", 0, drops(1310, 611, 30, 1077, 376, 52, 327, 475, 52), 1088.1652, 52.8603, 0, 26, 0, 0},
	{"21 intake", 60, drops(1244, 632, 30, 1244, 632, 139, 1262, 756, 131.4, 393, 771, 95, 264, 839, 84.6, 24, 63, 30),
		2025.4824, 317.6701, 1, 28, 0, 0},
}

func TestSampleRuns(t *testing.T) {
	for _, c := range sampleRuns {
		t.Run(c.name, func(t *testing.T) {
			run := geometry.Rounded(c.path, c.bend)
			assert.InDelta(t, c.length, run.Length(), 6e-5)
			assert.InDelta(t, c.turns, run.Turns(), 6e-5)
			assert.Len(t, run.ShortLegs, c.short)
			if c.ground > 0 {
				assert.InDelta(t, c.gap, c.ground+run.Lowest().Z-c.across/2, 6e-5)
			}
		})
	}
}

// Source: sample job 19 and its expected findings.
func TestSampleClearances(t *testing.T) {
	box := func(x0, x1, y0, y1, turn float64) geometry.Footprint {
		return geometry.NewRectangle(pt{X: x0, Y: y0}, pt{X: x1, Y: y1}, turn)
	}
	exhaust := geometry.Rounded(sampleRuns[2].path, 80)
	intake := geometry.Rounded(sampleRuns[3].path, 110)
	fuel := drops(1208, -244, -72, 1208, -244, 105, 1205, -218, 46)
	for _, c := range []struct {
		name            string
		prism           geometry.Prism
		exhaust, intake float64
	}{
		{"jacking point", geometry.Prism{Footprint: geometry.NewRound(pt{X: 210.7, Y: 117.8}, 56.5), Low: -141}, 978.5969, 373.0109},
		{"suspension 1", geometry.Prism{Footprint: geometry.NewRound(pt{X: 316.8, Y: 762.5}, 31), Low: -45}, 1184.9854, 908.5905},
		{"spare wheel", geometry.Prism{Footprint: box(429.3, 670.3, 601, 656.4, 90), Low: -22}, 914.2705, 643.1623},
		{"chassis rail", geometry.Prism{Footprint: box(170.2, 2291.2, -431.5, -361.5, 0), Low: -251, High: -147}, 186.8124, 74.1864},
		{"plastic part 1", geometry.Prism{Footprint: box(1022, 1126.3, -165, -75, 0), Low: -101}, 80.7, 4.075},
		{"floor rib", geometry.Prism{Footprint: geometry.NewLine([]pt{{X: 637, Y: 711}, {X: 787, Y: 815}, {X: 377, Y: 733}}, 6),
			Low: -425}, 729.0427, 839.0781},
	} {
		t.Run(c.name, func(t *testing.T) {
			assert.InDelta(t, c.exhaust, gapRounded(c.prism, exhaust, 0, exhaust.Length()).Gap-15, 6e-5)
			assert.InDelta(t, c.intake, gapRounded(c.prism, intake, 0, intake.Length()).Gap-12.5, 6e-5)
		})
	}
	assert.InDelta(t, 54.8876, gapPath(exhaust, fuel, 0, exhaust.Length()).Gap-15-2.5, 6e-5, "exhaust to fuel line")
}

// A quarter bend: both tangents are the radius, the arc a quarter circle (plane geometry).
func TestQuarterBend(t *testing.T) {
	run := geometry.Rounded([]pt3{{0, 0, 0}, {200, 0, 0}, {200, 0, -300}}, 60)
	require.InDelta(t, 140+30*math.Pi+240, run.Length(), 1e-12)
	require.InDelta(t, 90, run.Turns(), 1e-12)
	assertNear(t, pt3{140, 0, 0}, run.At(run.Legs[0].End), 1e-12)
	assertNear(t, pt3{200, 0, -60}, run.At(run.Legs[1].Begin), 1e-12)
	assertNear(t, pt3{140 + 60*math.Sqrt2/2, 0, -60 + 60*math.Sqrt2/2}, run.At(140+15*math.Pi), 1e-12)
	assertNear(t, pt3{200, 0, -100}, run.At(run.Along(1, 100)), 1e-12)
	assertNear(t, pt3{200, 0, -300}, run.Lowest(), 0)
	assertNear(t, pt3{0, 0, 0}, run.At(-5), 0)
	assertNear(t, pt3{200, 0, -300}, run.At(1e6), 0)
	corner := geometry.Prism{Footprint: geometry.NewRectangle(pt{X: 199, Y: -1}, pt{X: 300, Y: 1}, 0), Low: -1, High: 50}
	want := math.Hypot(59, 59) - 60 // from the arc's centre (140, -60) to the box's edge (199, -1), less the radius
	assert.InDelta(t, want, gapRounded(corner, run, 0, run.Length()).Gap, 1e-8)
	assert.Zero(t, corner.GapRun([]pt3{{0, 0, 0}, {200, 0, 0}, {200, 0, -300}}).Gap, "the sharp corner goes in")
}

// The lowest point of a hanging bend is on its arc: two legs 45 degrees down and up, radius R, corner at depth h:
// the arc hangs R (sqrt 2 - 1) above the corner (plane geometry).
func TestLowestOnAnArc(t *testing.T) {
	run := geometry.Rounded([]pt3{{0, 0, 0}, {300, 0, -300}, {600, 0, 0}}, 100)
	assertNear(t, pt3{300, 0, -300 + 100*(math.Sqrt2-1)}, run.Lowest(), 1e-9)
	middle := run.Length() / 2
	assertNear(t, run.At(middle-20), run.LowestOn(0, middle-20), 1e-9)
	assertNear(t, run.At(middle+20), run.HighestOn(middle-10, middle+20), 1e-9)
}

// What is left of two equal points that were worked out has no direction: neither length, nor a bend to it and one back from it.
func TestALegMadeOfRoundingTurnsNothing(t *testing.T) {
	for _, along := range []float64{1e-20, 1e-12, 1e-9} {
		for _, bend := range []float64{0, 30} {
			on := geometry.Rounded([]pt3{{}, {X: 100}, {X: 100, Y: along}, {X: 200, Y: along}}, bend)
			assert.Zero(t, on.Turns())
			_, bends := on.FirstBend()
			assert.False(t, bends)
			corner := geometry.Rounded([]pt3{{}, {X: 100}, {X: 100, Z: along}, {X: 100, Y: 100, Z: along}}, bend)
			assert.InDelta(t, 90, corner.Turns(), 1e-6)
		}
	}
}

func TestTheFirstBendIsTheFirstCornerThatTurns(t *testing.T) {
	for _, c := range []struct {
		path []pt3
		leg  int
		ok   bool
	}{
		{[]pt3{{0, 0, 0}}, 0, false},
		{[]pt3{{0, 0, 0}, {0, 0, -100}}, 0, false},
		{[]pt3{{0, 0, 0}, {0, 0, -100}, {0, 0, -100}, {0, 0, -300}}, 0, false},
		{[]pt3{{0, 0, 0}, {0, 0, -100}, {500, 0, -100}}, 1, true},
		{[]pt3{{0, 0, 0}, {0, 0, -40}, {0, 0, -100}, {500, 0, -100}, {500, 500, -100}}, 2, true},
		{[]pt3{{0, 0, 0}, {0, 0, -100}, {0, 0, -50}}, 1, true},
	} {
		leg, ok := geometry.Rounded(c.path, 60).FirstBend()
		require.Equal(t, c.ok, ok, "%v", c.path)
		require.Equal(t, c.leg, leg, "%v", c.path)
	}
}

func TestLegsTooShortStaySharp(t *testing.T) {
	path := []pt3{{0, 0, 0}, {500, 0, 0}, {500, 100, 0}, {1000, 100, 0}, {1000, 600, 0}}
	run := geometry.Rounded(path, 60) // the middle leg needs 120 and has 100
	require.Equal(t, []int{1}, run.ShortLegs)
	require.InDelta(t, 500+100+500-60+30*math.Pi+440, run.Length(), 1e-12)
	require.Empty(t, geometry.Rounded(path, 50).ShortLegs, "exactly long enough")

	fold := geometry.Rounded([]pt3{{0, 0, 0}, {500, 0, 0}, {100, 0, 0}}, 60)
	require.Equal(t, []int{0, 1}, fold.ShortLegs, "no arc folds straight back")
	require.InDelta(t, 900, fold.Length(), 1e-12)

	twice := geometry.Rounded([]pt3{{0, 0, 0}, {500, 0, 0}, {500, 0, 0}, {500, 500, 0}}, 60)
	require.Equal(t, []int{1}, twice.ShortLegs, "a leg without length")
	require.InDelta(t, 1000, twice.Length(), 1e-12)

	onward := geometry.Rounded([]pt3{{0, 0, 0}, {500, 0, 0}, {500, 0, 0}, {900, 0, 0}}, 60)
	require.Empty(t, onward.ShortLegs)
	require.InDelta(t, 900, onward.Length(), 1e-12)

	point := geometry.Rounded([]pt3{{1, 2, 3}}, 60)
	require.Zero(t, point.Length())
	require.Equal(t, pt3{1, 2, 3}, point.At(0))
	require.Equal(t, pt3{1, 2, 3}, point.Lowest())
}

// Slow twin: samples along the run, refined.
func TestRoundedDistanceAgainstSampling(t *testing.T) {
	r := seeded(t, 8)
	for range rounds(600) {
		p, path := randomPrism(r), randomPath3(r, 2+r.IntN(3))
		run := geometry.Rounded(path, r.Float64()*200)
		from, to := 0.0, run.Length()
		if r.IntN(2) == 0 {
			from, to = to*r.Float64()/2, to*(0.5+r.Float64()/2)
		}
		at := func(i float64) pt3 { return run.At(from + i*(to-from)) }
		got := gapRounded(p, run, from, to)
		requireConsistent(t, got)
		slow := math.Inf(1)
		for i := range 20 { // in stretches, as the distance along a bend has several valleys
			slow = min(slow, slowLeast(func(u float64) float64 { return slowGap(p, at((float64(i)+u)/20)) }))
		}
		require.GreaterOrEqual(t, slow, got.Gap-2e-9)
		require.InDelta(t, slow, got.Gap, 1e-6, "%+v %v", p, path)

		other := randomPath3(r, 2)
		gap := gapPath(run, other, from, to)
		requireConsistent(t, gap)
		slow = math.Inf(1)
		for i := range 2001 {
			slow = min(slow, geometry.BetweenPaths(other, []pt3{at(float64(i) / 2000)}).Gap)
		}
		require.GreaterOrEqual(t, slow, gap.Gap-2e-9)
		require.LessOrEqual(t, slow, gap.Gap+(to-from)/4000)
	}
}

// A run's pieces join without a jump or a kink, and its length is that of its own samples.
func TestRunIsSmooth(t *testing.T) {
	r := seeded(t, 9)
	for range 300 {
		run := geometry.Rounded(randomPath3(r, 2+r.IntN(4)), r.Float64()*150)
		const steps = 500
		sum, step := 0.0, run.Length()/steps
		for i := range steps {
			leap := run.At(float64(i+1) * step).Sub(run.At(float64(i) * step)).Norm()
			require.LessOrEqual(t, leap, step+1e-9)
			sum += leap
		}
		if len(run.ShortLegs) == 0 {
			require.InDelta(t, run.Length(), sum, 0.01*run.Length()+1e-9)
		}
	}
}

// A run comes down from a stub that leans a little and goes level along a box's face: at the end of the bend the distance
// neither rises nor falls, and the nearest point is where the bend begins to lean out.
func TestNearestPointInABendThatEndsAlongAFace(t *testing.T) {
	run := geometry.Rounded([]pt3{{1173.7395673775163, 263.13397990036134, -45}, {1175, 265, -120}, {1175, -700, -120}}, 60)
	box := geometry.Prism{Footprint: geometry.NewRectangle(pt{171, 24}, pt{178, 283}, 0), Low: -250, High: -120}
	least := math.Inf(1)
	for i := range 100001 {
		least = min(least, box.GapPoint(run.At(run.Length()*float64(i)/100000)).Gap)
	}
	assert.InDelta(t, least, gapRounded(box, run, 0, run.Length()).Gap, 1e-6)
}

// Nothing of a stretch hangs lower than its lowest point, or stands higher than its highest, and both are on it.
func TestLowestAndHighestAgainstSampling(t *testing.T) {
	r := seeded(t, 34)
	for range 300 {
		run := geometry.Rounded(randomPath3(r, 2+r.IntN(4)), r.Float64()*150)
		from := run.Length() * r.Float64() * 0.6
		to := from + (run.Length()-from)*r.Float64()
		low, high := run.LowestOn(from, to), run.HighestOn(from, to)
		least, most, nearLow, nearHigh := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(1)
		const steps = 400
		for i := range steps + 1 {
			p := run.At(from + (to-from)*float64(i)/steps)
			least, most = min(least, p.Z), max(most, p.Z)
			nearLow, nearHigh = min(nearLow, p.Sub(low).Norm()), min(nearHigh, p.Sub(high).Norm())
		}
		step := (to - from) / steps
		require.LessOrEqual(t, low.Z, least+1e-9)
		require.GreaterOrEqual(t, high.Z, most-1e-9)
		require.LessOrEqual(t, max(nearLow, nearHigh), step+1e-9)
	}
}

// Two points that are one but for rounding are a leg without length: its direction would be noise, and no bend would fit on it.
func TestALegThatIsNoiseHasNoDirection(t *testing.T) {
	path := []geometry.Point3{{0, 0, 0}, {0, 0, 145}, {200, 0, 145}, {200 + 3e-14, -2e-14, 145}}
	assert.InDelta(t, geometry.Rounded(path[:3], 55).Length(), geometry.Rounded(path, 55).Length(), 1e-9)
	assert.Empty(t, geometry.Rounded(path, 55).ShortLegs)
}
