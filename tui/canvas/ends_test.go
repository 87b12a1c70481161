package canvas

import (
	"image"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// From behind the van's ends lie one before the other, and both before what is under the floor: no name stands on them.
func TestTheEndsNamesNeverOverprint(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above, scene.FromRight, scene.FromLeft, scene.FromBehind} {
		s := scene.Scene{Projection: view.Projection(), Items: []scene.Item{
			{Role: scene.Bumper, Label: "bumper", Solid: scene.Upright(box(-95, -25, -915, 915), 0, 200)},
			{Role: scene.Floor, Solid: scene.Upright(box(0, 3200, -890, 890), 0, 30)},
			{Role: scene.Nose, Label: "nose", Solid: scene.Upright(box(3200, 3460, -860, 860), 0, 200)},
		}}
		low := s.Projection.Point(pt(-100, -915).At(-300))
		high := s.Projection.Point(pt(3500, 915).At(300))
		s.Min, s.Max = pt(min(low.X, high.X), min(low.Y, high.Y)), pt(max(low.X, high.X), max(low.Y, high.Y))
		c := Paint(s, 100, 27, plainLook)
		var names []string
		for _, text := range c.Texts {
			names = append(names, text.Name)
			for i, r := range text.Name {
				assert.Equal(t, r, c.At(text.Col, text.Row+i).Rune, "%s of %s, from %s", string(r), text.Name, s.Projection.From)
			}
		}
		want := []string{"BUMPER", "NOSE"}
		if view == scene.FromBehind {
			want = nil
		}
		assert.Equal(t, want, names, "from %s", s.Projection.From)
	}
}

// Where the bumper lies beyond the picture the van is broken off, in each row beside which its bar is: in cells by a tooth, in pixels by a line from
// one corner of that cell to the other. Nothing else looks like the bar.
func TestTheVanIsBrokenOffWhereItsBarIsBeyondThePicture(t *testing.T) {
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s := van(view)
		s.Items = slices.Delete(s.Items, 12, 13) // the loom lies over the line there
		s.Items = append(s.Items, scene.Item{Role: scene.Bumper, Label: "bumper", Solid: scene.Upright(box(-95, -25, -915, 915), 0, 200)})
		look := facesLook
		look.Camera = desk.Camera{Middle: pt(1210, 240), Scale: 8}
		c, p := painted(s, 100, 40, look, image.Pt(10, 20))
		ink, _ := colours(Cell{Ink: Ink{Role: scene.Bumper}, Ground: Ground{Role: scene.Floor, Set: true}}, darkly)
		line, teeth := solid(ink), 0
		for row := c.Top; row < c.Top+c.Rows; row++ {
			for col := c.Left; col < c.Left+c.Cols; col++ {
				cell := c.At(col, row)
				assert.False(t, cell.Ground.Set && cell.Ground.Role == scene.Bumper || cell.Ink.Face.Set && cell.Ink.Face.Role == scene.Bumper, "%d, %d", col, row)
			}
			tooth := c.At(c.Left, row).Rune
			named := slices.ContainsFunc(c.Texts, func(t Text) bool { // letters have a rim
				return t.Col <= c.Left+3 && (t.Row == row || t.down && t.Row <= row && row < t.Row+len(t.Name))
			})
			if named || tooth != '╲' && tooth != '╱' {
				continue
			}
			teeth++
			for _, y := range [2]int{5, 15} {
				x := y / 2
				if tooth == '╱' {
					x = 10 - y/2
				}
				near := 0
				for by := max(-2, -x); by <= 2; by++ {
					if at := p.RGBAAt(x+by, (row-c.Top)*20+y); math.Abs(float64(at.R)-float64(line.R)) < 40 && math.Abs(float64(at.B)-float64(line.B)) < 40 {
						near++
					}
				}
				assert.Positive(t, near, "row %d, %d pixels down", row, y)
			}
		}
		assert.Greater(t, teeth, 10)
	}
}

// Where the picture lies beside the van, so that its bar is beside no row, nothing is broken off.
func TestNothingIsBrokenOffBesideTheVan(t *testing.T) {
	s := van(scene.Below)
	s.Items = append(s.Items, scene.Item{Role: scene.Bumper, Label: "bumper", Solid: scene.Upright(box(-95, -25, -915, 915), 0, 200)})
	look := facesLook
	look.Camera = desk.Camera{Middle: pt(1210, 3000), Scale: 4}
	assert.NotPanics(t, func() { painted(s, 100, 40, look, image.Pt(10, 20)) })
}
