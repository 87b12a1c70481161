package rules

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// normalBelow is the share of normal errors below z sigma.
func normalBelow(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// conformance is the probability that what was measured keeps its limits, given its margins from them: JCGM 106:2012, 7.3.
func conformance(u float64, margins ...float64) float64 {
	p := 1.
	for _, m := range margins {
		p -= 1 - normalBelow(m/u)
	}
	return p
}

// Source: JCGM 106:2012, section 7, a diode's breakdown voltage (at most -5.40 V, -5.47 V measured, u 0.05 V: 0.92) and
// an oil's viscosity (12.5 to 16.3 mm^2/s, 13.6 measured, u 1.8: 0.66), from memory. Neither is clear at 95 %, nor foul.
func TestVerdictsOnExamplesOfJCGM106(t *testing.T) {
	diode := margin(-5.47, -5.40, Most)
	assert.InDelta(t, 0.9192433408, conformance(0.05, diode), 1e-9)
	assert.Equal(t, Doubtful, verdict(vehicles.Some(diode), 0.05, 0))

	thick, thin := margin(13.6, 12.5, Least), margin(13.6, 16.3, Most)
	assert.InDelta(t, 0.6626297865, conformance(1.8, thick, thin), 1e-9)
	assert.Equal(t, Doubtful, verdict(vehicles.Some(thick), 1.8, 0))
	assert.Equal(t, Doubtful, verdict(vehicles.Some(thin), 1.8, 0))
}

// Source: JCGM 106:2012, table 1, the one-sided points of conformance probabilities (from memory; more digits are those
// of the normal distribution).
func TestVerdictsOnTheTableOfJCGM106(t *testing.T) {
	for _, c := range []struct {
		share, z       float64
		verdict, turns Verdict // of a margin of z sigma, and of one of minus z sigma
	}{
		{0.80, 0.8416212336, Doubtful, Doubtful},
		{0.90, 1.2815515655, Doubtful, Doubtful},
		{0.99, 2.3263478740, Clear, Foul},
		{0.999, 3.0902323062, Clear, Foul},
	} {
		assert.InDelta(t, c.share, conformance(1, c.z), 1e-9)
		assert.Equal(t, c.verdict, verdict(vehicles.Some(c.z*0.7), 0.7, 0), "%v", c.share)
		assert.Equal(t, c.turns, verdict(vehicles.Some(-c.z*0.7), 0.7, 0), "%v", c.share)
	}
}

// A guard band of 1.645 u leaves 5 %, as one of U = 2 u leaves 2.275 % (JCGM 106:2012, 8.3.2, from memory).
func TestAMarginAtTheGuardBandIsWrongOnceInTwenty(t *testing.T) {
	assert.InDelta(t, 0.05, 1-conformance(1, coverage), 2e-5)
	assert.InDelta(t, 0.02275, 1-conformance(1, 2), 1e-5)
	for z := -4.0005; z <= 4; z += 0.001 { // 1.645 is 0.00015 more than the 95 % point: none falls between

		p, v := conformance(1, z), verdict(vehicles.Some(z), 1, 0)
		assert.Equal(t, p >= 0.95, v == Clear, "%v sigma", z)
		assert.Equal(t, p <= 0.05, v == Foul, "%v sigma", z)
	}
}

// The same by drawing: of true margins spread normally about one judged clear by a hair, and about one judged foul by
// a hair, 5 % are on the other side.
func TestAMarginAtTheGuardBandByDrawing(t *testing.T) {
	job := tidy()
	job.Obstructions = []vehicles.Obstruction{box("bracket", "other", 1400, 1500, 200, 300, 0, 50)}
	f := one(t, job, "cut.clearance", "bracket")
	r := rand.New(rand.NewPCG(1210240, 200))
	const n = 100000
	for _, c := range []struct {
		band float64
		want Verdict
	}{{coverage + 1e-6, Clear}, {coverage - 1e-6, Doubtful}, {-coverage + 1e-6, Doubtful}, {-coverage - 1e-6, Foul}} {
		job.Rules["cut.clearance"] = f.Value - c.band*f.Sigma
		judged := one(t, job, "cut.clearance", "bracket")
		require.Equal(t, c.want, judged.Verdict)
		wrong := 0
		for range n {
			if truly := judged.Margin.Value + judged.Sigma*r.NormFloat64(); (truly < 0) != (c.band < 0) {
				wrong++
			}
		}
		assert.InDelta(t, 0.05, float64(wrong)/n, 3*math.Sqrt(0.05*0.95/n))
	}
}
