package vehicles

import (
	"cmp"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// Plan is a job with its readings reduced: everything at a place in mm, in the below frame unless it says
// otherwise, with the standard uncertainties of its coordinates. It is made afresh for every job and never edited.
type Plan struct {
	Obstructions []Placed        // as the job has them, one each
	Openings     []PlacedOpening // as the job has them
	Fittings     []Placed        // as measured above, carried down through the ties; heights are z above the underside
	Ties         []survey.Tie    // as the job has them
	Fit          survey.Fit
	Closures     []Closure // one for each overall reading of a chain, in the order of the file

	FloorMin, FloorMax geometry.Point // the floor's edges
	Cut                CutPlace       // meaningful when the job has a cut

	Exhaust, Intake *LaidRun // nil when not there, or without a cut and a heater to start from
	Fuel            *LaidRun // nil when not there

	reduced reduced // for ReduceAfter
}

// Placed is one thing of the survey in its place.
type Placed struct {
	Prism    geometry.Prism // z from -bottom drop to -top drop; a fitting's from thickness + rise
	Edges    [4]Taped       // each edge's own reading: x near, x far, y right, y left
	X, Y     Taped          // the least certain of the x readings, of the y readings
	UTop     float64        // standard uncertainty of the top (0 when the drop was left out: those ends are exact)
	ULow     float64        // of the bottom
	UTurn    float64        // radians, 0 for what is not turned
	Loose    bool           // no verdict on it is better than doubtful: the tape sloped by an unknown amount
	Unclosed bool           // nor here: a chain it rests on does not come out at its overall reading
	Axis     bool           // a rectangle measured without a turn: its edges carry their own readings' uncertainty
	LeftOne  bool           // the first y reading of a rectangle is of its left edge
	Assumed  bool           // drop left out: taken to reach the ground
	Measured bool
}

// Taped is how well one coordinate was taped.
type Taped struct {
	U    float64 // standard uncertainty, mm
	Tilt float64 // how it goes with the height of the zero it was taped from: see survey.Coord
}

// Own is its variance without the height of its zero, mm^2; heightU is the standard uncertainty of any height, mm.
func (t Taped) Own(heightU float64) float64 {
	return max(0, t.U*t.U-t.Tilt*t.Tilt*heightU*heightU) // rounding, and chains closed by an overall reading
}

func tapedOf(c survey.Coord) Taped { return Taped{c.U, c.Tilt} }

// worse is the less certain of two, the first of two alike.
func (t Taped) worse(other Taped) Taped {
	if other.U > t.U {
		return other
	}
	return t
}

// PlacedOpening is an opening: a path without width over a range of heights.
type PlacedOpening struct {
	Placed
}

// CutPlace is where the cut is: where it is meant, or where the pilot hole, or the hole as built, was measured to be.
type CutPlace struct {
	Intended geometry.Point // cut.at, but where the hole as built was read
	At       geometry.Point // the drilled place once there is one, else Intended
	Drilled  bool
	Below    bool            // At was read from below in x and in y; else a mark from above is in it
	UX, UY   float64         // of At: of the mark from above, or of the readings of the hole
	UMark    [2]float64      // of the mark at Intended, whatever was drilled
	Old      *geometry.Point // the pilot hole that the centre was moved from, nil for none
}

// Fault is something wrong with a job: where, and what is wrong and what to do.
type Fault struct {
	Key  string // path of the key as the file has it, tables counted from 0: obstruction[3].x
	Text string
	Why  string // the text without the words for where it is, for who shows it there; "" where it has none
	Err  error  // what the text tells of, where anybody may ask which it is: survey.ErrSwapped, survey.ErrOnePlace
}

// There is what is said of the fault where it is.
func (f Fault) There() string { return cmp.Or(f.Why, f.Text) }

// EdgeAt returns how well x and y of the thing are known at q, a point of its outline: on an edge of an axis-parallel
// rectangle by that edge's own reading, at a corner by those of both, elsewhere by the least certain of its own readings.
// Along an edge the other coordinate's is returned too; there it has no direction.
func (p *Placed) EdgeAt(q geometry.Point) (x, y Taped) {
	if !p.Axis {
		return p.X, p.Y
	}
	ix, iy := p.edgesAt(q)
	return p.Edges[ix], p.Edges[2+iy]
}

// edgesAt tells which edge of a rectangle q is nearer to: 0 for the near and 1 for the far one in x, 0 for the right and
// 1 for the left one in y.
func (p *Placed) edgesAt(q geometry.Point) (x, y int) {
	f := &p.Prism.Footprint
	local := q.Sub(f.Middle)
	if f.Turn != 0 {
		local = local.Turn(-f.Turn)
	}
	if local.X > 0 {
		x = 1
	}
	if local.Y > 0 {
		y = 1
	}
	return x, y
}

// TurnTerm returns the standard uncertainty, mm, that the thing's turn adds to a distance taken at its point q along
// the unit plan direction n: u_turn |(q - m) x n| with m its middle.
func (p *Placed) TurnTerm(q, n geometry.Point) float64 {
	arm := q.Sub(p.Prism.Footprint.Middle)
	return p.UTurn * (arm.X*n.Y - arm.Y*n.X)
}
