package canvas

import "math/bits"

// block is a character that shows the dots of a cell in two colours: ink on those set, ground on the rest, or with turned
// the other way round.
type block struct {
	char   rune
	turned bool
}

// quadrants are the characters of a cell's four quarters: bit 0 top left, 1 top right, 2 bottom left, 3 bottom right.
var quadrants = [16]rune{' ', '▘', '▝', '▀', '▖', '▌', '▞', '▛', '▗', '▚', '▐', '▜', '▄', '▙', '▟', '█'}

// blocks are for each of a cell's dots, as octet gives them, the character that comes nearest to them; of equals the one
// that shows more. Without colours no character can be turned, and plainBlocks has only the quarters.
var blocks, plainBlocks = func() (all, plain [256]block) {
	known := map[uint8]block{}
	for q, char := range quadrants {
		known[quarters(q)] = block{char: char}
	}
	quartersOnly := len(known)
	plain = nearest(known)
	known[0xC0], known[0xFC] = block{char: '▂'}, block{char: '▆'}
	known[0x3F], known[0x03] = block{'▂', true}, block{'▆', true}
	if len(known) != quartersOnly+4 {
		panic("two blocks show the same dots")
	}
	return nearest(known), plain
}()

// quarters are the dots of a cell's quarters.
func quarters(q int) (dots uint8) {
	for k, of := range [4]uint8{0x05, 0x0A, 0x50, 0xA0} {
		if q>>k&1 == 1 {
			dots |= of
		}
	}
	return dots
}

func nearest(known map[uint8]block) (table [256]block) {
	for dots := range table {
		best, off, inked := block{}, 9, -1
		for shown := range 256 {
			b, ok := known[uint8(shown)]
			by, n := bits.OnesCount8(uint8(dots)^uint8(shown)), bits.OnesCount8(uint8(shown))
			if ok && (by < off || by == off && n > inked) {
				best, off, inked = b, by, n
			}
		}
		table[dots] = best
	}
	return table
}

// turnedOver are a cell's dots with its rows upside down.
func turnedOver(dots uint8) uint8 { return dots<<6 | dots<<2&0x30 | dots>>2&0x0C | dots>>6 }
