package marks

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// The figures of every mark are large on the smallest screen, also where the pilot was measured, a fitting stands in a tape's way and a message takes rows
// of it: what stands above them gives way.
func TestTheFiguresOfEveryMarkAreLarge(t *testing.T) {
	blocks := regexp.MustCompile(`(?m)^ *[▀▄█▐▌▛▜▙▟▘▝▖▗ ]*[▀▄█][▀▄█▐▌▛▜▙▟▘▝▖▗ ]*$`)
	s := screentest.State(t)
	cut := *s.Job.Cut
	cut.Drilled = &vehicles.Pair{level(cut.At[0] + 3), level(cut.At[1] - 2)}
	job := s.Job.WithCut(cut)
	job.Datum.EdgesAbove = "the lower edges of the wall lining"
	job.Fittings = vehicles.List[vehicles.Fitting]{{Name: "battery box", Rise: vehicles.Span{To: 400, Set: true}, Place: vehicles.Place{
		X: vehicles.Pair{level(cut.At[0] - 60), level(cut.At[0] + 60)}, Y: vehicles.Pair{level(400), level(700)},
	}}}
	s = screentest.Judged(s, job)
	for _, rows := range []int{15, 13, 11} {
		m, marks := marked(t, s), 0
		for range len(s.Marks.Marks) {
			if at := m.(screenType).mark(s); at.Above != nil {
				marks++
				view := screentest.Filled(t, m, s, 60, rows)
				assert.GreaterOrEqual(t, len(blocks.FindAllString(view, -1)), 6, "%d rows: %s\n%s", rows, at.Name, view)
				assert.Contains(t, view, "Not tied: what stands above may be off.")
				if rows > 11 {
					assert.Contains(t, view, "At the cut 11 doubtful", "how the job stands is said all the same")
				}
			}
			m, _, _ = screentest.After(m, s, screentest.Keys("down")...)
		}
		assert.Greater(t, marks, 4)
	}
	view := screentest.Filled(t, marked(t, s), s, 60, 40)
	assert.Contains(t, strings.Join(strings.Fields(view), " "), "Side edges: the lower edges of the wall lining.", "where there is room all is said")
}

// What must not be drilled or sawn yet stays above the figures however few rows there are.
func TestWhatIsFoulStaysAboveTheFigures(t *testing.T) {
	s := screentest.State(t)
	job := s.Job
	job.Ties = nil
	s = screentest.Judged(s, job)
	m := marked(t, s).(screenType)
	want := warnings(s, 60, true)
	assert.NotEmpty(t, want)
	for h := range 12 {
		rows := m.overFigures(m.mark(s), s, 60, h)
		assert.Subset(t, rows, want, "%d rows", h)
	}
}
