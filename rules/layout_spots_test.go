package rules

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// A lane that is 1 mm too narrow where the wish is and just wide enough a good way along: the place that is worth most is the wish, where nothing
// fits, and the one that fits is given.
func TestNearAWishWhereNothingFitsIsTheRoomiestPlace(t *testing.T) {
	lane := func(half float64) *layouting {
		text := `format = 1
[job]
ref = "lane"
[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460
[heater]
class = "2 kW"
[cut]
at = [1400, 0]
across = 127
`
		for _, of := range [...]struct{ from, to, half float64 }{{300, 1550, half}, {1550, 1900, half + 1.5}, {1900, 3000, half}} {
			for _, side := range [...]float64{-1, 1} {
				near, far := side*of.half, side*890.
				text += fmt.Sprintf("[[obstruction]]\nname = \"rib %v %v\"\nkind = \"floor rib\"\nx = [%v, %v]\ny = [%v, %v]\ndrop = [0, 40]\n", of.from, side, of.from, of.to, min(near, far), max(near, far))
			}
		}
		job, err := vehicles.ParseJob([]byte(text), "lane.toml")
		require.NoError(t, err)
		r := judged(t, job)
		return newLayouting(context.Background(), &r, 1, nil)
	}
	wish := geometry.Point{X: 1400}
	l := lane(200)
	yaw := l.result.Job.Heater.Yaw
	margin := l.cut.with(l.result.wholeAt(yaw)).Margins.At(wish).Margin
	l = lane(200 - margin - 1)
	room := l.cut.with(l.result.wholeAt(yaw))
	require.InDelta(t, -1, room.Margins.At(wish).Margin, 1e-6)
	s, ok := l.nearTo(wish, 500, room, yaw)
	require.True(t, ok)
	assert.GreaterOrEqual(t, s.margin, 0.)
	assert.Greater(t, s.at.X, 1550.)
}
