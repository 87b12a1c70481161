package tui

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// Three points are typed with left and right swapped below. Every reading is taken to the last digit, and Match names what is
// wrong: a reading that is half typed because the rest of it was not taken would be worse than one that is swapped.
func TestPointsThatDoNotFitAreTakenAsTyped(t *testing.T) {
	o := options(t)
	o.Screens = Screens()
	job := vehicles.NewJob("TL-07")
	job.Datum.HookBelow, job.Datum.HookAbove = vehicles.Some(150), vehicles.Some(60)
	require.NoError(t, os.WriteFile(o.Path, job.Format(), 0o644))
	b := started(t, o)
	b.keys(screentest.SwappedPoints)
	var typed []string
	for _, tie := range b.desk.State.Job.Ties {
		typed = append(typed, strings.Join([]string{tie.Name, tie.Below[0].Text, tie.Below[1].Text, tie.Above[0].Text, tie.Above[1].Text}, " "))
	}
	assert.Equal(t, []string{"bolt 2954 R 328 2952 L 325", "eye 439 L 410 434 R 413", "drain 1530 R 520 1528 L 518"}, typed)
	assert.True(t, b.shows("swapped"))
	b.keys(screentest.PutRight)
	assert.Empty(t, b.desk.State.Faults)
}
