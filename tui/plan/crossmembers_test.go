package plan

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// members counts the crossmembers that are seen in a picture, by at least half a column of them, and those that are named in full; none is named twice.
func members(t *testing.T, s desk.State, c *canvas.Canvas, what string) (seen, named int) {
	low, high := c.Corners()
	wide, tall := c.CellSize()
	for i, o := range s.Job.Obstructions {
		from, to := s.Result.Plan.Obstructions[i].Prism.Footprint.Bounds()
		if o.Kind != "crossmember" || min(to.X, high.X)-max(from.X, low.X) < wide/2 || min(to.Y, high.Y)-max(from.Y, low.Y) < tall {
			continue
		}
		times := 0
		for _, text := range c.Texts {
			if strings.HasPrefix(text.Name, o.Name) {
				times++
			}
		}
		assert.LessOrEqual(t, times, 1, "%s, %s", o.Name, what)
		seen, named = seen+1, named+min(times, 1)
	}
	return seen, named
}

// Each crossmember that is seen is named, once and in full: people find their way under a van by them, and by which of them it is.
func TestEachCrossmemberIsNamed(t *testing.T) {
	all := 0
	inSmallest(t, func(s desk.State, c *canvas.Canvas, what string) {
		seen, named := members(t, s, c, what)
		assert.Equal(t, seen, named, what)
		all += named
	})
	assert.Greater(t, all, 30)
}

// However near one looks.
func TestEachCrossmemberIsNamedFromNearToo(t *testing.T) {
	s := demo(t)
	here := s.Result.Plan.Cut.At.At(0)
	o := Options{Shown: drawing.Worst(s.Result.Findings, func(f *rules.Finding) bool { return f.WithCut() }, 3), Here: &here}
	for _, size := range [][2]int{{57, 27}, {102, 47}} {
		p := New().Sized(size[0], size[1])
		s.Camera = desk.Camera{Whole: true}
		for range 6 {
			c := canvas.Paint(p.draw(s, o), size[0], size[1], canvas.Look{Camera: s.Camera, Faces: true, Left: "left", Right: "right"})
			what := ansi.Strip(c.Encode(desk.NoColour, 0))
			seen, named := members(t, s, &c, what)
			assert.Equal(t, seen, named, what)
			s.Camera = p.zoomedHere(s, o, 1/step)
		}
	}
}

// So it is whichever of what carries is picked out, which is named before all others; beside anything else one may have no room.
func TestEachCrossmemberIsNamedBesideWhatIsPickedOut(t *testing.T) {
	s := demo(t)
	s.Camera = desk.Camera{Whole: true}
	p, o := New().Sized(50, 27), Options{Follow: true}
	for s.Selected = range s.Job.Obstructions {
		c := canvas.Paint(p.draw(s, o), 50, 27, canvas.Look{Camera: s.Camera, Faces: true, Left: "left", Right: "right"})
		what := fmt.Sprint(s.Job.Obstructions[s.Selected].Name, "\n", ansi.Strip(c.Encode(desk.NoColour, 0)))
		seen, named := members(t, s, &c, what)
		if spare := seen - named; vehicles.KindOf(s.Job.Obstructions[s.Selected].Kind).Is(vehicles.Waymark) {
			assert.Zero(t, spare, what)
		} else {
			assert.LessOrEqual(t, spare, 1, what)
		}
	}
}

// One that is cut off by the edge where the van is broken off is named like any other.
func TestACrossmemberAtTheEdgeIsNamed(t *testing.T) {
	s := demo(t)
	o := Options{Shown: drawing.Worst(s.Result.Findings, func(f *rules.Finding) bool { return f.WithCut() }, 3)}
	p := New().Sized(57, 27)
	for _, x := range []float64{1550, 1600, 1650, 1670} {
		s.Camera = desk.Camera{Scale: 27.8, Middle: geometry.Point{X: x}}
		c := canvas.Paint(p.draw(s, o), 57, 27, canvas.Look{Camera: s.Camera, Faces: true, Left: "left", Right: "right"})
		what := ansi.Strip(c.Encode(desk.NoColour, 0))
		seen, named := members(t, s, &c, what)
		assert.Equal(t, 3, seen, what)
		assert.Equal(t, seen, named, what)
	}
}

// Of a van with many of them a small picture has room for all but one.
func TestMostCrossmembersOfAnyVanAreNamed(t *testing.T) {
	files, err := filepath.Glob("../../vehicles/library/*.toml")
	require.NoError(t, err)
	all := 0
	for _, file := range files {
		s := sample(t, file)
		s.Camera = desk.Camera{Whole: true}
		for _, size := range [][2]int{{50, 27}, {57, 27}} {
			p := New().Sized(size[0], size[1])
			c := canvas.Paint(p.draw(s, Options{}), size[0], size[1], canvas.Look{Camera: s.Camera, Faces: true, Left: "left", Right: "right"})
			seen, named := members(t, s, &c, fmt.Sprint(file, size))
			assert.GreaterOrEqual(t, named, seen-1, "%s %v\n%s", file, size, ansi.Strip(c.Encode(desk.NoColour, 0)))
			all += named
		}
	}
	assert.Greater(t, all, 40)
}
