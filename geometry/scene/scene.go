// Package scene is a display list of the van's underside: shapes, labels and dimension lines in mm, each with a
// role. It knows nothing of cells, paper or colours: the screen, the SVG and the PDF paint the same scene.
// Coordinates are the plan's, mm: X forward, Y left.
package scene

import "bench.example/undermark/geometry"

// Role says what a shape is, so that whoever paints it can choose a pattern, a colour and a line.
type Role uint8

// The roles.
const (
	Floor     Role = iota // the floor's outline
	Steel                 // crossmembers, rails, ribs: what carries
	Lines                 // pipes, wires, tanks: what leaks or shorts
	Hot                   // the van's exhaust, heat shields
	Movable               // spare wheel, plastic parts, suspension, driveshaft: what moves or comes off
	Fitting               // what stands on the floor
	Opening               // where gas could get in
	Plate                 // the mounting flange
	Body                  // the heater's body, and the way its warm air blows
	Space                 // what is kept free round the body
	Cut                   // the hole
	CutCentre             // its centre
	Pilot                 // the drilled pilot hole
	Exhaust               // the runs
	Intake
	Fuel
	Outlet // the open end of the exhaust
	Mouth  // the open end of the intake
	Muffler
	Tie       // a matching point
	Dimension // a line between two nearest points, with its length
	Mark      // a place to mark
	Wheel
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

// Item is one thing of a scene. Footprint or Path places it, as Form says.
type Item struct {
	Role      Role
	State     State
	Form      Form
	Footprint geometry.Footprint
	Path      []geometry.Point
	Label     string // what it is called: a name, or a dimension's length
	Code      string // the kind's letters; "" for none
	Ref       int    // index of the obstruction, opening, fitting or point in the job; -1 for none
	Selected  bool
	Unsure    bool // not measured on this van: drawn broken
	Dashed    bool // hidden behind the floor in this view
}

// Form says how an item is placed.
type Form uint8

// The forms of an item.
const (
	Area    Form = iota // Footprint, filled with the role's pattern and outlined
	Outline             // Footprint, outlined
	Stroke              // Path: a line
	Spot                // Path[0]: a small mark
)

// Scene is a display list, painted in order.
type Scene struct {
	Projection Projection
	Min, Max   geometry.Point // what there is to see, mm of the projection's plane
	Grid       float64        // spacing of the grid's squares, mm
	Items      []Item
}
