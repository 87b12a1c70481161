package place

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
)

// The finding that is tapped stays under the finger: what is shown takes rows, and the list would move down by them. What stood where they
// are now is the list's first. A second tap shows the same thing.
func TestATappedFindingStaysUnderTheFinger(t *testing.T) {
	for _, size := range screentest.Sizes {
		stayed := 0
		screentest.EachFindingTapped(t, New, size.W, size.H, func(d screentest.TappedFinding) {
			if d.FirstFinding <= d.Y {
				stayed++
			}
			y := max(d.FirstFinding, d.Y)
			assert.Equal(t, screentest.FindingIn(d.Row), screentest.FindingIn(d.After[y]), size.Name)
			shown := d.State.Focus
			d.Tap(d.X, y)
			assert.Same(t, shown, d.State.Focus)
		})
		assert.NotZero(t, stayed, size.Name)
	}
}
