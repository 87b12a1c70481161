package canvas

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// hanging is a floor with a crossmember and a pipe under it.
func hanging(seen scene.Projection, low, high geometry.Point) scene.Scene {
	pipe := geometry.Rounded([]geometry.Point3{{X: 200, Y: 240, Z: -60}, {X: 900, Y: 240, Z: -60}, {X: 900, Y: 240, Z: -300}}, 100)
	return scene.Scene{Projection: seen, Min: low, Max: high, Items: []scene.Item{
		{Role: scene.Floor, Solid: scene.Upright(box(0, 1500, -890, 890), 0, 30)},
		{Role: scene.Steel, Label: "crossmember", Code: "C", Solid: scene.Upright(box(1100, 1300, -850, 850), -250, 0), Layer: scene.Under},
		{Role: scene.Exhaust, Label: "exhaust", Solid: scene.Pipe(pipe.Pieces(), 13)},
		{Role: scene.Outlet, Primitive: scene.Spot, At: pipe.At(pipe.Length())},
	}}
}

// A picture from the right or from behind takes nothing of the painter: heads, rulers and places are the projection's.
func TestAnotherViewIsPaintedAsItsProjectionSays(t *testing.T) {
	for _, c := range []struct {
		seen         scene.Projection
		low, high    geometry.Point
		title, right string
		figure       string
		at           geometry.Point3
	}{
		{scene.FromRight.Projection(), pt(-30, -480), pt(1500, 60), " SEEN FROM THE RIGHT  ◄ bumper", "nose ►", "1000", geometry.Point3{X: 1000}},
		{scene.FromLeft.Projection(), pt(-1500, -480), pt(30, 60), " SEEN FROM THE LEFT  ◄ nose", "bumper ►", "1000", geometry.Point3{X: 1000}},
		{scene.FromBehind.Projection(), pt(-920, -480), pt(920, 60), " SEEN FROM BEHIND  ◄ left", "right ►", "+400", geometry.Point3{Y: 400}},
	} {
		p := Paint(hanging(c.seen, c.low, c.high), 100, 27, plainLook)
		lines := p.lines()
		assert.True(t, strings.HasPrefix(lines[0], c.title), lines[0])
		assert.True(t, strings.HasSuffix(lines[0], c.right), lines[0])
		assert.Contains(t, lines[0], "▲ roof")
		assert.Contains(t, lines[25], "▼ ground")
		col, _, ok := p.CellOf(c.at)
		require.True(t, ok)
		ruler := []rune(lines[p.Top+p.Rows])
		assert.Equal(t, c.figure+"┴", string(ruler[col-len(c.figure):col+1]), "its tick stands at what it counts")
		_, row, ok := p.CellOf(geometry.Point3{Z: -200})
		require.True(t, ok)
		assert.Contains(t, lines[row], "200┤", "a ruler of heights counts drops")
		col, row, _ = p.CellOf(geometry.Point3{X: 900, Y: 240, Z: -300})
		assert.Equal(t, '●', p.At(col, row).Rune, "the outlet hangs at its drop")
		assert.NotContains(t, lines[25], "hand", "nobody lies in this picture")
	}
}

// The cut is drawn as large as it is from the side, too, and one sign stands for it only where it would be a blot.
func TestTheCutIsSeenFromTheSide(t *testing.T) {
	for scale, sign := range map[float64]bool{5: false, 40: true} {
		s := hanging(scene.FromRight.Projection(), pt(-30, -480), pt(1530, 60))
		s.Items = append(s.Items, scene.Item{
			Role: scene.Cut, Primitive: scene.Outline, Solid: scene.Upright(geometry.NewRound(pt(500, 240), 63.5), 0, 30),
		})
		look := plainLook
		look.Camera = desk.Camera{Middle: pt(500, 0), Scale: scale}
		assert.Equal(t, sign, strings.Contains(strings.Join(Paint(s, 100, 27, look).lines(), "\n"), "◎"), "%v mm a dot", scale)
	}
}

// From the right the bend of a run that turns down is as round as one that turns aside is from below.
func TestABendIsRoundFromEverySide(t *testing.T) {
	s := hanging(scene.FromRight.Projection(), pt(-30, -480), pt(1530, 60))
	var p painter
	p.begin(s, 100, 27, plainLook)
	corner := geometry.Point{X: 800, Y: -160} // of the bend: its middle, 100 mm from the centreline all round
	for _, part := range p.parts {
		if part.Role != scene.Exhaust {
			continue
		}
		off := geometry.NewLine(part.Area.Path, 0)
		for turn := 0.0; turn <= 90; turn++ {
			assert.Less(t, off.GapOnly(corner.Add(pt(100, 0).Turn(turn))), p.Scale/finer+1e-9)
		}
	}
}

// Seen beside itself a run that falls 20 mm in a metre is drawn lower at its end than at its beginning, by as many dots as that is,
// and one that lies level as a line of one row. In plan the same slope is a straight line.
func TestASlightFallIsSeenBesideTheRun(t *testing.T) {
	painted := func(end geometry.Point3) *painter {
		run := geometry.Rounded([]geometry.Point3{{Z: -100}, end}, 0)
		s := scene.Scene{Projection: scene.Beside(&run, 1, "stub", "outlet"), Min: pt(-20, -150), Max: pt(1020, 50)}
		s.Items = []scene.Item{{Role: scene.Exhaust, Primitive: scene.Stroke, Path: run.Pieces()}}
		p := &painter{}
		p.begin(s, 100, 27, plainLook)
		p.trace(&p.parts[0])
		return p
	}
	p := painted(geometry.Point3{X: 1000, Z: -120})
	assert.InDelta(t, 20/p.Scale+1, p.mask.bottom-p.mask.top, 1)
	assert.Zero(t, p.strokes.drawn())

	p = painted(geometry.Point3{X: 1000, Z: -100})
	assert.LessOrEqual(t, p.mask.bottom-p.mask.top, 0)
	assert.Positive(t, p.strokes.drawn())
}

// drawn counts the cells that a stroke goes through.
func (s *strokes) drawn() (n int) {
	for i := range s.cells {
		if s.cells[i].arms != 0 {
			n++
		}
	}
	return n
}
