package route_test

import (
	"context"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
)

// upright is a worth that wants a run's corners at certain places, by how far they are off in all.
func upright(wanted []pt3) func([]pt3, float64) route.Worth {
	return func(corners []pt3, _ float64) route.Worth {
		short := 1000 * math.Abs(float64(len(corners)-len(wanted)))
		for i := 1; i < min(len(corners), len(wanted)); i++ {
			short += corners[i].Sub(wanted[i]).Norm()
		}
		return route.Worth{Short: short, Length: geometry.Rounded(corners, 0).Length()}
	}
}

// No run is worked out twice: the corners that were asked about differ, all of them.
func TestNoRunIsAskedAboutTwice(t *testing.T) {
	q := open()
	q.Obstacles = []route.Obstacle{box(300, -200, 700, 150, -200, 0, 30), box(500, -100, 900, 300, -400, -60, 30)}
	var asked [][]pt3
	worth := worthOf(&q)
	s := route.Straightener{Bend: q.Bend, Steps: []float64{32, 8, 2, 1}, Worth: func(corners []pt3, most float64) route.Worth {
		asked = append(asked, slices.Clone(corners))
		return worth(corners, most)
	}}
	for _, w := range route.Find(context.Background(), &q, 1, nil) {
		s.Straighten(context.Background(), w.Corners)
	}
	require.NotEmpty(t, asked)
	for i, a := range asked {
		for _, b := range asked[:i] {
			require.NotEqual(t, a, b)
		}
	}
}

// Corners go where they are worth most, a whole mm, as far as no single move makes them better; the first stays where it is.
func TestCornersGoWhereTheyAreWorthMost(t *testing.T) {
	wanted := []pt3{{X: 0.4, Y: 0.4}, {X: 330, Y: -95, Z: -41}, {X: 620, Y: 77, Z: -60}, {X: 1000}}
	from := []pt3{wanted[0], {X: 300.2, Y: 10.7, Z: -20}, {X: 700, Y: 0.2, Z: -90}, {X: 1000}}
	s := route.Straightener{Worth: upright(wanted), Steps: []float64{32, 8, 2, 1}}
	corners, worth := s.Straighten(context.Background(), from)
	assert.Equal(t, wanted, corners)
	assert.Zero(t, worth.Short)
	assert.Equal(t, pt3{X: 300.2, Y: 10.7, Z: -20}, from[1], "what was given stays as it is")
}

// A corner that is not needed is left out.
func TestACornerTooManyIsLeftOut(t *testing.T) {
	q := open()
	from := []pt3{q.From, {X: 200, Y: 90, Z: -100}, {X: 500, Y: -40, Z: -100}, q.To[0].At.At(q.To[0].High)}
	s := route.Straightener{Worth: worthOf(&q), Steps: []float64{32, 1}}
	corners, worth := s.Straighten(context.Background(), from)
	assert.Len(t, corners, 2)
	assert.InDelta(t, from[3].Sub(q.From).Norm(), worth.Length, 1e-9)
}

// The last corner moves where it may, and nowhere else.
func TestTheLastCornerStaysWhereItMay(t *testing.T) {
	from := []pt3{{}, {X: 500, Y: 300, Z: -50}, {X: 1000, Y: 300, Z: -50}}
	q := route.Query{From: from[0], Max: pt3{X: 2000, Y: 2000}, Min: pt3{X: -2000, Y: -2000, Z: -2000}, Fall: math.Inf(-1)}
	s := route.Straightener{Worth: worthOf(&q), Steps: []float64{32, 8, 2, 1}}
	corners, _ := s.Straighten(context.Background(), from)
	assert.Equal(t, from[2], corners[len(corners)-1], "nobody lets it move")
	s.LastMay = func(at pt3) bool { return at.X == 1000 && at.Y >= 120 && at.Z <= 0 }
	corners, worth := s.Straighten(context.Background(), from)
	assert.Equal(t, pt3{X: 1000, Y: 120, Z: 0}, corners[len(corners)-1])
	assert.InDelta(t, math.Hypot(1000, 120), worth.Length, 1e-9)
}

// What is stopped is what it was, but for whole mm.
func TestStraighteningThatIsStopped(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	from := []pt3{{}, {X: 499.6, Y: 300.2, Z: -50}, {X: 1000}}
	s := route.Straightener{Worth: upright(from), Steps: []float64{32}}
	corners, _ := s.Straighten(ctx, from)
	assert.Equal(t, []pt3{{}, {X: 500, Y: 300, Z: -50}, {X: 1000}}, corners)
}

// Worth is compared by what falls short first, then by length, rounding aside.
func TestWhichRunIsWorthMore(t *testing.T) {
	for _, c := range []struct {
		name   string
		a, b   route.Worth
		better bool
	}{
		{"shorter", route.Worth{0, 99}, route.Worth{0, 100}, true},
		{"the same", route.Worth{0, 100}, route.Worth{0, 100}, false},
		{"shorter by rounding", route.Worth{0, 100 - 1e-7}, route.Worth{0, 100}, false},
		{"falls short of less", route.Worth{1, 200}, route.Worth{2, 100}, true},
		{"falls short of more", route.Worth{2, 100}, route.Worth{1, 200}, false},
		{"falls short of more by rounding", route.Worth{1 + 1e-7, 99}, route.Worth{1, 100}, true},
	} {
		assert.Equal(t, c.better, c.a.Better(c.b), c.name)
	}
}

// Where Heads is set a run that falls short keeps the corner that its last leg has its direction from, though it would fall short of less
// without; one that hardly turns there does not.
func TestTheCornerThatTurnsAMouthIsKept(t *testing.T) {
	turns := []pt3{{}, {X: 200}, {X: 200, Y: 100}}
	hardly := []pt3{{}, {X: 200}, {X: 300, Y: 20}}
	for _, c := range []struct {
		name  string
		run   []pt3
		heads bool
		left  int
	}{
		{"kept", turns, true, 3},
		{"not asked for", turns, false, 2},
		{"turns by less than elsewhere", hardly, true, 2},
	} {
		s := route.Straightener{Heads: c.heads, Steps: []float64{1}, Worth: func(corners []pt3, _ float64) route.Worth {
			return route.Worth{Short: float64(len(corners)), Length: 1}
		}}
		corners, _ := s.Straighten(context.Background(), c.run)
		assert.Len(t, corners, c.left, c.name)
	}
}

// Corners that are one in whole mm are one: a run that holds several twice could not be judged, and no single move would make it better.
func TestCornersThatAreOneInWholeMillimetresAreOne(t *testing.T) {
	length := func(corners []pt3, _ float64) (w route.Worth) {
		for i := 1; i < len(corners); i++ {
			leg := corners[i].Sub(corners[i-1]).Norm()
			if w.Length += leg; leg == 0 {
				w.Short = math.Inf(1) // without a direction nothing is known of it
			}
		}
		return w
	}
	s := route.Straightener{Worth: length, Tries: 1}
	end := pt3{X: 300.2}
	corners, worth := s.Straighten(context.Background(), []pt3{{}, {X: 100.2, Y: 50}, {X: 99.9, Y: 50.3}, {X: 200.4}, {X: 200.2, Z: 0.4}, {X: 300, Y: 0.2}, end})
	assert.Equal(t, []pt3{{}, {X: 100, Y: 50}, {X: 200}, end}, corners)
	assert.Zero(t, worth.Short)
}
