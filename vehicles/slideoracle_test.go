package vehicles

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// stretch is the straight part of a leg by school geometry, mm from the leg's unrounded corner.
type stretch struct{ from, to float64 }

// straights draws a run without legs too short for their bends and returns the straight part of each of its legs, and the run by school
// geometry.
func straights(t *rapid.T) (*LaidRun, []stretch, schooled) {
	run := Run{Across: 26, Bend: Some(rapid.Float64Range(10, 60).Draw(t, "bend"))}
	path := []geometry.Point3{at3(1000, 200, -45)}
	for range rapid.IntRange(1, 5).Draw(t, "legs") {
		length, turn, fall := rapid.Float64Range(150, 900), rapid.Float64Range(0, 360), rapid.Float64Range(-0.6, 0.6)
		flat := geometry.Point{X: length.Draw(t, "length")}.Turn(turn.Draw(t, "turn"))
		last := path[len(path)-1]
		path = append(path, last.Add(flat.At(-flat.Norm()*fall.Draw(t, "fall"))))
	}
	s, parts := school(path, run.Bend.Value), make([]stretch, len(path)-1)
	for i := range parts {
		parts[i] = stretch{s.takes[i], s.leg(i) - s.takes[i+1]}
		if parts[i].to < parts[i].from {
			t.Skip("a leg too short for its bends")
		}
	}
	return layRun(&run, path), parts, s
}

// takes tells whether a thing of a length has its place on a straight part.
func (s stretch) takes(length float64) bool { return s.to-s.from >= length }

// undecided tells whether rounding decides if a thing of a length has its place on one of the parts.
func undecided(parts []stretch, length float64) bool {
	return slices.ContainsFunc(parts, func(s stretch) bool { return math.Abs(s.to-s.from-length) < 1e-3 })
}

// nearEnd is where a thing lies first that comes over a bend from below, or from above.
func (s stretch) nearEnd(length, by float64) float64 {
	if by < 0 {
		return s.to - length
	}
	return s.from
}

// A thing that is slid goes as far as it is told, as far as its leg is straight; else over the bends to the first leg in that direction
// that takes it, and to the end of it that is nearer. Nothing is slid to where it would lie in a bend.
func TestSlidingAgainstTheStraightPartsOfALegs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, parts, _ := straights(t)
		length := rapid.Float64Range(0, 300).Draw(t, "length")
		if undecided(parts, length) {
			t.Skip("rounding decides")
		}
		by := rapid.Float64Range(1, 400).Draw(t, "by")
		if rapid.Bool().Draw(t, "back") {
			by = -by
		}
		leg := rapid.IntRange(1, len(parts)).Draw(t, "leg")
		here := parts[leg-1]
		start := rapid.Float64Range(0, max(0, here.to-length)).Draw(t, "start")
		atEnd := rapid.Bool().Draw(t, "at the end of its leg already")
		if from, to := run.Straight(leg); atEnd {
			start = settled(map[bool]float64{true: from, false: to - length}[by < 0])
		}
		toLeg, to, ok := run.Slid(leg, start, length, by)

		if here.takes(length) && !atEnd {
			want := max(here.from, min(start+by, here.to-length))
			if math.Abs(want-start) < 1e-3 {
				t.Skip("rounding decides")
			}
			require.True(t, ok)
			require.Equal(t, leg, toLeg)
			require.InDelta(t, want, to, 1e-3)
			return
		}
		step := int(math.Copysign(1, by))
		for l := leg + step; l >= 1 && l <= len(parts); l += step {
			if part := parts[l-1]; part.takes(length) {
				require.True(t, ok)
				require.Equal(t, l, toLeg)
				require.InDelta(t, part.nearEnd(length, by), to, 1e-3)
				return
			}
		}
		require.False(t, ok)
		require.Equal(t, leg, toLeg)
		require.Equal(t, start, to, "it stays")
	})
}

// What is slid a little and back again lies where it lay, while it stays on the straight part of its leg.
func TestSlidingBackIsSlidingBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, parts, _ := straights(t)
		leg := rapid.IntRange(1, len(parts)).Draw(t, "leg")
		part := parts[leg-1]
		if part.to-part.from < 120 {
			t.Skip("no way to slide")
		}
		length := rapid.Float64Range(0, part.to-part.from-100).Draw(t, "length")
		start := rapid.Float64Range(part.from+20, part.to-length-60).Draw(t, "start")
		by := rapid.Float64Range(1, 20).Draw(t, "by")
		there, to, ok := run.Slid(leg, start, length, by)
		require.True(t, ok)
		back, from, ok := run.Slid(there, to, length, -by)
		require.True(t, ok)
		require.Equal(t, leg, back)
		require.InDelta(t, start, from, 2*AlongNoise)
	})
}

// A seat is the longest straight part that takes the thing, of those that are as good as level where one of them does, and its middle.
func TestASeatIsTheBestOfAllLegs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, parts, _ := straights(t)
		length := rapid.Float64Range(0, 500).Draw(t, "length")
		if undecided(parts, length) {
			t.Skip("rounding decides")
		}
		leg, start, ok := run.Seat(length)
		level := func(i int) bool {
			d := run.Path[i+1].Sub(run.Path[i])
			return math.Abs(d.Z) <= 0.3*math.Hypot(d.X, d.Y)
		}
		best := -1
		for i, part := range parts {
			if !part.takes(length) {
				continue
			}
			if best < 0 || level(i) && !level(best) || level(i) == level(best) && part.to-part.from > parts[best].to-parts[best].from {
				best = i
			}
		}
		require.Equal(t, best >= 0, ok)
		if !ok {
			return
		}
		require.InDelta(t, parts[best].to-parts[best].from, parts[leg-1].to-parts[leg-1].from, 1e-3)
		require.Equal(t, level(best), level(leg-1))
		part := parts[leg-1]
		require.InDelta(t, (part.from+part.to-length)/2, start, 0.5+1e-3, "in the middle, to a whole mm")
		require.GreaterOrEqual(t, start, part.from-1e-3)
		require.LessOrEqual(t, start+length, part.to+1e-3)
	})
}

// A thing that is put where one points lies as near to there as a leg allows it, and on the leg that is straight there.
func TestASeatIsWhereOnePoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run, parts, s := straights(t)
		leg := rapid.IntRange(1, len(parts)).Draw(t, "leg")
		part := parts[leg-1]
		length := rapid.Float64Range(0, 300).Draw(t, "length")
		if part.to-part.from < 1 || undecided(parts, length) {
			t.Skip("rounding decides")
		}
		on := rapid.Float64Range(part.from+0.01, part.to-0.01).Draw(t, "on") // where two legs meet either is right
		got, start, ok := run.SeatAt(s.at(leg-1, on), length)
		require.Equal(t, leg, got)
		require.Equal(t, part.takes(length), ok)
		if ok {
			require.InDelta(t, max(part.from, min(on-length/2, part.to-length)), start, 0.5+1e-3)
		}
	})
}
