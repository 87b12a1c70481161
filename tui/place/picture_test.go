package place

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/tui/words"
)

// halves are the plan and the panel beside it.
func halves(t *testing.T, m desk.Screen, s desk.State, w, h int) (plan, panel string) {
	planW, _ := moving.Sizes(w, h)
	for _, row := range strings.Split(screentest.Filled(t, m, s, w, h), "\n") {
		plan += ansi.Cut(row, 0, planW) + "\n"
		panel += ansi.Cut(row, planW, w) + "\n"
	}
	return plan, panel
}

// zoomed are the messages that give a screen its size and press keys.
func zoomed(w, h int, keys string) []tea.Msg {
	return append([]tea.Msg{tea.WindowSizeMsg{Width: w, Height: h}}, screentest.Keys(keys)...)
}

// Each figure on the plan is one of the list beside it, of the same thing; what is in the way is marked once a thing.
func TestTheFiguresOnThePlanAreTheLists(t *testing.T) {
	figure := regexp.MustCompile(`(\d[\d.]*) (?:mm )?(short|to spare)`)
	for _, keys := range []string{"", "g"} {
		for _, size := range [][2]int{{100, 27}, {160, 47}} {
			s := demo(t)
			m, s, _ := screentest.After(New(), s, zoomed(size[0], size[1], keys)...)
			plan, panel := halves(t, m, s, size[0], size[1])
			found := figure.FindAllStringSubmatch(plan, -1)
			if require.NotEmpty(t, found); keys == "" { // near there is not always room beside the pipe
				require.Len(t, found, 2, "brake pipe and crossmember, %v %s", size, keys)
			}
			for _, f := range found {
				sign := map[string]string{"short": "-", "to spare": ""}[f[2]]
				assert.Contains(t, panel, " "+sign+f[1]+" ", "%v %s", size, keys)
			}
			for _, name := range []string{"brake pipe across", "middle crossmember"} {
				assert.Equal(t, 1, strings.Count(plan, name), "%s, %v %s", name, size, keys)
			}
			assert.LessOrEqual(t, strings.Count(plan, "╳"), 2)
			assert.Positive(t, strings.Count(plan, "╳"))
		}
	}
}

// The list is headed by the banner's tally, word for word, and says how much of that is not in it.
func TestTheListAndTheBannerHaveOneTally(t *testing.T) {
	s := demo(t)
	here := map[rules.Verdict]int{}
	for i := range s.Result.Findings {
		if f := &s.Result.Findings[i]; f.Rule.AtCut {
			here[f.Verdict]++
		}
	}
	banner := words.Tally(s.Result.Findings)
	var foul, doubtful int
	_, err := fmt.Sscanf(banner, "%d foul, %d doubtful", &foul, &doubtful)
	require.NoError(t, err, banner)
	require.Positive(t, foul-here[rules.Foul])
	require.Positive(t, doubtful-here[rules.Doubtful])
	for _, size := range [][2]int{{100, 27}, {160, 47}} {
		_, panel := halves(t, New(), s, size[0], size[1])
		assert.Contains(t, panel, banner)
		assert.Contains(t, panel, fmt.Sprintf("Elsewhere: %d foul, %d doubtful", foul-here[rules.Foul], doubtful-here[rules.Doubtful]))
		assert.Equal(t, min(here[rules.Foul], foul), len(regexp.MustCompile(`(?m)^[│ ]*foul `).FindAllString(panel, -1)))
	}
}

// The heater's exhaust has its end named, or an arrow where it leaves the view; what explains the picture stands below its
// rulers.
func TestTheExhaustHasAnEndAndTheKeyIsOutside(t *testing.T) {
	s := demo(t)
	m, near, _ := screentest.After(New(), s, zoomed(100, 27, "g")...)
	whole, panel := halves(t, New(), s, 100, 27)
	assert.Contains(t, panel, "warm air to the rear", "not taken for the exhaust")
	nearby, _ := halves(t, m, near, 100, 27)
	assert.Contains(t, whole, "heater's exhaust outlet")
	assert.Regexp(t, `(exhaust,? outlet|heater's exhaust)( \d+ mm (farther|on))? ▼`, nearby)
	assert.NotContains(t, nearby, "heater's exhaust outlet")
	for _, plan := range []string{whole, nearby} {
		key, rulers := -1, -1
		for i, row := range strings.Split(plan, "\n") {
			if strings.Contains(row, "mm to spare:") {
				key = i
			}
			if strings.HasPrefix(row, "mm   └") {
				rulers = i
			}
		}
		assert.Greater(t, key, rulers)
		assert.Positive(t, rulers)
	}
}

// Whatever is said at the foot of a small screen, the cut keeps its ring: no sign stands for it.
func TestTheRingIsThereWhateverIsSaid(t *testing.T) {
	for at := range 4 {
		s := screentest.State(t)
		moved := *s.Job.Cut
		moved.At[0] += 90 * float64(at)
		job := s.Job
		job.Cut = &moved
		s = screentest.Judged(s, job)
		for h := 17; h >= 13; h-- { // a message takes a row or two more than the foot, a warning another
			for _, keys := range []string{"esc", "f"} { // near, and all of the floor: in four rows of that a ring would be an eighth of a van
				if keys == "f" && h < 15 {
					continue
				}
				p, after, _ := screentest.After(New(), s, tea.WindowSizeMsg{Width: 60, Height: h})
				p, after, _ = screentest.After(p, after, screentest.Keys(keys)...)
				view := screentest.Filled(t, p, after, 60, h)
				assert.NotContains(t, view, "◎", "%d rows, %q", h, keys)
				assert.Contains(t, view, "cut", "%d rows, %q", h, keys)
			}
		}
	}
}
