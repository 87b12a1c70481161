package canvas

import (
	"encoding/binary"
	"math/bits"

	"bench.example/undermark/geometry/scene"
)

// faces say of every dot what covers it. Where there is colour, what is solid is shown by its face alone: whole cells by
// what lies behind them, its edges by blocks.
type faces struct {
	stride int     // dots a row
	of     []uint8 // of each dot which of the grounds; 0 is none
	table  []Ground
}

// begin covers nothing of a picture.
func (f *faces) begin(m *Map) {
	*f = faces{stride: m.wide, of: emptied(f.of, m.wide*m.tall), table: append(f.table[:0], Ground{})}
}

// lay covers the dots of a mask.
func (f *faces) lay(mask *bitmap, g Ground) {
	n := f.index(g)
	for y := mask.top; y < mask.bottom; y++ {
		dots := f.of[y*f.stride : (y+1)*f.stride]
		for i, m := range mask.row(y) {
			for m != 0 { // a run of dots at a time
				from := bits.TrailingZeros64(m)
				run := bits.TrailingZeros64(^(m >> from))
				fill(dots[i<<6+from:][:run], n)
				m &^= ^uint64(0) >> (64 - run) << from
			}
		}
	}
}

func fill(dots []uint8, n uint8) {
	for ; len(dots) >= 8; dots = dots[8:] {
		binary.NativeEndian.PutUint64(dots, uint64(n)*0x0101010101010101)
	}
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

// whole returns which face covers a whole cell of a row of dotsDown rows of dots, and whether one does.
func whole(rows *[dotsDown][]uint8, col int) (n uint8, ok bool) {
	const first = dotsAcross
	a, b := binary.NativeEndian.Uint16(rows[0][col*first:]), binary.NativeEndian.Uint16(rows[1][col*first:])
	c, d := binary.NativeEndian.Uint16(rows[2][col*first:]), binary.NativeEndian.Uint16(rows[3][col*first:])
	return uint8(a), (a^b)|(a^c)|(a^d)|(a>>8^a&0xFF) == 0
}

// rows are the rows of dots of a row of cells.
func (f *faces) rows(row int) (rows [dotsDown][]uint8) {
	for y := range rows {
		rows[y] = f.of[(row*dotsDown+y)*f.stride:][:f.stride]
	}
	return rows
}

// mixed returns the faces of a cell that several share: the one that covers most of it, and the foremost of the others with
// its dots, as octet gives them.
func (f *faces) mixed(rows *[dotsDown][]uint8, col int) (most, other Ground, dots uint8) {
	var of [dotsAcross * dotsDown]uint8
	for y := range dotsDown {
		of[2*y], of[2*y+1] = rows[y][col*dotsAcross], rows[y][col*dotsAcross+1]
	}
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
func faced(role scene.Role) bool { return tints[role] != hue{} }

// groundOf is the face of an item.
func groundOf(it *scene.Item) Ground {
	return Ground{Role: it.Role, Set: true, Selected: it.Selected, Unsure: it.Unsure}
}
