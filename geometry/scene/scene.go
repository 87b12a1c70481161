// Package scene is a display list of the van's underside: solids, lines, labels and dimension lines in mm, each with a
// role. It knows nothing of cells, paper or colours: whatever paints takes the same scene.
//
// Items are in space, as geometry has it: X forward, Y left, Z up from the underside of the lowest rib. A Projection
// says what is seen of them in a plane. Bends and circles stay what they are until then: whoever paints says how far
// off the lines may be that they are drawn by.
package scene

import "bench.example/undermark/geometry"

// Role says what a thing is; Pen says how it is drawn.
type Role uint8

// The roles.
const (
	Floor     Role = iota // the floor's outline
	Steel                 // crossmembers and the like: what carries
	Lines                 // pipes, wires, tanks: what leaks or shorts
	Hot                   // the van's exhaust, heat shields
	Pressed               // swages: no more than the sheet's own shape
	Movable               // spare wheel, plastic parts, suspension, driveshaft: what moves or comes off
	Fitting               // what stands on the floor
	Opening               // where gas could get in
	Plate                 // the mounting flange
	Body                  // the heater's body, and the way its warm air blows
	Space                 // what is kept free round the body
	Cut                   // the hole
	Hole                  // one drilled beside the cut
	CutCentre             // its centre
	Pilot                 // the drilled pilot hole
	Exhaust               // the runs
	Intake
	Fuel
	Outlet // the open end of the exhaust
	Mouth  // the open end of the intake
	Muffler
	Tie       // a matching point
	Dimension // a line between two nearest places, with its length
	Mark      // a place to mark
	Wheel
	Rail     // chassis rails: what all else hangs from
	Rib      // floor ribs: bent from sheet
	Bumper   // the van's rear end, drawn on its outline
	Nose     // its front end
	Conflict // where something stands in the way of the cut
	Wish
)

// State says how a shape stands with the rules.
type State uint8

// The states of a shape.
const (
	Plain State = iota
	Clear
	Doubtful
	Foul
)

// Item is one thing of a scene, in space: its Primitive says what places it.
type Item struct {
	Role      Role
	State     State
	Primitive Primitive
	Solid     Solid           // of an area, an outline or an edge: what it fills
	Path      Path            // of a stroke: the line
	At        geometry.Point3 // of a spot: where it is
	Label     string          // what it is called; "" for what has no name
	Measure   *Measure        // in place of a name, the figure that is written at it; nil for none
	Code      string          // the kind's letters; "" for none
	Ref       int             // index of the obstruction, opening, fitting or point in the job; -1 for none
	Selected  bool
	Unsure    bool  // not measured on this van
	Aside     bool  // its name gives way to all others
	Deadly    bool  // what can kill if a saw meets it: where it is but a line that is heavy
	Layer     Layer // on which side of the floor it is
}

// OfObstruction tells whether an item is an obstruction, which Ref is then the index of: fittings have letters of their kinds, too.
func (it *Item) OfObstruction() bool { return it.Code != "" && it.Role != Fitting }

// Measure is a figure as it was worked out. Whoever paints it writes it, in the units of whoever reads it.
type Measure struct {
	Value float64
	Unit  string // of Value: MM, or anything else that has but one way to be written; "" for none
	Bare  bool   // written without its unit, which goes without saying there
	Spare bool   // what is to spare; less than 0 is what is short
}

// MM is the unit of lengths, which may be shown in inches as well.
const MM = "mm"

// Primitive says how an item is placed and drawn.
type Primitive uint8

// The primitives.
const (
	Area    Primitive = iota // Solid, filled with the role's pattern and outlined
	Outline                  // Solid, outlined
	Edge                     // Solid, which has no width: a line along its edge
	Stroke                   // Path: a line
	Spot                     // At: a small mark
)

// Layer says on which side of the floor an item is: the floor hides one side from whoever looks from the other.
type Layer uint8

// The layers.
const (
	Through Layer = iota // in the floor, or drawn as if nothing hid it
	Under
	Upon
)

// Scene is a display list, painted in order.
type Scene struct {
	Projection Projection
	Min, Max   geometry.Point // what there is to see, mm of the projection's plane
	Grid       float64        // spacing of the grid's squares, mm
	Items      []Item
}
