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

// evenScales calls each with the scales near to one at which the numbers of a ruler are whole columns apart, so that they
// stand evenly.
func evenScales(scale float64, units survey.Units, each func(scale float64)) {
	const most = 128 // columns: as near as can be an inch has
	u := units.Size()
	for _, near := range [3]float64{scale / 2.6, scale, scale * 2.6} { // the next numbers are at most 2.5 times off
		step := tick(near, units)
		for columns := leastTick; columns < most; columns++ {
			even := step / float64(columns*dotsAcross)
			if math.Abs(tick(even, units)-step) < u/1e3 {
				each(even)
			}
		}
	}
}

// Even returns the scale nearest to one at which the rulers are even.
func Even(scale float64, units survey.Units) float64 {
	best, off := scale, math.Inf(1)
	evenScales(scale, units, func(even float64) {
		if by := math.Abs(math.Log(even / scale)); by < off-1e-12 && even >= MinScale && even <= MaxScale {
			best, off = even, by
		}
	})
	return best
}

// evenFrom returns the least scale from one on at which the rulers are even.
func evenFrom(scale float64, units survey.Units) float64 {
	best := math.Inf(1)
	evenScales(scale, units, func(even float64) {
		if even >= scale-1e-12 {
			best = min(best, even)
		}
	})
	if math.IsInf(best, 1) {
		return scale
	}
	return best
}
