package cutlist

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Piece is a piece of pipe, hose or line that is cut off and bent.
type Piece struct {
	Run       vehicles.RunKind
	Of        Thing   // what it is cut from
	Across    float64 // of that
	From, To  string  // what it goes between
	Developed float64 // along its centreline, bends rounded
	Cut       float64 // what to cut it to: with what its joints take and what is trimmed
	Bits      []Bit   // in order along it; their lengths come to Developed
	Short     bool    // nobody can saw and hold it
}

// TooShort says so, and what to do.
const TooShort = "too short to be sawn and held: slide what it is joined to along its leg, or lengthen that"

// Remark is what is to be said of the piece; "" for nothing.
func (p *Piece) Remark() string {
	if p.Short {
		return TooShort
	}
	return ""
}

// Bit is a straight length of a piece or a bend; Radius 0 and Turn more than 0: a corner that stays sharp, without length.
type Bit struct {
	Length       float64
	Turn, Radius float64 // of a bend, degrees and mm
}

// bits are what of a run lies between two places along it, straights that go on in one direction as one.
func bits(line *geometry.Run, from, to float64) (list []Bit) {
	var heading geometry.Point3
	for i, p := range line.PiecesOn(from, to) {
		if turn := geometry.Angle(heading, p.Along); i > 0 && turn > goesOn {
			list = append(list, Bit{Turn: turn * degrees})
		}
		heading = onward(p)
		switch last := len(list) - 1; {
		case p.Turn > goesOn:
			list = append(list, Bit{Length: p.Length(), Turn: p.Turn * degrees, Radius: p.Radius})
		case last >= 0 && list[last].Turn == 0:
			list[last].Length += p.Length()
		default:
			list = append(list, Bit{Length: p.Length()})
		}
	}
	return list
}

// onward is the direction in which a piece ends.
func onward(p geometry.Piece) geometry.Point3 {
	if p.Radius == 0 {
		return p.Along
	}
	sin, cos := math.Sincos(p.Turn)
	return p.Along.Scale(cos).Add(p.Inward.Scale(sin))
}

const degrees = 180 / math.Pi

// goesOn is a turn, radians, that is none: of 20 mm of pipe it moves the end by 0.002 mm, and what is laid is laid to 0.01 mm.
const goesOn = 1e-4
