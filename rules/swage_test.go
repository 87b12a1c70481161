package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"

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
