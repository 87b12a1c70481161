// Package vehicles holds a job: the van's floor, what hangs below it and stands on it, the heater, its cut and
// its runs, as the job file says them; it reads and writes that file and reduces the readings to places.
//
// A Job is a plain value and is never edited in place: an edit copies the one List, map or table it changes and shares
// the rest. Lengths are mm, angles degrees; drops run down from the underside of the floor, rises up from its top.
package vehicles

import "bench.example/undermark/geometry/survey"

// Number is a number that may be left out.
type Number struct {
	Value float64
	Set   bool
}

// Some returns a number that is there.
func Some(v float64) Number { return Number{v, true} }

// Or returns the number, or other when it was left out.
func (n Number) Or(other float64) float64 {
	if n.Set {
		return n.Value
	}
	return other
}

// Text writes the number exactly, "" when it was left out.
func (n Number) Text() string {
	if !n.Set {
		return ""
	}
	return survey.Exact(n.Value)
}

// Span is a range along the height: a drop's top and bottom, or a rise's foot and top, mm.
type Span struct {
	From, To float64
	Set      bool
}

// Job is one van and what is planned for it.
type Job struct {
	Ref, Vehicle, Fitter, Date, Notes string // Date is written as a TOML local date when it is one

	Floor Floor
	Datum Datum
	Tape  Tape
	Bow   []BowPoint // of the bumper; none: straight

	Obstructions List[Obstruction]
	Openings     List[Opening]
	Fittings     List[Fitting]
	Ties         List[Tie]
	Wheels       List[Wheel]

	Heater  *Heater // nil when the file has none; never edited in place
	Cut     *Cut
	Exhaust *Run
	Intake  *Run
	Fuel    *Run
	Wish    *Wish // where the customer would like the heater; nil for nowhere in particular

	// What sizes are reckoned from; no verdict rests on it.
	Stack     List[Layer] // the floor where the heater stands, from its top down
	Mount     Mount
	Electrics Electrics
	Wiring    Wiring
	Ductwork  Ductwork
	Body      Body
	Surfaces  List[Surface]

	Looked         map[string]bool // kinds looked for within LookRound of the cut and found absent
	LookedRuns     map[string]bool // kinds looked for within LookRound of each run and found absent
	LookedOpenings map[string]bool // kinds of opening looked for within LookOut of outlet, muffler and drains and found absent

	RunChecks string // InFull: its runs are held to all that is asked of them; "": to what other programs ask too

	Built *Built     // what was made otherwise than planned, nil for nothing; never edited in place
	Done  List[Done] // what is recorded of the work, by step

	Rules map[string]float64 // this job's own values by rule id, with or without the kind

	Unfinished Unfinished            // begun on the screens
	Refusals   List[Refusal]         // typed on the screens and not taken, the oldest first
	Guesses    []string              // of FloorKeys: what nobody has measured on this van yet; never edited in place
	Held       map[string]string     // by HeldTapes: that it is level, or that nobody has said; never edited in place
	LookedAt   map[string][2]float64 // where the cut was when a kind was looked for
	// Where the runs were when kinds were looked for round them, and openings round the exhaust.
	RunLooks, OpeningLooks List[Look]
	Extra                  map[string]any // what others keep in the file, as it is
}

// InFull is what a job says whose runs are held to what the driven van, clips and service ask too.
const InFull = "full"

// Floor is the van's floor, symmetric about the centreline.
type Floor struct {
	From, Length, Width, Thickness, Ground float64

	Outline Outline
	Deck    string // what carries the plate: "steel" or "timber"; "": not known
	Layers  string // what lies on it that may burn: "wood", foam or lining among it, or "none"; "": not known
}

// Outline is the van's skin at the height of the exhaust's outlet: its sides from the centreline, its rear in x.
type Outline struct{ Left, Right, Rear Number }

// The materials of a deck.
const (
	Steel  = "steel"
	Timber = "timber"
)

// What may lie on it.
const (
	Wood     = "wood"
	NoLayers = "none"
)

// Datum says where the tapes were hooked.
type Datum struct {
	Name                   string // of the line that x starts at; "" means the rear bumper edge
	HookBelow              Number
	HookAbove, ShiftAbove  Number // default 0
	Left, Right            Number // default half the floor's width
	AboveLeft, AboveRight  Number // default Left, Right
	SideBelow, SideAbove   Number // left out: the side tape was held level
	Frames                 Number // default 2
	Pins                   Number // default 0.4 of the floor's width
	PinsOn                 string // what the pins stand on: "" the datum line itself
	EdgesBelow, EdgesAbove string // which edges the left and the right one are, in people's words; "" where nobody said
}

// Batten is a straight batten clamped along the datum line, to hook the pins' tapes to where the line itself takes no pins.
const Batten = "batten"

// Tape is the tape's class and the errors of using it, +/- mm and degrees.
type Tape struct {
	Class                    string // I, II or III; "" means II
	Read, Mark, Height, Turn Number // defaults 1, 1, 2, 1
}

// Pair is two readings: a range in one direction, or a point in plan (x, y).
type Pair [2]survey.Reading

// Place is where a thing is in plan: exactly one of a rectangle (X, Y, Turn), a line (Path, Across) or a round
// (Centre, Across), as Shape says.
type Place struct {
	Shape  Shape
	X, Y   Pair // nearest then farthest edge from the bumper; right and left edge in either order
	Turn   float64
	Path   List[Pair] // points (x, y)
	Centre Pair       // a point (x, y)
	Across Number
}

// Shape says how a place was taken.
type Shape uint8

// The shapes of a place.
const (
	Box Shape = iota
	Piped
	Disc
)

// Obstruction is something under the floor.
type Obstruction struct {
	Name, Kind string
	Place
	Drop     Span   // not set: not measured, taken to reach the ground
	TapedAt  Number // the drop at which x was taped
	Measured bool   // false: from a library or another van, not confirmed on this one
	Holds    string // what is in a fuel tank or fuel line: one of FuelKinds, "" when not known
	Travel   Number // how far it moves up and down as the van drives
	Total    Totals // overall readings of where a chain of + readings ends with it
}

// Opening is where exhaust gas could get in, or fuel vapour out.
type Opening struct {
	Name, Kind string
	Place
	Drop        Span // may be above the floor: negative
	Unconfirmed bool // from a library or another van, not measured on this one: measured = false in the file
}

// Fitting is something above the floor, or in it: what runs under mat and lining has a kind, and a rise that may be negative.
type Fitting struct {
	Name string
	Kind string // one of Kinds; "" for what only stands there
	Place
	Rise        Span
	Total       Totals // as an obstruction's
	Unconfirmed bool   // as an opening's
}

// Tie is one feature seen from both sides of the floor.
type Tie struct {
	Name         string
	Below, Above Pair
	Use          bool
}

// Wheel is where a tyre stands. Across and Width are 0 when they were left out.
type Wheel struct {
	At            [2]float64
	Across, Width float64
}

// Heater is the heater's own frame: sizes along u (towards its warm-air outlet), v (to the left of it) and up.
type Heater struct {
	Class                             string
	Yaw                               float64
	Body                              [3]float64
	BodyAt                            [2]float64
	Plate                             [2]float64
	Space                             Space // as the job says it or the class has it; what is kept free is Kept
	Turret                            Number
	StubDrop                          float64
	ExhaustStub, IntakeStub, FuelStub [2]float64
	Bolts                             List[[2]float64] // u, v of the holes drilled for it
	Bolt                              float64          // their diameter
	Packed                            bool             // swages under the plate are flattened or packed out
	Duct                              Ends             // where a duct stands in place of free air
	DuctAcross                        float64          // their diameter
	ReturnArea                        Number           // of the air's way back to the heater, cm2
	Air                               string           // where it takes the air it warms from: one of AirPlaces, "" when not said
	Stored                            Stored           // what is kept there; nobody has said without HasStored
	Given                             HeaterKeys       // what the file itself said; the rest came from the class
}

// Space is what must be kept free round the heater's body, mm.
type Space struct{ Front, Rear, Sides, Top float64 }

// HeaterKeys is a set of heater keys, so that a file is written back with the keys it had.
type HeaterKeys uint32

// The keys of the heater's table.
const (
	HasClass HeaterKeys = 1 << iota
	HasYaw
	HasBody
	HasBodyAt
	HasPlate
	HasFrontSpace
	HasRearSpace
	HasSideSpace
	HasTopSpace
	HasTurret
	HasStubDrop
	HasExhaustStub
	HasIntakeStub
	HasFuelStub
	HasBolts
	HasBolt
	HasPacked
	HasDuct
	HasDuctAcross
	HasReturnArea
	HasAir
	HasStored

	HasSpace = HasFrontSpace | HasRearSpace | HasSideSpace | HasTopSpace
)

// Cut is the hole through the floor.
type Cut struct {
	At      [2]float64
	Across  float64
	Pilot   Number // default 6
	Drilled *Pair  // the pilot hole as measured from below, once drilled
	Direct  List[DirectTape]
	Old     *Pair // the pilot hole that the centre was moved from, as measured from below: it is there still
	Sawn    Pair  // of a cut as it was built: where the hole was read from below, either reading without text where it was not

	Relieved Number // wood, foam and lining are cut back to this diameter
}

// DirectTape is a level tape from the drilled hole's centre to the nearest edge of an obstruction.
type DirectTape struct {
	To  string
	Gap survey.Reading // plain, not negative
}
