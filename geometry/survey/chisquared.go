package survey

import (
	"math"
	"sync"
)

// ChiSquared99 returns the 99 % point of the chi-squared distribution with dof degrees of freedom, to about 1e-9
// of itself: 6.63 for one, 11.34 for three. It is 0 for no degrees of freedom.
func ChiSquared99(dof int) float64 {
	if dof < 1 {
		return 0
	}
	if point, known := points99.Load(dof); known {
		return point.(float64)
	}
	point := chiSquared99(dof)
	points99.Store(dof, point)
	return point
}

// points99 are the points worked out so far: every judging of a job with ties asks for one.
var points99 sync.Map

func chiSquared99(dof int) float64 {
	low, high := 0.0, 20+3*float64(dof)
	for range 60 {
		mid := (low + high) / 2
		if chiSquaredTail(mid, dof) > 0.01 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// chiSquaredTail is the probability of more than x. It starts from the closed forms for one and two degrees of
// freedom and steps up by two: Q(x; k+2) = Q(x; k) + (x/2)^(k/2) e^(-x/2) / Gamma(k/2 + 1) (Abramowitz and Stegun
// 26.4.4, 26.4.5 and 26.4.8, numbers from memory).
func chiSquaredTail(x float64, dof int) float64 {
	k, tail := 1, math.Erfc(math.Sqrt(x/2))
	if dof%2 == 0 {
		k, tail = 2, math.Exp(-x/2)
	}
	for ; k < dof; k += 2 {
		half := float64(k) / 2
		gamma, _ := math.Lgamma(half + 1)
		tail += math.Exp(half*math.Log(x/2) - x/2 - gamma)
	}
	return tail
}
