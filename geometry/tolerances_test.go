package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Each tolerance from both sides: what is a thousand times smaller than a tape can say still counts, and what rounding
// makes, 15 m from the datum and turned, does not.

// far is a rigid motion to where rounding is at its largest.
func far(p pt) pt { return p.Turn(33).Add(pt{X: 14000, Y: -15000}) }

func TestAHairOffTheMiddleHasADirection(t *testing.T) {
	round := geometry.NewRound(pt{}, 20)
	_, nearest := round.Gap(pt{X: 3e-7, Y: 4e-7})
	assert.InDelta(t, 0, nearest.Sub(pt{X: 12, Y: 16}).Norm(), 1e-6)
	square := rect(0, 0, 10, 10, 0)
	s := square.GapCircle(pt{X: 10 + 3e-7, Y: 10 + 4e-7}, 0)
	assert.InDelta(t, 0, s.N.Sub(pt{X: -.6, Y: -.8}).Norm(), 1e-6, "%v", s.N)
}

func TestAPointOnTheOutlineHasItsNormal(t *testing.T) {
	r := seeded(t, 21)
	for range 500 {
		turn := r.Float64() * 360
		f := rect(0, 0, 30+r.Float64()*900, 30+r.Float64()*900, turn).Moved(0, pt{X: 14000, Y: -15000})
		c := f.Corners()
		for i := range c {
			a, b := c[i], c[(i+1)%4]
			on := a.Add(b.Sub(a).Scale(0.1 + 0.8*r.Float64()))
			normal := b.Sub(a).Turn(-90).Scale(1 / b.Sub(a).Norm())
			n := f.GapCircle(on, 0).N // out or in, as rounding puts the point
			require.InDelta(t, 1, math.Abs(n.Dot(normal)), 1e-9)
		}
	}
}

// Two boxes that overlap side by side touch in the middle of what they share, one that leans by a hair at its corner.
func TestWhereOverlappingBoxesTouch(t *testing.T) {
	a, b := rect(0, 0, 100, 100, 0), rect(95, 20, 200, 60, 0)
	for _, turn := range []float64{0, 33, 77, 145, 250} {
		shift := pt{X: 14000, Y: -15000}
		s := geometry.Between(a.Moved(turn, shift), b.Moved(turn, shift))
		assert.InDelta(t, -5, s.Gap, 1e-8)
		assert.InDelta(t, 0, s.A.Sub(pt{X: 100, Y: 40}.Turn(turn).Add(shift)).Norm(), 1e-6, "turned by %v: %v", turn, s.A)
	}
	leaning := rect(95, 20, 200, 60, 1e-6) // its lower corner is 7e-7 mm farther into a than its upper one
	s := geometry.Between(a, leaning)
	assert.InDelta(t, 60, s.A.Y, 1e-4, "%v", s.A)
}

// Two bends need 2 x 60 mm of the leg between them.
func TestALegIsTooShortByAHair(t *testing.T) {
	r := seeded(t, 22)
	for range 500 {
		turn, lean := r.Float64()*360, r.Float64()*0.4
		along := pt{X: math.Cos(lean)}.Turn(turn).At(math.Sin(lean))
		across := pt{X: 1}.Turn(turn + 90).At(0)
		path := func(middle float64) []pt3 {
			b := far(randomPoint(r, 3000)).At(-300)
			c := b.Add(along.Scale(middle))
			return []pt3{b.Add(across.Scale(400)), b, c, c.Add(across.Scale(400))}
		}
		require.Empty(t, geometry.Rounded(path(120), 60).ShortLegs, "just long enough")
		require.Equal(t, []int{1}, geometry.Rounded(path(120-1e-6), 60).ShortLegs)
	}
}

// A long pipe's bend of 20 m radius that turns by 5e-5 begins half a millimetre before its corner.
func TestAHairOfATurnIsABend(t *testing.T) {
	const bend, turn, leg = 20000, 5e-5, 5000
	run := geometry.Rounded([]pt3{{0, 0, 0}, {leg, 0, 0}, {leg + leg*math.Cos(turn), leg * math.Sin(turn), 0}}, bend)
	assert.InDelta(t, leg-bend*math.Tan(turn/2), run.Legs[0].End, 1e-6)
	assertNear(t, pt3{leg - bend*turn/2, 0, 0}, run.At(run.Legs[0].End), 1e-6)
}

func TestAPointOnAStraightPipeIsNoBend(t *testing.T) {
	r := seeded(t, 23)
	for range 2000 {
		a, b := far(randomPoint(r, 3000)).At(-r.Float64()*300), far(randomPoint(r, 3000)).At(-r.Float64()*300)
		path := []pt3{a, a.Add(b.Sub(a).Scale(r.Float64())), b}
		run := geometry.Rounded(path, 60)
		length := b.Sub(a).Norm()
		require.InDelta(t, length, run.Length(), 1e-8)
		require.InDelta(t, run.Legs[0].End, run.Legs[1].Begin, 0, "nothing between the legs")
		require.InDelta(t, length/2, run.At(length/2).Sub(a).Norm(), 1e-8)
	}
}

// Two legs side by side whose stadiums overlap by a hair: the near side of one lies in the other by no more than that,
// and is no way out.
func TestAHairInsideIsNoWayOut(t *testing.T) {
	const radius, overlap = 20, 1e-9
	f := geometry.NewLine([]pt{{}, {X: 200}, {X: 200, Y: 2*radius - overlap}, {Y: 2*radius - overlap}}, radius)
	gap, nearest := f.Gap(pt{X: 100, Y: 15})
	assert.InDelta(t, -35, gap, 1e-9)
	assert.InDelta(t, 0, nearest.Sub(pt{X: 100, Y: -20}).Norm(), 1e-9)
}

// Where two legs' sides meet is on the outline, whatever rounding says.
func TestTheMeetingOfTwoSidesIsAWayOut(t *testing.T) {
	r := seeded(t, 24)
	for range 500 {
		turn, radius := 10+r.Float64()*80, 10+r.Float64()*20
		at, heading := far(randomPoint(r, 3000)), r.Float64()*360
		leg := func(way float64) pt { return at.Add(pt{X: 500}.Turn(way)) }
		f := geometry.NewLine([]pt{leg(heading), at, leg(heading + 180 - turn)}, radius)
		// The sides inside the bend meet at radius / cos(turn/2) from the corner, on the ray that halves it.
		way, inner := heading+(180-turn)/2, radius/math.Cos(turn/2*math.Pi/180)
		gap, _ := f.Gap(at.Add(pt{X: inner - 1e-3}.Turn(way)))
		require.InDelta(t, -1e-3, gap, 1e-8)
	}
}

// Pipes that cross at a small angle, somewhere or at an end, touch.
func TestNearlyParallelSegmentsCross(t *testing.T) {
	r := seeded(t, 25)
	for _, angle := range []float64{1e-9, 1e-7, 9e-7, 1.1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 0.1, 1} {
		for i := range 1000 {
			way, at := r.Float64()*360, far(randomPoint(r, 3000)).At(-300)
			across := func(degrees, before, behind float64) geometry.Segment3 {
				u := pt{X: 1}.Turn(degrees).At(0.1)
				return geometry.Segment3{A: at.Add(u.Scale(before * r.Float64())), B: at.Add(u.Scale(behind * r.Float64()))}
			}
			other := [][2]float64{{-9000, 9000}, {0, 9000}, {0, -9000}}[i%3] // it crosses the one, or starts on it
			s := geometry.BetweenSegments(across(way, -9000, 9000), across(way+angle*180/math.Pi, other[0], other[1]))
			require.LessOrEqual(t, s.Gap, 1e-9, "%g", angle)
		}
	}
}

// The distance from a point to an arc in closed form: in the arc's own plane that of its circle.
func TestArcDistanceByItsCircle(t *testing.T) {
	r := seeded(t, 26)
	worst := 0.0
	for range 4000 {
		bend := 40 + r.Float64()*400
		run := geometry.Rounded([]pt3{{-900, 0, 0}, {0, 0, 0}, {0, 900, 0}}, bend)
		way := (0.1 + 0.8*r.Float64()) * 90 // the centre is at (-bend, bend); the arc is to the right of and below it
		away, up := 1+(bend+400)*r.Float64(), 300*(r.Float64()-0.5)
		q := pt{X: -bend, Y: bend}.Add(pt{X: away}.Turn(-way)).At(up)
		want := math.Hypot(away-bend, up)
		got := gapPath(run, []pt3{q}, run.Legs[0].End, run.Legs[1].Begin)
		require.InDelta(t, want, got.Gap, 3e-9)
		worst = max(worst, got.Gap-want)
	}
	t.Logf("worst by %g mm", worst)
}

// Above a round thing the nearest point of its rim has a closed form for a pipe that comes straight at its axis.
func TestSegmentOverARoundByItsRim(t *testing.T) {
	r := seeded(t, 27)
	for range 4000 {
		radius, way := 20+r.Float64()*300, r.Float64()*360
		p := geometry.Prism{Footprint: geometry.NewRound(pt{}, radius), Low: -100, High: -20}
		a := pt{X: radius + r.Float64()*500, Y: 0.1 + r.Float64()*400}
		b := pt{X: radius + r.Float64()*500, Y: a.Y + (r.Float64()-0.2)*a.Y}
		lift := func(q pt) pt3 { return pt{X: q.X}.Turn(way).At(p.High + q.Y) } // along and above the rim
		leg := geometry.NewLine([]pt{a, b}, 0)
		want := leg.GapOnly(pt{X: radius})
		got := p.GapRun([]pt3{lift(a), lift(b)})
		require.InDelta(t, want, got.Gap, 1e-9)
	}
}

// Segments that lie beside each other have no one place where they are nearest, and rounding turns them by a hair: the gap is as it is
// reckoned from where their ends lie, whatever rounding makes of the angle.
func TestSegmentsBesideEachOther(t *testing.T) {
	r := seeded(t, 29)
	for range 5000 {
		turn, long, off := r.Float64()*360, 100+r.Float64()*4900, r.Float64()*300
		start := r.Float64()*12000 - 6000
		other := 100 + r.Float64()*4900
		place := func(along, below float64) geometry.Point3 { return far(pt{X: along}.Turn(turn)).At(-below) }
		s := geometry.BetweenSegments(
			geometry.Segment3{A: place(0, 0), B: place(long, 0)}, geometry.Segment3{A: place(start, off), B: place(start+other, off)},
		)
		between := max(0, start-long, -(start + other))
		require.InDelta(t, math.Hypot(between, off), s.Gap, 1e-9)
	}
}
