package canvas

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
)

// However near and wherever one looks, each tick of the rulers stands in the middle of what its number counts, and ticks are evenly apart.
func TestTheRulersAreTrue(t *testing.T) {
	read := 0
	scenes := []scene.Scene{van(scene.Below), van(scene.Above)}
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(scenes).Draw(t, "view")
		units := rapid.SampledFrom([]survey.Units{survey.Millimetres, survey.Inches}).Draw(t, "units")
		look := plainLook
		look.Units = units
		if rapid.Bool().Draw(t, "near") {
			look.Camera = desk.Camera{
				Scale:  math.Exp(rapid.Float64Range(math.Log(MinScale), math.Log(MaxScale)).Draw(t, "scale")),
				Middle: pt(rapid.Float64Range(-500, 4000).Draw(t, "x"), rapid.Float64Range(-1500, 1500).Draw(t, "y")),
			}
		}
		c := Paint(s, rapid.IntRange(40, 200).Draw(t, "w"), rapid.IntRange(8, 60).Draw(t, "h"), look)
		along := numbersAlong(&c)
		read += len(along)
		for col, number := range along {
			at, ok := c.Point(col, c.Top)
			require.True(t, ok)
			assert.InDelta(t, at.X*s.Projection.Across.Counts/units.Size(), number, 0.006, "column %d", col)
		}
		evenly(t, along)
		beside := map[int]float64{}
		for row := c.Top; row < c.Top+c.Rows; row++ {
			if c.At(c.Left-1, row).Rune != '┤' {
				continue
			}
			number := asNumber(t, strings.TrimSpace(c.lines()[row][:c.Left-1]))
			at, _ := c.Point(c.Left, row)
			assert.InDelta(t, at.Y*s.Projection.Up.Counts/units.Size(), number, 0.006, "row %d", row)
			beside[row] = number
		}
		evenly(t, beside)
	})
	assert.Greater(t, read, 200)
}

// numbersAlong are the numbers of the ruler below by the columns of their ticks.
func numbersAlong(c *Canvas) map[int]float64 {
	line := []rune(c.lines()[c.Top+c.Rows])
	numbers := map[int]float64{}
	for col, r := range line {
		if r != '┴' {
			continue
		}
		before := strings.FieldsFunc(" "+string(line[:col]), func(r rune) bool { return strings.ContainsRune("─┴└", r) })
		ends := col > 0 && !strings.ContainsRune("─┴└", line[col-1])
		if number, err := strconv.ParseFloat(before[len(before)-1], 64); err == nil && ends {
			numbers[col] = number
		}
	}
	return numbers
}

func asNumber(t require.TestingT, text string) float64 {
	number, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return number
}

// evenly holds places on a ruler to be as far apart as what they count.
func evenly(t assert.TestingT, numbers map[int]float64) {
	places := make([]int, 0, len(numbers))
	for at := range numbers {
		places = append(places, at)
	}
	slices.Sort(places)
	for i := 2; i < len(places); i++ {
		assert.Equal(t, places[1]-places[0], places[i]-places[i-1], "%v", numbers)
	}
}
