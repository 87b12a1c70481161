package rules

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Three layouts come a moment after their key: a second is soon enough, five are not. The sample has little room, and a fuel line.
func BenchmarkLayouts(b *testing.B) {
	for _, job := range []vehicles.Job{vehicles.Demo(), crowded(60, true)} {
		result, faults := Judge(job, Builtin())
		require.Empty(b, faults)
		b.Run(fmt.Sprint(len(job.Obstructions)), func(b *testing.B) {
			for b.Loop() {
				_, err := FindLayouts(b.Context(), &result, 2, func(Progress) {})
				require.NoError(b, err)
			}
		})
	}
}
