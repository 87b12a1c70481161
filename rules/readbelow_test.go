package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

// What is said of a place that the cut could have is what the marks say once it is there.
func TestReadBelowIsWhatTheMarksSay(t *testing.T) {
	result, faults := Judge(vehicles.Demo(), Builtin())
	assert.Empty(t, faults)
	mark := Marks(result).Marks[0]
	assert.Equal(t, mark.Below, ReadBelow(&result.Job, mark.Plan))
}
