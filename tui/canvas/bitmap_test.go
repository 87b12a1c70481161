package canvas

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The twins below look at one dot after the other; the bitmap works on whole words.
func (b *bitmap) at(x, y int, outside bool) bool {
	if x < 0 || y < 0 || x >= b.w || y >= b.h {
		return outside
	}
	return b.words[y*b.stride+x>>6]>>(x&63)&1 == 1
}

func drawBitmap(t *rapid.T) bitmap {
	b := newBitmap(rapid.SampledFrom([]int{1, 2, 63, 64, 65, 100, 128, 130}).Draw(t, "w"), rapid.IntRange(1, 3).Draw(t, "cells")*4)
	for range rapid.IntRange(0, 12).Draw(t, "spans") {
		y := rapid.IntRange(-1, b.h).Draw(t, "y")
		x := rapid.IntRange(-5, b.w+5).Draw(t, "x")
		b.span(y, x, x+rapid.IntRange(-2, 90).Draw(t, "length"))
	}
	return b
}

func same(t *rapid.T, b *bitmap, want func(x, y int) bool) {
	for y := range b.h {
		for x := range b.w {
			require.Equal(t, want(x, y), b.at(x, y, false), "dot %d,%d", x, y)
		}
	}
}

func TestOutlineEqualsItsSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBitmap(t)
		out := newBitmap(b.w, b.h)
		b.outline(&out)
		same(t, &out, func(x, y int) bool {
			inner := b.at(x-1, y, true) && b.at(x+1, y, true) && b.at(x, y-1, true) && b.at(x, y+1, true)
			return b.at(x, y, false) && !inner
		})
	})
}

func TestGrowEqualsItsSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBitmap(t)
		out := newBitmap(b.w, b.h)
		b.grow(&out)
		same(t, &out, func(x, y int) bool {
			for dy := -1; dy <= 1; dy++ {
				for dx := -1; dx <= 1; dx++ {
					if b.at(x+dx, y+dy, false) {
						return true
					}
				}
			}
			return false
		})
	})
}

func TestCellsAreFoundByTheirDots(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBitmap(t)
		for row := range b.h / 4 {
			found, covered := map[int]bool{}, map[int]bool{}
			b.cells(row, func(col int) { found[col] = true })
			b.covered(row, func(col int) { covered[col] = true })
			for col := range b.w / 2 {
				octet := b.octet(col, row)
				for bit := range 8 {
					require.Equal(t, b.at(col*2+bit%2, row*4+bit/2, false), octet>>bit&1 == 1)
				}
				require.Equal(t, octet != 0, found[col])
				require.Equal(t, octet&0b00111100 == 0b00111100, covered[col])
			}
		}
	})
}

func TestTexturesStayInTheMask(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mask := drawBitmap(t)
		out := newBitmap(mask.w, mask.h)
		woven := weave(hatched, 3, 5)
		out.paint(&mask, &woven)
		same(t, &out, func(x, y int) bool { return mask.at(x, y, false) && hatched(x+3, y+5) })
		out.erase(&mask)
		same(t, &out, func(x, y int) bool { return false })
	})
}

// What a block shows is shown by it and by no other: then no two show the same.
func TestEveryBlockStandsForWhatItShows(t *testing.T) {
	for q, char := range quadrants {
		assert.Equal(t, block{char: char}, blockTable().all[quarters(q)])
		assert.Equal(t, block{char: char}, blockTable().plain[quarters(q)])
	}
	assert.Equal(t, [4]block{{char: '▂'}, {char: '▆'}, {'▂', true}, {'▆', true}}, [4]block{blockTable().all[0xC0], blockTable().all[0xFC], blockTable().all[0x3F], blockTable().all[0x03]})
}

// The twin fills the rectangle and then draws its sides, as for one that is turned.
func TestABoxEqualsItsSlowTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		quick, slow := newBitmap(100, 24), newBitmap(100, 24)
		quick.reset()
		slow.reset()
		place := func(name string, most int) float64 { // in parts of a dot, which are exact
			return float64(rapid.IntRange(-10*64, most*64).Draw(t, name)) / 64
		}
		p, q := vec{place("x0", 120), place("y0", 40)}, vec{place("x1", 120), place("y1", 40)}
		quick.box(p, q)
		corners := []vec{p, {q.x, p.y}, q, {p.x, q.y}}
		slow.convex(corners)
		for y := floor(min(p.y, q.y)); y <= floor(max(p.y, q.y)); y++ { // its sides, dot by dot
			slow.set(floor(p.x), y)
			slow.set(floor(q.x), y)
		}
		for x := floor(min(p.x, q.x)); x <= floor(max(p.x, q.x)); x++ {
			slow.set(x, floor(p.y))
			slow.set(x, floor(q.y))
		}
		require.Equal(t, slow, quick)
	})
}
