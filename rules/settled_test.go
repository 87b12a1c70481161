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
	guessed, faults := Judge(job.WithFloorGuessed(), Builtin())
	require.Empty(t, faults)
	assert.Equal(t, Doubtful, guessed.Verdict)
	begun := job
	begun.Unfinished.Obstructions = begun.Unfinished.Obstructions.Insert(0, vehicles.Begun{Texts: map[string]string{"x0": "100"}})
	assert.Equal(t, Doubtful, judged(begun))
}

// Nobody has looked at a floor that is a guess: whether the collar reaches through it, and whether the cut lies on it, is not clear.
func TestOnAGuessedFloorNothingOfItIsClear(t *testing.T) {
	measured := vehicles.NewJob("TL-09").WithCut(vehicles.Cut{At: [2]float64{1500, 0}, Across: 127})
	for _, key := range vehicles.FloorKeys {
		measured = measured.WithoutGuess(key)
	}
	of := func(job vehicles.Job) map[string]Verdict {
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		all := map[string]Verdict{}
		for _, f := range result.Findings {
			if f.Against.Sort == TheFloor {
				all[f.About()] = f.Verdict
			}
		}
		return all
	}
	known := of(measured)
	require.Greater(t, len(known), 2)
	for about, verdict := range known {
		require.Equal(t, Clear, verdict, about)
	}
	for about, verdict := range of(measured.WithFloorGuessed()) {
		assert.Equal(t, Doubtful, verdict, about)
	}
}
