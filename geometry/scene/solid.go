package scene

import (
	"math"

	"bench.example/undermark/geometry"
)

// Solid is what a thing fills in space; make it with Upright, Pipe or Barrel.
type Solid struct {
	Prism    geometry.Prism // of what stands upright: what it covers in plan, and from where to where it goes in height
	Axis     Path           // of a pipe or a barrel
	Radius   float64        // of a pipe or a barrel, mm
	Square   bool           // a barrel: its ends are cut off square
	SeenNear float64        // of what stands upright: how near to a line it lies, mm, that shows it beside the line where that is laid straight
}

// Upright returns the solid that stands on a footprint from low to high, mm of Z.
func Upright(f geometry.Footprint, low, high float64) Solid {
	return Solid{Prism: geometry.Prism{Footprint: f, Low: low, High: high}}
}

// Pipe returns the solid of all that is within radius of an axis.
func Pipe(axis Path, radius float64) Solid { return Solid{Axis: axis, Radius: radius} }

// Barrel returns a round solid with square ends.
func Barrel(from, to geometry.Point3, radius float64) Solid {
	return Solid{Axis: Straight(from, to), Radius: radius, Square: true}
}

// seen returns what a solid covers in a plane, its bends off by at most off mm; ok is false where nothing of it is seen.
func (s *Solid) seen(plane Plane, off float64) (f geometry.Footprint, ok bool) {
	switch {
	case s.Axis == nil:
		if line, laid := plane.(profile); laid && s.SeenNear > 0 {
			return line.near(&s.Prism, s.SeenNear)
		}
		return plane.Prism(&s.Prism)
	case s.Square:
		return barrel(plane.Point(s.Axis[0].A), plane.Point(s.Axis[0].B), s.Radius), true
	}
	return geometry.NewLine(s.Axis.flat(plane, off), s.Radius), true
}

// barrel returns the outline of a barrel whose ends are seen there; end on it is a round. What its ends show of
// themselves where it leans is left out.
func barrel(from, to geometry.Point, radius float64) geometry.Footprint {
	const endOn = 1 // mm of length
	along := to.Sub(from)
	if along.Norm() < endOn {
		return geometry.NewRound(from, radius)
	}
	middle, half := from.Add(to).Scale(0.5), geometry.Point{X: along.Norm() / 2, Y: radius}
	turn := math.Atan2(along.Y, along.X) * 180 / math.Pi
	return geometry.NewRectangle(middle.Sub(half), middle.Add(half), turn)
}
