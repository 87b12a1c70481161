package field

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// box is an obstacle with nothing asked for round it.
func box(x0, y0, x1, y1 float64) Obstacle {
	return Obstacle{Footprint: geometry.NewRectangle(pt(x0, y0), pt(x1, y1), 0)}
}

func TestAreasByHand(t *testing.T) {
	floor := Limits{Max: pt(1000, 500)}
	for _, c := range []struct {
		name      string
		obstacles []Obstacle
		want      []Site // At is only looked at where it can be but one
	}{
		{"bare floor", nil, []Site{{Margin: 250, Limit: Edge}}},
		{"crossmember from edge to edge", []Obstacle{box(600, -10, 700, 510)},
			[]Site{{Margin: 250, Limit: Edge}, {Margin: 150, Limit: 0}}},
		{"a channel of 2 mm between nodes joins", []Obstacle{box(600, -10, 700, 251), box(600, 253, 700, 510)},
			[]Site{{Margin: 250, Limit: Edge}}},
		{"an upright channel of 2 mm between nodes joins", []Obstacle{box(-10, 200, 501, 300), box(503, 200, 1010, 300)},
			[]Site{{Margin: 100, Limit: Edge}}},
		{"a closed channel parts", []Obstacle{box(600, -10, 700, 251), box(600, 251, 700, 510)},
			[]Site{{Margin: 250, Limit: Edge}, {Margin: 150, Limit: 0}}},
		{"an island of 3 mm between nodes", []Obstacle{
			box(600, -10, 700, 251), box(600, 254, 700, 510), box(600, 240, 651, 260), box(654, 240, 700, 260)},
			[]Site{{Margin: 250, Limit: Edge}, {Margin: 150, Limit: 0}, {At: pt(652.5, 252.5), Margin: 1.5, Limit: 0}}},
		{"a wall of 1 mm between nodes parts", []Obstacle{box(601, -10, 602, 510)},
			[]Site{{Margin: 250, Limit: Edge}, {Margin: 199, Limit: 0}}},
		{"a wall of 1 mm between nodes with a gap of 2 mm", []Obstacle{box(601, -10, 602, 301), box(601, 303, 602, 510)},
			[]Site{{Margin: 250, Limit: Edge}}},
		{"nothing open", []Obstacle{box(-10, -10, 1010, 510)}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			l := floor
			l.Obstacles = c.obstacles
			got := NewMargins(l).Map(5, 1).Areas()
			require.Len(t, got, len(c.want))
			for i, a := range got {
				assert.Equal(t, letters(i), a.Name)
				assert.InDelta(t, c.want[i].Margin, a.Best.Margin, 0.01)
				if c.want[i].At != pt(0, 0) {
					assert.InDelta(t, 0, a.Best.At.Sub(c.want[i].At).Norm(), 0.05)
				}
				assert.InDelta(t, a.Best.Margin, NewMargins(l).only(a.Best.Limit, a.Best.At), 1e-9)
			}
		})
	}
}

func TestSizeOfAreas(t *testing.T) {
	l := Limits{Max: pt(1000, 500), Obstacles: []Obstacle{box(600, -10, 700, 510)}}
	got := NewMargins(l).Map(5, 1).Areas()
	assert.InEpsilon(t, 600*500, got[0].Size, 0.03)
	assert.InEpsilon(t, 300*500, got[1].Size, 0.03)
}

func TestLetters(t *testing.T) {
	for i, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 51: "AZ", 52: "BA", 701: "ZZ", 702: "AAA"} {
		assert.Equal(t, want, letters(i))
	}
}

// The areas by a fine grid and a flood, on floors so tight that necks and islands are about as small as a step of 5 mm.
func TestAreasAgainstAFlood(t *testing.T) {
	r := seeded(t, 5)
	compared := 0
	for range rounds(150) {
		l := tight(r)
		// Where a neck is open or closed by less than the areas promise to see, they may be taken either way.
		// What is too near by more than that is not measured any further.
		const sure, possible = 0.5, -0.1
		at := func(p geometry.Point) float64 { return above(possible-1, l, p) }
		f := finely(l, at)
		surely, perhaps := f.flood(sure), f.flood(possible)
		if len(surely) != len(perhaps) {
			continue
		}
		compared++
		var got []float64
		for _, a := range NewMargins(l).Map(5, 1+r.IntN(2)).Areas() {
			require.InDelta(t, slowly(l, a.Best.At), a.Best.Margin, 1e-9)
			got = append(got, a.Best.Margin)
		}
		require.GreaterOrEqual(t, len(got), len(surely), "%+v", l)
		for i, margin := range got {
			if i < len(surely) {
				require.InDelta(t, surely[i], margin, floodStep, "%+v", l)
			} else {
				require.Less(t, margin, 0.5+floodStep, "an area the flood has not: %+v", l)
			}
		}
	}
	require.Greater(t, compared, rounds(50))
}

// The same with something carried past what stands there, one way or another, and a shelf close above it: what has no more
// room than the shelf leaves is not narrow for that. Margins are those of At, held against their definition elsewhere.
func TestAreasOfWhatMayBeTurnedAgainstAFlood(t *testing.T) {
	r := seeded(t, 16)
	compared := 0
	for range 40 {
		l := tightTurned(r)
		m := NewMargins(l)
		at := func(p geometry.Point) float64 { return m.At(p).Margin }
		f := finely(l, at)
		surely, perhaps := f.flood(0.5), f.flood(-0.1)
		if len(surely) != len(perhaps) {
			continue
		}
		compared++
		got := m.AreasTo(0.05, 5, 1+r.IntN(2))
		require.GreaterOrEqual(t, len(got), len(surely), "%+v", l)
		for i, area := range got {
			require.InDelta(t, slowly(l, area.Best.At), area.Best.Margin, 1e-9)
			if i < len(surely) {
				require.InDelta(t, surely[i], area.Best.Margin, floodStep, "%+v", l)
			} else {
				require.Less(t, area.Best.Margin, 0.5+floodStep, "an area the flood has not: %+v", l)
			}
		}
	}
	require.Greater(t, compared, 15)
}

// tightTurned returns a small floor past whose things something is carried, one way or another.
func tightTurned(r *rand.Rand) Limits {
	l := Limits{Max: pt(150, 100), EdgeNeed: r.Float64() * 5}
	var things []geometry.Footprint
	for range 3 + r.IntN(5) {
		a := pt(r.Float64()*150, r.Float64()*100)
		things = append(things, geometry.NewRectangle(a, a.Add(pt(r.Float64()*40, r.Float64()*15)), float64(r.IntN(3))*45))
	}
	shelf, lift := geometry.NewRectangle(pt(-50, -50), pt(200, 200), 0), 0.6+3*r.Float64()
	for range 1 + r.IntN(4) {
		body := geometry.NewRectangle(pt(-8, -4), pt(14, 4), 0).Moved(float64(r.IntN(12))*30, pt(0, 0))
		way := []Constraint{Contained{body, l.Min, l.Max, 0}}
		for _, thing := range things {
			way = append(way, Carried{Body: body, Against: thing, Lift: -1})
		}
		if r.IntN(3) > 0 {
			way = append(way, Carried{Body: body, Against: shelf, Lift: lift})
		}
		l.Ways = append(l.Ways, way)
	}
	return l
}

// Under a shelf just above it all the floor is as open as without; there is just no more room than up to the shelf. It
// must not be searched for the openings of narrow places, square by square.
func TestAShelfAboveClosesNothing(t *testing.T) {
	body := geometry.NewRectangle(pt(-100, -50), pt(100, 50), 0)
	l := Limits{Max: pt(1000, 500), Constraints: []Constraint{Contained{body, pt(0, 0), pt(1000, 500), 0}}}
	shelf := Carried{Body: body, Against: geometry.NewRectangle(pt(0, 0), pt(1000, 500), 0)}
	for _, lift := range []float64{0, 2, 10} {
		shelf.Lift = lift
		low := l
		low.Constraints = append(low.Constraints[:1:1], shelf)
		m := NewMargins(low)
		require.Equal(t, NewMargins(l).all, m.closing().all)
		got := m.AreasTo(0.01, 20, 1)
		require.Len(t, got, 1)
		assert.InDelta(t, lift, got[0].Best.Margin, 1e-9)
	}
	shelf.Lift, shelf.Need = 2, 3
	l.Constraints = append(l.Constraints, shelf)
	assert.Empty(t, NewMargins(l).AreasTo(0.01, 20, 1), "one that is too low closes everything")
}

// tight returns a small floor with much on it.
func tight(r *rand.Rand) Limits {
	l := Limits{Max: pt(150, 100), EdgeNeed: r.Float64() * 5}
	for range 4 + r.IntN(10) {
		a, need := pt(r.Float64()*150, r.Float64()*100), r.Float64()*12
		f := geometry.NewRectangle(a, a.Add(pt(r.Float64()*50, r.Float64()*20)), float64(r.IntN(3))*45)
		if r.IntN(4) == 0 {
			f = geometry.NewLine([]geometry.Point{a, a.Add(pt(r.NormFloat64()*30, r.NormFloat64()*30)), a.Add(pt(30, 0))}, 2)
		}
		l.Obstacles = append(l.Obstacles, Obstacle{f, need})
	}
	return l
}

const floodStep = 0.25

// fineGrid are the margins all over a floor, floodStep apart.
type fineGrid struct {
	cols, rows int
	margins    []float64
}

func (g *fineGrid) node(k int) geometry.Point {
	return pt(float64(k%g.cols)*floodStep, float64(k/g.cols)*floodStep)
}

// finely is a floor's grid, of margins that are worked out once for all its floods.
func finely(l Limits, margin func(geometry.Point) float64) *fineGrid {
	g := &fineGrid{cols: int(l.Max.X/floodStep) + 1, rows: int(l.Max.Y/floodStep) + 1}
	g.margins = make([]float64, g.cols*g.rows)
	for k := range g.margins {
		g.margins[k] = margin(g.node(k))
	}
	return g
}

// flood returns the greatest margins, the greatest first, of the connected parts of the floor where the margin is at least
// level, leaving out those where it is nowhere as much as 0.5.
func (g *fineGrid) flood(level float64) (best []float64) {
	cols, rows, margins := g.cols, g.rows, g.margins
	var line []int
	seen := make([]bool, len(margins))
	for k := range margins {
		top := math.Inf(-1)
		for line = append(line, k); len(line) > 0; {
			at := line[len(line)-1]
			line = line[:len(line)-1]
			if seen[at] || margins[at] < level {
				continue
			}
			seen[at], top = true, max(top, margins[at])
			for _, d := range [4][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
				x, y := at%cols+d[0], at/cols+d[1]
				if x >= 0 && x < cols && y >= 0 && y < rows && !seen[y*cols+x] && margins[y*cols+x] >= level {
					line = append(line, y*cols+x)
				}
			}
		}
		if top >= 0.5 {
			best = append(best, top)
		}
	}
	slices.Sort(best)
	slices.Reverse(best)
	return best
}

// island is a floor that is all open but for a block with a hole in it, so wide and high from a place.
func island(at geometry.Point, w, h float64) Limits {
	return Limits{Max: pt(1000, 500), Obstacles: []Obstacle{
		box(at.X-50, at.Y-50, at.X, at.Y+50), box(at.X+w, at.Y-50, at.X+50, at.Y+50),
		box(at.X-50, at.Y-50, at.X+50, at.Y), box(at.X-50, at.Y+h, at.X+50, at.Y+50),
	}}
}

// An island a little wider than what is left out is told, though a place that is looked for less closely has less margin than that.
func TestAnIslandIsToldHoweverCloselyItIsLookedAt(t *testing.T) {
	for _, l := range []Limits{island(pt(394.33694430217355, 284.5235892814706), 0.1742427, 2.831956), island(pt(0.55030882, 327.29598274), 0.1718078, 2.844174)} {
		require.Len(t, NewMargins(l).Map(5, 1).Areas(), 2)
		for _, tolerance := range []float64{0.001, 0.05, 0.5, 3} {
			require.Len(t, NewMargins(l).AreasTo(tolerance, 5, 1), 2, "%v", tolerance)
		}
	}
}

// Islands from a sixth of a millimetre to a few across, anywhere between the nodes: each is found, with its best margin.
func TestSmallIslandsHaveTheirBestPlaces(t *testing.T) {
	r := seeded(t, 15)
	for range rounds(400) {
		at := pt(300+300*r.Float64(), 150+200*r.Float64())
		switch r.IntN(4) { // in the cells along an edge too
		case 0:
			at.X = 0.1 + 3*r.Float64()
		case 1:
			at.Y = 0.1 + 0.5*r.Float64()
		}
		w, h := 0.17+1.5*r.Float64(), 0.17+4*r.Float64()
		got := NewMargins(island(at, w, h)).Map(5, 1).Areas()
		require.Len(t, got, 2, "%v by %v", w, h)
		require.InDelta(t, min(w, h)/2, got[1].Best.Margin, finest)
	}
}
