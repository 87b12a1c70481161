package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// In whatever order the wheels stand in the job, the hindmost tyre is that of the rear axle, and the foremost that of the front axle.
func TestTheOutermostTyresCountInAnyOrder(t *testing.T) {
	job := vehicles.Job{Floor: vehicles.Floor{Length: 4000}}
	tyres := []vehicles.Wheel{{At: [2]float64{780, 700}, Across: 660}, {At: [2]float64{820, -700}, Across: 680}, {At: [2]float64{3900, 700}, Across: 640}, {At: [2]float64{3940, -700}, Across: 620}}
	for a := range tyres {
		for b := range tyres {
			for c := range tyres {
				d := 6 - a - b - c
				if a == b || b == c || a == c || d < 0 || d > 3 {
					continue
				}
				job.Wheels = []vehicles.Wheel{tyres[a], tyres[b], tyres[c], tyres[d]}
				rear, front := axles(&job)
				assert.Equal(t, &axle{780, 330}, rear, "%d %d %d %d", a, b, c, d)
				assert.Equal(t, &axle{3940, 310}, front, "%d %d %d %d", a, b, c, d)
			}
		}
	}
}

// What stands right over an axle hangs neither behind it nor between the axles, and outside of them no crest is asked.
func TestWhereARampIsAsked(t *testing.T) {
	rear, front := &axle{800, 340}, &axle{3900, 340}
	for x, want := range map[float64][2]bool{
		799.9: {true, false}, 800: {false, false}, 800.1: {false, true}, 3899.9: {false, true}, 3900: {false, false}, 3900.1: {false, false},
	} {
		at := geometry.Point3{X: x, Z: -200}
		_, departs := departing(450, rear, front, at, 13)
		_, breaks := breaking(450, rear, front, at, 13)
		assert.Equal(t, want, [2]bool{departs, breaks}, x)
		_, departs = departing(450, nil, front, at, 13)
		_, unfronted := breaking(450, rear, nil, at, 13)
		_, unreared := breaking(450, nil, front, at, 13)
		assert.False(t, departs || unfronted || unreared, x)
	}
}

// How well the intake's mouth is known beside a tyre's track is how well a run is put up there.
func TestTheSigmaOfTheSpray(t *testing.T) {
	result := judged(t, vehicles.Demo())
	j := newJudge(&result.Job, &result.Plan, result.Book)
	seen := 0
	for _, f := range result.Findings {
		if f.Rule != intakeSpray {
			continue
		}
		seen++
		require.InDelta(t, 1, f.N.Norm(), 1e-9)
		assert.InDelta(t, j.runMark(f.At[0]).along(f.N), f.Sigma*f.Sigma, 1e-9)
		assert.Positive(t, f.Sigma)
	}
	assert.Len(t, result.Job.Wheels, seen)
}
