package runs

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// What is said of runs that were laid leaves plan and profile their rows on the smallest screen, and the rest of it stands in the panel until the
// job is another.
func TestWhatIsSaidOfLaidRunsLeavesThePictures(t *testing.T) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	bare := stripped(job.WithCut(cut), vehicles.RunKinds[:]...)
	for _, keys := range []string{"J", "j"} {
		for _, size := range screentest.Sizes {
			h := size.H - 1 // the body beside a line that is said
			d := screentest.New(t, New(), bare, size.W, h)
			find(d, keys)
			require.NotNil(t, d.State.Job.Exhaust, d.Said)
			said := len(desk.Wrap(d.Said, size.W))
			assert.LessOrEqual(t, said, 2, "%s: %s", size.Name, d.Said)
			assert.Contains(t, d.Said, "to spare")
			assert.Regexp(t, `Ctrl-Z (takes it back|undoes it)`, d.Said)
			left := h + 1 - said
			view := d.View(size.W, left)
			assert.Contains(t, view, "SEEN FROM BELOW", size.Name)
			assert.Contains(t, view, "SEEN FROM BESIDE THE RUN", size.Name)
			assertWholeIn(t, d, size.W, left)

			taken := regexp.MustCompile(`Taken[^.]*usual\s+muffler`)
			told := func() bool {
				return taken.MatchString(d.Said) || taken.MatchString(panelOf(d, size.W, h))
			}
			if size.W < desk.SideBySide {
				assert.Contains(t, d.Said, "; e: more.")
				d.Type("e")
			}
			assert.True(t, told(), "%s\n%s\n%s", size.Name, d.Said, d.View(size.W, h))
			d.Said = ""
			d.Type("n<right>")
			assert.False(t, told(), "%s: the job is another", size.Name)
			d.Undo()
			d.Undo()
			assert.False(t, told(), "%s: nothing is laid", size.Name)
		}
	}
}

// assertWholeIn looks that all that was laid is in the plan.
func assertWholeIn(t *testing.T, d *screentest.Driver, w, h int) {
	t.Helper()
	m := d.Screen.(screen)
	a := m.arranged(d.State, w, h)
	for _, of := range vehicles.RunKinds {
		if run := d.State.Job.Run(of); run != nil {
			for _, p := range run.Path {
				_, _, seen := m.pane.Sized(a.plan.W, a.plan.H).Cell(inSpace(p), d.State, m.shown(d.State))
				assert.True(t, seen, "%d by %d, %s %v", w, h, of, p)
			}
		}
	}
}

// panelOf is the panel beside the pictures, or under them, as one text.
func panelOf(d *screentest.Driver, w, h int) string {
	var rows []string
	for _, row := range strings.Split(d.View(w, h), "\n") {
		if i := strings.LastIndex(row, "│"); w >= desk.SideBySide {
			row = row[max(i, 0):]
		}
		rows = append(rows, strings.Trim(row, "│ "))
	}
	return strings.Join(rows, " ")
}
