package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Each tolerance a little below what it is and a little above, at the datum, where rounding is a millionth of it.

// Seen from the middle all directions are the same one; seen from 5e-9 mm beside it, each is its own.
func TestHowFarOffTheMiddleADirectionBegins(t *testing.T) {
	round := geometry.NewRound(pt{}, 20)
	for off, its := range map[float64]bool{1e-9: false, 3e-9: false, 5e-9: true, 2e-8: true} {
		for _, way := range []pt{{X: -1}, {Y: 1}, {X: .6, Y: .8}} {
			_, nearest := round.Gap(way.Scale(off))
			assert.Equal(t, its, nearest.Sub(way.Scale(20)).Norm() < 1e-6, "%v mm off towards %v: %v", off, way, nearest)
		}
	}
}

// A leg of 5e-9 mm has a direction, and no bend fits on it; a shorter one goes where the next one does.
func TestHowLongALegIsThatHasADirection(t *testing.T) {
	for long, has := range map[float64]bool{1e-9: false, 3e-9: false, 5e-9: true, 2e-8: true} {
		run := geometry.Rounded([]pt3{{}, {Y: long}, {X: 900, Y: long}}, 60)
		assert.Equal(t, has, len(run.ShortLegs) > 0, "%v mm", long)
	}
}

// A box that leans into another by 5e-9 mm from one corner to the other touches it at the deeper one; by less it lies against it all along.
func TestHowMuchABoxLeansThatTouchesAtACorner(t *testing.T) {
	a := rect(0, 0, 100, 100, 0)
	for lean, touches := range map[float64]float64{1e-9: 40, 3e-9: 40, 5e-9: 60, 2e-8: 60} {
		b := rect(95, 20, 200, 60, lean/40*180/math.Pi)
		assert.InDelta(t, touches, geometry.Between(a, b).A.Y, 1e-4, "by %v mm", lean)
	}
}

func TestByHowMuchALegMayBeTooShort(t *testing.T) {
	for short, fits := range map[float64]bool{0: true, 1e-9: true, 3e-9: true, 5e-9: false, 2e-8: false} {
		run := geometry.Rounded([]pt3{{X: 400}, {}, {Y: 120 - short}, {X: 400, Y: 120 - short}}, 60)
		assert.Equal(t, fits, len(run.ShortLegs) == 0, "by %v mm", short)
	}
}

// The first bend of a pipe of 20 m radius that turns by a hundred-millionth is where it begins; what turns by less goes straight on.
func TestHowMuchAPipeTurnsThatBends(t *testing.T) {
	for turn, bends := range map[float64]bool{2e-9: false, 0.9e-8: false, 1.1e-8: true, 5e-8: true} {
		path := []pt3{{}, {X: 5000}, {X: 10000, Y: 5000 * turn}}
		run := geometry.Rounded(path, 20000)
		_, bent := run.FirstBend()
		assert.Equal(t, bends, bent, "%v", turn)
		assert.Equal(t, bends, run.Legs[0].End < 5000-20000*1e-9, "%v", turn)
	}
}

// Of two legs whose stadiums overlap, the side of one is a way out as long as it lies in the other by rounding alone.
func TestHowDeepInAnotherLegASideIsAWayOut(t *testing.T) {
	const radius = 20
	for overlap, out := range map[float64]bool{0: true, 2e-11: true, 0.9e-10: true, 1.1e-10: false, 5e-10: false} {
		f := geometry.NewLine([]pt{{}, {X: 200}, {X: 200, Y: 2*radius - overlap}, {Y: 2*radius - overlap}}, radius)
		want := -35.0 // to the side that nothing lies beside
		if out {
			want = -5
		}
		gap, _ := f.Gap(pt{X: 100, Y: 15})
		assert.InDelta(t, want, gap, 1e-9, "%v mm deep", overlap)
		o := geometry.NewOutline(&f)
		gap, _ = o.WayOut(pt{X: 100, Y: 15})
		assert.InDelta(t, want, gap, 1e-9, "%v mm deep, with its outline kept", overlap)
	}
}

// Where two bends cross their middles are 0 mm apart, and a mm along either takes them a mm apart: nowhere else does the search for the place
// tell so much.
func TestBendsThatCrossTouchWhereTheyDo(t *testing.T) {
	const radius, leg = 100.0, 50.0
	r := seeded(t, 30)
	level := geometry.Rounded([]pt3{{X: radius, Y: -leg}, {X: radius, Y: radius}, {X: -leg, Y: radius}}, radius)
	var p geometry.Tube
	p.AddRun(&level, 0, level.Length(), 5)
	for range 300 {
		out := pt{X: 1}.Turn(5 + 80*r.Float64()).At(0) // from the middle of the first bend to where the second one crosses it
		bend := 40 + 100*r.Float64()
		middle := out.Scale(radius + bend)
		round := func(degrees float64) pt3 { // upright, across the first
			sin, cos := math.Sincos(degrees * math.Pi / 180)
			return out.Scale(-cos).Add(pt3{Z: sin})
		}
		begin := -85 + 80*r.Float64()
		u, v := round(begin).Scale(bend), round(begin+90).Scale(bend)
		upright := geometry.Rounded([]pt3{middle.Add(u).Sub(v.Scale(leg / bend)), middle.Add(u).Add(v), middle.Add(v).Sub(u.Scale(leg / bend))}, bend)
		var q geometry.Tube
		q.AddRun(&upright, 0, upright.Length(), 4)
		between, _ := p.GapTube(&q)
		require.InDelta(t, -9, between.Distance, 1e-6)
		back, _ := q.GapTube(&p)
		require.InDelta(t, -9, back.Distance, 1e-6)
	}
}
