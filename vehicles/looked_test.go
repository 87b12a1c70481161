package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLookingHoldsForOnePlaceOfTheCut(t *testing.T) {
	job := Demo()
	job.Looked, job.LookedAt = nil, nil
	job.Cut = &Cut{At: [2]float64{1200, 240}, Across: 127}
	looked := job.WithLooked("air line", true).WithLooked("brake line", true)
	assert.Empty(t, looked.LookedElsewhere())

	moved := looked.WithCut(Cut{At: [2]float64{1240, 240}, Across: 127})
	assert.Empty(t, moved.LookedElsewhere(), "looking 300 mm round bears a few centimetres")
	moved = looked.WithCut(Cut{At: [2]float64{1230, 280}, Across: 127})
	assert.Empty(t, moved.LookedElsewhere(), "50 mm away")
	moved = looked.WithCut(Cut{At: [2]float64{1231, 280}, Across: 127})
	assert.Len(t, moved.LookedElsewhere(), 2, "50.6 mm away")
	moved = looked.WithCut(Cut{At: [2]float64{1600, 240}, Across: 127})
	assert.Equal(t, []string{"brake line", "air line"}, moved.LookedElsewhere())

	again := moved.WithLooked("air line", true)
	assert.Equal(t, []string{"brake line"}, again.LookedElsewhere())

	read, err := ParseJob(again.Format(), "again.toml")
	require.NoError(t, err)
	assert.Equal(t, []string{"brake line"}, read.LookedElsewhere(), "kept in the file")

	none := again.WithLooked("air line", false).WithLooked("brake line", false)
	assert.Nil(t, none.LookedAt, "nothing is left behind")
	assert.Nil(t, none.Looked)
}
