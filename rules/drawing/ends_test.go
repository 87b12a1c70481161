package drawing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
)

// The bumper lies behind the floor and the nose before it, both in the middle of its width: they say which end is which from
// wherever the van is seen.
func TestTheVansEndsLieBeyondTheFloor(t *testing.T) {
	result := van(t, nil)
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s := Draw(result, Options{View: view, Selected: -1})
		_, edge := find(s, scene.Bumper, "")[0].Solid.Prism.Footprint.Bounds()
		assert.Zero(t, edge.X, "readings are taken from its edge")
		floor := find(s, scene.Floor, "")[0].Solid.Prism.Footprint
		low, high := floor.Bounds()
		for role, beyond := range map[scene.Role]func(from, to float64) bool{
			scene.Bumper: func(_, to float64) bool { return to < low.X },
			scene.Nose:   func(from, _ float64) bool { return from >= high.X },
		} {
			ends := find(s, role, "")
			require.Len(t, ends, 1)
			a, b := ends[0].Solid.Prism.Footprint.Bounds()
			assert.True(t, beyond(a.X, b.X), "%v to %v", a, b)
			assert.InDelta(t, low.Y+high.Y, a.Y+b.Y, 1e-9)
			assert.Greater(t, b.Y-a.Y, 0.8*(high.Y-low.Y))
		}
	}
}
