package vector

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Foul is how a thing that is foul is drawn round the ring: its face and, where it is drawn as a line, that.
type Foul struct {
	Face, Line float64 // how far round, in radii of the ring
	Colours    func(it *scene.Item) Colours
}

// reddens tells whether a part is drawn in another way round the ring.
func (d *drawing) reddens(p *part) bool {
	return d.look.Screen != nil && d.look.Screen.Foul != nil && p.State == scene.Foul && p.Primitive == scene.Area && p.Code != ""
}

// round is the circle of so many radii of the ring, each of its points once: from the last to the first it closes; nil without one.
func (d *drawing) round(radii float64) []geometry.Point {
	middle, radius, ok := d.ringAt()
	if !ok {
		return nil
	}
	circle := arc(nil, middle, radii*radius, 0, 2*math.Pi, off)
	return circle[:len(circle)-1]
}

// foulFace draws the part of a foul thing's face that lies round the ring.
func (d *drawing) foulFace(p *part, outline []geometry.Point) {
	if !d.reddens(p) || p.ink.Ground.A == 0 {
		return
	}
	if circle := d.round(d.look.Screen.Foul.Face); circle != nil {
		if common := clipped(outline, circle); len(common) > 2 {
			d.board.Face(common, d.look.Screen.Foul.Colours(p.Item).Ground)
		}
	}
}

// foulLine draws over a foul thing's line what of that lies round the ring: heavy.
func (d *drawing) foulLine(p *part, points []geometry.Point, like Stroke) {
	if !d.slender(p) || !d.reddens(p) {
		return
	}
	middle, radius, ok := d.ringAt()
	if !ok {
		return
	}
	like.Width, like.Colour = max(like.Width, d.look.Widths[scene.Heavy]), d.look.Screen.Foul.Colours(p.Item).Line
	for i := range len(points) - 1 {
		if a, b, in := withinRound(points[i], points[i+1], middle, radius*d.look.Screen.Foul.Line); in {
			d.board.Line([]geometry.Point{a, b}, like)
		}
	}
}

// withinRound is what of a line from a to b lies within a circle.
func withinRound(a, b, middle geometry.Point, radius float64) (from, to geometry.Point, ok bool) {
	along, off := b.Sub(a), a.Sub(middle)
	// |off + t along| = radius: t^2 (along.along) + 2 t (off.along) + off.off - radius^2 = 0
	square, half := along.X*along.X+along.Y*along.Y, off.X*along.X+off.Y*along.Y
	under := half*half - square*(off.X*off.X+off.Y*off.Y-radius*radius)
	if square == 0 || under <= 0 {
		return a, b, false
	}
	root := math.Sqrt(under)
	first, last := max((-half-root)/square, 0), min((-half+root)/square, 1)
	return a.Add(along.Scale(first)), a.Add(along.Scale(last)), first < last
}
