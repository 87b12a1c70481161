package canvas

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
)

// round a place in the middle of a bare floor there is more room the nearer it is.
func rings(p geometry.Point) scene.Grade {
	if p.X < 0 || p.X > 1000 || math.Abs(p.Y) > 500 {
		return scene.Unknown
	}
	return scene.Grade(max(int(scene.NoRoom), int(scene.MuchRoom)-int(math.Hypot(p.X-500, p.Y)/100)))
}

func ringed(view scene.View) (scene.Scene, Map, *Shade) {
	floor := geometry.NewRectangle(geometry.Point{Y: -500}, geometry.Point{X: 1000, Y: 500}, 0)
	s := scene.Scene{Projection: view.Projection(), Min: geometry.Point{Y: -500}, Max: geometry.Point{X: 1000, Y: 500}, Items: []scene.Item{{Role: scene.Floor, Solid: flat(floor)}}}
	m := NewMap(s, 100, 27, desk.Camera{View: view}, survey.Millimetres)
	return s, m, NewShade(m, rings)
}

func TestEveryDotHasTheShadeOfItsRoom(t *testing.T) {
	_, m, s := ringed(scene.Above)
	for y := range m.tall {
		for x := range m.wide {
			want := rings(geometry.Point{X: m.west + (float64(x)+0.5)*m.Scale, Y: m.north - (float64(y)+0.5)*m.Scale})
			if want != scene.Unknown {
				assert.LessOrEqual(t, s.cells[y/dotsDown*m.Cols+x/dotsAcross], want, "a cell shows no more room than any dot of it")
			}
			for grade := range s.masks {
				on := s.masks[grade].row(y)[x>>6]>>(x&63)&1 == 1
				assert.Equal(t, scene.Grade(grade) == want, on, "dot %d, %d", x, y)
			}
		}
	}
}

// What is foul is bare; then the more room the more dots; the doubtful line is the densest. In the picture too, from both
// sides, and only in the layout it was worked out for.
func TestRoomShowsWithoutColour(t *testing.T) {
	inked := func(grade scene.Grade) (n int) {
		t, ok := shading(grade)
		for y := range 8 {
			for x := range 8 {
				if ok && t(x, y) {
					n++
				}
			}
		}
		return n
	}
	assert.Zero(t, inked(scene.NoRoom))
	for grade := scene.LittleRoom; grade < scene.MuchRoom; grade++ {
		assert.Less(t, inked(grade), inked(grade+1))
	}
	assert.Greater(t, inked(scene.DoubtfulRoom), inked(scene.MuchRoom))
	for _, view := range []scene.View{scene.Below, scene.Above} {
		s, m, shade := ringed(view)
		c := Paint(s, 100, 27, Look{Shade: shade})
		col, row, _ := m.Cell(geometry.Point{X: 500, Y: 0})
		assert.Equal(t, scene.MuchRoom, c.At(col, row).Ground.Grade)
		assert.NotEqual(t, ' ', c.At(col, row).Rune)
		col, row, _ = m.Cell(geometry.Point{X: 60, Y: 440})
		assert.Equal(t, scene.Unknown, c.At(col, row).Ground.Grade, "only where the cut may be has a colour")
		other := Paint(s, 90, 27, Look{Shade: shade})
		assert.Equal(t, strings.Join(Paint(s, 90, 27, Look{}).lines(), "\n"), strings.Join(other.lines(), "\n"))
	}
}

// Names stand on shaded floor as on bare floor.
func TestTheShadeHidesNoWords(t *testing.T) {
	s, _, shade := ringed(scene.Below)
	s.Items = append(s.Items, scene.Item{
		Role: scene.Steel, Label: "crossmember", Ref: 0,
		Solid: flat(geometry.NewRectangle(geometry.Point{X: 100, Y: -400}, geometry.Point{X: 700, Y: -200}, 0)),
	})
	for _, look := range []Look{{}, {Shade: shade}} {
		text := strings.Join(Paint(s, 100, 27, look).lines(), "\n")
		assert.Contains(t, text, "crossmember")
	}
}
