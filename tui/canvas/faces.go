package canvas

import (
	"math/bits"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/looks"
)

// faces say of every dot what covers it. Where there is colour, what is solid is shown by its face alone: whole cells by
// what lies behind them, its edges by blocks.
type faces struct {
	stride int     // dots a row
	of     []uint8 // of each dot which of the grounds; 0 is none
	table  []Ground
}

func newFaces(m *Map) faces {
	return faces{stride: m.wide, of: make([]uint8, m.wide*m.tall), table: make([]Ground, 1, 32)}
}

// lay covers the dots of a mask.
func (f *faces) lay(mask *bitmap, g Ground) {
	n := f.index(g)
	for y := mask.top; y < mask.bottom; y++ {
		dots := f.of[y*f.stride : (y+1)*f.stride]
		for i, m := range mask.row(y) {
			if m == ^uint64(0) {
				fill(dots[i<<6:i<<6+64], n)
				continue
			}
			for ; m != 0; m &= m - 1 {
				dots[i<<6+bits.TrailingZeros64(m)] = n
			}
		}
	}
}

func fill(dots []uint8, n uint8) {
	for i := range dots {
		dots[i] = n
	}
}

// index is where a ground stands in the table. With more grounds than it holds the last stands for all others.
func (f *faces) index(g Ground) uint8 {
	for i := range f.table {
		if f.table[i] == g {
			return uint8(i)
		}
	}
	if len(f.table) < 256 {
		f.table = append(f.table, g)
	}
	return uint8(len(f.table) - 1)
}

// cell returns the faces of a cell: the one that covers most of it, and where there are others the foremost of those with
// its dots, as octet gives them.
func (f *faces) cell(col, row int) (most, other Ground, dots uint8) {
	at := row*dotsDown*f.stride + col*dotsAcross
	var of [dotsAcross * dotsDown]uint8
	same := true
	for y := range dotsDown {
		of[2*y], of[2*y+1] = f.of[at], f.of[at+1]
		same = same && of[2*y] == of[0] && of[2*y+1] == of[0]
		at += f.stride
	}
	if same {
		return f.table[of[0]], Ground{}, 0
	}
	a := commonest(&of)
	b, front := a, -1
	for _, n := range of {
		if here := int(f.table[n].Role.Pen().Front); n != a && here > front {
			b, front = n, here
		}
	}
	for i, n := range of {
		if n == b {
			dots |= 1 << i
		}
	}
	return f.table[a], f.table[b], dots
}

// commonest is what most of a cell's dots are, the first of equals.
func commonest(of *[dotsAcross * dotsDown]uint8) (most uint8) {
	least := 0
	for i, n := range of {
		count := 0
		for _, k := range of[i:] {
			if k == n {
				count++
			}
		}
		if count > least {
			most, least = n, count
		}
	}
	return most
}

// faced tells whether what is solid of a role has a face of its own.
func faced(role scene.Role) bool { return tints[role] != looks.NoFace }

// groundOf is the face of an item.
func groundOf(it *scene.Item) Ground {
	return Ground{Role: it.Role, Set: true, Selected: it.Selected, Unsure: it.Unsure}
}
