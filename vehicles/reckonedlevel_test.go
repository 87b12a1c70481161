package vehicles

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Openings are taped level and a drilled hole on the floor's underside: by the reckoner of what lies below, its zeros taken away
// or its point put at the floor.
func TestOpeningsAndTheHoleAreAsTheModelSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		things := job.Obstructions
		job.Obstructions = nil
		for _, o := range things {
			job.Openings = append(job.Openings, Opening{Name: o.Name, Kind: "door", Place: o.Place, Drop: Span{-200, 10, true}})
		}
		hole := Pair{bareX(drawn(t, "hole", 400, 2900)), bareX(drawn(t, "across", -700, 700))}
		job = job.WithCut(Cut{At: [2]float64{1000, 100}, Across: 127, Drilled: &hole})
		plan, faults := Reduce(job)
		require.Empty(t, faults)

		flat := job
		flat.Datum.HookBelow, flat.Datum.SideBelow = Number{}, Number{}
		r := reckoner{job: flat}
		for i, o := range things {
			f, edges := r.thing(o)
			got := &plan.Openings[i].Placed
			low, high := f.Bounds()
			isLow, isHigh := got.Prism.Footprint.Bounds()
			require.InDelta(t, 0, isLow.Sub(low).Norm()+isHigh.Sub(high).Norm(), 1e-8)
			require.InDelta(t, math.Sqrt(max(edges[0].variance, edges[1].variance)), got.X.U, 1e-9)
			require.InDelta(t, math.Sqrt(max(edges[2].variance, edges[3].variance)), got.Y.U, 1e-9)
			require.False(t, got.Loose, "a level tape does not slope")
			require.Equal(t, [2]float64{-10, 200}, [2]float64{got.Prism.Low, got.Prism.High}, "up beside the floor")
		}
		onFloor := reckoner{job: job}
		y := onFloor.along(1, hole[1], reckoned{}, Some(0), 0)
		x := onFloor.along(0, hole[0], reckoned{}, Some(0), y.at)
		require.InDelta(t, x.at, plan.Cut.At.X, 1e-9)
		require.InDelta(t, y.at, plan.Cut.At.Y, 1e-9)
		require.InDelta(t, math.Sqrt(x.variance), plan.Cut.UX, 1e-9)
		require.InDelta(t, math.Sqrt(y.variance), plan.Cut.UY, 1e-9)
	})
}
