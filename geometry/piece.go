package geometry

import "math"

// Piece is a piece of a centreline: straight from A to B, or an arc.
type Piece struct {
	A, B          Point3
	Along, Inward Point3  // unit vectors at A: onwards, of an arc and of any piece of a run that has a length; of an arc towards its centre
	Radius        float64 // of an arc, mm; 0: straight
	Turn          float64 // of an arc, radians, less than a half turn
}

// Pieces returns the run as straight pieces and arcs, each beginning where the one before ends. Those without length
// are left out; a run that has none is one piece whose ends coincide.
func (r Run) Pieces() []Piece {
	pieces := make([]Piece, 0, len(r.pieces))
	for i := range r.pieces {
		if p := &r.pieces[i]; p.length > 0 {
			pieces = append(pieces, p.Piece)
		}
	}
	if len(pieces) == 0 {
		pieces = append(pieces, Piece{A: r.At(0), B: r.At(0)})
	}
	return pieces
}

// At returns the place at a share of the piece's length: A at 0 and B at 1, both exactly.
func (p Piece) At(share float64) Point3 {
	switch {
	case share == 1:
		return p.B
	case p.Radius == 0:
		return p.A.Add(p.B.Sub(p.A).Scale(share))
	}
	sin, cos := math.Sincos(share * p.Turn)
	return p.A.Add(p.Along.Scale(p.Radius * sin)).Add(p.Inward.Scale(p.Radius * (1 - cos)))
}

// Chords returns into how many equal parts the piece must be cut for the straight lines between their ends to be off by
// at most so many mm, more than 0: 1 for a straight piece. A chord over an angle a of a circle of radius R leaves it by
// R (1 - cos a/2) at the most.
func (p Piece) Chords(off float64) int {
	if p.Radius == 0 {
		return 1
	}
	widest := 2 * math.Acos(1-min(off/p.Radius, 1))
	return max(1, int(math.Ceil(p.Turn/widest)))
}

// Length returns how long the piece is along its centreline, mm: of an arc its radius times its turn.
func (p Piece) Length() float64 {
	if p.Radius == 0 {
		return p.B.Sub(p.A).Norm()
	}
	return p.Radius * p.Turn
}

// PiecesOn returns as Pieces does what of the run lies between two places along it; none where the first is not before the second.
func (r Run) PiecesOn(from, to float64) (pieces []Piece) {
	for i := range r.pieces {
		if p, ok := r.part(i, from, to); ok && p.length > 0 {
			pieces = append(pieces, p.Piece)
		}
	}
	return pieces
}
