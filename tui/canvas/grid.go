package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// gridScale is up to which scale a grid helps: the rulers are far from what is looked at then.
const gridScale = 8

// grid puts a faint dot where two lines of the grid cross on bare floor.
func (p *painter) grid() {
	if !(p.spacing > 0) || p.Scale > gridScale {
		return
	}
	step := p.spacing * round(6*p.Scale/p.spacing)
	for i := range p.parts {
		if it := &p.parts[i]; it.Role == scene.Floor && it.Primitive == scene.Area {
			low, high := it.Area.Bounds()
			p.gridOn(low, high, step)
		}
	}
}

func (p *painter) gridOn(low, high geometry.Point, step float64) {
	for x := first(low.X, step); x <= high.X; x += step {
		for y := first(low.Y, step); y <= high.Y; y += step {
			d := p.dot(geometry.Point{X: x, Y: y})
			col, row := floor(d.x/dotsAcross), floor(d.y/dotsDown)
			if col < 0 || col >= p.Cols || row < 0 || row >= p.Rows || p.dots.octet(col, row) != 0 {
				continue
			}
			p.dots.set(floor(d.x), floor(d.y))
			p.inks[row*p.Cols+col] = Ink{Role: scene.Floor, Tone: Faint}
		}
	}
}
