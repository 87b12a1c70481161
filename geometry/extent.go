package geometry

import "math"

// extent is an axis-parallel box in space: the sum of its two corners (twice its middle), and its sides.
type extent struct{ sum, sides Point3 }

// extentOf returns the extent of two opposite corners.
func extentOf(a, b Point3) extent {
	d := b.Sub(a)
	return extent{a.Add(b), Point3{math.Abs(d.X), math.Abs(d.Y), math.Abs(d.Z)}}
}

// apart2 returns the squared distance from the box with opposite corners a and b: a lower bound for all that is in
// the two. Without branches up to the end, as it runs for every leg and every obstruction.
func (e *extent) apart2(a, b *Point3) float64 {
	x := over(math.Abs(a.X+b.X-e.sum.X) - math.Abs(a.X-b.X) - e.sides.X)
	y := over(math.Abs(a.Y+b.Y-e.sum.Y) - math.Abs(a.Y-b.Y) - e.sides.Y)
	z := over(math.Abs(a.Z+b.Z-e.sum.Z) - math.Abs(a.Z-b.Z) - e.sides.Z)
	return (x*x + y*y + z*z) / 4
}

// over returns x where it is positive, else 0.
func over(x float64) float64 {
	if x > 0 {
		return x
	}
	return 0
}
