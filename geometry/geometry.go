// Package geometry measures plan outlines and prisms: distances and the points they are taken between.
//
// Lengths are millimetres, angles degrees. Plan points have X forward of the bumper datum and Y to the
// van's left; Z is up, zero at the underside of the lowest rib. Nothing here holds state, and nothing
// here knows what a van is. All distances are exact to 1e-9 mm within 20 m of the datum.
package geometry

import "math"

// Point is a place in plan, mm.
type Point struct{ X, Y float64 }

// Point3 is a place in space, mm, Z up.
type Point3 struct{ X, Y, Z float64 }

// Add returns p + q.
func (p Point) Add(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Sub returns p - q.
func (p Point) Sub(q Point) Point { return Point{p.X - q.X, p.Y - q.Y} }

// Scale returns p with both coordinates times k.
func (p Point) Scale(k float64) Point { return Point{p.X * k, p.Y * k} }

// Dot returns the scalar product.
func (p Point) Dot(q Point) float64 { return p.X*q.X + p.Y*q.Y }

// Norm returns the length of p as a vector. Places on a van are far from where a square overflows, which math.Hypot minds.
func (p Point) Norm() float64 { return math.Sqrt(p.Dot(p)) }

// Turn returns p turned by deg degrees about the origin, anticlockwise seen from above.
func (p Point) Turn(deg float64) Point {
	sin, cos := SinCos(deg)
	return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}
}

// At lifts p to height z.
func (p Point) At(z float64) Point3 { return Point3{p.X, p.Y, z} }

// Plan drops the height of p.
func (p Point3) Plan() Point { return Point{p.X, p.Y} }

// Add returns p + q.
func (p Point3) Add(q Point3) Point3 { return Point3{p.X + q.X, p.Y + q.Y, p.Z + q.Z} }

// Sub returns p - q.
func (p Point3) Sub(q Point3) Point3 { return Point3{p.X - q.X, p.Y - q.Y, p.Z - q.Z} }

// Scale returns p with all coordinates times k.
func (p Point3) Scale(k float64) Point3 { return Point3{p.X * k, p.Y * k, p.Z * k} }

// Dot returns the scalar product.
func (p Point3) Dot(q Point3) float64 { return p.X*q.X + p.Y*q.Y + p.Z*q.Z }

// Norm returns the length of p as a vector.
func (p Point3) Norm() float64 { return math.Sqrt(p.Dot(p)) }

// Along returns the place at a share of the length of a line through points, of which there is at least one: the first at 0 and the
// last from 1 on.
func Along(path []Point, share float64) Point {
	length := 0.0
	for i := 1; i < len(path); i++ {
		length += path[i].Sub(path[i-1]).Norm()
	}
	left := share * length
	for i := 1; i < len(path); i++ {
		leg := path[i].Sub(path[i-1])
		n := leg.Norm()
		if left <= n && n > 0 {
			return path[i-1].Add(leg.Scale(left / n))
		}
		left -= n
	}
	return path[len(path)-1]
}

// SinCos returns the sine and cosine of an angle in degrees, exact at multiples of 90: a quarter turn of an
// axis-parallel rectangle must stay axis-parallel.
func SinCos(deg float64) (sin, cos float64) {
	if deg == 0 { // most of what stands in a van
		return 0, 1
	}
	turn := math.Mod(deg, 360)
	if turn < 0 {
		turn += 360
	}
	switch turn {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(turn * math.Pi / 180)
}

// WithinHalfTurn returns the angle that points the same way as deg and lies in (-180, 180], degrees, exactly.
func WithinHalfTurn(deg float64) float64 {
	deg = math.Mod(deg, 360)
	switch {
	case deg > 180:
		return deg - 360
	case deg <= -180:
		return deg + 360
	case deg == 0:
		return 0 // not -0, which would show
	}
	return deg
}
