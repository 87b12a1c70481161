package tui

import (
	"fmt"
	"os"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// crowdedJob holds n crossmembers beside and over one another, all over the floor.
func crowdedJob(t testing.TB, n int) vehicles.Job {
	job := vehicles.Demo()
	for n -= job.Entries(); n > 0; n-- {
		text := fmt.Sprintf("format = 1\n[job]\nref = \"n\"\n[floor]\nfrom = 40\nlength = 3200\nwidth = 1780\nthickness = 31\nground = 460\n"+
			"[[obstruction]]\nname = \"m%d\"\nkind = \"crossmember\"\nx = [%d, %d]\ny = [%d, %d]\ndrop = [0, 95]\n", n, 150+n*7%3000, 170+n*7%3000, n*13%1600-850, n*13%1600-830)
		one, err := vehicles.ParseJob([]byte(text), "one.toml")
		require.NoError(t, err)
		job.Obstructions = append(job.Obstructions, one.Obstructions...)
	}
	return job
}

// A job with all that it may hold is opened, shown on every screen, changed, saved and read back; what would be one more is refused in a
// line, and nothing else is lost by it.
func TestAJobAtItsLimitIsWorkedOn(t *testing.T) {
	o := options(t)
	o.Screens = Screens()
	full := crowdedJob(t, vehicles.MostEntries)
	require.Equal(t, vehicles.MostEntries, full.Entries())
	require.NoError(t, os.WriteFile(o.Path, full.Format(), 0o600))
	b := started(t, o)
	for i := range b.screens {
		b.press(fmt.Sprint((i + 1) % 10))
		b.View()
	}
	b.goTo(b.titled("Place"))
	b.press("left", "ctrl+s")
	saved, err := vehicles.Load(o.Path, o.Book)
	require.NoError(t, err)
	assert.Equal(t, string(b.desk.State.Job.Format()), string(saved.Job.Format()))
	b.goTo(b.titled("Underneath"))
	before := b.desk.State.Job.Format()
	b.press("n", "c")
	assert.True(t, b.shows("things and points of paths, at most 10000 can be shown"), "%s", b.View())
	b.keys("652 enter").press("esc")
	assert.LessOrEqual(t, b.desk.State.Job.Entries(), vehicles.MostEntries)
	assert.Equal(t, string(before), string(b.desk.State.Job.Format()))
}

// How long a key takes that changes a job with all that it may hold, with the picture after it: a tenth of a second would be felt.
func BenchmarkKeyAtTheLimit(b *testing.B) {
	for _, n := range []int{200, vehicles.MostEntries} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			o := Options{Path: b.TempDir() + "/van.toml", Book: rules.Builtin(), Screens: Screens()}
			require.NoError(b, os.WriteFile(o.Path, crowdedJob(b, n).Format(), 0o600))
			r, err := New(o)
			require.NoError(b, err)
			r.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
			r.goTo(r.titled("Place"))
			keys := []tea.KeyMsg{{Type: tea.KeyLeft}, {Type: tea.KeyRight}}
			i := 0
			for b.Loop() {
				r.Update(keys[i%2])
				r.View()
				i++
			}
		})
	}
}
