package scene

import "bench.example/undermark/geometry"

// Plane carries places of space to the plane of a picture and back, mm to mm. Its values can be compared with ==.
type Plane interface {
	// Point returns where in the plane a place is seen.
	Point(p geometry.Point3) geometry.Point
	// Unproject returns the place seen there that lies in the plane itself, which goes through the datum.
	Unproject(q geometry.Point) geometry.Point3
	// Move returns the step in space that is seen at a place as the step by.
	Move(at geometry.Point3, by geometry.Point) geometry.Point3
	// Prism returns what an upright prism covers; ok is false where nothing of it is seen.
	Prism(p *geometry.Prism) (f geometry.Footprint, ok bool)
}

// Projection lays what is in space out as a picture and says what the picture's ways are called. Whoever paints a
// scene asks it, and knows of no view by name.
type Projection struct {
	Plane
	From       string   // what it is seen from: "below"
	Across, Up Axis     // of the plane
	Hides      Layer    // what the floor hides; Through: nothing
	Over       bool     // the plane is seen from its back: what goes up in it goes down in the picture
	Slopes     bool     // how steep things lie is what it is for: a line that rises or falls is drawn so, however little
	Lying      bool     // whoever is at work lies behind the picture, head to the low end of Across, left hand to the high end of Up
	Hands      []string // how the picture's sides lie to whoever is at work, in fewer and fewer words
}

// Axis is one axis of a plane: what its ends are called and what a ruler along it counts.
type Axis struct {
	Low, High Way     // which way of the van it runs down and up
	Counts    float64 // what a ruler counts for each mm of the plane: 1, or -1 where the two run against each other
	Signed    bool    // a ruler says on which side of 0 it is with a plus, too
}

// Way is a way of the van by name. How the sides are spoken of is the workshop's own; these are the plain words.
type Way string

// The ways that pictures run.
const (
	ToBumper Way = "bumper"
	ToNose   Way = "nose"
	ToLeft   Way = "left"
	ToRight  Way = "right"
	ToGround Way = "ground"
	ToRoof   Way = "roof"
)

// Called is the way's word where x starts at a datum of a name, "" for the bumper: elsewhere "bumper" would be taken for that.
func (w Way) Called(datum string) string {
	if w == ToBumper && datum != "" {
		return "rear"
	}
	return string(w)
}

// Top is the way of the van to the picture's top.
func (p *Projection) Top() Way {
	if p.Over {
		return p.Up.Low
	}
	return p.Up.High
}

// Bottom is the way of the van to the picture's bottom.
func (p *Projection) Bottom() Way {
	if p.Over {
		return p.Up.High
	}
	return p.Up.Low
}

// Hidden tells whether the floor hides an item, so that it is drawn dashed.
func (p *Projection) Hidden(it *Item) bool { return it.Layer != Through && it.Layer == p.Hides }

// FacesFloor tells whether the face of the floor is seen, so that a place of the picture is a place of the floor, and not
// its edge.
func (p *Projection) FacesFloor() bool { return p.Hides != Through }

// Lengthwise tells whether the van's length runs across the picture: its ends are then at the picture's sides.
func (p *Projection) Lengthwise() bool {
	return p.Across.Low == ToBumper || p.Across.High == ToBumper
}

// InPlane returns the step in the plane that goes so far to the right and up in the picture.
func (p *Projection) InPlane(right, up float64) geometry.Point {
	if p.Over {
		up = 0 - up // not -up: a step to the right goes no way up, whatever its sign
	}
	return geometry.Point{X: right, Y: up}
}

// Step returns the step in space that is seen at a place as so far to the right and up in the picture.
func (p *Projection) Step(at geometry.Point3, right, up float64) geometry.Point3 {
	return p.Move(at, p.InPlane(right, up))
}
