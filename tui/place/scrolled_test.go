package place

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// When the cut goes elsewhere the list is of another place: it is read from its worst on.
func TestTheListOfAnotherPlaceIsReadFromItsTop(t *testing.T) {
	d := screentest.New(t, New(), vehicles.Demo(), 60, 17)
	d.Type("<pgdown><pgdown>")
	scrolled := firstFinding(d)
	require.NotZero(t, d.Screen.(screen).top)
	d.Type("s")
	assert.NotZero(t, d.Screen.(screen).top, "the step is no other place")
	d.Type("<right>")
	shown := d.Screen.(screen).current(d.State)
	assert.Equal(t, moving.Scroll{}, shown.top)
	fresh := screentest.New(t, New(), d.State.Job, 60, 17)
	assert.Equal(t, firstFinding(fresh), firstFinding(d))
	assert.NotEqual(t, scrolled, firstFinding(d))
}

// firstFinding is the first that the list shows.
func firstFinding(d *screentest.Driver) string {
	for row := range strings.SplitSeq(d.View(60, 17), "\n") {
		if f := screentest.FindingIn(row); f != "" {
			return f
		}
	}
	return ""
}
