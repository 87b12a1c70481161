package field

import (
	"math"

	"bench.example/undermark/geometry"
)

// A list of parts has those of the ways at its end, way after way; a way that can't be the best in a cell is not in the
// cell's list, and none is where the best of them can't be what limits a place.

// addWays adds the parts of the ways.
func (m *Margins) addWays(owner int32) {
	for i, way := range m.limits.Ways {
		for _, asked := range way {
			m.parts = appendAsked(m.parts, asked, owner, int16(i)+1)
		}
	}
}

// split parts a list into what is asked anyhow and the ways.
func (m *Margins) split(list []int32) (common, ways []int32) {
	i := len(list)
	for i > 0 && list[i-1] >= m.common {
		i--
	}
	return list[:i], list[i:]
}

// next parts a list of ways, which must not be empty, into its first way and the others.
func (m *Margins) next(ways []int32) (way, others []int32) {
	i, first := 1, m.parts[ways[0]].way
	for i < len(ways) && m.parts[ways[i]].way == first {
		i++
	}
	return ways[:i], ways[i:]
}

// bestWay returns the greatest of the least margins of each way at p, and the part that has it; or any that is no less than
// enough.
func (m *Margins) bestWay(ways []int32, p geometry.Point, enough float64) (best float64, lead int32) {
	best, lead = math.Inf(-1), -1
	for len(ways) > 0 && best < enough {
		var way []int32
		way, ways = m.next(ways)
		if d, k := m.least(way, p, best); d > best {
			best, lead = d, k
		}
	}
	return best, lead
}

// Way returns the index into Limits.Ways of the way that suits a place best and its margin, whatever else limits the place;
// -1 and +Inf when nothing is asked of any way.
func (m *Margins) Way(p geometry.Point) (way int, margin float64) {
	_, ways := m.split(m.all)
	if len(ways) == 0 {
		return -1, math.Inf(1)
	}
	margin, lead := m.bestWay(ways, p, math.Inf(1))
	return int(m.parts[lead].way) - 1, margin
}

// choice is a way in a cell, or what is asked anyhow: its least margin at the middle, the part that has it, and what its
// margins are at most.
type choice struct {
	least, most float64
	lead        int32
	parts       int // how many
}

// siftWays sifts a list with ways in it, of which what is asked anyhow has been measured.
func (l *lister) siftWays(common, ways []int32, c *cell, anyhow choice) (least float64, lead int32, most float64) {
	best, r := l.weigh(ways, c), c.radius()
	most = min(anyhow.most, best.most)
	start := len(l.stack)
	l.keep(common, l.distances, most, r)
	if surely := best.least - r - slack; surely <= most {
		l.keepWays(ways, len(common), surely, most, r)
	}
	c.near = l.stack[start:len(l.stack):len(l.stack)]
	if best.least < anyhow.least {
		return best.least, best.lead, most
	}
	return anyhow.least, anyhow.lead, most
}

// keepWays keeps what can matter of the ways that may be the best in a cell, where the best one has surely so much room.
// Their margins are behind so many others.
func (l *lister) keepWays(ways []int32, behind int, surely, most, r float64) {
	distances := l.distances[behind:]
	for _, w := range l.choices {
		if w.most >= surely {
			l.keep(ways[:w.parts], distances, min(most, w.most), r)
		}
		ways, distances = ways[w.parts:], distances[w.parts:]
	}
}

// weigh measures each of the ways and returns the best.
func (l *lister) weigh(ways []int32, c *cell) choice {
	best := choice{least: math.Inf(-1), most: math.Inf(-1)}
	l.choices = l.choices[:0]
	for len(ways) > 0 {
		var way []int32
		way, ways = l.m.next(ways)
		w := choice{parts: len(way)}
		w.least, w.lead, w.most = l.measure(way, c)
		l.choices = append(l.choices, w)
		if best.most = max(best.most, w.most); w.least > best.least {
			best.least, best.lead = w.least, w.lead
		}
	}
	return best
}
