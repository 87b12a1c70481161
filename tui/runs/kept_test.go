package runs

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

// The finding that is tapped stays under the finger, though what is picked for it may take rows above the list or belong to another run. A
// second tap shows the same thing.
func TestATappedFindingStaysUnderTheFinger(t *testing.T) {
	for _, size := range screentest.Sizes {
		before := strings.Split(screentest.New(t, New(), vehicles.Demo(), size.W, size.H).View(size.W, size.H), "\n")
		taken := 0
		for y, row := range before {
			at := verdictFirst.FindStringIndex(row)
			if at == nil {
				continue
			}
			d := screentest.New(t, New(), vehicles.Demo(), size.W, size.H)
			x := len([]rune(row[:at[0]])) + 3
			if screentest.Tapped(d, x, y).Goto != "Runs" {
				continue
			}
			d.Tap(x, y)
			shown := d.State.Focus
			after := strings.Split(d.View(size.W, size.H), "\n")
			first := slices.IndexFunc(after, verdictFirst.MatchString)
			if first < 0 || first > y {
				continue // the list begins below it now
			}
			d.Tap(x, y)
			assert.Same(t, shown, d.State.Focus, "%s, row %d: %s", size.Name, y, after[y])
			taken++
		}
		assert.NotZero(t, taken, size.Name)
	}
}
