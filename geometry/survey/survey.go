// Package survey turns what a tape said into places with an uncertainty.
//
// It knows readings, slope, chains of readings, ties between two frames and tapes from two pins; it does not
// know kinds of obstruction or files. Lengths are mm, angles degrees, uncertainties standard (1 sigma) in mm.
// X runs forward from the bumper datum, Y to the van's left. Nothing here holds state.
package survey

// Axis says whether a reading runs along X or along Y.
type Axis uint8

// The two axes of the plan.
const (
	X Axis = iota
	Y
)

// Start says where a reading starts.
type Start uint8

// The starts of a reading.
const (
	Datum     Start = iota // the bumper datum in X, the centreline in Y
	FromLeft               // the left side reference edge, Y only
	FromRight              // the right side reference edge, Y only
	On                     // the reading before it
)

// Reading is what the tape said, kept as it was said.
type Reading struct {
	Text   string // as it was written: "L 240", "+84", "2'6 1/2\"", 652
	Number bool   // written as a bare TOML number, not as a string
	Start  Start
	Length float64 // mm, negative only for a plain signed reading
}

// Coord is one coordinate of a place with its standard uncertainty, both mm.
type Coord struct {
	Value, U float64
	Tilt     float64 // by how much Value grows for each mm that the zero the tape was hooked to hangs lower than was said
	// Loose: the tape sloped by an amount nobody knows, here or in a reading this one runs on from. No verdict
	// that rests on it is better than doubtful.
	Loose bool
}
