package tui

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// Each length that a form of a screen asks for stands in big figures while it is typed: of readings, of sizes, of drops and rises, of
// what stands on the floor, of the hook's drop, of collar and floor.
func TestEachLengthOfEachFormIsShownInBigFigures(t *testing.T) {
	ofWholeRun(t)
	b, _ := wholeVan(t, windows[0][0], windows[0][1])
	b.press("B")
	shown := map[string]int{}
	for i, s := range b.screens {
		forms, has := s.(interface {
			Records(s desk.State) []form.Record
		})
		if !has {
			continue
		}
		for row, record := range forms.Records(b.desk.State) {
			rule := fmt.Sprintf("%T", record)
			if strings.HasSuffix(rule, ".ruleRecord") && shown[rule] > 6 {
				continue // the rules' forms are all alike, and there are hundreds
			}
			fields := record.Fields(b.desk.State, nil)
			for k, f := range fields {
				if f.Unit != "mm" || len(f.Choices) > 0 {
					continue
				}
				b.goTo(i)
				opened := -1
				for n := row; opened < 0 && n < row+50; n++ { // a form may have several rows of its list
					b.keys("esc esc home" + strings.Repeat(" down", n) + " enter")
					opened = slices.IndexFunc(fields, func(f form.Field) bool { return f.Key == b.screens[b.at].Plain(b.desk.State).Field })
				}
				b.keys(strings.TrimSpace(strings.Repeat(" up", max(0, opened-k)) + strings.Repeat(" down", max(0, k-opened))))
				what := s.Title() + ", " + record.ID() + ", " + f.Label
				require.Equal(t, f.Key, b.screens[b.at].Plain(b.desk.State).Field, what)
				assert.NotZero(t, b.bandHeight(), what)
				assert.Contains(t, b.rows()[headRows], strings.TrimSpace(f.Label), what)
				shown[s.Title()]++
				shown[rule]++
			}
		}
	}
	for _, title := range []string{"Underneath", "On top", "Match", "Job"} {
		assert.NotZero(t, shown[title], title)
	}
	t.Log(shown)
}

// So do those that are asked for beside a plan: a place, the measured pilot hole, collar and hole, a tape straight from the hole, a
// point of a run, its pipe, and what hangs on it.
func TestEachLengthAskedBesideAPlanIsShownInBigFigures(t *testing.T) {
	for _, c := range []struct{ title, keys string }{
		{"Place", "t"}, {"Place", "t down"}, {"Place", "m"}, {"Place", "m down"}, {"Place", "k"}, {"Place", "k down"}, {"Place", "k down down"}, {"Place", "d"},
		{"Runs", "t"}, {"Runs", "t down"}, {"Runs", "t down down"}, {"Runs", "k"}, {"Runs", "k down"},
	} {
		for _, size := range windows {
			b, _ := wholeVan(t, size[0], size[1])
			if c.keys == "d" {
				document, err := vehicles.Load("../testdata/cases/31-unexplained-pilot.toml")
				require.NoError(t, err)
				b.desk.Begin(document.Job, true)
			}
			b.press("B").goTo(b.titled(c.title))
			b.keys(c.keys)
			require.True(t, b.screens[b.at].Typing(), c)
			assert.NotZero(t, b.bandHeight(), c)
			label := b.screens[b.at].Plain(b.desk.State).Taped.Label
			assert.NotEmpty(t, label, c)
			assert.Contains(t, strings.Join(b.rows()[headRows+b.bandHeight():], "\n"), "▸ ", "%v: the field is seen", c)
		}
	}
}
