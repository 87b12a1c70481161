package rules

import (
	"context"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// A run is sought while the fitter waits: to an edge, both together, or, which takes longest, where there is none and the nearest miss
// is told.
func BenchmarkFound(b *testing.B) {
	demo, faults := Judge(vehicles.Demo(), Builtin())
	require.Empty(b, faults)
	there := moved(b)
	b.Run("exhaust", func(b *testing.B) {
		for b.Loop() {
			FindRoute(context.Background(), there, vehicles.ExhaustRun, Target{Edge: LeftEdge}, nil)
		}
	})
	b.Run("pair", func(b *testing.B) {
		for b.Loop() {
			FindPair(context.Background(), there, nil)
		}
	})
	b.Run("miss", func(b *testing.B) {
		for b.Loop() {
			FindRoute(context.Background(), &demo, vehicles.ExhaustRun, Target{Edge: LeftEdge}, nil)
		}
	})
	b.Run("pair missed", func(b *testing.B) {
		for b.Loop() {
			FindPair(context.Background(), &demo, nil)
		}
	})
}
