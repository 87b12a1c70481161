// Package trial has views of the van that no screen shows yet, for tests: from the right, from behind and along a run.
// Everything that makes each of them is here, so that whoever draws or paints need not know of it.
package trial

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// upright is a plane that stands on the floor: its across a way in plan, its up the height.
type upright struct{ across geometry.Point }

func (u upright) Point(p geometry.Point3) geometry.Point {
	return geometry.Point{X: p.Plan().Dot(u.across), Y: p.Z}
}

func (u upright) Unproject(q geometry.Point) geometry.Point3 { return u.across.Scale(q.X).At(q.Y) }

func (u upright) Move(_ geometry.Point3, by geometry.Point) geometry.Point3 { return u.Unproject(by) }

func (u upright) Prism(p *geometry.Prism) (geometry.Footprint, bool) {
	low, high := reach(&p.Footprint, u.across)
	return geometry.NewRectangle(geometry.Point{X: low, Y: p.Low}, geometry.Point{X: high, Y: p.High}, 0), true
}

// reach is from where to where a footprint goes along a unit direction.
func reach(f *geometry.Footprint, along geometry.Point) (low, high float64) {
	places, radius := f.Path, f.Radius
	switch f.Shape {
	case geometry.Rectangle:
		c := f.Corners()
		places = c[:]
	case geometry.Round:
		places = []geometry.Point{f.Middle}
	}
	low, high = places[0].Dot(along), places[0].Dot(along)
	for _, p := range places {
		low, high = min(low, p.Dot(along)), max(high, p.Dot(along))
	}
	return low - radius, high + radius
}

// The ways of a picture that stands upright.
const (
	ToGround scene.Way = "ground"
	ToRoof   scene.Way = "roof"
)

// height counts drops: down from the underside of the floor.
var height = scene.Axis{Low: ToGround, High: ToRoof, Counts: -1}

// The van from the right and from behind.
var (
	Right = scene.Projection{
		Plane: upright{across: geometry.Point{X: 1}}, From: "the right",
		Across: scene.Axis{Low: scene.ToBumper, High: scene.ToNose, Counts: 1}, Up: height,
	}
	Behind = scene.Projection{
		Plane: upright{across: geometry.Point{Y: -1}}, From: "behind",
		Across: scene.Axis{Low: scene.ToLeft, High: scene.ToRight, Counts: -1, Signed: true}, Up: height,
	}
)

// profile is a run laid out straight: the distance along it, and the height.
type profile struct{ run *geometry.Run }

// Beside returns the view of a run laid out straight.
func Beside(run *geometry.Run) scene.Projection {
	return scene.Projection{
		Plane: profile{run}, From: "beside the run",
		Across: scene.Axis{Low: "stub", High: "outlet", Counts: 1}, Up: height,
	}
}

// foot is how far along the run the place is that is nearest to p: the best of one every mm, refined.
func (r profile) foot(p geometry.Point3) float64 {
	off := func(s float64) float64 { return r.run.At(s).Sub(p).Norm() }
	best := 0.0
	for s := 0.0; s < r.run.Length()+1; s++ {
		if off(s) < off(best) {
			best = s
		}
	}
	low, high := best-1, best+1
	for high-low > 1e-9 {
		third := (high - low) / 3
		if off(low+third) < off(high-third) {
			high -= third
		} else {
			low += third
		}
	}
	return math.Max(0, math.Min((low+high)/2, r.run.Length()))
}

func (r profile) Point(p geometry.Point3) geometry.Point { return geometry.Point{X: r.foot(p), Y: p.Z} }

func (r profile) Unproject(q geometry.Point) geometry.Point3 { return r.run.At(q.X).Plan().At(q.Y) }

func (r profile) Move(at geometry.Point3, by geometry.Point) geometry.Point3 {
	s := r.foot(at)
	ahead := r.run.At(s + 0.5).Sub(r.run.At(s - 0.5)).Plan()
	return ahead.Scale(by.X / ahead.Norm()).At(by.Y)
}

// Prism is seen where the run passes under or over it.
func (r profile) Prism(p *geometry.Prism) (f geometry.Footprint, ok bool) {
	low, high := math.Inf(1), math.Inf(-1)
	for s := 0.0; s <= r.run.Length(); s++ {
		if p.Footprint.Contains(r.run.At(s).Plan()) {
			low, high = min(low, s), max(high, s)
		}
	}
	if low > high {
		return f, false
	}
	return geometry.NewRectangle(geometry.Point{X: low, Y: p.Low}, geometry.Point{X: high, Y: p.High}, 0), true
}
