package history

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/rules"
)

// Ticks are kept by what the tape said, to the tenth, 0 or not: what another day's program kept is still the same.
func TestReadingsOfTicksHaveTheirTenths(t *testing.T) {
	m := rules.Mark{Below: rules.BelowReadings{Bumper: 95, Left: 652.25, Right: 7.04}}
	assert.Equal(t, "below 95.0 652.3 7.0", readings(m))
}
