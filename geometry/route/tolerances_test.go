package route

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
)

// What rounding may turn, and no more: each from both sides.

func turnedBy(radians float64) geometry.Point {
	sin, cos := math.Sincos(radians)
	return geometry.Point{X: cos, Y: sin}
}

func TestATangentMayTouchAsFarAsRoundingTurnsIt(t *testing.T) {
	d := disc{cone: [2]geometry.Point{{X: 1}, {Y: 1}}, corner: true}
	for beyond, may := range map[float64]bool{-0.1: true, 0: true, 0.9e-9: true, 1.1e-9: false, 1e-5: false} {
		assert.Equal(t, may, d.touches(turnedBy(math.Pi/2+beyond)), "%g beyond one side", beyond)
		assert.Equal(t, may, d.touches(turnedBy(-beyond)), "%g beyond the other", beyond)
	}
}

func TestAWayTurnsBackByRoundingAlone(t *testing.T) {
	for back, may := range map[float64]bool{-0.1: true, 0: true, 0.9e-9: true, 1.1e-9: false, 1e-5: false} {
		for _, s := range []side{onLeft, onRight} {
			angle, ok := turned(geometry.Point{X: 1}, turnedBy(-back*float64(s)), s)
			assert.Equal(t, may, ok, "%g back, disc %d", back, s)
			assert.InDelta(t, max(0, -back), angle, 1e-12)
		}
	}
}

// An arc that is one falls as it goes: on a disc of 8 m one of 1.1 millionths takes 8.8 thousandths of a mm.
func TestAnArcOfRoundingIsAPlace(t *testing.T) {
	const radius, fall = 8000, 0.02
	for arc, falls := range map[float64]bool{0.9e-6: false, 1.1e-6: true, 1e-4: true, 1e-2: true} {
		q := Query{Fall: fall, Min: geometry.Point3{X: -1e5, Y: -1e5, Z: -400}, Max: geometry.Point3{X: 1e5, Y: 1e5, Z: -50}}
		s := &search{q: &q, discs: []disc{{radius: radius}}}
		l := &label{side: onLeft, leg: tangent{to: geometry.Point{Y: -radius}}, layers: []*layer{{low: -100, high: -100, highest: -100}}}
		next := &label{arc: arc, leg: tangent{from: geometry.Point{Y: -radius}.Turn(arc * 180 / math.Pi)}}
		layers := s.round(l, next)
		require.Len(t, layers, 1)
		want := 0.0
		if falls {
			want = arc * radius * fall
		}
		assert.InDelta(t, -100-want, layers[0].highest, 1e-9, "%g", arc)
	}
}
