package sizing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// slab is a layer by metres and conductivity, as the published sums have them.
func slab(metres, lambda float64) vehicles.Slab {
	return vehicles.Slab{Of: "layer", Thick: vehicles.Some(1000 * metres), Lambda: vehicles.Some(lambda)}
}

// Two sums that a guide to ISO 6946 prints: 3.42 and 0.54 m2 K/W, U 0.29 and 1.85 of rounded layers.
func TestResistancesAsPublished(t *testing.T) {
	for _, c := range []struct {
		layers     []vehicles.Slab
		r, printed float64
	}{
		{[]vehicles.Slab{slab(0.013, 0.21), slab(0.1, 0.51), slab(0.1, 0.035), slab(0.102, 0.77)}, 3.42, 0.29},
		{[]vehicles.Slab{slab(0.013, 0.57), slab(0.102, 0.56), slab(0.102, 0.77), slab(0.018, 0.5)}, 0.54, 1.85},
	} {
		r, lacks := Usual().SurfaceResistance(vehicles.Surface{Lies: vehicles.WallSurface, Layers: c.layers})
		assert.Empty(t, lacks)
		assert.InDelta(t, c.r, r, 0.005)
		assert.InDelta(t, c.printed, 1/r, 0.02)
	}
	for lies, inner := range map[string]float64{vehicles.WallSurface: 0.13, vehicles.RoofSurface: 0.10, vehicles.FloorSurface: 0.17} {
		r, _ := Usual().SurfaceResistance(vehicles.Surface{Lies: lies})
		assert.InDelta(t, inner+0.04, r, 1e-12, "ISO 6946:2017, 6.8")
	}
}

// warmVan is 10 m2 of wall that loses 2 W/(m2 K), 10 m3 of air changed once an hour, 20 inside and 0 outside.
func warmVan(j *vehicles.Job) {
	wall := vehicles.Slab{Of: "all of it", R: vehicles.Some(0.5 - 0.17)}
	j.Surfaces = vehicles.List[vehicles.Surface]{{Name: "walls", Area: 10, Lies: vehicles.WallSurface, Layers: []vehicles.Slab{wall}}}
	j.Body = vehicles.Body{Inside: vehicles.Some(20), Outside: vehicles.Some(0), Volume: vehicles.Some(10), Changes: vehicles.Some(1), Hours: vehicles.Some(8)}
}

// Walls 400 W. Air of 20 degrees has 1.20412 kg/m3 (101 325 Pa over 287.05 and 293.15): 10 m3 an hour take 1210.1 J each per degree,
// 3.3615 W a degree, 67.2 W. In all 467.2 W, and 0.0588 l an hour at 80 %: 0.47 l in eight hours.
func TestAHeatLossByHand(t *testing.T) {
	r := judged(t, warmVan)
	assert.InDelta(t, 400, rowOf(t, r, Heat, "surface walls").Value.Value, 1e-9)
	assert.Equal(t, 1, rowOf(t, r, Heat, "surface walls").Surface, "the first of the job")
	assert.Zero(t, rowOf(t, r, Heat, "air").Surface)
	assert.InDelta(t, 1.20412*1005*10*20/3600, rowOf(t, r, Heat, "air").Value.Value, 0.001)
	assert.Equal(t, "467 W", rowOf(t, r, Heat, "loss").Said())
	assert.Equal(t, "2 kW", rowOf(t, r, Heat, "class").Said())
	assert.Equal(t, "4.7 h", rowOf(t, r, Heat, "burning").Said(), "467.2 of 800 W, of eight hours")
	assert.InDelta(t, 467.23/2000*0.25157*8, rowOf(t, r, Heat, "litres").Value.Value, 0.001)
	assert.Empty(t, rowOf(t, r, Heat, "loss").Taken)
}

func TestWhatTheHeatLacks(t *testing.T) {
	r := judged(t, nothingElse)
	assert.Equal(t, []string{"the body's surfaces", "how much air is in it, m³", "how often an hour its air is changed", "how warm it should be inside", "how cold it is outside"},
		rowOf(t, r, Heat, "loss").Lacks)
	r = judged(t, func(j *vehicles.Job) {
		warmVan(j)
		j.Surfaces[0].Layers = []vehicles.Slab{{Of: "mineral wool", Thick: vehicles.Some(40)}}
	})
	assert.Equal(t, []string{"the conductivity of mineral wool: its maker declares it"}, rowOf(t, r, Heat, "loss").Lacks)
	for _, outside := range []float64{25, 20} { // as warm is not colder
		r = judged(t, func(j *vehicles.Job) { warmVan(j); j.Body.Outside = vehicles.Some(outside) })
		assert.Equal(t, []string{"an outside that is colder than the inside"}, rowOf(t, r, Heat, "loss").Lacks)
	}
}

func TestAHeaterThatIsTooSmall(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) { warmVan(j); j.Surfaces[0].Area = 60 })
	assert.Equal(t, "4 kW", rowOf(t, r, Heat, "class").Said(), "2467 W, times 1.2")
	assert.Equal(t, "the job's heater has 2000 W, and 2961 W are wanted", rowOf(t, r, Heat, "class").Amiss)
	assert.Equal(t, "never", rowOf(t, r, Heat, "warm-up").Said())
	assert.Equal(t, "8 h", rowOf(t, r, Heat, "burning").Said(), "no longer than the night")
	assert.InDelta(t, 8*0.25157, rowOf(t, r, Heat, "litres").Value.Value, 1e-3, "no more than it has")
	r = judged(t, func(j *vehicles.Job) { warmVan(j); j.Surfaces[0].Area = 500 })
	assert.Equal(t, "none is large enough", rowOf(t, r, Heat, "class").Said())
}

// Of what insulates nothing is warmed; 4 mm of plywood, 500 kg/m3 and 1600 J/(kg K), take 3200 J a square metre and degree.
func TestWhatIsWarmedByHand(t *testing.T) {
	m := maker{sizes: Usual()}
	ply := vehicles.Slab{Of: "plywood", Thick: vehicles.Some(4)}
	wool := vehicles.Slab{Of: "wool", Thick: vehicles.Some(40), Lambda: vehicles.Some(0.037)}
	steel := vehicles.Slab{Of: "steel", Thick: vehicles.Some(1)}
	assert.InDelta(t, 3200, m.warmed(vehicles.Surface{Layers: []vehicles.Slab{ply, wool, steel}}), 1e-9)
	assert.InDelta(t, 3510, m.warmed(vehicles.Surface{Layers: []vehicles.Slab{steel}}), 1e-9, "7800 times 450, 1 mm")
	assert.Zero(t, m.warmed(vehicles.Surface{Layers: []vehicles.Slab{wool, steel}}))
}

// Warming is what the equation says: heat stored is heat given less heat lost, stepped by a hundredth of a second's share.
func TestWarmingIsWhatItsEquationSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		watts, rise := rapid.Float64Range(500, 8000).Draw(t, "watts"), rapid.Float64Range(1, 40).Draw(t, "rise")
		perDegree, toWarm := rapid.Float64Range(0, 60).Draw(t, "per degree"), rapid.Float64Range(1e4, 1e6).Draw(t, "to warm")
		seconds, ok := WarmUp(watts, rise, perDegree, toWarm)
		require.Equal(t, perDegree*rise < watts, ok)
		if !ok || perDegree*rise > 0.98*watts {
			return
		}
		warm := 0.0
		const steps = 20000
		for range steps {
			warm += (watts - perDegree*warm) / toWarm * seconds / steps
		}
		require.InEpsilon(t, rise, warm, 0.005)
		longer, _ := WarmUp(watts, rise, perDegree, 2*toWarm)
		require.InEpsilon(t, 2*seconds, longer, 1e-9)
	})
}

// A layer more never loses more, and a surface's loss goes with its area.
func TestALayerMoreNeverLosesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := vehicles.Surface{Lies: rapid.SampledFrom(vehicles.SurfacesLie).Draw(t, "lies")}
		before, _ := Usual().SurfaceResistance(s)
		for range rapid.IntRange(1, 4).Draw(t, "layers") {
			s.Layers = append(s.Layers, slab(rapid.Float64Range(0.0005, 0.2).Draw(t, "thick"), rapid.Float64Range(0.02, 200).Draw(t, "lambda")))
			r, _ := Usual().SurfaceResistance(s)
			require.Greater(t, r, before)
			before = r
		}
	})
}
