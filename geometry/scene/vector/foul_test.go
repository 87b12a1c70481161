package vector

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// A foul pipe too thin for a face is red and heavy round the ring, so many radii of it far, and as ever beyond; without a ring all of it is.
func TestAThinPipeIsFoulRoundTheRing(t *testing.T) {
	screen := Screen{Thin: 2, Foul: &Foul{Face: 1, Line: 1.5, Colours: func(*scene.Item) Colours { return Colours{Line: redInk} }}}
	pipe := solid(scene.Fuel, geometry.NewLine([]geometry.Point{{X: -300, Y: -20}, {X: 300, Y: -20}}, 1)) // through the middle of the ring
	pipe.Code, pipe.State = "F", scene.Foul
	red := func(b tried) (lines []lineDrawn) {
		for _, l := range b.lines {
			if l.Colour == redInk {
				lines = append(lines, l)
			}
		}
		return lines
	}
	var b tried
	frame := b.drawn(of(pipe, round(60)), screen, 10)
	lines := red(b)
	require.Len(t, lines, 1)
	middle := frame.Place(geometry.Point{X: 10, Y: -20})
	for _, end := range lines[0].points {
		assert.InDelta(t, 1.5*6, end.Sub(middle).Norm(), 1e-9)
	}
	assert.InDelta(t, 0.6, lines[0].Width, 1e-9)
	var bare tried
	bare.drawn(of(pipe), screen, 10)
	assert.Empty(t, red(bare))
}

// In the path of a text's letters each command has as many numbers as it takes, each by itself.
func TestLettersAreAPathThatReads(t *testing.T) {
	number := regexp.MustCompile(`^-?\d+(\.\d+)?$`)
	takes := map[string]int{"M": 2, "L": 2, "Q": 4, "C": 6}
	d := outlinesOf(geometry.Point{X: 10, Y: 20}, Text{Words: "Ø 127 fgj", Size: 4})
	read := 0
	for _, m := range regexp.MustCompile(`([A-Za-z])([^A-Za-z]*)`).FindAllStringSubmatch(d, -1) {
		if m[1] == "z" {
			assert.Empty(t, m[2])
			continue
		}
		numbers := strings.Split(m[2], " ")
		require.Len(t, numbers, takes[m[1]], m[0])
		for i, n := range numbers {
			require.Regexp(t, number, n)
			v, err := strconv.ParseFloat(n, 64)
			require.NoError(t, err)
			require.InDelta(t, []float64{20, 18.5}[i%2], v, []float64{12, 4}[i%2], "in the line's box")
			read++
		}
	}
	assert.Greater(t, read, 200)
}

// The same pages are the same bytes, however often they are written: both faces, and lines.
func TestAFileIsTheSameEachTime(t *testing.T) {
	write := func() []byte {
		b := NewPDF("a page")
		b.Page(210, 297)
		b.Write(geometry.Point{X: 20, Y: 20}, Text{Words: "Ø 127", Size: 4, Colour: Ink})
		b.Write(geometry.Point{X: 20, Y: 40}, Text{Words: "cut", Size: 4, Bold: true, Colour: Ink})
		file, err := b.Bytes()
		require.NoError(t, err)
		return file
	}
	first := write()
	for range 12 {
		require.Equal(t, len(first), len(write()))
		require.True(t, string(first) == string(write()))
	}
}

// Half of a stroke lies to either side of a letter's edge: what reaches beyond it is the rim.
func TestTheRimOfLettersInAFile(t *testing.T) {
	s := NewSVG(100, 100)
	s.Write(geometry.Point{X: 20, Y: 20}, Text{Words: "C", Size: 4, Colour: Ink, Rim: White})
	m := regexp.MustCompile(`stroke-width="([\d.]+)"`).FindSubmatch(s.Bytes())
	require.NotNil(t, m)
	wide, err := strconv.ParseFloat(string(m[1]), 64)
	require.NoError(t, err)
	assert.InDelta(t, rimOf(4), wide/2, 1e-3)
}
