// Package field is the grid model of the floor, counted from the bumper datum: squares that each know which
// obstructions touch them. It answers what is near a place without asking every obstruction.
//
// Lengths are mm; X runs forward of the datum, Y to the van's left. Obstructions go by their index in the slice the
// field was made of. Nothing here changes once it is made.
package field

import (
	"cmp"
	"math"
	"slices"

	"bench.example/undermark/geometry"
)

// Field is a floor cut into squares. Lines of the grid run through X = 0 and Y = 0.
type Field struct {
	size       float64 // side of a square, mm
	left, low  int     // number of the first column and row: column c runs from c*size to (c+1)*size
	cols, rows int
	shapes     []geometry.Footprint
	touching   [][]int32 // by square, row after row: indices of shapes, rising
}

// New returns the field of all squares with a side of size mm that min to max touches, and what of shapes lies on
// them. Footprints may reach beyond it.
func New(min, max geometry.Point, size float64, shapes []geometry.Footprint) Field {
	f := Field{size: size, shapes: slices.Clone(shapes)}
	f.left, f.low = f.number(min.X), f.number(min.Y)
	f.cols, f.rows = f.number(max.X)-f.left+1, f.number(max.Y)-f.low+1
	f.touching = make([][]int32, f.cols*f.rows)
	for i, s := range shapes {
		f.squares(s, func(square int) { f.touching[square] = append(f.touching[square], int32(i)) })
	}
	return f
}

// Near returns the shapes that touch any square of the field within radius mm of p, rising: all of those that come
// within radius on the field, and perhaps some more.
func (f Field) Near(p geometry.Point, radius float64) []int {
	reach := geometry.Point{X: radius, Y: radius}
	var found []int32
	f.eachOver(p.Sub(reach), p.Add(reach), func(square int) { found = append(found, f.touching[square]...) })
	slices.Sort(found)
	return widen(slices.Compact(found))
}

// Pick returns the shape that someone pointing at p to within slack mm means: of those that come that near the thinnest,
// as a pipe can lie on a tank, and of several that differ by less than twice the nearest. Without one ok is false.
func (f Field) Pick(p geometry.Point, slack float64) (index int, ok bool) {
	type candidate struct {
		index, magnitude int
		gap, thickness   float64
	}
	var best candidate
	for _, i := range f.Near(p, slack) {
		gap, _ := f.shapes[i].Gap(p)
		if gap > slack {
			continue
		}
		thickness := Thickness(&f.shapes[i])
		c := candidate{i, int(math.Log2(max(thickness, 1))), max(gap, 0), thickness}
		if !ok || cmp.Or(
			cmp.Compare(c.magnitude, best.magnitude),
			cmp.Compare(c.gap, best.gap),
			cmp.Compare(c.thickness, best.thickness),
		) < 0 {
			best, ok = c, true
		}
	}
	return best.index, ok
}

// Thickness returns the smaller size of a footprint, mm: of a line or round it is what it measures across.
func Thickness(s *geometry.Footprint) float64 {
	if s.Shape == geometry.Rectangle {
		return 2 * min(s.Half.X, s.Half.Y)
	}
	return 2 * s.Radius
}

// squares calls each with every square of the field that s touches.
func (f *Field) squares(s geometry.Footprint, each func(square int)) {
	low, high := s.Bounds()
	f.eachOver(low, high, func(square int) {
		if geometry.Between(s, f.square(square)).Gap <= 0 {
			each(square)
		}
	})
}

// eachOver calls each with every square that touches the box from low to high.
func (f *Field) eachOver(low, high geometry.Point, each func(square int)) {
	// A square touches the box along a shared line too, so a low side on a line takes in the square behind it.
	left, bottom := int(math.Ceil(low.X/f.size))-1-f.left, int(math.Ceil(low.Y/f.size))-1-f.low
	right, top := f.number(high.X)-f.left, f.number(high.Y)-f.low
	for row := max(bottom, 0); row <= min(top, f.rows-1); row++ {
		for col := max(left, 0); col <= min(right, f.cols-1); col++ {
			each(row*f.cols + col)
		}
	}
}

// square returns the outline of a square.
func (f *Field) square(i int) geometry.Footprint {
	x, y := float64(f.left+i%f.cols)*f.size, float64(f.low+i/f.cols)*f.size
	return geometry.NewRectangle(geometry.Point{X: x, Y: y}, geometry.Point{X: x + f.size, Y: y + f.size}, 0)
}

func (f *Field) number(x float64) int { return int(math.Floor(x / f.size)) }

func widen(list []int32) []int {
	var wide []int
	for _, i := range list {
		wide = append(wide, int(i))
	}
	return wide
}
