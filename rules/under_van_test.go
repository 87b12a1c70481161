package rules

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// cramped is the demo with its cut where an intake has to lead to the rear and, as its mouth may not face forward, to turn at its end.
func cramped(t *testing.T) *Result {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	r := judged(t, job.WithCut(cut))
	return &r
}

// Where an intake to a place under the van breaks no rule, one is found that may end anywhere there, and anywhere at all; it is at most
// 1 % longer than the shortest to a place.
func TestAnIntakeUnderTheVanMayTurnAtItsEnd(t *testing.T) {
	r := cramped(t)
	for _, upright := range []bool{false, true} {
		var shortest float64
		for _, to := range []Target{toPlace(2480, 330, 136), toPlace(2365, 235, 140), toPlace(2285, 85, 223)} {
			to.Upright = upright
			found := FindRoute(context.Background(), r, vehicles.IntakeRun, to, nil)
			require.True(t, found.Found(), "%v, upright %v", *to.At, upright)
			shortest = found.Length
		}
		for _, edge := range []Edge{UnderVan, AnyEdge} {
			found := FindRoute(context.Background(), r, vehicles.IntakeRun, Target{Edge: edge, Upright: upright}, nil)
			require.True(t, found.Found(), "%s, upright %v", edge, upright)
			t.Logf("%s, upright %v: %.1f, to a place %.1f", edge, upright, found.Length, shortest)
			assert.LessOrEqual(t, found.Length, shortest*1.01, "%s, upright %v", edge, upright)
		}
	}
}

// A layout's intake may turn just before its mouth where no other way keeps what is asked, as one that is sought by itself may: on some random
// floors nothing else is found.
func TestALayoutsIntakeMayTurnBeforeItsMouth(t *testing.T) {
	const seed = 113
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	l := layouting{seeking: seeking{context.Background(), nil}}
	straight, turned := 0, 0
	for range 300 {
		job := randomFloor(r, vehicles.IntakeRun)
		k := l.rough(floorToSeek(t, job), vehicles.IntakeRun, Target{Edge: AnyEdge}, uprightly(demands[0]))
		before := k.course != nil && k.course.query.TurnBefore
		switch best := k.worked(); {
		case !best.keeps():
		case before || k.course.query.TurnBefore:
			turned++
			assert.Zero(t, k.trial(k.demand.judged, best.lower).worth(best.corners, 0, math.Inf(1)).Short)
		default:
			straight++
		}
	}
	t.Logf("%d as they come, %d turned before their mouths", straight, turned)
	assert.Positive(t, turned)
}
