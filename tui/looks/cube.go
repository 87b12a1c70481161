package looks

import (
	"sync"

	"github.com/lucasb-eyer/go-colorful"
)

// What a terminal of 256 colours has beside the sixteen, which everybody sets as they like: a cube of six steps a side, then greys. The
// steps are those that xterm has, and others after it.
const (
	firstOfCube = 16
	firstGrey   = 232
	lastGrey    = 255
)

var steps = [6]int{0, 95, 135, 175, 215, 255}

// InCube is the colour, 0xRRGGBB, of a number from 16 to 255.
func InCube(n uint8) int {
	if n >= firstGrey {
		grey := 8 + 10*(int(n)-firstGrey)
		return grey<<16 | grey<<8 | grey
	}
	i := int(n) - firstOfCube
	return steps[i/36]<<16 | steps[i/6%6]<<8 | steps[i%6]
}

// cube are the colours of the numbers.
var cube = sync.OnceValue(func() (all [lastGrey - firstOfCube + 1]colorful.Color) {
	for i := range all {
		all[i] = colourOf(InCube(uint8(i + firstOfCube)))
	}
	return all
})

func colourOf(rgb int) colorful.Color {
	return colorful.Color{R: float64(rgb>>16&255) / 255, G: float64(rgb>>8&255) / 255, B: float64(rgb&255) / 255}
}

// Number is the one of 256 colours that stands for a word's, a line's or the paper's: what a mark says has that mark's.
func (t *Table) Number(c Colour) uint8 {
	for m := range t.Marks {
		if t.Marks[m].RGB == c.RGB {
			return t.Cube.Marks[m]
		}
	}
	return Nearest(c.RGB)
}

// known are the numbers that were asked for before.
var known sync.Map

// Nearest is the number of the one of 256 colours that is nearest to another, 0xRRGGBB, to the eye (CIEDE2000).
func Nearest(rgb int) uint8 {
	if n, ok := known.Load(rgb); ok {
		return n.(uint8)
	}
	want, nearest, least := colourOf(rgb), 0, 2.0
	for i, c := range cube() {
		if d := c.DistanceCIEDE2000(want); d < least {
			nearest, least = i, d
		}
	}
	n := uint8(nearest + firstOfCube)
	known.Store(rgb, n)
	return n
}

// InCube is the look as a terminal of 256 colours shows it: a table of colours that it has.
func (l Look) InCube() *Table { return inCubes()[l] }

var inCubes = sync.OnceValue(func() (all [Count]*Table) {
	for l, of := range tables {
		t := *of
		t.Mixed = &of.Faces
		for m := range t.Marks {
			t.Marks[m].RGB = InCube(t.Cube.Marks[m])
		}
		for f := NoFace + 1; int(f) < Faces; f++ {
			t.Faces[f] = InCube(t.Cube.Faces[f])
		}
		for g := range t.Rooms {
			t.Rooms[g].RGB = InCube(Nearest(t.Rooms[g].RGB))
		}
		t.Paper.RGB, t.Ink.RGB = InCube(Nearest(t.Paper.RGB)), InCube(Nearest(t.Ink.RGB))
		all[l] = &t
	}
	return all
})
