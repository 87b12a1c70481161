package geometry_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
)

func TestAnAngleWithinHalfATurnPointsTheSameWay(t *testing.T) {
	for deg, want := range map[float64]float64{
		0: 0, 30: 30, 180: 180, -180: 180, 181: -179, -179: -179, 270: -90, -270: 90, 359.5: -0.5, 540: 180, -540: 180, 35990: -10,
	} {
		assert.Equal(t, want, geometry.WithinHalfTurn(deg), "%v degrees", deg)
	}
	for _, deg := range []float64{-360, 360, math.Copysign(0, -1)} {
		assert.False(t, math.Signbit(geometry.WithinHalfTurn(deg)), "no way reads -0: %v", deg)
	}
}
