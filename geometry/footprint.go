package geometry

import "math"

// Shape says which fields of a Footprint speak.
type Shape uint8

// The shapes of a footprint.
const (
	Rectangle Shape = iota // Middle, Half, Turn
	Round                  // Middle, Radius
	Line                   // Path, Radius: every point within Radius of the path
)

// Footprint is what a thing covers in plan. It is a plain value; make it with NewRectangle, NewRound or NewLine,
// which fill in the derived fields.
type Footprint struct {
	Shape    Shape
	Middle   Point   // of a rectangle or round; of a line's bounding box
	Half     Point   // half sides of a rectangle, before its turn
	Turn     float64 // of a rectangle, degrees anticlockwise about Middle
	Radius   float64 // of a round; half the thickness of a line
	Path     []Point // of a line, at least two points
	sin, cos float64
	box      Point // half sides of the tight axis-parallel box about Middle
}

// NewRectangle returns the rectangle that has min and max (mm) as opposite corners and is then turned by turn
// degrees anticlockwise about its middle. Corners in any order are put right; sides of 0 are fine.
func NewRectangle(min, max Point, turn float64) Footprint {
	f := Footprint{Middle: min.Add(max).Scale(0.5), Turn: turn}
	f.Half = Point{math.Abs(max.X-min.X) / 2, math.Abs(max.Y-min.Y) / 2}
	f.sin, f.cos = SinCos(turn)
	sin, cos := math.Abs(f.sin), math.Abs(f.cos)
	f.box = Point{f.Half.X*cos + f.Half.Y*sin, f.Half.X*sin + f.Half.Y*cos}
	return f
}

// NewRound returns the disc of the given radius (mm, 0 is fine) about middle.
func NewRound(middle Point, radius float64) Footprint {
	return Footprint{Shape: Round, Middle: middle, Radius: radius, cos: 1, box: Point{radius, radius}}
}

// NewLine returns every point within radius (mm) of the path, which has at least one point; points may coincide.
// The path is copied. An empty path panics.
func NewLine(path []Point, radius float64) Footprint {
	f := Footprint{Shape: Line, Radius: radius}
	f.Path = append(make([]Point, 0, len(path)+1), path...)
	if len(path) < 2 {
		f.Path = append(f.Path, path[0])
	}
	low, high := f.Path[0], f.Path[0]
	for _, p := range f.Path {
		low = Point{math.Min(low.X, p.X), math.Min(low.Y, p.Y)}
		high = Point{math.Max(high.X, p.X), math.Max(high.Y, p.Y)}
	}
	f.Middle = low.Add(high).Scale(0.5)
	f.box = high.Sub(low).Scale(0.5).Add(Point{radius, radius})
	return f
}

// Moved returns f carried by the rigid motion that turns by turn degrees about the origin, anticlockwise, and then
// shifts.
func (f Footprint) Moved(turn float64, shift Point) Footprint {
	middle := f.Middle.Turn(turn).Add(shift)
	switch f.Shape {
	case Round:
		return NewRound(middle, f.Radius)
	case Line:
		path := make([]Point, len(f.Path))
		for i, p := range f.Path {
			path[i] = p.Turn(turn).Add(shift)
		}
		return NewLine(path, f.Radius)
	}
	return NewRectangle(middle.Sub(f.Half), middle.Add(f.Half), f.Turn+turn)
}

// Bounds returns the corners of the smallest axis-parallel box that holds f.
func (f Footprint) Bounds() (min, max Point) { return f.Middle.Sub(f.box), f.Middle.Add(f.box) }

// Corners returns a rectangle's corners anticlockwise seen from above: front left, rear left, rear right, front
// right, in its own frame before the turn (front is +X, left +Y). Of a round or a line it returns those of Bounds.
func (f Footprint) Corners() [4]Point {
	half := f.box
	if f.Shape == Rectangle {
		half = f.Half
	}
	return [4]Point{
		f.outer(Point{half.X, half.Y}), f.outer(Point{-half.X, half.Y}),
		f.outer(Point{-half.X, -half.Y}), f.outer(Point{half.X, -half.Y}),
	}
}

// Contains says whether p is in f, its outline included.
func (f *Footprint) Contains(p Point) bool {
	if f.Shape == Line {
		return f.offPath(p) <= f.Radius
	}
	return f.GapOnly(p) <= 0
}

// inner carries p into the rectangle's own frame: origin at Middle, axes along its sides.
func (f *Footprint) inner(p Point) Point {
	x, y := p.X-f.Middle.X, p.Y-f.Middle.Y
	return Point{x*f.cos + y*f.sin, y*f.cos - x*f.sin}
}

// outer is the way back from inner.
func (f *Footprint) outer(q Point) Point {
	return Point{f.Middle.X + (q.X*f.cos - q.Y*f.sin), f.Middle.Y + (q.X*f.sin + q.Y*f.cos)}
}
