package screentest

import (
	"errors"
	"flag"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// wildKeys are what a wild hand presses: commands, readings good and bad, and the keys that move.
var wildKeys = []string{
	"n", "o", "a", "d", "x", "m", "[", "]", "p", "v", "f", "g", "l", "c", "b", "r", "s", "w", "i", "y", "652", "+84", ".5",
	"-850", "R 410", "l40", "1,5", "2'6 1/2\"", "x7", "0", "9999999", "é", "<enter>", "<enter>", "<enter>", "<esc>",
	"<up>", "<down>", "<down>", "<left>", "<right>", "<tab>", "<shift+tab>", "<back>", "<wipe>", "<home>", "<end>", "<space>", "<delete>",
}

// Wild presses keys at random. Whatever is pressed, the screen fills its rows and columns exactly, the old screen
// is left as it was, and the job can be saved and read again with all that is in it.
func Wild(t *testing.T, fresh func() desk.Screen, job vehicles.Job) {
	require.NoError(t, flag.Set("rapid.checks", "30")) // a second or two
	rapid.Check(t, func(rt *rapid.T) {
		size := rapid.SampledFrom([][2]int{{60, 17}, {79, 20}, {100, 27}, {160, 47}}).Draw(rt, "size")
		r := New(t, fresh(), job, size[0], size[1])
		keys := rapid.SliceOfN(rapid.SampledFrom(wildKeys), 1, 15).Draw(rt, "keys")
		for _, k := range keys {
			screen, state := r.Screen, r.State
			before := screen.View(state, size[0], size[1])
			r.Type(k)
			require.Equal(t, before, screen.View(state, size[0], size[1]), "an old screen stays as it was: %q", keys)
			if rapid.Bool().Draw(rt, "tap") {
				r.Tap(rapid.IntRange(0, size[0]-1).Draw(rt, "x"), rapid.IntRange(0, size[1]-1).Draw(rt, "y"))
			}
			r.View(size[0], size[1])
			r.Screen.Keys(r.State)
		}
		again, err := vehicles.ParseJob(r.State.Job.Format(), "again.toml")
		if faults := (vehicles.FileErrors{}); !errors.As(err, &faults) || !faults.WholeJob() { // readings that contradict each other stay
			require.NoError(t, err, "%q", keys)
		}
		require.Equal(t, string(r.State.Job.Format()), string(again.Format()))
		for len(r.Steps()) > 0 {
			r.Undo()
			r.View(size[0], size[1])
		}
		require.Equal(t, string(job.Format()), string(r.State.Job.Format()), "undo brings all back")
	})
}
