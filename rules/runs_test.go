package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// What a run above the floor comes near to is shown where it does.
func TestARunAboveTheFloorShowsWhereItIs(t *testing.T) {
	result := judged(t, example(t, "runs.fitting", "pass-half-a-mm-above"))
	f := meant(result, throughFitting, map[string]any{})
	require.NotNil(t, f)
	require.Len(t, f.Points(), 2)
	a, b := f.At[0], f.At[1]
	assert.Equal(t, 500.0, a.Y)
	assert.InDelta(t, 0.5, a.Z, 1e-9)
	assert.Equal(t, 520.0, b.Y)
	assert.Equal(t, 30.0, b.Z)
	assert.InDelta(t, a.X, b.X, 1e-9)
}

// Room below the pump is taken straight down, and both heights are uncertain: 2 mm either way each.
func TestRoomBelowThePumpIsTakenStraightDown(t *testing.T) {
	f := one(t, example(t, "fuel.pump-reach", "fail-a-tray-below"), "fuel.pump-reach", "tray")
	assert.Equal(t, geometry.Point3{Z: -1}, f.N)
	assert.InDelta(t, math.Sqrt(8.0/3), f.Sigma, 1e-9)
	assert.Equal(t, f.At[0].Plan(), f.At[1].Plan())
	assert.Equal(t, f.Value, f.At[0].Z-f.At[1].Z)
}

// What moves counts as moving 100 up and 100 down while nobody has said how far.
func TestTheUsualTravelIsAHundredEitherWay(t *testing.T) {
	result := judged(t, vehicles.Demo())
	j := newJudge(&result.Job, &result.Plan, result.Book)
	seen := 0
	for i, o := range result.Job.Obstructions {
		moved, ok := j.travels(i)
		if !ok || o.Travel.Set {
			continue
		}
		seen++
		still := result.Plan.Obstructions[i].Prism
		assert.Equal(t, [2]float64{still.Low - 100, still.High + 100}, [2]float64{moved.Low, moved.High}, o.Name)
	}
	assert.NotZero(t, seen)
}
