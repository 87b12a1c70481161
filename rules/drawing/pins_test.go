package drawing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// The arcs cross on the mark, each as far from its pin all along, and have what the tape says from there. The sample's pins stand 700 mm
// from the centreline of the frame above.
func TestArcsFromThePinsCrossOnTheMark(t *testing.T) {
	result, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	marks := rules.Marks(result).Marks
	s := Draw(result, Options{View: scene.Above, Selected: -1, Marks: marks[:1], Pins: true})
	pins, arcs := map[string]geometry.Point{}, 0
	for _, it := range s.Items {
		if it.Role == scene.Mark && it.Primitive == scene.Spot && it.Label != marks[0].Words {
			pins[it.Label] = it.At.Plan()
		}
	}
	require.Len(t, pins, 2)
	up := result.Plan.Fit.Up(pins["left pin"])
	assert.InDelta(t, 700, up.Y, 1e-9)
	assert.InDelta(t, -700, result.Plan.Fit.Up(pins["right pin"]).Y, 1e-9)
	for _, it := range s.Items {
		if it.Role != scene.Mark || it.Primitive != scene.Stroke {
			continue
		}
		arcs++
		pin, nearest := pins[it.Label], 1e9
		radius := marks[0].Plan.Sub(pin).Norm()
		for _, piece := range it.Path {
			for share := 0.0; share <= 1; share += 0.25 {
				assert.InDelta(t, radius, piece.At(share).Plan().Sub(pin).Norm(), 1e-6)
			}
			assert.InDelta(t, 0, piece.At(1).Sub(piece.At(0.999999)).Norm(), 0.01, "an arc ends where the next begins")
			nearest = min(nearest, piece.A.Plan().Sub(marks[0].Plan).Norm())
		}
		from, to := it.Path[0].A.Plan().Sub(pin), it.Path[len(it.Path)-1].B.Plan().Sub(pin)
		assert.InDelta(t, 24, math.Acos(from.Dot(to)/(radius*radius))*180/math.Pi, 1e-9, "12 degrees on either side")
		assert.InDelta(t, 0, nearest, 1e-9, "it goes through the mark")
		tape := map[string]float64{"left pin": marks[0].Above.PinLeft, "right pin": marks[0].Above.PinRight}[it.Label]
		assert.Equal(t, tape, it.Measure.Value)
	}
	assert.Equal(t, 2, arcs)
	assert.Len(t, Draw(result, Options{View: scene.Above, Selected: -1, Marks: marks[:1]}).Items, len(s.Items)-4, "none unasked")
}
