package sizing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A figure of the supply that slipped is asked about as its field is left, and kept; every field has what is usual of it.
func TestAFigureFarFromWhatIsUsualIsAskedAbout(t *testing.T) {
	r := screentest.New(t, New(), vehicles.Demo(), 100, 27)
	goTo(r, sizing.Electrics, "fuse")
	r.Type("<enter><wipe>5200")
	assert.Empty(t, r.Said, "while it is typed nobody knows what it will be")
	r.Type("<enter>")
	assert.Equal(t, "Fuse 5200 A: usual is 3 to 50 A. Is it right? Kept as typed.", r.Said)
	assert.Equal(t, vehicles.Some(5200), r.State.Job.Electrics.Fuse)
	r.Said = ""
	r.Type("<up><esc>")
	assert.Empty(t, r.Said, "asked once, and not of what was only looked at")
	r.Type("<enter><wipe>15<esc>")
	assert.Equal(t, "fuse was 5200 and is 15 now. Ctrl-Z takes it back.", r.Said, "nothing is asked of what is usual")

	for _, slot := range electricsSlots {
		usual, known := usualSupply[slot.Key]
		require.True(t, known, slot.Key)
		assert.Less(t, usual.low, usual.high)
		for value, asks := range map[float64]bool{usual.low: false, usual.high: false, usual.low * 0.9: true, usual.high * 1.1: true} {
			assert.Equal(t, asks, doubted(slot.Field, vehicles.Some(value)) != "", "%s %v", slot.Key, value)
		}
		assert.Empty(t, doubted(slot.Field, vehicles.Number{}))
	}
}
