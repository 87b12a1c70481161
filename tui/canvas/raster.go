package canvas

import (
	"math"

	"bench.example/undermark/geometry"
)

// vec is a place in dots from the top left of the picture as its plane has it; dot x runs from x to x+1.
type vec struct{ x, y float64 }

// convex sets the dots whose middles lie in a convex outline.
func (b *bitmap) convex(corners []vec) {
	low, high, west, east := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, c := range corners {
		low, high = min(low, c.y), max(high, c.y)
		west, east = min(west, c.x), max(east, c.x)
	}
	if b.beside(west, east) {
		return
	}
	for y := max(0, int(math.Ceil(low-0.5))); y < b.h && float64(y)+0.5 <= high; y++ {
		middle := float64(y) + 0.5
		left, right := math.Inf(1), math.Inf(-1)
		for i, p := range corners {
			q := corners[(i+1)%len(corners)]
			if p.y == q.y || middle < min(p.y, q.y) || middle > max(p.y, q.y) {
				continue
			}
			x := p.x + (middle-p.y)/(q.y-p.y)*(q.x-p.x)
			left, right = min(left, x), max(right, x)
		}
		b.spanBetween(y, left, right)
	}
}

// spanBetween sets the dots of a row whose middles lie between left and right.
func (b *bitmap) spanBetween(y int, left, right float64) {
	if left <= right {
		b.span(y, int(math.Ceil(max(left, -1)-0.5)), int(math.Floor(min(right, float64(b.w)+1)-0.5)))
	}
}

// beside tells whether what reaches from west to east lies wholly to one side of the picture.
func (b *bitmap) beside(west, east float64) bool { return east < 0 || west > float64(b.w) }

// disc sets the dots whose middles lie within radius of c, and the one c lies in.
func (b *bitmap) disc(c vec, radius float64) {
	b.set(floor(c.x), floor(c.y))
	if b.beside(c.x-radius, c.x+radius) {
		return
	}
	for y := max(0, int(math.Ceil(c.y-radius-0.5))); y < b.h && float64(y)+0.5 <= c.y+radius; y++ {
		up := float64(y) + 0.5 - c.y
		half := math.Sqrt(radius*radius - up*up)
		b.spanBetween(y, c.x-half, c.x+half)
	}
}

// line sets the dots on the way from p to q.
func (b *bitmap) line(p, q vec) {
	p, q, ok := b.clip(p, q)
	if !ok {
		return
	}
	steps := math.Ceil(max(math.Abs(q.x-p.x), math.Abs(q.y-p.y)))
	if steps == 0 {
		steps = 1
	}
	dx, dy := (q.x-p.x)/steps, (q.y-p.y)/steps
	for i := 0.0; i <= steps; i++ {
		b.set(floor(p.x+i*dx), floor(p.y+i*dy))
	}
}

// clip cuts a line down to the picture and a little more.
func (b *bitmap) clip(p, q vec) (vec, vec, bool) {
	from, to := 0.0, 1.0
	cut := func(start, along, low, high float64) {
		if along == 0 {
			if start < low || start > high {
				from, to = 1, 0
			}
			return
		}
		t, u := (low-start)/along, (high-start)/along
		from, to = max(from, min(t, u)), min(to, max(t, u))
	}
	cut(p.x, q.x-p.x, -2, float64(b.w)+2)
	cut(p.y, q.y-p.y, -2, float64(b.h)+2)
	if from > to {
		return p, q, false
	}
	at := func(t float64) vec { return vec{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y)} }
	return at(from), at(to), true
}

// path sets the dots within radius of a path; a thinner one than a dot is a line of dots.
func (b *bitmap) path(points []vec, radius float64) {
	for i := 1; i < len(points); i++ {
		b.line(points[i-1], points[i])
	}
	if radius < thin {
		return
	}
	for i, p := range points {
		b.disc(p, radius)
		if i == 0 {
			continue
		}
		o := points[i-1]
		length := math.Hypot(p.x-o.x, p.y-o.y)
		if length == 0 {
			continue
		}
		nx, ny := (o.y-p.y)/length*radius, (p.x-o.x)/length*radius
		b.convex([]vec{{o.x + nx, o.y + ny}, {p.x + nx, p.y + ny}, {p.x - nx, p.y - ny}, {o.x - nx, o.y - ny}})
	}
}

// thin is the radius in dots below which a line is drawn one dot wide: two dots wide begin at 1.5.
const thin = 0.75

// box sets the dots of a rectangle along the rows and columns between two of its corners: those that convex and its sides as lines
// would set.
func (b *bitmap) box(p, q vec) {
	left, right := floor(max(min(p.x, q.x), -1)), floor(min(max(p.x, q.x), float64(b.w)))
	for y := floor(max(min(p.y, q.y), 0)); y < b.h && float64(y) <= max(p.y, q.y); y++ {
		b.span(y, left, right)
	}
}

// footprint sets the dots of a footprint; what is smaller than a dot still gets one.
func (b *bitmap) footprint(f *geometry.Footprint, m *Map) {
	switch f.Shape {
	case geometry.Round:
		b.disc(m.dot(f.Middle), f.Radius/m.Scale)
	case geometry.Line:
		b.path(m.dots(f.Path), f.Radius/m.Scale)
	default:
		corners := f.Corners()
		dots := [4]vec{m.dot(corners[0]), m.dot(corners[1]), m.dot(corners[2]), m.dot(corners[3])}
		if dots[0].y == dots[1].y && dots[1].x == dots[2].x && dots[2].y == dots[3].y && dots[3].x == dots[0].x {
			b.box(dots[0], dots[2])
			return
		}
		b.convex(dots[:])
		for i := range dots {
			b.line(dots[i], dots[(i+1)%len(dots)])
		}
	}
}

func floor(x float64) int { return int(math.Floor(x)) }
