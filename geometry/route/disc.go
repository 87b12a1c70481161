package route

import (
	"math"

	"bench.example/undermark/geometry"
)

// disc is what a way may bend round, in plan: a corner of something in the way, grown by the distance asked for; or a place, of no
// radius, where it may turn either way.
type disc struct {
	at     geometry.Point
	radius float64
	cone   [2]geometry.Point // of a rectangle's corner: the directions of the two sides' outsides, between which a tangent may touch
	corner bool
	kind   kind
	goal   int // of a goal, its index
}

// kind says what a disc is.
type kind uint8

const (
	aCorner kind = iota
	leaving      // a place near the start where a way may turn to leave it well
	coming       // a place near the goal where it may turn to come to it well
	aGoal
	theStart
	belowStart // straight below the start
)

// side says on which side of a way the disc lies that it bends round.
type side int8

const (
	onRight side = -1
	either  side = 0
	onLeft  side = 1
)

// touches tells whether a tangent may touch the disc at that direction from its middle.
func (d *disc) touches(out geometry.Point) bool {
	return !d.corner || out.Dot(d.cone[0]) >= -aslant && out.Dot(d.cone[1]) >= -aslant
}

// discsOf are the corners of a part.
func (p *part) discs() (list []disc) {
	switch p.shape.Shape {
	case geometry.Round:
		return []disc{{at: p.shape.Middle, radius: p.shape.Radius + p.need}}
	case geometry.Line:
		for i, at := range p.shape.Path {
			other := p.shape.Path[1-i]
			d := disc{at: at, radius: p.shape.Radius + p.need}
			if away := at.Sub(other); away.Norm() > touching {
				away = away.Scale(1 / away.Norm())
				d.cone, d.corner = [2]geometry.Point{away, away}, true
			}
			list = append(list, d)
		}
		return list
	}
	corners := p.shape.Corners()
	x, y := corners[0].Sub(corners[1]), corners[0].Sub(corners[3])
	x, y = unit(x, geometry.Point{X: 1}.Turn(p.shape.Turn)), unit(y, geometry.Point{Y: 1}.Turn(p.shape.Turn))
	for i, at := range corners {
		outX, outY := x, y
		if i == 1 || i == 2 {
			outX = x.Scale(-1)
		}
		if i >= 2 {
			outY = y.Scale(-1)
		}
		list = append(list, disc{at: at, radius: p.need, cone: [2]geometry.Point{outX, outY}, corner: true})
	}
	return list
}

// unit is v made 1 long, or what is said where it has no direction.
func unit(v, or geometry.Point) geometry.Point {
	if n := v.Norm(); n > touching {
		return v.Scale(1 / n)
	}
	return or
}

// tangent is a leg that touches two discs.
type tangent struct {
	from, to geometry.Point
	along    geometry.Point // a unit vector
	length   float64
}

// tangentOf is the leg from one disc to another that has them on these sides; ok is false where there is none, or where it may not
// touch them.
func tangentOf(p *disc, ps side, q *disc, qs side) (t tangent, ok bool) {
	if t.along, t.length, ok = heading(p, ps, q, qs); !ok {
		return tangent{}, false
	}
	return t.laid(p, ps, q, qs)
}

// heading is the direction of such a leg, and how long it is; ok is false where there is none.
func heading(p *disc, ps side, q *disc, qs side) (along geometry.Point, length float64, ok bool) {
	d := q.at.Sub(p.at)
	far2 := d.Dot(d)
	off := float64(qs)*q.radius - float64(ps)*p.radius
	along2 := far2 - off*off
	if along2 <= touching {
		return along, 0, false
	}
	length = math.Sqrt(along2)
	// The leg is d turned by the angle whose sine is -off over the distance.
	cos, sin := length/far2, -off/far2
	return geometry.Point{X: d.X*cos - d.Y*sin, Y: d.X*sin + d.Y*cos}, length, true
}

// laid is a tangent whose direction and length are known, between the places where it touches; ok is false where it may not.
func (t tangent) laid(p *disc, ps side, q *disc, qs side) (tangent, bool) {
	left := geometry.Point{X: -t.along.Y, Y: t.along.X}
	outP, outQ := left.Scale(-float64(ps)), left.Scale(-float64(qs))
	if ps != either && !p.touches(outP) || qs != either && !q.touches(outQ) {
		return tangent{}, false
	}
	t.from, t.to = p.at.Add(outP.Scale(p.radius)), q.at.Add(outQ.Scale(q.radius))
	return t, true
}

// turned is by how much a way turns from one direction to another about a disc on that side, from 0 on; ok is false where it would
// have to turn back.
func turned(a, b geometry.Point, s side) (angle float64, ok bool) {
	angle = math.Atan2(a.X*b.Y-a.Y*b.X, a.Dot(b))
	switch s {
	case either:
		return math.Abs(angle), true
	case onRight:
		angle = -angle
	}
	return max(angle, 0), angle >= -aslant
}
