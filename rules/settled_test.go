package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

func TestWhatIsNotSettledIsDoubtfulAtBest(t *testing.T) {
	job := vehicles.NewJob("TL-09")
	for _, key := range vehicles.FloorKeys {
		job = job.WithoutGuess(key)
	}
	judged := func(j vehicles.Job) Verdict {
		result, faults := Judge(j, Builtin())
		require.Empty(t, faults)
		require.NotEmpty(t, result.Findings)
		require.Equal(t, Clear, result.Findings[0].Verdict)
		return result.Verdict
	}
	job.Fuel = &vehicles.Run{Across: 5, Supply: vehicles.Supply{Kind: "diesel", Bore: vehicles.Some(2)}, Path: []vehicles.RunPoint{
		{X: 1500, Y: 300, Drop: 60}, {X: 1500, Y: 0, Drop: 60},
	}}
	assert.Equal(t, Clear, judged(job))
	assert.Equal(t, Doubtful, judged(job.WithRefused([]vehicles.Refusal{{Of: "floor", Field: "width", Text: "8x"}})))
	assert.Equal(t, Doubtful, judged(job.WithFloorGuessed()))
	begun := job
	begun.Unfinished.Obstructions = begun.Unfinished.Obstructions.Insert(0, vehicles.Begun{Texts: map[string]string{"x0": "100"}})
	assert.Equal(t, Doubtful, judged(begun))
}
