package runs

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
)

// The finding that is tapped stays under the finger, though what is picked for it may take rows above the list or belong to another run. A
// second tap shows the same thing.
func TestATappedFindingStaysUnderTheFinger(t *testing.T) {
	for _, size := range screentest.Sizes {
		taken := 0
		screentest.EachFindingTapped(t, New, size.W, size.H, func(d screentest.TappedFinding) {
			if d.FirstFinding < 0 || d.FirstFinding > d.Y {
				return // the list begins below it now
			}
			shown := d.State.Focus
			d.Tap(d.X, d.Y)
			assert.Same(t, shown, d.State.Focus, "%s, row %d: %s", size.Name, d.Y, d.After[d.Y])
			taken++
		})
		assert.NotZero(t, taken, size.Name)
	}
}
