package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Source: the chi-squared table of the NIST/SEMATECH handbook, 1.3.6.7.4, column 0.99 (values from memory). The
// odd ones up to seven are also those the job-file contract prints: 6.63, 11.34, 15.09, 18.48.
func TestChiSquared99AgainstTheTable(t *testing.T) {
	for dof, point := range map[int]float64{
		1: 6.635, 2: 9.210, 3: 11.345, 4: 13.277, 5: 15.086, 6: 16.812, 7: 18.475, 8: 20.090, 9: 21.666, 10: 23.209,
		15: 30.578, 20: 37.566, 30: 50.892, 50: 76.154, 100: 135.807,
	} {
		assert.InDelta(t, point, ChiSquared99(dof), 6e-4, "%d degrees of freedom", dof)
	}
	assert.Zero(t, ChiSquared99(0))
	assert.Zero(t, ChiSquared99(-3))
}

// The density integrated from 0 to the point by Simpson's rule must be 99 %.
func TestChiSquared99HoldsNinetyNinePercent(t *testing.T) {
	for _, dof := range []int{2, 3, 5, 7, 12, 41, 197} {
		half := float64(dof) / 2
		gamma, _ := math.Lgamma(half)
		// In r = sqrt(x) the density is smooth at 0 for one degree of freedom up.
		density := func(r float64) float64 {
			return 2 * math.Pow(r, float64(dof)-1) * math.Exp(-r*r/2-half*math.Ln2-gamma)
		}
		const steps = 4000
		h := math.Sqrt(ChiSquared99(dof)) / steps
		sum := density(0) + density(steps*h)
		for i := 1; i < steps; i++ {
			sum += density(float64(i)*h) * float64(2+2*(i%2))
		}
		assert.InDelta(t, 0.99, sum*h/3, 1e-9, "%d degrees of freedom", dof)
	}
}
