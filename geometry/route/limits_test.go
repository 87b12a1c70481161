package route

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// Each limit of a way a little below what it is and a little above.

const degrees = math.Pi / 180

// hall is a question on a floor of 4 m by 4 m, level and without anything on it.
func hall(things ...Obstacle) *Query {
	return &Query{
		From: geometry.Point3{X: -1500, Z: -100}, To: []Goal{{At: geometry.Point{X: 1500}, Low: -200, High: -100}},
		Min: geometry.Point3{X: -2000, Y: -2000, Z: -300}, Max: geometry.Point3{X: 2000, Y: 2000, Z: -100}, Bend: 60, Obstacles: things,
	}
}

// round is a search with one more disc, of 100 mm about the datum, and a way that comes to it along X with the disc on its left.
func round(q *Query, of kind) (*search, *label) {
	s := newSearch(q)
	s.discs = append(s.discs, disc{radius: 100, kind: of})
	level := layer{low: -100, high: -100, highest: -100}
	return s, &label{
		disc: len(s.discs) - 1, side: onLeft, before: &label{}, slack: 1000, layers: []*layer{&level},
		leg: tangent{to: geometry.Point{Y: -100}, along: geometry.Point{X: 1}, length: 1000},
	}
}

// goesOn tells whether a way that comes to a disc may turn by so much there.
func goesOn(of kind, turn float64) bool {
	s, l := round(hall(), of)
	s.offer(l, 0, either, tangent{along: turnedBy(turn), length: 100})
	return len(s.queue.steps) > 0
}

func TestHowMuchAWayTurnsRoundOneThing(t *testing.T) {
	for turn, may := range map[float64]bool{10: true, 100: true, 169: true, 171: false, 179: false} {
		assert.Equal(t, may, goesOn(aCorner, turn*degrees), "%v degrees", turn)
	}
}

// At a place where it may turn a way turns by what a hand bends; straight on is a leg of its own, past no such place.
func TestHowMuchAWayTurnsWhereItMay(t *testing.T) {
	for turn, may := range map[float64]bool{0: false, 0.3: false, 1.9: false, 2.1: true, 15: true} {
		assert.Equal(t, may, goesOn(leaving, turn*degrees), "%v degrees", turn)
		assert.Equal(t, may, goesOn(coming, turn*degrees), "%v degrees", turn)
	}
	assert.True(t, goesOn(aCorner, 0.3*degrees), "a thing is passed by as little as it takes")
}

// No corner that stands for a bend turns by more than 100 degrees, nor stands farther off than such a one does.
func TestHowFarOffCornersStand(t *testing.T) {
	for turn, corners := range map[float64]int{0.3: 0, 1.9: 0, 2.1: 1, 45: 1, 99: 1, 101: 2, 150: 2, 170: 2} {
		s, l := round(hall(), aCorner)
		list := s.bends(&s.discs[l.disc], l, &label{arc: turn * degrees})
		assert.Len(t, list, corners, "%v degrees", turn)
		for _, c := range list {
			assert.LessOrEqual(t, c.at.Norm(), 100/math.Cos(50*degrees)+1e-9, "%v degrees", turn)
		}
	}
}

// An arc is looked at by chords: what is kept from a thing beside it is missed by a mm round a disc of 100 at the most.
func TestHowNearAnArcComesToWhatIsBesideIt(t *testing.T) {
	for need, keeps := range map[float64]bool{30: true, 49.9: true, 51.1: false, 70: false, 90: false} {
		thing := geometry.Prism{Footprint: geometry.NewRound(geometry.Point{X: 151}.Turn(-45), 1), Low: -1000, High: 1000}
		s, l := round(hall(Obstacle{Prism: thing, Need: need}), aCorner)
		layers := s.round(l, &label{arc: 90 * degrees, leg: tangent{from: geometry.Point{X: 100}}})
		assert.Equal(t, keeps, len(layers) > 0, "%v mm", need)
	}
}

// A way with less of its last leg to spare than any bend takes, three radii, is no better than one that has more.
func TestHowMuchRoomOfALegIsEnough(t *testing.T) {
	for radii, enough := range map[float64]bool{0: false, 1: false, 2.9: false, 3.1: true, 4: true, 20: true} {
		s, l := round(hall(), aGoal)
		less, more := *l, *l
		less.side, less.slack, more.side, more.slack = either, radii*s.q.Bend, either, 25*s.q.Bend
		assert.Equal(t, enough, s.beats(&less, &more), "%v radii", radii)
		assert.True(t, s.beats(&more, &less))
	}
}

// Another way is proposed beside the shortest one unless it is longer by more than a tenth.
func TestHowMuchLongerAnotherWayIs(t *testing.T) {
	for _, c := range []struct {
		low  float64 // how far a wall reaches to the side that is the longer way round
		both bool
	}{{-400, true}, {-1200, false}} {
		q := hall(Obstacle{Prism: geometry.Prism{
			Footprint: geometry.NewRectangle(geometry.Point{X: -20, Y: c.low}, geometry.Point{X: 20, Y: 300}, 0), Low: -1000, High: 1000,
		}, Need: 100})
		ways := Find(context.Background(), q, 40, nil)
		require.NotEmpty(t, ways)
		aside := false
		for _, w := range ways {
			assert.LessOrEqual(t, w.Length, ways[0].Length*1.1+1e-9)
			for _, corner := range w.Corners {
				aside = aside || corner.Y < c.low
			}
		}
		assert.Equal(t, c.both, aside, "%v", c.low)
	}
}

// A layer goes on into what is free above or below it as far as it touches that, but for rounding.
func TestHowFarAboveALayerItGoesOn(t *testing.T) {
	before := []*layer{{low: -150, high: -100, highest: -100}}
	for beyond, goes := range map[float64]bool{-10: true, 0: true, 0.9e-6: true, 1.1e-6: false, 1: false} {
		above := [][2]float64{{-100 + beyond, -50}}
		assert.Equal(t, goes, len(cross(before, 0, 0, 100, math.Inf(-1), above)) > 0, "%v above", beyond)
		below := [][2]float64{{-200, -150 - beyond}}
		assert.Equal(t, goes, len(cross(before, 0, 0, 100, math.Inf(-1), below)) > 0, "%v below", beyond)
	}
}

// Where a way turns to leave its start or to come to a goal, it does nothing else.
func TestWhichPlacesFollowWhich(t *testing.T) {
	start, corner, leave, below := disc{kind: theStart}, disc{kind: aCorner}, disc{kind: leaving}, disc{kind: belowStart}
	come, own, another := disc{kind: coming, goal: 1}, disc{kind: aGoal, goal: 1}, disc{kind: aGoal, goal: 2}
	for _, c := range []struct {
		name     string
		from, to disc
		may      bool
	}{
		{"from the start round a corner", start, corner, true}, {"from the start", start, leave, true}, {"straight down", start, below, true},
		{"on from where it left", leave, corner, true}, {"to where it may leave, from elsewhere", corner, leave, false},
		{"down where it began, from elsewhere", corner, below, false}, {"back to the start", corner, start, false}, {"on to a goal", corner, own, true},
		{"to where it comes to a goal", corner, come, true}, {"from there to the goal", come, own, true},
		{"from there to another", come, another, false}, {"from there on", come, corner, false},
	} {
		assert.Equal(t, c.may, follows(&c.from, &c.to), c.name)
	}
}

// Whoever is asked to stop before the first look looks at nothing, and says so.
func TestASearchThatIsOverBeforeItBegins(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	var told []int
	assert.Empty(t, Find(ctx, hall(), 1, func(tried int) { told = append(told, tried) }))
	assert.Equal(t, []int{0}, told)
}

// A corner is moved along each axis and between each two, there and back.
func TestACornerIsMovedBothWays(t *testing.T) {
	seen := map[geometry.Point3]bool{}
	for _, w := range ways {
		seen[w] = true
	}
	assert.Len(t, seen, 6+12)
	for w := range seen {
		assert.Contains(t, seen, w.Scale(-1).Add(geometry.Point3{}), "back from %v", w)
	}
}

// A corner that rounding puts beyond the end of a way is as high as the end.
func TestTheHeightOfACornerBeyondTheEnd(t *testing.T) {
	plan := []placed{{geometry.Point{}, 0}, {geometry.Point{X: 300}, 300 + 1e-9}, {geometry.Point{X: 300, Y: 50}, 300}}
	corners := lift(plan, []gate{{0, -100, -100}, {300, -130, -130}})
	require.Len(t, corners, 3)
	assert.Equal(t, -130., corners[1].Z)
}
