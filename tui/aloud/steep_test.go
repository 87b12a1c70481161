package aloud

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
)

// How steep a leg is, is a figure as far as one in one; from there on it is said in words, and of one that stands nothing.
func TestASteepLegHasNoFigure(t *testing.T) {
	for said, by := range map[string]geometry.Point3{
		"falls 100 mm, 1000 mm/m":        {X: 100, Z: -100},
		"falls 424 mm, steeper than 45°": {X: 10, Z: -424},
		"rises 101 mm, steeper than 45°": {Y: 100, Z: 101},
		"falls 60 mm":                    {Z: -60},
		"level":                          {X: 30},
	} {
		assert.Equal(t, said, fall(by, desk.State{}))
	}
}
