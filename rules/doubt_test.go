package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// What class II of 2014/32/EU annex X leaves of a reading within a metre, within two, and of a mark put within two, mm^2.
const (
	metre     = (0.7*0.7 + 1) / 3
	twoMetres = (0.9*0.9 + 1) / 3
	putMark   = twoMetres + 1./3
)

// tiedAt is a floor of 3200 by 1800, taped by class II, with two ties.
func tiedAt(one, two vehicles.Pair) vehicles.Job {
	job := plainVan()
	job.Tape = vehicles.Tape{Class: "II", Read: vehicles.Some(1), Mark: vehicles.Some(1), Height: vehicles.Some(0), Turn: vehicles.Some(1)}
	job.Ties = vehicles.List[vehicles.Tie]{{Use: true, Name: "bolt", Below: one, Above: one}, {Use: true, Name: "eye", Below: two, Above: two}}
	return job
}

// By hand. The two ties, straight across from each other near the bumper, err in each coordinate by two readings; they carry the
// middle of the floor, 1200 farther on, with half of that, and across the van with 1200^2 / (2 * 300^2) = 8 of it more for the turn:
// 1 reading along, 17 across. The worse direction counts.
func TestTheShadeDoubtsAsMuchAsTheWorseDirection(t *testing.T) {
	const across = 17 * metre
	job := tiedAt(vehicles.Pair{at(400), at(-300)}, vehicles.Pair{at(400), at(300)})
	disc := func(x, y float64) vehicles.Place {
		return vehicles.Place{Shape: vehicles.Disc, Centre: vehicles.Pair{at(x), at(y)}, Across: vehicles.Some(40)}
	}
	turned := vehicles.Place{X: vehicles.Pair{at(500), at(580)}, Y: vehicles.Pair{at(100), at(160)}, Turn: 20}
	for _, p := range []vehicles.Place{disc(500, 100), disc(1500, 100), turned} {
		job.Obstructions = append(job.Obstructions, vehicles.Obstruction{Kind: "other", Measured: true, Drop: vehicles.Span{To: 60, Set: true}, Place: p})
	}
	for i, name := range []string{"near", "far", "turned"} {
		job.Obstructions[i].Name = name
	}
	job.Fittings = vehicles.List[vehicles.Fitting]{{Name: "above", Kind: "other", Place: disc(1500, 100), Rise: vehicles.Span{From: -20, To: 4, Set: true}}}
	result := judged(t, job)
	require.Equal(t, geometry.Point{X: 1600}, geometry.Point{X: (result.Plan.FloorMin.X + result.Plan.FloorMax.X) / 2})
	doubt := DoubtOfCut(Doubt{}, &result)

	edge := 1.645 * math.Sqrt(putMark+across)
	assert.InDelta(t, 63.5+40+edge, doubt.Sure.limits.EdgeNeed, 1e-6)
	assert.InDelta(t, 63.5+40-edge, doubt.Possible.limits.EdgeNeed, 1e-6)

	half, radians := math.Hypot(80, 60)/2, math.Pi/180/math.Sqrt(3) // the turn is taken to a degree either way
	for i, variance := range []float64{
		putMark + metre + across, // across the van, a reading within a metre
		putMark + metre + across, // across again: along, two metres and what the ties add are less
		putMark + metre + across + half*half*radians*radians,
		putMark + twoMetres, // from above nothing is carried, and the longer reading is the worse
	} {
		guard := 1.645 * math.Sqrt(variance)
		assert.InDelta(t, 63.5+20+guard, doubt.Sure.limits.Obstacles[i].Need, 1e-6, doubt.Sure.names[i])
		assert.InDelta(t, 63.5+20-guard, doubt.Possible.limits.Obstacles[i].Need, 1e-6, doubt.Sure.names[i])
	}
}

// Two ties one ahead of the other, 600 to the left of the middle of the floor and 300 from it either way: their turn is out by what they
// err across, two readings within a metre each, and moves the middle along the van by 600^2 / (2 * 300^2) = 2 of that.
func TestTheEdgeOfTheShadeIsDoubtedAlongTheVanToo(t *testing.T) {
	result := judged(t, tiedAt(vehicles.Pair{at(1300), at(600)}, vehicles.Pair{at(1900), at(600)}))
	doubt := DoubtOfCut(Doubt{}, &result)
	edge := 1.645 * math.Sqrt(putMark+twoMetres+4*metre)
	assert.InDelta(t, 63.5+40+edge, doubt.Sure.limits.EdgeNeed, 1e-6)
	assert.InDelta(t, 63.5+40-edge, doubt.Possible.limits.EdgeNeed, 1e-6)
}
