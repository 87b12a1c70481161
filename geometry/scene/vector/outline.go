package vector

import (
	"math"

	"bench.example/undermark/geometry"
)

// outlineOf returns a footprint's outline, its bends off by at most off mm.
func outlineOf(f *geometry.Footprint, off float64) []geometry.Point {
	switch f.Shape {
	case geometry.Round:
		return arc(nil, f.Middle, f.Radius, 0, 2*math.Pi, off)
	case geometry.Line:
		return tubeOf(f.Path, f.Radius, off)
	}
	c := f.Corners()
	return c[:]
}

// arc adds points of an arc from one angle to another, radians, with chords off it by at most off.
func arc(to []geometry.Point, middle geometry.Point, radius, from, turn, off float64) []geometry.Point {
	n := 1
	if radius > off {
		n = max(1, int(math.Ceil(math.Abs(turn)/(2*math.Acos(1-off/radius)))))
	}
	if turn == 0 {
		n = 0
	}
	for k := range n + 1 {
		sin, cos := math.Sincos(from + turn*float64(k)/float64(max(n, 1)))
		to = append(to, middle.Add(geometry.Point{X: cos, Y: sin}.Scale(radius)))
	}
	return to
}

// tubeOf returns the outline of all that is within radius of a path: out along one side, round the end, and back along the
// other. At an inner corner the sides cross, and lie within what is filled.
func tubeOf(path []geometry.Point, radius, off float64) []geometry.Point {
	path = apart(path)
	if len(path) == 1 {
		return arc(nil, path[0], radius, 0, 2*math.Pi, off)
	}
	out := side(nil, path, radius, off)
	back := make([]geometry.Point, len(path))
	for i, p := range path {
		back[len(path)-1-i] = p
	}
	return side(out, back, radius, off)
}

// foldsBack is the turn, radians, from which on a path that goes back the way it came is round on both its sides: which of them is the
// outer one is then a matter of the last digit.
const foldsBack = -math.Pi + 1e-9

// side adds the right side of a path, each outer corner rounded, and half the round of its end. At an inner corner the sides of the
// two pieces meet, or where those are too short for that, it goes by the corner itself: so all it encloses is gone round the same way.
func side(to, path []geometry.Point, radius, off float64) []geometry.Point {
	to = arc(to, path[0], radius, bearing(path[0], path[1])-math.Pi/2, 0, off)
	for i := range len(path) - 1 {
		from := bearing(path[i], path[i+1]) - math.Pi/2
		if i+2 == len(path) {
			return arc(to, path[i+1], radius, from, math.Pi, off)
		}
		turn := math.Remainder(bearing(path[i+1], path[i+2])-math.Pi/2-from, 2*math.Pi)
		if turn < foldsBack {
			turn += 2 * math.Pi
		}
		if turn >= 0 {
			to = arc(to, path[i+1], radius, from, turn, off)
			continue
		}
		cut := -radius * math.Tan(turn/2) // what the corner takes off both pieces
		if cut < min(path[i+1].Sub(path[i]).Norm(), path[i+2].Sub(path[i+1]).Norm()) {
			to = arc(to, path[i+1], radius/math.Cos(turn/2), from+turn/2, 0, off)
			continue
		}
		to = append(arc(to, path[i+1], radius, from, 0, off), path[i+1])
		to = arc(to, path[i+1], radius, from+turn, 0, off)
	}
	return to
}

func bearing(a, b geometry.Point) float64 { return math.Atan2(b.Y-a.Y, b.X-a.X) }

// apart leaves out points that coincide with the one before.
func apart(path []geometry.Point) []geometry.Point {
	all := path[:1:1]
	for _, p := range path[1:] {
		if p != all[len(all)-1] {
			all = append(all, p)
		}
	}
	return all
}
