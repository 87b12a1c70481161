package canvas

import "math/bits"

// emptied returns n zeros, in the memory of s where that holds so many.
func emptied[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	s = s[:n]
	clear(s)
	return s
}

// blank is emptied for cells without anything in them.
func blank(cells []Cell, n int) []Cell {
	if cap(cells) < n {
		cells = make([]Cell, n)
	}
	cells = cells[:n]
	cells[0] = Cell{Rune: ' '}
	for done := 1; done < n; done *= 2 {
		copy(cells[done:], cells[:done])
	}
	return cells
}

// cellset says of every cell of a canvas whether it belongs to it.
type cellset struct{ words []uint64 }

func (s *cellset) begin(cells int) { s.words = emptied(s.words, cells/64+1) }

func (s *cellset) add(i int) { s.words[i>>6] |= 1 << (i & 63) }

func (s *cellset) has(i int) bool { return s.words[i>>6]>>(i&63)&1 == 1 }

// any tells whether any of the cells from one to before another belongs to it.
func (s *cellset) any(from, to int) bool {
	for from < to {
		here := min(64-from&63, to-from)
		if m := s.words[from>>6] >> (from & 63); bits.TrailingZeros64(m) < here {
			return true
		}
		from += here
	}
	return false
}
