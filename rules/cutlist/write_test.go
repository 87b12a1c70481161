package cutlist

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Lengths and turns are written to tenths: pipe is not cut finer.
func TestJSONIsToTenths(t *testing.T) {
	list := List{
		Pieces: []Piece{{Run: vehicles.ExhaustRun, Of: ExhaustPipe, Developed: 123.44, Cut: 128.46, Bits: []Bit{{Length: 31.06, Turn: 44.97, Radius: 60}}}},
		Stock:  []Stock{{Of: ExhaustPipe, Length: 1000, Needed: 1, Left: []float64{871.54}, TooLong: []float64{1000.06}}},
	}
	data, err := list.JSON()
	require.NoError(t, err)
	var out listJSON
	require.NoError(t, json.Unmarshal(data, &out))
	assert.Equal(t, [2]float64{123.4, 128.5}, [2]float64{out.Pieces[0].Developed, out.Pieces[0].Cut})
	assert.Equal(t, bitJSON{31.1, 45, 60}, out.Pieces[0].Bits[0])
	assert.Equal(t, []float64{871.5}, out.Stock[0].Left)
	assert.Equal(t, []float64{1000.1}, out.Stock[0].TooLong)
}

// One length is a row, none is none.
func TestCSVHasTheLengthsThatAreNeeded(t *testing.T) {
	for needed, row := range []string{"", "J,,\"exhaust pipe, length of 1000\",,,1,,,0,1\n", "J,,\"exhaust pipe, length of 1000\",,,2,,,0,2\n"} {
		list := List{Stock: []Stock{{Of: ExhaustPipe, Length: 1000, Needed: needed}}}
		var out strings.Builder
		require.NoError(t, list.CSV(&out, "J"))
		assert.Equal(t, row, out.String())
	}
}
