package canvas

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

// ringCells are the cells of a picture that show the ring.
func ringCells(c *Canvas) (cells [][2]int) {
	for row := range c.Height {
		for col := range c.Width {
			if cell := c.At(col, row); cell.Ink.Role == scene.Cut && strings.ContainsRune("▘▝▀▖▌▞▛▗▚▐▜▄▙▟█", cell.Rune) {
				cells = append(cells, [2]int{col, row})
			}
		}
	}
	return cells
}

// The ring is the same whatever else is in the picture, never smaller than can be seen, and the brightest mark on it.
func TestTheRingIsWholeLargeAndBrightest(t *testing.T) {
	for view := range views {
		for _, scale := range []float64{0, 60, 30, 15, 7, 3, 1.5} {
			look := plainLook
			look.Faces, look.Camera = true, desk.Camera{View: view, Middle: pt(1210, 240), Scale: scale}
			s := van(view)
			full := Paint(s, 100, 27, look)
			alone := s
			alone.Items = nil
			for _, it := range s.Items {
				if it.Role == scene.Cut {
					alone.Items = append(alone.Items, it)
				}
			}
			bare := Paint(alone, 100, 27, look)
			cells := ringCells(&bare)
			assert.Equal(t, cells, ringCells(&full), "scale %g: nothing covers it", scale)
			low, high := cells[0], cells[0]
			for _, c := range cells {
				low = [2]int{min(low[0], c[0]), min(low[1], c[1])}
				high = [2]int{max(high[0], c[0]), max(high[1], c[1])}
			}
			assert.GreaterOrEqual(t, high[0]-low[0]+1, RingCells, "scale %g", scale)
			assert.GreaterOrEqual(t, high[1]-low[1]+1, RingCells/2, "scale %g", scale)
			for l := range looks.Count {
				table := looks.Look(l).Table()
				ring, _ := colours(*full.At(cells[0][0], cells[0][1]), table)
				for i := range full.Cells {
					ink, ground := colours(full.Cells[i], table)
					paper := table.Paper.RGB
					require.LessOrEqual(t, looks.Contrast(ink, paper), looks.Contrast(ring, paper), "scale %g", scale)
					require.LessOrEqual(t, looks.Contrast(ground, paper), looks.Contrast(ring, paper), "scale %g", scale)
				}
			}
		}
	}
}

// The rulers' numbers stand evenly, in either unit, at any scale that a camera may have and when all is shown.
func TestRulersAreEven(t *testing.T) {
	for _, units := range []survey.Units{survey.Millimetres, survey.Inches} {
		for _, size := range [][2]int{{40, 9}, {60, 17}, {59, 27}, {100, 27}, {107, 47}, {160, 47}} {
			for _, scale := range []float64{0, 0.3, 0.77, 1.9, 4.4, 7.1, 13, 29, 37, 41.67, 81, 170} {
				for _, middle := range []geometry.Point{pt(1210, 240), pt(1600, 0), pt(1500, 125)} { // places on the edges of cells, too
					look := Look{Units: units, Left: "left", Right: "right", Camera: desk.Camera{Middle: middle, Scale: scale}}
					p := Paint(van(scene.Below), size[0], size[1], look)
					row := []rune(p.lines()[p.Top+p.Rows])
					var across, up []int
					for col, r := range row {
						if r == '┴' {
							across = append(across, col)
						}
					}
					for y := p.Top; y < p.Top+p.Rows; y++ {
						if p.At(p.Left-1, y).Rune == '┤' {
							up = append(up, y)
						}
					}
					for _, at := range [][]int{across, up} {
						for i := 2; i < len(at); i++ {
							require.Equal(t, at[1]-at[0], at[i]-at[i-1], "%v, %v, scale %g, middle %v: %v", units, size, scale, middle, at)
						}
					}
				}
			}
		}
	}
}

// A word has one colour, whatever it stands on.
func TestAWordHasOneColour(t *testing.T) {
	s := hanging(scene.Below.Projection(), pt(0, -500), pt(2000, 500))
	s.Items = append(s.Items,
		scene.Item{Role: scene.Rail, Solid: flat(box(900, 1100, -500, 500))},
		scene.Item{Role: scene.Dimension, State: scene.Foul, Primitive: scene.Spot, At: pt(1000, 0).At(0), Label: "what is in the way"})
	look := plainLook
	look.Faces = true
	p := Paint(s, 100, 27, look)
	for row, line := range p.lines() {
		col, _, found := strings.Cut(line, "what is in the way")
		if !found {
			continue
		}
		first, _ := colours(*p.At(len([]rune(col)), row), looks.Dark.Table())
		for i := range len("what is in the way") {
			ink, _ := colours(*p.At(len([]rune(col))+i, row), looks.Dark.Table())
			assert.Equal(t, first, ink, "letter %d", i)
		}
		return
	}
	t.Fatal("it has no name")
}

// A scale bar is as long as the rulers have it, from the middle of one end to that of the other, to half a cell.
func TestTheScaleBarAgreesWithTheRulers(t *testing.T) {
	bar := regexp.MustCompile(`├(─*)┤ (\d+) mm`)
	for _, scale := range []float64{0, 0.77, 1.9, 4.4, 7.1, 13, 29, 37} {
		look := plainLook
		look.Camera = desk.Camera{Middle: pt(1210, 240), Scale: scale}
		p := Paint(van(scene.Below), 100, 27, look)
		m := bar.FindStringSubmatch(strings.Join(p.lines(), "\n"))
		require.NotNil(t, m, "scale %g", scale)
		length, err := strconv.ParseFloat(m[2], 64)
		require.NoError(t, err)
		wide, _ := p.CellSize()
		cells := float64(utf8.RuneCountInString(m[1]) + 1)
		assert.InDelta(t, length, cells*wide, wide/2+1e-6, "scale %g", scale)
	}
}

// The eye measures a ring by its outer edge: where the cut's name says that it is to scale that is where the cut's edge is, to what a block of dots can
// show, and where the ring is larger that is as many times as large as is said. Where nothing says how large it is drawn there is no ring.
func TestTheRingIsAsLargeAsItSays(t *testing.T) {
	toScaleOnce, larger := 0, 0
	for _, scale := range []float64{0, 30, 20, 15, 12, 9, 7, 5, 3, 2} {
		look := plainLook
		look.Faces, look.Camera = true, desk.Camera{Middle: pt(1210, 240), Scale: scale}
		s := van(scene.Below)
		var alone []scene.Item
		for _, it := range s.Items {
			if it.Role == scene.Cut || it.Role == scene.Floor {
				alone = append(alone, it)
			}
		}
		s.Items = alone
		c := Paint(s, 120, 40, look)
		cells := ringCells(&c)
		west, east := cells[0][0], cells[0][0]
		for _, cell := range cells {
			west, east = min(west, cell[0]), max(east, cell[0])
		}
		wide, _ := c.CellSize()
		text := strings.Join(c.lines(), "\n")
		if m := regexp.MustCompile(`ring drawn (\d+\.\d) times its size`).FindStringSubmatch(text); m != nil {
			larger++
			times, err := strconv.ParseFloat(m[1], 64)
			require.NoError(t, err)
			assert.InDelta(t, 127*times, float64(east-west+1)*wide, wide, "scale %g", scale)
			assert.NotContains(t, text, toScale)
			continue
		}
		toScaleOnce++
		assert.Regexp(t, `cut 127`, text, "scale %g", scale)
		assert.Contains(t, text, "to scale", "scale %g", scale)
		assert.InDelta(t, 127, float64(east-west+1)*wide, 2*wide, "scale %g: a cell too much at either end at the most", scale)
	}
	assert.Positive(t, toScaleOnce)
	assert.Positive(t, larger)
}
