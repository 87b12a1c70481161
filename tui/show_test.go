package tui

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// jobsShown are the sample, and the jobs of testdata that the screens open and judge.
func jobsShown(t *testing.T) map[string]vehicles.Job {
	all := map[string]vehicles.Job{"sample": vehicles.Demo(), "full": screentest.Full(t)}
	for _, pattern := range []string{"../testdata/cases/*.toml", "../testdata/cases/*/*.toml", "../testdata/rules/*/fail-*.toml"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, file := range files {
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			if job, err := vehicles.ParseJob(data, file); err == nil {
				all[file] = job
			}
		}
	}
	return all
}

// Whatever is shown from a list is seen in the middle of the screen that can mend it, with what it is of in hand: each finding of each
// job there is. What has no place is shown as what mends it.
func TestWhatIsShownIsSeenAndInHand(t *testing.T) {
	ofWholeRun(t)
	went := map[string]int{}
	for name, job := range jobsShown(t) {
		for _, screen := range Screens() {
			for _, size := range screentest.Sizes[:2] {
				r := screentest.New(t, screen, job, size.W, size.H)
				for i := range r.State.Result.Findings {
					f := &r.State.Result.Findings[i]
					show := desk.Show(f)
					if show.Goto != screen.Title() {
						continue
					}
					r.State.Focus = f
					r.Send(desk.Reveal{})
					if show.Open != nil {
						r.Send(*show.Open)
					}
					went[show.Goto]++
					inHand(t, r, f, size.W, size.H, name+", "+size.Name+": "+f.About())
					r.Send(tea.KeyMsg{Type: tea.KeyEsc})
				}
			}
		}
	}
	for _, title := range []string{"Place", "Runs", "Match", "On top", "Underneath"} {
		assert.NotZero(t, went[title], title)
	}
	t.Log(went)
}

// inHand holds that a finding that was shown is what the screen has in hand, and that its places, or those of what it is of, are seen.
func inHand(t *testing.T, r *screentest.Driver, f *rules.Finding, w, h int, what string) {
	here := strings.Join(r.Screen.Plain(r.State).Here, "\n")
	places := f.Points()
	switch r.Screen.Title() {
	case "On top":
		assert.Contains(t, here, map[bool]string{true: f.Against.Name, false: "Heater"}[f.Against.Sort == rules.AFitting], what)
		return
	case "Match":
		assert.Contains(t, here, " of ", what)
		return
	case "Underneath":
		if f.Against.Sort == rules.AnOpening {
			assert.Contains(t, here, f.Against.Name, what)
			return
		}
		require.Equal(t, int(f.Against.Index), r.State.Selected, what)
		assert.True(t, f.Unconfirmed || strings.Contains(here, "overall"), what)
		middle := r.State.Plan.Obstructions[f.Against.Index].Prism.Footprint.Middle
		assert.Less(t, middle.Sub(r.State.Camera.Middle).Norm(), 2*r.State.Camera.Scale, what)
		return
	}
	planW, planH := moving.Sizes(w, h)
	if view := inOneLine(r.View(w, h)); !strings.Contains(view, "Shown: ") { // a list of few rows begins with it
		assert.Regexp(t, withFigures(f.About()), view, what)
	}
	if exhaust := r.State.Job.Exhaust; exhaust != nil && exhaust.Muffler != nil && (f.Subject.Sort == rules.TheMuffler || f.Against.Sort == rules.TheMuffler) {
		assert.Contains(t, strings.ToLower(here), "muffler", what)
		assert.NotContains(t, here, "oint ", what)
	}
	for _, p := range places {
		_, _, in := plan.New().Sized(planW, planH).Cell(p, r.State, plan.Options{Focus: f})
		assert.True(t, in, what)
	}
}

// withFigures is what a name matches that may go on in the next row, behind the figures beside its first.
func withFigures(name string) string {
	words := strings.Fields(name)
	for i := range words {
		words[i] = regexp.QuoteMeta(words[i])
	}
	return strings.Join(words, `( [-0-9.°×±/m? ]*)`)
}

// inOneLine is a text with every row of blanks in it one blank.
func inOneLine(text string) string { return strings.Join(strings.Fields(text), " ") }
