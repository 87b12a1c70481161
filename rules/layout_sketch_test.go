package rules

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// aheadBy are sketches that were laid, at places so many mm from each other.
func aheadBy(places ...float64) (all []sketch) {
	for _, x := range places {
		all = append(all, sketch{spot: spot{at: geometry.Point{X: x}}, laid: &Layout{}})
	}
	return all
}

// The nearest misses are sought of three places, each 150 mm and more from those before; of a cut that stays, of the first three sketches. It is told
// how many there are, and how many are done.
func TestNearestMissesAreSoughtOfThreePlaces(t *testing.T) {
	for _, c := range []struct {
		fixed  bool
		places []float64
		of     []int // which of them
	}{
		{false, []float64{0, 149.9, 150, 299.9, 300, 600, 900}, []int{0, 2, 4}},
		{false, []float64{0, 10, 400}, []int{0, 2}},
		{true, []float64{0, 0, 0, 0, 0}, []int{0, 1, 2}},
	} {
		told := 0
		l := layouting{fixed: c.fixed, workers: 1, seeking: seeking{context.Background(), func(at Stage, done, of int) {
			assert.Equal(t, [3]int{int(AtMisses), told, len(c.of)}, [3]int{int(at), done, of})
			told++
		}}}
		sketches := aheadBy(c.places...)
		var of []int
		for _, s := range l.toMiss(sketches) {
			of = append(of, slices.IndexFunc(sketches, func(other sketch) bool { return other.laid == s.laid }))
		}
		assert.Equal(t, c.of, of, "%v", c.places)
		l.missed(sketches)
		assert.Equal(t, len(c.of), told, "%v", c.places)
	}
}

// A layout less than 150 mm off stands for another place, but neither one that breaks a rule nor one beyond what was wished, and none where the cut stays.
func TestWhichLayoutStandsForAnotherPlace(t *testing.T) {
	for _, c := range []struct {
		off   float64
		laid  *Layout
		fixed bool
		known bool
	}{
		{149.9, &Layout{}, false, true}, {150, &Layout{}, false, false}, {0, &Layout{}, true, false}, {0, nil, false, false},
		{0, &Layout{broken: 1}, false, false}, {0, &Layout{Beyond: true}, false, false},
	} {
		before := aheadBy(c.off)
		before[0].laid = c.laid
		l := layouting{fixed: c.fixed}
		assert.Equal(t, c.known, l.known(before, &aheadBy(0)[0]), "%+v", c)
	}
}

// By hand: a corner counts 60 mm, no leg for a muffler of 180 mm and the half of two bends of 60 mm 600; a way that is shorter than muffler and both bends is none.
func TestHowHardAWayIs(t *testing.T) {
	muffler := &vehicles.Muffler{Length: 180}
	job := vehicles.Job{Exhaust: &vehicles.Run{Bend: vehicles.Some(60)}}
	way := func(legs ...float64) (w route.Way) {
		at := geometry.Point3{}
		w.Corners = append(w.Corners, at)
		for i, leg := range legs {
			if i%2 == 0 {
				at.X += leg
			} else {
				at.Y += leg
			}
			w.Corners, w.Length = append(w.Corners, at), w.Length+leg
		}
		return w
	}
	for _, c := range []struct {
		ways    []route.Way
		muffler *vehicles.Muffler
		hard    float64
	}{
		{[]route.Way{way(240, 100)}, muffler, 340 + 3*60},
		{[]route.Way{way(239, 101)}, muffler, 340 + 3*60 + 600},
		{[]route.Way{way(100, 240)}, muffler, 340 + 3*60},
		{[]route.Way{way(239, 101)}, nil, 340 + 3*60},
		{[]route.Way{way(300)}, muffler, 300 + 2*60},
		{[]route.Way{way(299)}, muffler, math.Inf(1)},
		{[]route.Way{way(299)}, nil, 299 + 2*60},
		{[]route.Way{way(200, 200, 200), way(1000, 79), way(1000, 100)}, muffler, 1079 + 3*60},
		{nil, muffler, math.Inf(1)},
	} {
		k := rough{seeker: &seeker{judge: judge{job: &job}, kind: vehicles.ExhaustRun}, ways: c.ways}
		assert.Equal(t, c.hard, k.hard(c.muffler), "%v", c.ways)
	}
}
