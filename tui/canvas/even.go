package canvas

import (
	"math"

	"bench.example/undermark/geometry/survey"
)

// leastTick is how many columns a ruler's number needs.
const leastTick = 6

// tick returns the distance of the rulers' numbers at a scale, mm: round in the unit shown, and with room for a number.
func tick(scale float64, units survey.Units) float64 {
	u := units.Size()
	return round(leastTick*dotsAcross*scale/u) * u
}

// bestEven returns the best of the scales near to one at which the numbers of a ruler are whole columns apart, so that they
// stand evenly; infinity for none. Better tells whether a scale is better than the best so far.
func bestEven(scale float64, units survey.Units, better func(even, best float64) bool) float64 {
	const most = 128 // columns: as near as can be an inch has
	u, best := units.Size(), math.Inf(1)
	for _, near := range [3]float64{scale / 2.6, scale, scale * 2.6} { // the next numbers are at most 2.5 times off
		step := tick(near, units)
		for columns := leastTick; columns < most; columns++ {
			even := step / float64(columns*dotsAcross)
			if better(even, best) && math.Abs(tick(even, units)-step) < u/1e3 {
				best = even
			}
		}
	}
	return best
}

// Even returns the scale nearest to one at which the rulers are even.
func Even(scale float64, units survey.Units) float64 {
	off := func(even float64) float64 { return math.Abs(math.Log(even / scale)) }
	best := bestEven(scale, units, func(even, best float64) bool {
		return even >= MinScale && even <= MaxScale && off(even) < off(best)-1e-12
	})
	if math.IsInf(best, 1) {
		return scale
	}
	return best
}

// evenFrom returns the least scale from one on at which the rulers are even.
func evenFrom(scale float64, units survey.Units) float64 {
	best := bestEven(scale, units, func(even, best float64) bool { return even >= scale-1e-12 && even < best })
	if math.IsInf(best, 1) {
		return scale
	}
	return best
}
