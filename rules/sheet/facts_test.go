package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

func TestWhereTapesHang(t *testing.T) {
	some := vehicles.Some
	for want, zero := range map[string]vehicles.Number{
		", held level": {}, ", zero at the floor": some(0), ", zero 150 below the floor": some(150), ", zero 12.5 above the floor": some(-12.5),
	} {
		assert.Equal(t, want, hooked(zero, "floor"))
	}
	assert.Equal(t, ", zero at the floor's top", hookedAbove(&vehicles.Datum{}))
	assert.Equal(t, ", zero 60 below the floor's top, 25 ahead of the one used below", hookedAbove(&vehicles.Datum{HookAbove: some(60), ShiftAbove: some(25)}))
	assert.Equal(t, ", zero at the floor's top, 8 behind the one used below", hookedAbove(&vehicles.Datum{ShiftAbove: some(-8)}))
	assert.Equal(t, "held level", sides(&vehicles.Datum{}))
	assert.Equal(t, "below, zero 130 below the floor; above, held level", sides(&vehicles.Datum{SideBelow: some(130)}))
}

// Eight ways, each from half a way before it to half a way behind.
func TestWaysInPlainWords(t *testing.T) {
	for yaw, want := range map[float64]string{
		0: "to the front", 22: "to the front", 23: "to the front and left", 90: "to the left", 180: "to the rear", -180: "to the rear",
		-90: "to the right", 225: "to the rear and right", 315: "to the front and right", 338: "to the front", -725: "to the front",
	} {
		assert.Equal(t, want, toward(yaw), "%g", yaw)
	}
}

// A cut by itself takes but one thing, paint for its edge: that is ordered on paper like any list. Nothing at all is no section.
func TestOnePartIsAListOfParts(t *testing.T) {
	demo := vehicles.Demo()
	job := vehicles.Job{Ref: "TL-80", Floor: demo.Floor, Cut: demo.Cut}
	rows := tableOf(paperOf(t, job).toOrder(), "to buy").Rows
	require.Len(t, rows, 2, "a title and the paint")
	assert.Equal(t, []string{"For the floor"}, rows[0].Cells)
	assert.Equal(t, "primer and top coat", rows[1].Cells[0])
	job.Cut = nil
	assert.Empty(t, paperOf(t, job).toOrder().Parts)
}
