package scene

import (
	"math"

	"bench.example/undermark/geometry"
)

// Path is a line through space: straight pieces and arcs, each beginning where the one before ends.
type Path []geometry.Piece

// Straight returns the straight path from place to place, of which there is at least one.
func Straight(places ...geometry.Point3) Path {
	path := make(Path, 0, len(places))
	for i := 1; i < len(places); i++ {
		path = append(path, geometry.Piece{A: places[i-1], B: places[i]})
	}
	if len(path) == 0 {
		path = append(path, geometry.Piece{A: places[0], B: places[0]})
	}
	return path
}

// flat returns the points of a plane between which straight lines are off the path as it is seen there by at most off
// mm, more than 0: no line is seen longer than it is.
func (p Path) flat(plane Plane, off float64) []geometry.Point {
	points := make([]geometry.Point, 1, len(p)+1)
	points[0] = plane.Point(p[0].A)
	for i := range p {
		n := p[i].Chords(off)
		for k := 1; k <= n; k++ {
			points = append(points, plane.Point(p[i].At(float64(k)/float64(n))))
		}
	}
	return points
}

// Circle returns points all round a circle, the first again at the end, between which straight lines are off it by at
// most off mm, more than 0.
func Circle(middle geometry.Point, radius, off float64) []geometry.Point {
	quarter := geometry.Piece{Radius: radius, Turn: math.Pi / 2}
	n := 4 * quarter.Chords(off)
	points := make([]geometry.Point, n+1)
	for k := range points {
		points[k] = middle.Add(geometry.Point{X: radius}.Turn(360 * float64(k) / float64(n)))
	}
	return points
}
