package scene

import "bench.example/undermark/geometry"

// View names a way to look at the van.
type View uint8

// The views. With the van's nose to the right, left is at the top from above and at the bottom from below.
const (
	Below View = iota
	Above
	FromRight
	FromBehind
	FromLeft
)

// Sides are the views that show the floor's edge, the van's side from one side of it.
var Sides = [...]View{FromRight, FromBehind}

// FromSide is the view of the van's side from the side of it that a place lies on, so many mm to the left of its centreline; what lies on
// that is seen from the right.
func FromSide(left float64) View {
	if left > 0 {
		return FromLeft
	}
	return FromRight
}

// projections are what the views show, each in one place.
//
// Hands say, as fully as there is room, how the sides of the picture lie to whoever is at work. On one's back with the
// head at the bumper and the feet to the nose one looks up at the van as if one had tipped over backwards out of its
// driving seat: left stays left. Slid in head first from the bumper it is the other hand, so that is said too.
var projections = [...]Projection{
	Below: {
		Plane: plan{}, From: "below", Across: length, Up: breadth, Hides: Upon, Over: true, Lying: true,
		Hands: []string{
			"your left hand on your back with your head at the bumper, your right with it to the nose",
			"your left hand, head at the bumper; right, head to the nose",
			"your left, head at bumper",
		},
	},
	Above: {
		Plane: plan{}, From: "above", Across: length, Up: breadth, Hides: Under,
		Hands: []string{
			"your right hand when you stand on the floor and face the nose",
			"your right, facing the nose",
		},
	},
	FromRight:  {Plane: upright{across: geometry.Point{X: 1}}, From: "the right", Across: length, Up: heights},
	FromBehind: {Plane: upright{across: geometry.Point{Y: -1}}, From: "behind", Across: across, Up: heights},
	FromLeft:   {Plane: upright{across: geometry.Point{X: -1}}, From: "the left", Across: backwards, Up: heights},
}

// Along the van a ruler counts from the bumper datum; across it from the centreline, left positive, as readings do.
var (
	length  = Axis{Low: ToBumper, High: ToNose, Counts: 1}
	breadth = Axis{Low: ToRight, High: ToLeft, Counts: 1, Signed: true}
	across  = Axis{Low: ToLeft, High: ToRight, Counts: -1, Signed: true} // from behind

	backwards = Axis{Low: ToNose, High: ToBumper, Counts: -1} // from the left
)

// Projection returns what a view shows.
func (v View) Projection() Projection { return projections[v] }

// Next returns the view of the other face of the floor; after one of its edge it is that from below.
func (v View) Next() View {
	if v == Below {
		return Above
	}
	return Below
}

// plan is the plane of the van's floor, X and Y as they are.
type plan struct{}

func (plan) Point(p geometry.Point3) geometry.Point                    { return p.Plan() }
func (plan) Unproject(q geometry.Point) geometry.Point3                { return q.At(0) }
func (plan) Move(_ geometry.Point3, by geometry.Point) geometry.Point3 { return by.At(0) }
func (plan) Prism(p *geometry.Prism) (geometry.Footprint, bool)        { return p.Footprint, true }
