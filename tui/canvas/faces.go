package canvas

import (
	"encoding/binary"
	"math/bits"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/looks"
)

// faces say of every dot what covers it. Where there is colour, what is solid is shown by its face alone: whole cells by
// what lies behind them, its edges by blocks.
type faces struct {
	cols  int
	of    []uint64 // of each cell, a byte for each of its dots as octet has them, which of the grounds covers it; 0 is none
	table []Ground
}

// begin covers nothing of a picture.
func (f *faces) begin(m *Map) {
	*f = faces{cols: m.Cols, of: emptied(f.of, m.Cols*m.Rows), table: append(f.table[:0], Ground{})}
}

// everyDot is a byte's worth for every dot of a cell.
const everyDot = 0x0101010101010101

// bytesOf are for a cell's dots, as octet gives them, the bytes of those that are set.
var bytesOf = func() (table [256]uint64) {
	for dots := range table {
		for i := range dotsAcross * dotsDown {
			table[dots] |= uint64(dots>>i&1) * 0xFF << (8 * i)
		}
	}
	return table
}()

// lay covers the dots of a mask.
func (f *faces) lay(mask *bitmap, g Ground) {
	n := uint64(f.index(g)) * everyDot
	for row := mask.top / dotsDown; row*dotsDown < mask.bottom; row++ {
		line := f.of[row*f.cols:][:f.cols]
		mask.cells(row, func(col int) {
			dots := bytesOf[mask.octet(col, row)]
			line[col] = line[col]&^dots | n&dots
		})
	}
}

// recast gives those dots of a mask that one ground covers another.
func (f *faces) recast(mask *bitmap, from, to Ground) {
	old, n := f.index(from), uint64(f.index(to))
	for row := mask.top / dotsDown; row*dotsDown < mask.bottom; row++ {
		line := f.of[row*f.cols:][:f.cols]
		mask.cells(row, func(col int) {
			dots := bytesOf[mask.octet(col, row)]
			for i := range dotsAcross * dotsDown {
				one := uint64(0xFF) << (8 * i)
				if uint8(line[col]>>(8*i)) == old {
					line[col] = line[col]&^(one&dots) | n<<(8*i)&dots
				}
			}
		})
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

// mixed returns the faces of a cell that several share: the one that covers most of it, and the foremost of the others with
// its dots, as octet gives them.
func (f *faces) mixed(cell uint64) (most, other Ground, dots uint8) {
	var of [dotsAcross * dotsDown]uint8
	binary.LittleEndian.PutUint64(of[:], cell)
	a, b, dots := of[0], of[0], uint8(0)
	for i, n := range of {
		switch {
		case n == a:
			continue
		case b == a:
			b = n
		case n != b:
			return f.several(&of)
		}
		dots |= 1 << i
	}
	if bits.OnesCount8(dots) > len(of)/2 {
		a, b, dots = b, a, ^dots
	}
	return f.table[a], f.table[b], dots
}

// several is mixed for more than two faces.
func (f *faces) several(of *[dotsAcross * dotsDown]uint8) (most, other Ground, dots uint8) {
	a := commonest(of)
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
