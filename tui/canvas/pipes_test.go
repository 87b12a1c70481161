package canvas

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// The cut's name keeps off the heater's pipes, which go out of its ring: however small the picture and however near, it stands on none.
func TestTheCutsNameKeepsOffThePipes(t *testing.T) {
	named := 0
	for _, size := range [][2]int{{60, 6}, {60, 8}, {60, 11}, {57, 15}, {57, 27}} {
		for _, scale := range []float64{4, 6, 10, 14, 20} {
			for _, x := range []float64{1100, 1210, 1300} {
				look := facesLook
				look.Camera = desk.Camera{Middle: pt(x, 240), Scale: scale}
				s := van(scene.Below)
				for i := range s.Items { // straight out of the ring
					if s.Items[i].Role == scene.Intake {
						s.Items[i].Solid = flat(line(60, pt(1230, 240), pt(2600, 240)))
					}
				}
				var p Painter
				c := p.Paint(s, size[0], size[1], look)
				for _, text := range c.Texts {
					if !strings.HasPrefix(text.Name, "cut") {
						continue
					}
					named++
					for i := range []rune(text.Name) {
						face := p.mostly(text.Col+i, text.Row)
						assert.False(t, face.Set && face.Role == scene.Intake, "%v, scale %g, at %g: %q at %d, %d", size, scale, x, text.Name, text.Col, text.Row)
					}
				}
			}
		}
	}
	assert.Greater(t, named, 50)
}
