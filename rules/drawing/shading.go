package drawing

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/field"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
)

// Shading is how much room each place of a part of the floor leaves for the centre of the cut.
type Shading struct {
	possible, sure field.Map
	low, high      geometry.Point // of the floor
}

// NewShading works the shading out from low to high, with a node every step mm, by the given number of goroutines.
func NewShading(r *rules.Result, doubt rules.Doubt, low, high geometry.Point, step float64, workers int) Shading {
	return Shading{
		possible: doubt.Possible.OnPart(low, high).Margins.Map(step, workers),
		sure:     doubt.Sure.OnPart(low, high).Margins.Map(step, workers),
		low:      r.Plan.FloorMin, high: r.Plan.FloorMax,
	}
}

// At returns the room at the node nearest to a place; Unknown off the floor and off the part.
func (s Shading) At(p geometry.Point) scene.Grade {
	if !s.onFloor(p) {
		return scene.Unknown
	}
	first, step := s.possible.Node(0, 0), s.possible.Step()
	col, row := int(math.Round((p.X-first.X)/step)), int(math.Round((p.Y-first.Y)/step))
	if cols, rows := s.possible.Size(); col < 0 || row < 0 || col >= cols || row >= rows {
		return scene.Unknown
	}
	return scene.GradeOf(s.possible.Margin(col, row), s.sure.Margin(col, row))
}

func (s Shading) onFloor(p geometry.Point) bool {
	return p.X >= s.low.X && p.X <= s.high.X && p.Y >= s.low.Y && p.Y <= s.high.Y
}

// Between is At for places between the nodes: margins are taken to change evenly from node to node. At a node it is At.
func (s Shading) Between(p geometry.Point) scene.Grade {
	first, step := s.possible.Node(0, 0), s.possible.Step()
	x, y := (p.X-first.X)/step, (p.Y-first.Y)/step
	col, row := int(math.Floor(x)), int(math.Floor(y))
	if cols, rows := s.possible.Size(); !s.onFloor(p) || col < 0 || row < 0 || col+1 >= cols || row+1 >= rows {
		return s.At(p)
	}
	x, y = x-float64(col), y-float64(row)
	mean := func(m *field.Map) float64 {
		low := (1-x)*m.Margin(col, row) + x*m.Margin(col+1, row)
		high := (1-x)*m.Margin(col, row+1) + x*m.Margin(col+1, row+1)
		return (1-y)*low + y*high
	}
	return scene.GradeOf(mean(&s.possible), mean(&s.sure))
}
