package field

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// moved returns limits as they are when the floor and all on it are moved.
func (l Limits) moved(by geometry.Point) Limits {
	m := Limits{Min: l.Min.Add(by), Max: l.Max.Add(by), EdgeNeed: l.EdgeNeed}
	for _, o := range l.Obstacles {
		m.Obstacles = append(m.Obstacles, Obstacle{o.Footprint.Moved(0, by), o.Need})
	}
	return m
}

// mirrored returns limits as they are from the other side of the floor.
func (l Limits) mirrored() Limits {
	m := Limits{Min: pt(l.Min.X, -l.Max.Y), Max: pt(l.Max.X, -l.Min.Y), EdgeNeed: l.EdgeNeed}
	for _, o := range l.Obstacles {
		m.Obstacles = append(m.Obstacles, Obstacle{mirroredShape(o.Footprint), o.Need})
	}
	return m
}

func mirroredShape(f geometry.Footprint) geometry.Footprint {
	over := func(p geometry.Point) geometry.Point { return pt(p.X, -p.Y) }
	switch f.Shape {
	case geometry.Round:
		return geometry.NewRound(over(f.Middle), f.Radius)
	case geometry.Line:
		var path []geometry.Point
		for _, p := range f.Path {
			path = append(path, over(p))
		}
		return geometry.NewLine(path, f.Radius)
	}
	middle := over(f.Middle)
	return geometry.NewRectangle(middle.Sub(f.Half), middle.Add(f.Half), -f.Turn)
}

// A floor need not begin at the datum: its areas are the same wherever it is, and however coarse the grid is that they are looked
// for on. It is moved by whole steps, so that the nodes lie the same way to all that stands there.
func TestAreasMoveWithTheFloor(t *testing.T) {
	r := seeded(t, 31)
	several := 0
	for range rounds(120) {
		l, step := tight(r), []float64{5, 20, 32}[r.IntN(3)]
		by := pt(float64(r.IntN(200)-100), float64(r.IntN(200)-100)).Scale(step)
		here, there := NewMargins(l).Map(step, 1).Areas(), NewMargins(l.moved(by)).Map(step, 2).Areas()
		require.Len(t, there, len(here), "by %v, step %v: %+v", by, step, l)
		if len(here) > 1 {
			several++
		}
		for i := range here {
			require.InDelta(t, here[i].Best.Margin, there[i].Best.Margin, 2*finest)
			require.InDelta(t, here[i].Size, there[i].Size, 1e-3*here[i].Size+1e-6)
		}
	}
	require.Greater(t, several, rounds(40))
}

// Nor does it matter from which side of the floor one looks.
func TestAreasAreTheSameInAMirror(t *testing.T) {
	r := seeded(t, 32)
	for range rounds(120) {
		l := tight(r)
		here, there := NewMargins(l).Map(5, 1).Areas(), NewMargins(l.mirrored()).Map(5, 1).Areas()
		require.Len(t, there, len(here), "%+v", l)
		for i := range here {
			require.InDelta(t, here[i].Best.Margin, there[i].Best.Margin, 2*finest, "%+v", l)
		}
	}
}

// Floors, looked for among some thousands, on which one side of a cell is seen from the other alone where its corners are looked at carelessly.
func TestWhatASideOfACellHidesIsTheSameInAMirror(t *testing.T) {
	for _, seed := range []uint64{118, 262, 316, 328, 456, 724, 1093, 1362, 1371, 1559} {
		l := tight(rand.New(rand.NewPCG(seed, 9)))
		require.Len(t, NewMargins(l.mirrored()).Map(20, 1).Areas(), len(NewMargins(l).Map(20, 1).Areas()), "floor %d", seed)
	}
}

// Floors, looked for likewise, on which a way between nodes is closed, and what is round it lies on one side of it alone.
func TestWhatIsRoundAClosedWayIsTheSameInAMirror(t *testing.T) {
	for _, seed := range []uint64{498, 2391, 4116, 5183, 5485, 5868} {
		l := tight(rand.New(rand.NewPCG(seed, 9)))
		require.Len(t, NewMargins(l.mirrored()).Map(20, 1).Areas(), len(NewMargins(l).Map(20, 1).Areas()), "floor %d", seed)
	}
}

// Neither place that is asked for depends on where the floor is, or on which side of it one is.
func TestPlacesMoveWithTheFloor(t *testing.T) {
	r := seeded(t, 33)
	for range rounds(120) {
		l, by := tight(r), pt(r.NormFloat64()*900, r.NormFloat64()*900)
		from := pt(r.Float64()*150, r.Float64()*100)
		near, ok := NewMargins(l).Nearest(from)
		for _, c := range []struct {
			l    Limits
			from geometry.Point
		}{{l.moved(by), from.Add(by)}, {l.mirrored(), pt(from.X, -from.Y)}} {
			other, found := NewMargins(c.l).Nearest(c.from)
			require.Equal(t, ok, found)
			if ok {
				require.InDelta(t, near.At.Sub(from).Norm(), other.At.Sub(c.from).Norm(), 2*finest)
			}
			require.InDelta(t, NewMargins(l).Roomiest(0.01).Margin, NewMargins(c.l).Roomiest(0.01).Margin, 0.02)
		}
	}
}

// By hand, on a grid of 20 mm: places whose one node is in a slot of 2 mm, and their room between the nodes. The best place of each is
// farther from that node than half a step.
func TestAreasWhoseRoomIsBetweenTheNodes(t *testing.T) {
	// What stands there overlaps: between two that only touch there is room for a margin of 0.
	walls := func(around ...Obstacle) []Obstacle {
		return append(around,
			box(540, 100, 599, 300), box(619, 100, 680, 300), box(590, 100, 640, 150), box(590, 250, 640, 300))
	}
	for _, c := range []struct {
		name      string
		obstacles []Obstacle
		margin    float64 // of the place between the walls
	}{
		// 14 mm wide, and a little more before the slot: r = 619 - x is the distance from its corners, r² = (14 - r)² + 1.
		{"a chamber beside the slot", walls(box(590, 140, 605, 199), box(590, 201, 605, 260)), 197.0 / 28},
		{"a chamber in the cells of its one node alone",
			walls(box(590, 140, 605, 199), box(590, 201, 605, 260), box(590, 140, 640, 181), box(590, 219, 640, 260)), 197.0 / 28},
		{"a chamber beyond a bend", walls(box(590, 140, 613, 199), box(590, 201, 603, 260), box(602, 201, 607, 205), box(617, 140, 630, 260)), 7},
		{"the slot alone", walls(box(590, 140, 630, 199), box(590, 201, 630, 260)), 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, by := range []geometry.Point{{}, pt(40, -880), pt(-1200, 60)} {
				l := Limits{Max: pt(1000, 500), Obstacles: c.obstacles}.moved(by)
				got := NewMargins(l).Map(20, 1).Areas()
				require.Len(t, got, 2, "%v", by)
				assert.InDelta(t, c.margin, got[1].Best.Margin, finest, "%v: %v", by, got[1])
				assert.InDelta(t, c.margin, slowly(l, got[1].Best.At), finest)
			}
		})
	}
}
