package parts

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Of lengths in a row the last one has the unit.
func TestWhatIsLeftOverIsSaidInMM(t *testing.T) {
	assert.Equal(t, "left over: 250 mm", leftOver([]float64{250}))
	assert.Equal(t, "left over: 250, 1000, 30.5 mm", leftOver([]float64{250, 1000, 30.5}))
}

// Packing is as thick as the swages of the floor's layers; where none says how deep they are, the list does not either.
func TestPackingIsAsThickAsIsKnown(t *testing.T) {
	for thick, want := range map[float64]string{0: ", as thick as the swages are deep", 3: ", 3 mm thick", 20: ", 20 mm thick"} {
		job, heater := vehicles.Demo(), *vehicles.Demo().Heater
		heater.Packed = true
		job.Heater, job.Stack = &heater, nil
		if thick > 0 {
			job.Stack = vehicles.List[vehicles.Layer]{{Kind: vehicles.SwageLayer, Thick: thick}}
		}
		row, ok := listOf(t, job).row("metal packing")
		require.True(t, ok)
		assert.Contains(t, row.Size, want)
	}
}
