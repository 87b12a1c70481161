package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/vehicles"
)

// A run is drawn where it is, its bends too: by chords within a fifth of a millimetre on a bend of 60 mm.
func TestBendsAreDrawnWhereTheyAre(t *testing.T) {
	r := van(t, func(j *vehicles.Job) {
		run := *j.Exhaust
		run.Bend, run.Muffler, run.Clips = vehicles.Some(60), nil, nil
		run.Path = []vehicles.RunPoint{{X: 1300, Y: 265, Drop: 110}, {X: 900, Y: 620, Drop: 110}, {X: 500, Y: 100, Drop: 110}}
		j.Exhaust = &run
	})
	drawn := geometry.NewLine(find(Draw(r, Options{}), scene.Exhaust, "exhaust")[0].Footprint.Path, 0)
	line, worst := r.Plan.Exhaust.Line, 0.0
	for s := line.Legs[1].Begin; s <= line.Length(); s++ {
		worst = max(worst, drawn.GapOnly(line.At(s).Plan()))
	}
	assert.Less(t, worst, 0.21)
	assert.Greater(t, worst, 0.1, "bends there are")
}
