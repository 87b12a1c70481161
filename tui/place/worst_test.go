package place

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// What a move of the cut changes: found out by moving it.
func TestTheListLeadsWithWhatTheMoveChanges(t *testing.T) {
	for _, job := range []vehicles.Job{screentest.State(t).Job, vehicles.Demo()} {
		d := screentest.New(t, New(), job.WithDrilled(nil), 60, 16)
		list := worst(d.State)
		moved, rest := list.Moved, list.Rest
		require.NotEmpty(t, moved)
		require.NotEmpty(t, rest)
		values := func() map[string]float64 {
			of := map[string]float64{}
			for i := range d.State.Result.Findings {
				f := &d.State.Result.Findings[i]
				of[f.ID()+f.About()] = f.Value
			}
			return of
		}
		before := values()
		d.Type("<right><up>")
		after := values()
		for _, f := range rest {
			assert.InDelta(t, before[f.ID()+f.About()], after[f.ID()+f.About()], 1e-9, "%s %s", f.ID(), f.About())
		}
		same := 0
		for _, f := range moved {
			if before[f.ID()+f.About()] == after[f.ID()+f.About()] {
				same++
			}
		}
		assert.Less(t, same, len(moved)/2, "what may change mostly does")
	}
}
