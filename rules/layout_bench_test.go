package rules

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Three layouts come a moment after their key: a second is soon enough, five are not. The sample has little room, and a fuel line.
func BenchmarkLayouts(b *testing.B) {
	full := crowded(60, true)
	full.RunChecks = vehicles.InFull
	for _, job := range []vehicles.Job{vehicles.Demo(), crowded(60, true), full} {
		result, faults := Judge(job, Builtin())
		require.Empty(b, faults)
		b.Run(fmt.Sprintf("%d/in full=%v", len(job.Obstructions), job.RunChecks == vehicles.InFull), func(b *testing.B) {
			for b.Loop() {
				_, err := FindLayouts(b.Context(), &result, 2, func(Progress) {})
				require.NoError(b, err)
			}
		})
	}
}
