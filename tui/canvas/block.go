package canvas

import (
	"math/bits"
	"slices"
	"sync"
)

// block is a character that shows the dots of a cell in two colours: ink on those set, ground on the rest, or with turned
// the other way round.
type block struct {
	char   rune
	turned bool
}

// quadrants are the characters of a cell's four quarters: bit 0 top left, 1 top right, 2 bottom left, 3 bottom right.
var quadrants = [16]rune{' ', '▘', '▝', '▀', '▖', '▌', '▞', '▛', '▗', '▚', '▐', '▜', '▄', '▙', '▟', '█'}

// shown is a block with the dots that it shows.
type shown struct {
	dots uint8
	block
}

// blocks are for each of a cell's dots, as octet gives them, the character that comes nearest to them; of equals the one
// that shows more. Without colours no character can be turned: plain has only the quarters.
type blocks struct{ all, plain [256]block }

// blockTable is made once something is painted: most commands paint nothing.
var blockTable = sync.OnceValue(func() *blocks {
	var known []shown
	for q, char := range quadrants {
		known = append(known, shown{quarters(q), block{char: char}})
	}
	plain := nearest(known)
	known = append(known,
		shown{0xC0, block{char: '▂'}}, shown{0xFC, block{char: '▆'}}, shown{0x3F, block{'▂', true}}, shown{0x03, block{'▆', true}})
	return &blocks{nearest(known), plain}
})

// quarters are the dots of a cell's quarters.
func quarters(q int) (dots uint8) {
	for k, of := range [4]uint8{0x05, 0x0A, 0x50, 0xA0} {
		if q>>k&1 == 1 {
			dots |= of
		}
	}
	return dots
}

func nearest(known []shown) (table [256]block) {
	slices.SortFunc(known, func(a, b shown) int { return int(a.dots) - int(b.dots) })
	for dots := range table {
		off, inked := 9, -1
		for _, k := range known {
			by, n := bits.OnesCount8(uint8(dots)^k.dots), bits.OnesCount8(k.dots)
			if by < off || by == off && n > inked {
				table[dots], off, inked = k.block, by, n
			}
		}
	}
	return table
}

// turnedOver are a cell's dots with its rows upside down.
func turnedOver(dots uint8) uint8 { return dots<<6 | dots<<2&0x30 | dots>>2&0x0C | dots>>6 }
