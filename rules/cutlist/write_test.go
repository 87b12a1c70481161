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

// Of hose that is cut for joints there is how long each is, and in JSON how long all are; of what is only counted there is neither.
func TestHoseOfJointsIsWritten(t *testing.T) {
	list := List{Parts: []Part{{vehicles.FuelRun, FuelJoint, 6, 4, 50}, {vehicles.FuelRun, FuelClamp, 12, 8, 0}}}
	data, err := list.JSON()
	require.NoError(t, err)
	assert.Contains(t, string(data), `[{"run":"fuel line","of":"fuel joint","count":6,"kit":4,"lacks":2,"each":50,"total":300},{"run":"fuel line","of":"fuel clamp","count":12,"kit":8,"lacks":4}]`)
	var out strings.Builder
	require.NoError(t, list.CSV(&out, "J"))
	assert.Equal(t, "J,fuel line,fuel joint,,,6,50,,4,2\nJ,fuel line,fuel clamp,,,12,,,8,4\n", out.String())
}
