package scene

import "bench.example/undermark/geometry"

// Everything that makes another view is in this file: what is added here need not be known by whoever draws or paints.

// upright is a plane that stands on the floor: its across a way in plan, its up the height.
type upright struct{ across geometry.Point }

func (u upright) Point(p geometry.Point3) geometry.Point {
	return geometry.Point{X: p.Plan().Dot(u.across), Y: p.Z}
}

func (u upright) Place(q geometry.Point) geometry.Point3 { return u.across.Scale(q.X).At(q.Y) }

func (u upright) Way(_ geometry.Point3, by geometry.Point) geometry.Point3 { return u.Place(by) }

// height counts drops: down from the underside of the floor.
var height = Axis{Low: "ground", High: "roof", Counts: -1}

var (
	fromTheRight = Projection{Plane: upright{across: geometry.Point{X: 1}}, From: "the right", Across: length, Up: height}
	fromBehind   = Projection{
		Plane: upright{across: geometry.Point{Y: -1}}, From: "behind",
		Across: Axis{Low: ToLeft, High: ToRight, Counts: -1, Signed: true}, Up: height,
	}
)
