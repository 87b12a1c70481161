package canvas

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

// A sign has one colour, on the bare floor and on any face.
func TestASignHasOneColour(t *testing.T) {
	s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -500), Max: pt(2000, 500), Items: []scene.Item{
		{Role: scene.Floor, Solid: flat(box(0, 2000, -500, 500))},
		{Role: scene.Movable, Solid: flat(box(200, 900, -400, 400))},
		{Role: scene.Rail, Solid: flat(box(1500, 1900, -400, 400))},
	}}
	for _, role := range []scene.Role{scene.Tie, scene.Outlet, scene.Mouth} {
		shown := s
		for _, x := range []float64{500, 1200, 1700} {
			shown.Items = append(shown.Items, scene.Item{Role: role, Primitive: scene.Spot, At: pt(x, 0).At(0)})
		}
		look := plainLook
		look.Faces = true
		c := Paint(shown, 100, 27, look)
		var seen []int
		for _, cell := range c.Cells {
			if string(cell.Rune) == Sign(role) {
				ink, _ := colours(cell, looks.Dark.Table())
				seen = append(seen, ink)
			}
		}
		require.Len(t, seen, 3)
		assert.Equal(t, seen[0], seen[1], "role %d", role)
		assert.Equal(t, seen[0], seen[2], "role %d", role)
	}
}

// However far away, the heater's exhaust comes down to the sign of its end in that one's column, and the van's is whole where ribs cross it.
func TestExhaustsAreWholeToTheirEnds(t *testing.T) {
	for at := range 12 {
		x := 1200 + float64(at)*4
		s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -900), Max: pt(3200, 900), Items: []scene.Item{
			{Role: scene.Floor, Solid: flat(box(0, 3200, -900, 900))},
			{Role: scene.Hot, Code: "X", Solid: flat(line(25, pt(400, -600+float64(at)*5), pt(2800, -600+float64(at)*5)))},
			{Role: scene.Rib, Primitive: scene.Outline, Solid: flat(box(1000, 1060, -800, 800))},
			{Role: scene.Exhaust, Solid: flat(line(12, pt(x, 0), pt(x, 800)))},
			{Role: scene.Outlet, Primitive: scene.Spot, At: pt(x, 800).At(0)},
		}}
		look := plainLook
		look.Faces = true
		c := Paint(s, 60, 27, look)
		col, row, _ := c.CellOf(pt(x, 800).At(0))
		assert.Equal(t, Sign(scene.Outlet), string(c.At(col, row).Rune))
		assert.Equal(t, Ground{Role: scene.Exhaust, Set: true}, c.At(col, row-1).Ground, "x %g", x)
		from, along, _ := c.Cell(pt(500, -600+float64(at)*5))
		to, _, _ := c.Cell(pt(2700, -600+float64(at)*5))
		for col := from; col <= to; col++ {
			hot := false
			for _, r := range [3]int{along - 1, along, along + 1} {
				cell := c.At(col, r)
				hot = hot || cell.Ground.Role == scene.Hot || cell.Ink.Face.Role == scene.Hot
			}
			assert.True(t, hot, "column %d of the van's exhaust", col)
		}
	}
}

// A name stands wholly on what it is of, or wholly beside it.
func TestANameNeverCoversAnEdgeOfItsThing(t *testing.T) {
	look := plainLook
	look.Faces = true
	names := 0
	for _, size := range [][2]int{{60, 17}, {100, 27}, {160, 47}} {
		for _, scale := range []float64{0, 12, 6} {
			look.Camera = desk.Camera{Middle: pt(1210, 240), Scale: scale}
			s := van(scene.Below)
			var p Painter
			c := p.Paint(s, size[0], size[1], look)
			for i := range p.parts {
				it := &p.parts[i]
				if it.Role != scene.Rail && it.Role != scene.Steel || it.Primitive != scene.Area || it.Area.Shape != geometry.Rectangle {
					continue
				}
				for _, text := range c.Texts {
					if text.Name != it.Label {
						continue
					}
					names++
					on, cells := 0, cellsOf(text)
					for _, cell := range cells {
						if p.covers(it, cell[0], cell[1]) {
							on++
						}
					}
					assert.Contains(t, []int{0, len(cells)}, on, "%s, %v at %g", text.Name, size, scale)
				}
			}
		}
	}
	assert.Greater(t, names, 8)
}

// Of the lines of pipes and wires those that can kill are followed first: the others are paler in every look, and seen all the same, also on what is
// solid. One that is picked out, or in the way of the cut, is not.
func TestPipesThatKillNobodyArePaler(t *testing.T) {
	wire := scene.Item{Role: scene.Lines, Code: "W", Solid: flat(line(20, pt(0, 0), pt(900, 0)))}
	deadly, picked, tank := wire, wire, wire
	deadly.Deadly, picked.Selected, tank.Solid = true, true, flat(box(0, 900, 0, 300))
	for _, it := range []scene.Item{deadly, picked, tank} {
		assert.Equal(t, Normal, lineInk(&it).Tone)
	}
	for l := range looks.Look(looks.Count) {
		for _, table := range []*looks.Table{l.Table(), l.InCube()} {
			for _, role := range []scene.Role{scene.Floor, scene.Steel, scene.Rail, scene.Movable, scene.Hot, scene.Lines} {
				ground := Ground{Role: role, Set: true}
				pale, behind := colours(Cell{Ink: lineInk(&wire), Ground: ground}, table)
				full, _ := colours(Cell{Ink: lineInk(&deadly), Ground: ground}, table)
				assert.GreaterOrEqual(t, looks.Contrast(pale, behind), lineContrast, "%s, role %d", l, role)
				if role == scene.Floor {
					assert.Less(t, looks.Contrast(pale, behind), looks.Contrast(full, behind), "%s", l)
				}
			}
		}
	}
	s := van(scene.Below)
	loom := &s.Items[12]
	loom.Unsure, loom.State, loom.Solid = false, scene.Foul, flat(line(8, pt(60, 690), pt(3240, 690)))
	s.Items = s.Items[:13]
	s.Items = append(s.Items, scene.Item{Role: scene.Cut, Primitive: scene.Outline, Solid: flat(geometry.NewRound(pt(1000, 690), 63.5))})
	c := Paint(s, 160, 47, facesLook)
	red, pales := 0, 0
	for i := range c.Cells {
		switch ink := c.Cells[i].Ink; {
		case ink.Tone == Pale:
			pales++
			assert.NotEqual(t, scene.Foul, ink.State)
		case ink.Role == scene.Lines && ink.State == scene.Foul && ink.Tone == Normal:
			red++
		}
	}
	assert.Positive(t, red)
	assert.Positive(t, pales)
}
