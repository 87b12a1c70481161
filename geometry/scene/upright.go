package scene

import "bench.example/undermark/geometry"

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

// heights count drops: down from the underside of the floor.
var heights = Axis{Low: ToGround, High: ToRoof, Counts: -1}
