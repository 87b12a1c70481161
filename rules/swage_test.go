package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Measuring a swage alone does not make the plate seal over it: whoever reads why must know of both.
func TestASwageNotMeasuredIsPackedAllTheSame(t *testing.T) {
	why := func(low float64, measured bool) string {
		swage := lying("swage", [4]float64{low, -700, low + 20, 700})
		swage.Measured, swage.Drop = measured, vehicles.Span{To: 4, Set: true}
		job := drilledInto(swage, func(j *vehicles.Job) {
			h, _ := vehicles.HeaterClass("2 kW")
			j.Heater = &h
		})
		f := one(t, job, "plate.swage", swage.Name)
		assert.Equal(t, Doubtful, f.Verdict)
		return f.Why
	}
	const pack = "the plate lies on a swage: flatten or pack it out, then say so in the heater's form"
	assert.Equal(t, pack, why(1150, true))
	assert.Equal(t, "not measured on this van; "+pack, why(1150, false))
	assert.Equal(t, "not measured on this van", why(1400, false), "beside the plate nothing is to be packed")
}

// swaged is a drilled job whose heater's flange ends so far before a swage that runs across the van.
func swaged(t *testing.T, ahead float64) Result {
	h, _ := vehicles.HeaterClass("2 kW")
	edge := 1210 + h.Plate[0]/2 + ahead
	swage := lying("swage", [4]float64{edge, -700, edge + 20, 700})
	swage.Measured, swage.Drop = true, vehicles.Span{To: 4, Set: true}
	return judged(t, drilledInto(swage, func(j *vehicles.Job) { j.Heater = &h }))
}

// Where the flange ends up is where the pilot hole comes out: a swage just ahead of it counts, though no rule forbids the place.
func TestAPilotMayNotComeOutWhereThePlateLiesOnASwage(t *testing.T) {
	far, near := swaged(t, 500), swaged(t, 12)
	f := one(t, near.Job, "plate.swage", "the swage")
	assert.Equal(t, Clear, f.Verdict)
	assert.InDelta(t, 12-f.ClearFrom(), MayComeOut(&near), 1e-9)
	assert.Greater(t, MayComeOut(&far), 20., "nothing else is near")
}

// On many floors swages lie closer than the flange is wide. Who packs one out may put the heater there, so that it limits neither
// the room for a heater nor the pilot's best move: a keep would leave no place at all, or buy distance from what is flattened with
// distance from what kills.
func TestASwageTakesNoRoomFromTheHeater(t *testing.T) {
	far, on := swaged(t, 500), swaged(t, -40)
	assert.Equal(t, Doubtful, one(t, on.Job, "plate.swage", "the swage").Verdict)
	at := far.Plan.Cut.At
	assert.Positive(t, roomForHeater(&far, 0).Margins.At(at).Margin)
	assert.Equal(t, roomForHeater(&far, 0).Margins.At(at).Margin, roomForHeater(&on, 0).Margins.At(at).Margin)
	assert.Equal(t, bestMove(&far, 20), bestMove(&on, 20))

	crew, ok := vehicles.FromLibrary("crew-van")
	require.True(t, ok)
	h, _ := vehicles.HeaterClass("2 kW")
	crew.Heater, crew.Cut = &h, &vehicles.Cut{At: [2]float64{1200, 0}, Across: 127}
	result := judged(t, crew)
	for y := -400.0; y <= 400; y += 50 {
		for _, s := range roomForHeater(&result, 0).Near(geometry.Point{X: 1200, Y: y}) {
			placed := crew.WithCut(vehicles.Cut{At: [2]float64{s.At.X, s.At.Y}, Across: 127})
			f := meant(judged(t, placed), rulesByID()["plate.swage"], map[string]any{})
			require.NotNil(t, f)
			assert.Negative(t, f.Value, "wherever the heater may stand, it stands on a swage")
		}
	}
	assert.NotEmpty(t, roomForHeater(&result, 0).Near(geometry.Point{X: 1200}))
}
