package vector

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Frame is where on a board a scene is seen, and how large.
type Frame struct {
	Box
	Scale  float64        // mm of the van for one of the board
	Middle geometry.Point // the place of the scene's plane that is seen in the box's middle
	over   bool           // the plane is seen from its back: what goes up in it goes down on the board
}

// Fit returns the frame that shows a whole scene in a box.
func Fit(s *scene.Scene, b Box) Frame {
	size := s.Max.Sub(s.Min)
	scale := max(size.X/b.Width, size.Y/b.Height)
	return At(s, b, s.Min.Add(s.Max).Scale(0.5), scale)
}

// At returns the frame that shows a place of the scene's plane in the middle of a box, scale mm of the van for one of the board.
func At(s *scene.Scene, b Box, middle geometry.Point, scale float64) Frame {
	return Frame{Box: b, Scale: scale, Middle: middle, over: s.Projection.Over}
}

// Place returns where on the board a place of the plane is seen.
func (f *Frame) Place(p geometry.Point) geometry.Point {
	off := p.Sub(f.Middle).Scale(1 / f.Scale)
	if !f.over {
		off.Y = -off.Y
	}
	return f.middle().Add(off)
}

// Plane returns the place of the plane that is seen at one of the board.
func (f *Frame) Plane(q geometry.Point) geometry.Point {
	off := q.Sub(f.middle()).Scale(f.Scale)
	if !f.over {
		off.Y = -off.Y
	}
	return f.Middle.Add(off)
}

// places are where on the board points of the plane are seen.
func (f *Frame) places(points []geometry.Point) []geometry.Point {
	all := make([]geometry.Point, len(points))
	for i, p := range points {
		all[i] = f.Place(p)
	}
	return all
}

// shows tells whether a place of the board lies in the frame.
func (f *Frame) shows(q geometry.Point) bool {
	return f.Left <= q.X && q.X <= f.right() && f.Top <= q.Y && q.Y <= f.bottom()
}
