package canvas

import "math/bits"

// bitmap is a plane of dots, a bit each, so that patterns and outlines take whole words at a time. Dots are counted
// from the top left of the picture as its plane has it; what is set outside is dropped.
type bitmap struct {
	w, h, stride int // in dots; words a row
	words        []uint64
	top, bottom  int // rows that may hold dots: top <= y < bottom
}

func newBitmap(w, h int) bitmap {
	stride := (w + 63) / 64
	return bitmap{w: w, h: h, stride: stride, words: make([]uint64, stride*h), top: h}
}

// reset empties the bitmap.
func (b *bitmap) reset() {
	if b.top < b.bottom {
		clear(b.words[b.top*b.stride : b.bottom*b.stride])
	}
	b.top, b.bottom = b.h, 0
}

func (b *bitmap) row(y int) []uint64 { return b.words[y*b.stride : (y+1)*b.stride] }

func (b *bitmap) touch(y int) { b.top, b.bottom = min(b.top, y), max(b.bottom, y+1) }

func (b *bitmap) set(x, y int) {
	if x >= 0 && x < b.w && y >= 0 && y < b.h {
		b.words[y*b.stride+x>>6] |= 1 << (x & 63)
		b.touch(y)
	}
}

// span sets the dots from x0 to x1, both included.
func (b *bitmap) span(y, x0, x1 int) {
	x0, x1 = max(x0, 0), min(x1, b.w-1)
	if y < 0 || y >= b.h || x0 > x1 {
		return
	}
	b.touch(y)
	row := b.row(y)
	first, last := x0>>6, x1>>6
	from, to := ^uint64(0)<<(x0&63), ^uint64(0)>>(63-x1&63)
	if first == last {
		row[first] |= from & to
		return
	}
	row[first] |= from
	for i := first + 1; i < last; i++ {
		row[i] = ^uint64(0)
	}
	row[last] |= to
}

// outline leaves in out the dots of b that have an empty neighbour beside, above or below them. The edge of the
// picture is no outline: what is cut off there goes on outside.
func (b *bitmap) outline(out *bitmap) {
	out.reset()
	for y := b.top; y < b.bottom; y++ {
		row, above, below := b.row(y), b.around(y-1, y), b.around(y+1, y)
		dst := out.row(y)
		for i, m := range row {
			left, right := m<<1|b.carry(row, i-1, true), m>>1|b.carry(row, i+1, false)
			dst[i] = m &^ (left & right & above[i] & below[i])
		}
	}
	out.top, out.bottom = b.top, b.bottom
}

// around returns row y, or the row beside it when y is outside the picture.
func (b *bitmap) around(y, beside int) []uint64 {
	if y < 0 || y >= b.h {
		return b.row(beside)
	}
	return b.row(y)
}

// carry returns the dot that moves into a word from its neighbour word i on the left or right.
func (b *bitmap) carry(row []uint64, i int, fromLeft bool) uint64 {
	switch {
	case fromLeft && i < 0:
		return 1
	case fromLeft:
		return row[i] >> 63
	case i == len(row): // the last dot of the picture may lie inside the last word
		return 1 << ((b.w - 1) & 63)
	}
	return row[i] << 63
}

// grow adds to out every dot of b and its eight neighbours.
func (b *bitmap) grow(out *bitmap) {
	out.reset()
	for y := b.top; y < b.bottom; y++ {
		row := b.row(y)
		for i, m := range row {
			if m == 0 {
				continue
			}
			for _, at := range [3]int{y - 1, y, y + 1} {
				if at < 0 || at >= b.h {
					continue
				}
				out.touch(at)
				dst := out.row(at)
				dst[i] |= m | m<<1 | m>>1
				if i > 0 {
					dst[i-1] |= m << 63
				}
				if i+1 < len(row) {
					dst[i+1] |= m >> 63
				}
				if over := b.w & 63; over != 0 { // no dot past the right edge
					dst[len(dst)-1] &= 1<<over - 1
				}
			}
		}
	}
}

// texture tells which dots of a row are inked: the row's bits, repeated every eight dots.
type texture func(x, y int) bool

// ink is a texture worked out: row y & 7 repeats every eight dots.
type ink [8]uint64

// weave works a texture out, shifted so that it stays on the ground when the picture is moved.
func weave(t texture, shiftX, shiftY int) ink {
	var rows ink
	for y := range rows {
		var octet uint64
		for x := range 8 {
			if t((x+shiftX)&7, (y+shiftY)&7) {
				octet |= 1 << x
			}
		}
		rows[y] = octet * 0x0101010101010101
	}
	return rows
}

// paint sets those dots of b that lie under mask and are inked.
func (b *bitmap) paint(mask *bitmap, k *ink) {
	for y := mask.top; y < mask.bottom; y++ {
		dst, src, bitsOf := b.row(y), mask.row(y), k[y&7]
		for i, m := range src {
			dst[i] |= m & bitsOf
		}
	}
}

// erase empties the dots of b under mask.
func (b *bitmap) erase(mask *bitmap) {
	for y := mask.top; y < mask.bottom; y++ {
		dst, src := b.row(y), mask.row(y)
		for i, m := range src {
			dst[i] &^= m
		}
	}
}

// meet leaves the dots of b that are also in another.
func (b *bitmap) meet(other *bitmap) {
	for y := b.top; y < b.bottom; y++ {
		dst, src := b.row(y), other.row(y)
		for i := range dst {
			if y < other.top || y >= other.bottom {
				dst[i] = 0
			} else {
				dst[i] &= src[i]
			}
		}
	}
}

// stamp sets those dots of a cell that are inked.
func (b *bitmap) stamp(col, row int, k *ink) {
	at, shift := row*4*b.stride+col>>5, uint(col&31)*2
	for y := range 4 {
		b.words[at+y*b.stride] |= k[(row*4+y)&7] & (3 << shift)
		b.touch(row*4 + y)
	}
}

// octet returns the eight dots of a cell: bit 2*y+x for the dot x, y of its four rows of two.
func (b *bitmap) octet(col, row int) uint8 {
	at, shift := row*4*b.stride+col>>5, uint(col&31)*2
	var dots uint8
	for y := range 4 {
		dots |= uint8(b.words[at+y*b.stride]>>shift&3) << (2 * y)
	}
	return dots
}

// covered calls each with every cell of a row whose four inner dots are all set.
func (b *bitmap) covered(row int, each func(col int)) {
	at := (row*4 + 1) * b.stride
	for i := range b.stride {
		m := b.words[at+i] & b.words[at+b.stride+i]
		m &= m >> 1 & 0x5555555555555555
		for ; m != 0; m &= m - 1 {
			each(i<<5 + bits.TrailingZeros64(m)>>1)
		}
	}
}

// cells calls each with every cell of a row that holds dots of b.
func (b *bitmap) cells(row int, each func(col int)) {
	at := row * 4 * b.stride
	for i := range b.stride {
		m := b.words[at+i] | b.words[at+b.stride+i] | b.words[at+2*b.stride+i] | b.words[at+3*b.stride+i]
		m = (m | m>>1) & 0x5555555555555555
		for ; m != 0; m &= m - 1 {
			each(i<<5 + bits.TrailingZeros64(m)>>1)
		}
	}
}
