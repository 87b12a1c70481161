package cutlist

import (
	"cmp"
	"slices"
)

// Stock is how many of the lengths that something is sold in its pieces take.
type Stock struct {
	Of      Thing
	Length  float64   // of one
	Needed  int       // how many
	Left    []float64 // what is left over of each, in the order in which they are begun
	TooLong []float64 // pieces that no length holds, as they are cut: they are bought longer
	Holds   int       // how many the usual kit holds
}

// LacksLengths is how many more of the usual lengths are needed than the kit holds.
func (s Stock) LacksLengths() int { return max(0, s.Needed-s.Holds) }

// Lacks is how many more have to be bought than the kit holds: usual lengths, and each piece that none of them holds.
func (s Stock) Lacks() int { return s.LacksLengths() + len(s.TooLong) }

// rounding is what adding up may be off, mm: a piece as long as a length, or as what is left of one, is cut from it.
const rounding = 1e-6

// pack cuts the pieces of something from lengths: the longest first, each from the first length that still holds it. It never takes more
// than 11/9 of the fewest and two thirds of one (G. Dosa, 2007; from memory).
func (m *maker) pack(of Thing) {
	in := m.kit.stock(of)
	s := Stock{Of: of, Length: in.Length, Holds: in.Holds}
	var cuts []float64
	for _, p := range m.Pieces {
		if p.Of == of {
			cuts = append(cuts, p.Cut)
		}
	}
	if len(cuts) == 0 {
		return
	}
	slices.SortFunc(cuts, func(a, b float64) int { return cmp.Compare(b, a) })
	for _, cut := range cuts {
		if cut > s.Length+rounding {
			s.TooLong = append(s.TooLong, cut)
			continue
		}
		at := slices.IndexFunc(s.Left, func(left float64) bool { return left >= cut-rounding })
		if at < 0 {
			s.Left = append(s.Left, s.Length)
			at = len(s.Left) - 1
		}
		s.Left[at] = max(0, s.Left[at]-cut)
	}
	s.Needed = len(s.Left)
	m.Stock = append(m.Stock, s)
}
