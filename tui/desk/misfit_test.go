package desk

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// What does not fit is told by the error a fault carries: a thing may be called by the same words.
func TestAMisfitIsToldByItsError(t *testing.T) {
	point := func(name string, x, y, ax, ay float64) vehicles.Tie {
		pair := func(x, y float64) vehicles.Pair {
			return vehicles.Pair{survey.FromNumber(x, true), survey.FromNumber(y, true)}
		}
		return vehicles.Tie{Name: name, Use: true, Below: pair(x, y), Above: pair(ax, ay)}
	}
	fault := func(ties ...vehicles.Tie) vehicles.Fault {
		job := vehicles.NewJob("TL-07")
		job.Ties = ties
		_, faults := vehicles.Reduce(job)
		require.Len(t, faults, 1)
		return faults[0]
	}
	swapped := fault(point("a", 500, -500, 500, 500), point("b", 2500, 500, 2500, -500), point("c", 1400, 560, 1400, -560))
	assert.True(t, Swapped(swapped))
	assert.False(t, OnePlace(swapped))
	onePlace := fault(point("a", 500, 500, 500, 500), point("b", 500, 500, 2500, 500))
	assert.True(t, OnePlace(onePlace))
	assert.False(t, Swapped(onePlace))
	for _, said := range []error{survey.ErrSwapped, survey.ErrOnePlace} {
		named := vehicles.Fault{Key: "obstruction[0].x", Text: `obstruction "` + said.Error() + `": x runs from 651.1 to 650.9 mm`}
		assert.False(t, Misfit(named), "it is only called so")
	}
}
