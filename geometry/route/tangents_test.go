package route_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
)

// Among discs a shortest way is made of common tangents and of arcs between them, so its length has a closed form: of a taut belt round
// pulleys, as any book of plane geometry has it. Here each disc is a round thing with what is kept from it.

// disc is a round thing from floor to ground of which a way keeps clear by radius from its middle.
func disc(x, y, radius float64) route.Obstacle {
	return route.Obstacle{Need: radius - 10, Prism: geometry.Prism{Footprint: geometry.NewRound(pt{X: x, Y: y}, 10), Low: -1000, High: 1000}}
}

// flat is a question in plan alone, from (0, 0) to (1000, y), round discs.
func flat(y float64, discs ...route.Obstacle) route.Query {
	return route.Query{
		From: pt3{Z: -45}, To: goal(1000, y, -45), Min: pt3{X: -2000, Y: -2000, Z: -300}, Max: pt3{X: 3000, Y: 2000, Z: -45},
		Fall: math.Inf(-1), Obstacles: discs,
	}
}

// tangent is how long a tangent is from a place at a distance from the middle of a circle, and the angle at that middle between the two.
func tangent(distance, radius float64) (length, angle float64) {
	return math.Sqrt(distance*distance - radius*radius), math.Acos(radius / distance)
}

func TestTheShortestWayRoundDiscsHasItsClosedForm(t *testing.T) {
	// One disc of 150 in the middle of the way: a tangent either side and the arc that is left of half a turn.
	leg, angle := tangent(500, 150)
	one := 2*leg + 150*(math.Pi-2*angle)

	// One that lies 60 aside: the way goes round on the other side of its middle.
	leg, angle = tangent(math.Hypot(500, 60), 150)
	aside := 2*leg + 150*(math.Pi-2*angle-2*math.Atan2(60, 500))

	// Two of 100, both passed on one side: along the tangent that is as long as they are apart.
	leg, angle = tangent(300, 100)
	belt := 2*leg + 400 + 2*100*(math.Pi/2-angle)

	// Two of 100 and 200, both on one side: the tangent leans by what the larger is larger.
	lean := math.Asin((200 - 100) / 400.0)
	legA, angleA := tangent(300, 100)
	legB, angleB := tangent(300, 200)
	unlike := legA + legB + math.Sqrt(400*400-100*100) + 100*(math.Pi/2-lean-angleA) + 200*(math.Pi/2+lean-angleB)

	// One above and one below: the tangent crosses between them.
	q, p := pt{X: 350, Y: 80}, pt{X: 650, Y: -80}
	apart := p.Sub(q).Norm()
	cross := math.Sqrt(apart*apart - 4*150*150)
	leg, angle = tangent(q.Norm(), 150)
	// At the first disc, as an angle from the x axis: where the tangent from the start touches, and where the one that crosses leaves.
	touches := math.Atan2(-q.Y, -q.X) + angle
	leaves := math.Atan2(p.Y-q.Y, p.X-q.X) - math.Acos(2*150/apart)
	arc := math.Mod(leaves-touches+4*math.Pi, 2*math.Pi)
	crossed := 2*leg + cross + 2*150*arc

	for _, c := range []struct {
		name string
		q    route.Query
		want float64
	}{
		{"one", flat(0, disc(500, 0, 150)), one},
		{"one that lies aside", flat(0, disc(500, 60, 150)), aside},
		{"two on one side", flat(0, disc(300, 0, 100), disc(700, 0, 100), disc(500, -400, 400)), belt},
		{"two of two sizes on one side", flat(0, disc(300, 0, 100), disc(700, 0, 200), disc(500, -500, 490)), unlike},
		{"one on either side", flat(0, disc(q.X, q.Y, 150), disc(p.X, p.Y, 150), disc(350, 500, 300), disc(650, -500, 300)), crossed},
	} {
		t.Run(c.name, func(t *testing.T) {
			ways := route.Find(context.Background(), &c.q, 1, nil)
			require.Len(t, ways, 1)
			assert.InDelta(t, c.want, ways[0].Length, 1e-6, "%v", ways[0].Corners)
			t.Logf("%.4f, in closed form %.4f", ways[0].Length, c.want)
		})
	}
}
