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
		b.Run(fmt.Sprintf("%d/in full=%v", len(job.Obstructions), job.RunChecks == vehicles.InFull), laysOut(job))
	}
}

// A new job is most often a van of the library before anything of it is measured: no cut, no runs and a tank to begin at, so that all of it is
// sought.
func BenchmarkLayoutsOfLibraryVans(b *testing.B) {
	for _, sample := range vehicles.Library() {
		job, _ := vehicles.FromLibrary(sample.Name)
		b.Run(sample.Name, laysOut(job))
	}
}

func laysOut(job vehicles.Job) func(*testing.B) {
	return func(b *testing.B) {
		result, faults := Judge(job, Builtin())
		require.Empty(b, faults)
		for b.Loop() {
			_, err := FindLayouts(b.Context(), &result, 2, func(Progress) {})
			require.NoError(b, err)
		}
	}
}
