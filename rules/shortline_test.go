package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Of a fuel line that is no longer than what counts as being at its stub, all counts, from its very beginning: where that is what is nearest to the exhaust, their
// distance is that of its first point, looked for here all along the exhaust.
func TestAShortFuelLineIsLookedAtFromItsBeginning(t *testing.T) {
	job := vehicles.Demo()
	pipe, there := job.Stub(vehicles.ExhaustRun)
	require.True(t, there)
	stub, _ := job.Stub(vehicles.FuelRun)
	way := pipe.Plan().Sub(stub.Plan())
	begin := stub.Plan().Add(way.Scale(0.4))
	line := *job.Fuel
	line.Hanging = vehicles.Hanging{}
	line.Path = vehicles.List[vehicles.RunPoint]{{X: begin.X, Y: begin.Y, Drop: 80}, {X: stub.X, Y: stub.Y, Drop: -stub.Z}}
	r := judged(t, job.WithRun(vehicles.FuelRun, &line))
	require.Less(t, r.Plan.Fuel.Line.Length(), float64(AtStub))
	require.Greater(t, r.Plan.Fuel.Line.Length(), 30.0)
	from := r.Plan.Fuel.Path[0]
	least := math.Inf(1)
	for along := 0.0; along <= AtStub; along += 0.01 {
		least = min(least, r.Plan.Exhaust.Line.At(along).Sub(from).Norm())
	}
	for i := range r.Findings {
		if f := &r.Findings[i]; f.Subject.Sort == TheExhaust && f.Against.Sort == TheFuelStub {
			assert.InDelta(t, least-r.Plan.Exhaust.Radius-r.Plan.Fuel.Radius, f.Value, 0.01)
			return
		}
	}
	t.Fatal("it is not judged")
}
