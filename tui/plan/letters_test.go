package plan

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
)

// What is in the ring is in the way of the cut: the letter of the area that the cut is in stands beside the ring, in no cell of it.
func TestTheLetterOfTheCutsAreaStandsOffTheRing(t *testing.T) {
	letter, there := regexp.MustCompile(`\([A-Z]+\)`), 0
	for _, size := range [][2]int{{60, 7}, {60, 9}, {57, 27}, {100, 30}, {160, 47}} {
		for _, scale := range []float64{0, 1, 2.5, 5, 10, 25} {
			s, p := demo(t), New().Sized(size[0], size[1])
			areas, _ := p.Areas(s)
			best := areas[0].Best.At
			cut := *s.Job.Cut
			cut.At = [2]float64{math.Round(best.X), math.Round(best.Y)}
			result, faults := rules.Judge(s.Job.WithCut(cut), rules.Builtin())
			require.Empty(t, faults)
			s.Job, s.Result = result.Job, result
			if scale > 0 {
				s.Camera = desk.Camera{View: s.Camera.View, Scale: scale, Middle: s.Camera.View.Projection().Point(best.At(0))}
			}
			p.legend.open = true
			lay := p.lay(s, Options{Room: true})
			col, row, ok := lay.CellOf(s.Result.Plan.Cut.At.At(0))
			require.True(t, ok)
			wide, _ := lay.CellSize()
			ring := canvas.RingReach(cut.Across/2, lay.Scale) / wide
			picture := ansi.Strip(p.View(s, size[0], size[1], Options{Room: true}))
			for y, line := range strings.Split(picture, "\n") {
				for _, at := range letter.FindAllStringIndex(line, -1) {
					from := len([]rune(line[:at[0]]))
					for x := from; x < from+at[1]-at[0]; x++ {
						there++
						assert.Greater(t, math.Hypot(float64(x-col), 2*float64(y-row)), ring-0.5, "%v at %g mm a dot:\n%s", size, scale, picture)
					}
				}
			}
		}
	}
	assert.Greater(t, there, 20)
}
