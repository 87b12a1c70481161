package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// What misses by less than a tenth is foul all the same, and says by how much: never that it misses by nothing.
func TestWhatMissesByALittleSaysByHowMuch(t *testing.T) {
	why := func(job vehicles.Job, id string) (verdict Verdict, said string) {
		r, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		for _, f := range r.Findings {
			if f.Rule.ID == id {
				return f.Verdict, f.Why
			}
		}
		require.Fail(t, "no such finding", id)
		return verdict, said
	}
	job := vehicles.Demo()
	job.Stack = nil
	heater := *job.Heater
	for collar, want := range map[float64]string{35.98: "collar 0.02 mm too short", 35.9: "collar 0.1 mm too short", 33.25: "collar 2.8 mm too short"} {
		heater.Turret = vehicles.Some(collar)
		verdict, said := why(job.WithHeater(heater), "stack.turret")
		assert.Equal(t, Foul, verdict)
		assert.Equal(t, want, said)
	}
	demo := vehicles.Demo()
	r, faults := Judge(demo, Builtin())
	require.Empty(t, faults)
	for _, f := range r.Findings {
		if f.Rule.ID == "exhaust.fall" && f.Verdict == Clear {
			verdict, said := why(demo.WithRule("exhaust.fall", f.Value+0.02), "exhaust.fall")
			assert.Equal(t, Foul, verdict)
			if f.Against.Index == 1 {
				assert.Equal(t, "falls 0.02 mm per m too little", said)
			}
		}
	}
}
