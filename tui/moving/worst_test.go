package moving_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/place"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/tui/runs"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

var bodies = [][2]int{{60, 14}, {100, 26}, {160, 46}}

// onList is where in the body the first row of the list stands: the first with a verdict in front.
func onList(t *testing.T, view string) (x, y int) {
	for y, row := range strings.Split(view, "\n") {
		if at := regexp.MustCompile(`(^|│ )(foul|doubtful|clear) {2,}`).FindStringIndex(row); at != nil {
			return len([]rune(row[:at[0]])) + 1, y
		}
	}
	require.FailNow(t, "no list", view)
	return 0, 0
}

// Everything in the list of the worst can be come to by keys and by the wheel, and a tap shows the finding that is tapped.
func TestTheListOfTheWorstScrollsAndTakesTaps(t *testing.T) {
	for _, size := range bodies {
		for name, screen := range map[string]desk.Screen{"place": place.New(), "runs": runs.New()} {
			w, h := size[0], size[1]
			d := screentest.New(t, screen, vehicles.Demo(), w, h)
			first := d.View(w, h)
			says := regexp.MustCompile(`1-(\d+) of (\d+) \(PgDn\)`).FindStringSubmatch(first)
			require.Len(t, says, 3, "%s %v\n%s", name, size, first)
			of, err := strconv.Atoi(says[2])
			require.NoError(t, err)
			for range of {
				d.Type("<pgdown>")
			}
			assert.Contains(t, d.View(w, h), "-"+says[2]+" of "+says[2], "%s %v", name, size)
			x, y := onList(t, first)
			for range of {
				d.Send(tea.MouseMsg{X: x + 1, Y: y, Button: tea.MouseButtonWheelUp, Action: tea.MouseActionPress})
			}
			assert.Equal(t, first, d.View(w, h), "the wheel goes back up")
			change := screentest.Tapped(d, x+1, y)
			require.NotNil(t, change.Focus)
			row := strings.Split(first, "\n")[y]
			about := change.Focus.About()
			assert.Contains(t, row, about[:min(len(about), 12)], "a tap shows the finding that is tapped")
		}
	}
}

// What is shown is in the middle of the plan of the screen that can mend it.
func TestWhatIsShownIsInTheMiddle(t *testing.T) {
	if testing.Short() {
		t.Skip("of a whole run only")
	}
	for _, size := range bodies {
		for title, screen := range map[string]desk.Screen{"Place": place.New(), "Runs": runs.New()} {
			d := screentest.New(t, screen, vehicles.Demo(), size[0], size[1])
			shown := 0
			for i := range d.State.Result.Findings {
				f := &d.State.Result.Findings[i]
				if desk.Show(f).Goto != title {
					continue
				}
				shown++
				d.State.Focus = f
				d.Send(desk.Reveal{})
				w, h := moving.Sizes(size[0], size[1])
				for _, p := range f.Points() {
					_, _, in := plan.New().Sized(w, h).Cell(p, d.State, plan.Options{Focus: f})
					assert.True(t, in, "%v %s", size, f.About())
				}
				inTheMiddle(t, f, d.State, w, h)
				for sort, head := range map[rules.Sort]string{rules.TheExhaust: "EXHAUST", rules.TheIntake: "INTAKE"} {
					if f.Subject.Sort == sort && title == "Runs" {
						assert.Contains(t, d.View(size[0], size[1]), head, f.About())
					}
				}
			}
			assert.NotZero(t, shown, title)
		}
	}
}

// inTheMiddle holds that the middle of a finding's places stands in the middle half of a plan of w by h.
func inTheMiddle(t *testing.T, f *rules.Finding, s desk.State, w, h int) {
	points := f.Points()
	if len(points) == 0 {
		return
	}
	middle := points[0]
	if len(points) > 1 {
		middle = middle.Add(points[1]).Scale(0.5)
	}
	col, row, _ := plan.New().Sized(w, h).Cell(middle, s, plan.Options{Focus: f})
	assert.InDelta(t, float64(w)/2, float64(col), float64(w)/4, "%s: column %d of %d", f.About(), col, w)
	assert.InDelta(t, float64(h)/2, float64(row), float64(h)/4+1, "%s: row %d of %d", f.About(), row, h)
}
