package sizing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// plies are layers of ply, so thick.
func plies(thick ...float64) (layers vehicles.List[vehicles.Layer]) {
	for _, t := range thick {
		layers = append(layers, vehicles.Layer{Kind: vehicles.Ply, Thick: t})
	}
	return layers
}

// lying is the sample van with its heater on such layers under a plate so thick.
func lying(layers vehicles.List[vehicles.Layer], plate float64) func(*vehicles.Job) {
	return func(j *vehicles.Job) {
		j.Stack, j.Mount = layers, vehicles.Mount{On: vehicles.OnLining, Plate: vehicles.Some(plate)}
	}
}

// Layers in tenths that come to 40 mm take a collar of 45, and 5 below the floor is what is asked: it is enough, though adding up tenths is off by a hair.
func TestACollarThatIsJustEnough(t *testing.T) {
	for _, layers := range []vehicles.List[vehicles.Layer]{plies(40), plies(17.6, 5.3, 8.2, 7.7, 1.2), plies(11.4, 1.9, 12.8, 9.8, 4.1)} {
		r := judged(t, lying(layers, 1.5))
		row := rowOf(t, r, Floor, "collar-has")
		assert.Equal(t, "45 mm, enough", row.Said())
		assert.Empty(t, row.Amiss)
		_, there := Find(r, CollarToOrder)
		assert.False(t, there, "none is ordered")
	}
	r := judged(t, lying(plies(40.1), 1.5))
	assert.Equal(t, "it is 0.1 mm too short", rowOf(t, r, Floor, "collar-has").Amiss)
	row, there := Find(r, CollarToOrder)
	require.True(t, there)
	assert.Equal(t, "60 mm, may be cut to 45.1 mm", row.Said())
}

// Plate 1.5, layers of 34.5, and 9 for washer and nut are 45: a bolt of 45 does. Plate and layers of 22.5 less half a millimetre are 22: a screw of 22
// stays inside.
func TestBoltsAndScrewsThatJustDo(t *testing.T) {
	for _, layers := range []vehicles.List[vehicles.Layer]{plies(34.5), plies(15.4, 12.8, 3.1, 3.2), plies(16.1, 1.8, 14.5, 2.1)} {
		assert.Equal(t, "45 mm", rowOf(t, judged(t, lying(layers, 1.5)), Floor, "bolt").Said())
	}
	assert.Equal(t, "50 mm", rowOf(t, judged(t, lying(plies(34.6), 1.5)), Floor, "bolt").Said())
}

// However the layers are named apart, what is ordered is what their sum takes: in tenths of a millimetre nothing is off by a hair.
func TestLayersInAnyPartsTakeTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var layers vehicles.List[vehicles.Layer]
		tenths := 0
		for range rapid.IntRange(2, 7).Draw(t, "layers") {
			thick := rapid.IntRange(1, 120).Draw(t, "thick")
			layers, tenths = append(layers, plies(float64(thick)/10)...), tenths+thick
		}
		plate := float64(rapid.IntRange(5, 30).Draw(t, "plate")) / 10
		apart, whole := judged(t, lying(layers, plate)), judged(t, lying(plies(float64(tenths)/10), plate))
		for _, id := range []ID{Thickest, Thinnest, CollarNeeded, CollarHas, CollarToOrder, Screw, Bolt} {
			one, there := Find(apart, id)
			other, also := Find(whole, id)
			if there != also || one.Said() != other.Said() || one.Amiss != other.Amiss {
				t.Fatalf("%s: of layers %q, of one %q", id, one.Said()+one.Amiss, other.Said()+other.Amiss)
			}
		}
	})
}

// The sizes that things are sold in: the least that is no less, the most that is no more.
func TestSizesThatThingsAreSoldIn(t *testing.T) {
	sizes := []float64{10, 16, 20}
	for _, c := range []struct {
		wanted, least, most float64
		there               bool
	}{{9, 10, 0, true}, {10, 10, 10, true}, {10.01, 16, 10, true}, {15.99, 16, 10, true}, {16, 16, 16, true}, {20, 20, 20, true}, {20.01, 0, 20, false}} {
		least, there := leastOf(sizes, c.wanted)
		assert.Equal(t, c.there, there, "%g", c.wanted)
		assert.InDelta(t, c.least, least, 0, "%g", c.wanted)
		assert.InDelta(t, c.most, mostOf(sizes, c.wanted), 0, "%g", c.wanted)
	}
}
