package place

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

var verdictFirst = regexp.MustCompile(`(^|│ )(foul|doubtful|clear) {2,}.*`)

// The finding that is tapped stays under the finger: what is shown takes rows, and the list would move down by them. What stood where they
// are now is the list's first. A second tap shows the same thing.
func TestATappedFindingStaysUnderTheFinger(t *testing.T) {
	for _, size := range screentest.Sizes {
		before := strings.Split(screentest.New(t, New(), vehicles.Demo(), size.W, size.H).View(size.W, size.H), "\n")
		stayed := 0
		for y, row := range before {
			at := verdictFirst.FindStringIndex(row)
			if at == nil {
				continue
			}
			d := screentest.New(t, New(), vehicles.Demo(), size.W, size.H)
			x := len([]rune(row[:at[0]])) + 3
			if screentest.Tapped(d, x, y).Goto != "Place" {
				continue
			}
			d.Tap(x, y)
			after := strings.Split(d.View(size.W, size.H), "\n")
			first := slices.IndexFunc(after, verdictFirst.MatchString)
			if first <= y {
				stayed++
			}
			assert.Equal(t, verdictFirst.FindString(row), verdictFirst.FindString(after[max(first, y)]), size.Name)
			shown := d.State.Focus
			d.Tap(x, max(first, y))
			assert.Same(t, shown, d.State.Focus)
		}
		assert.NotZero(t, stayed, size.Name)
	}
}
