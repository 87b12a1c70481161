package scene

import "bench.example/undermark/geometry"

// Seen is what is seen of an item in the plane of a projection: an area, or a line through points.
type Seen struct {
	Area geometry.Footprint
	Line []geometry.Point // of edges and strokes; of a spot one point; nil for an area
}

// Seen returns what is seen of an item, its bends off by at most off mm, more than 0; ok is false where nothing is.
func (p *Projection) Seen(it *Item, off float64) (f Seen, ok bool) {
	switch it.Primitive {
	case Spot:
		f.Line = []geometry.Point{p.Point(it.At)}
	case Stroke:
		f.Line = it.Path.flat(p.Plane, off)
	default:
		if f.Area, ok = it.Solid.seen(p.Plane, off); !ok {
			return f, false
		}
		if it.Primitive == Edge {
			f.Line = edge(&f.Area, off)
		}
	}
	return f, true
}

// edge returns the closed outline of a rectangle or round; of a line it is the line, as what has an edge only is a way
// through and has no width.
func edge(f *geometry.Footprint, off float64) []geometry.Point {
	switch f.Shape {
	case geometry.Line:
		return f.Path
	case geometry.Round:
		return Circle(f.Middle, f.Radius, off)
	}
	c := f.Corners()
	return []geometry.Point{c[0], c[1], c[2], c[3], c[0]}
}

// Bounds returns the corners of the smallest axis-parallel box that holds what is seen.
func (f *Seen) Bounds() (low, high geometry.Point) {
	if f.Line == nil {
		return f.Area.Bounds()
	}
	low, high = f.Line[0], f.Line[0]
	for _, p := range f.Line {
		low = geometry.Point{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = geometry.Point{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	return low, high
}
