package plan

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/canvas"
)

// No name stands beside another thing of the same kind, nearer than to its own: it would be read as the name of that. In every sample job, from near
// and from far.
func TestANameStandsByItsOwnThing(t *testing.T) {
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	read := 0
	for _, file := range files {
		s := sample(t, file)
		if len(s.Plan.Obstructions) == 0 {
			continue
		}
		o := Options{Shown: drawing.Worst(s.Result.Findings, func(*rules.Finding) bool { return true }, 3)}
		for _, size := range [][2]int{{57, 11}, {57, 27}, {100, 47}} {
			pane := New().Sized(size[0], size[1])
			for _, camera := range camerasOver(pane, s, o) {
				s.Camera = camera
				shown := New().draw(s, o)
				c := canvas.Paint(shown, size[0], size[1], canvas.Look{Camera: pane.camera(shown, s, o), Faces: true, Left: "left", Right: "right"})
				for i := range c.Texts {
					own, others := ofName(&shown, c.Texts[i].Name)
					if own == nil || strings.ContainsAny(c.Texts[i].Tail, "►▼◄▲") {
						continue // an arrow points to what is out of sight
					}
					read++
					wide, high := c.CellSize()
					for _, other := range others {
						if off(&c, &c.Texts[i], other) > 2*high {
							continue // a leader says of what it is
						}
						assert.GreaterOrEqual(t, off(&c, &c.Texts[i], other)+wide/2, off(&c, &c.Texts[i], own), "%s %v %v: %q", file, size, camera, c.Texts[i].Name)
					}
				}
			}
		}
	}
	assert.Greater(t, read, 100)
}

// ofName are the thing that has a name, and the others of its kind; nil where the name is of none.
func ofName(s *scene.Scene, name string) (own *scene.Item, others []*scene.Item) {
	thing := func(it *scene.Item) bool { return it.Code != "" && it.Primitive == scene.Area && it.Label != "" }
	for i := range s.Items {
		if it := &s.Items[i]; thing(it) && strings.HasPrefix(name, it.Label) && (own == nil || len(own.Label) < len(it.Label)) {
			own = it
		}
	}
	for i := range s.Items {
		if it := &s.Items[i]; own != nil && thing(it) && it.Code == own.Code && it.Label != own.Label {
			others = append(others, it)
		}
	}
	return own, others
}

// off is how far a text is from what is seen of a thing in the picture, at the nearest of many places, mm.
func off(c *canvas.Canvas, text *canvas.Text, it *scene.Item) float64 {
	wide, high := c.CellSize()
	least := math.Inf(1)
	low, most := it.Solid.Prism.Footprint.Bounds()
	from, to := c.Corners()
	if low.X > to.X || low.Y > to.Y || most.X < from.X || most.Y < from.Y {
		return least
	}
	for i := range []rune(text.Name + text.Tail) {
		at, _ := c.Point(text.Col+i, text.Row)
		for _, by := range [...]geometry.Point{{}, {X: -wide / 2, Y: high / 2}, {X: wide / 2, Y: high / 2}, {X: -wide / 2, Y: -high / 2}, {X: wide / 2, Y: -high / 2}} {
			least = min(least, max(it.Solid.Prism.Footprint.GapOnly(at.Add(by)), 0))
		}
	}
	return least
}
