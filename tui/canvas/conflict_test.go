package canvas

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// Two pipes across the cut, of which one is in its way: the colour of what is foul is where that one crosses the ring, nowhere else. The
// pipes keep the colour of pipes.
func TestRedIsOnlyWhereTheThingIsInTheWay(t *testing.T) {
	pipe := func(x float64, state scene.State) scene.Item {
		return scene.Item{Role: scene.Lines, Code: "B", State: state, Solid: flat(line(4, pt(x, -400), pt(x, 400)))}
	}
	s := scene.Scene{Projection: scene.Below.Projection(), Min: pt(0, -500), Max: pt(2000, 500), Items: []scene.Item{
		{Role: scene.Floor, Solid: flat(box(0, 2000, -500, 500))},
		pipe(960, scene.Foul), pipe(1040, scene.Plain),
		{Role: scene.Cut, Primitive: scene.Outline, Solid: flat(geometry.NewRound(pt(1000, 0), 63.5))},
	}}
	look := plainLook
	look.Faces, look.Camera = true, desk.Camera{Middle: pt(1000, 0), Scale: 4}
	p := Paint(s, 100, 27, look)
	inWay, crossed := 0, 0
	for row := p.Top; row < p.Top+p.Rows; row++ {
		for col := p.Left; col < p.Left+p.Cols; col++ {
			cell, at := p.At(col, row), func() geometry.Point { q, _ := p.Point(col, row); return q }()
			if cell.Ground.Role == scene.Conflict {
				inWay++
				assert.InDelta(t, 960, at.X, 12, "only the pipe that is in the way")
				assert.LessOrEqual(t, at.Sub(pt(1000, 0)).Norm(), 63.5+16.0, "only within the ring")
			} else if cell.Rune == '│' {
				crossed++
				assert.NotEqual(t, scene.Foul, cell.Ink.State, "a pipe has the colour of pipes at %v", at)
			}
		}
	}
	assert.Positive(t, inWay)
	assert.Greater(t, crossed, 20)
}

// A leader has the look of nothing that is drawn, whatever it goes to: it would be taken for a pipe.
func TestALeaderIsNoPipe(t *testing.T) {
	p := &painter{}
	p.begin(van(scene.Below), 100, 27, plainLook)
	p.put(label{name: "fuel tank", ink: Ink{Role: scene.Lines, Tone: Bold}}, seat{col: 42, row: 4, hold: byStart, led: true, of: [2]int{40, 9}})
	assert.Equal(t, Ink{Role: scene.Lines, Tone: Bold}, p.canvas.At(42, 4).Ink)
	for row := 4; row < 9; row++ {
		assert.Equal(t, Ink{Role: scene.Floor}, p.canvas.At(40, row).Ink, "row %d", row)
	}
	assert.Equal(t, '╭', p.canvas.At(40, 4).Rune)
}

// No name stands where the screen puts a sign of its own: it would lose a letter.
func TestNoNameStandsUnderASign(t *testing.T) {
	s := van(scene.Below)
	bare := Paint(s, 100, 27, plainLook)
	look := plainLook
	covered := func(c *Canvas, text Text, at geometry.Point3) bool {
		col, row, ok := c.CellOf(at)
		return ok && !text.down && row == text.Row && col >= text.Col && col < text.Col+len([]rune(text.Name+text.Tail))
	}
	for _, text := range bare.Texts { // a sign under the second letter of each name
		if at, ok := bare.Point(text.Col+1, text.Row); ok && !text.down && len(text.Name) > 1 {
			look.Signs = append(look.Signs, at.At(0))
		}
	}
	signed := Paint(s, 100, 27, look)
	names := 0
	for _, text := range signed.Texts {
		if len(text.Name) < 2 {
			continue
		}
		names++
		for _, at := range look.Signs {
			assert.False(t, covered(&signed, text, at), text.Name)
		}
	}
	assert.Greater(t, names, 3)
}
