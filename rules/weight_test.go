package rules

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// As findings are specified: 3 for gas where people are and for what burns or brakes, whatever the rule.
func TestWhatAFaultCanDo(t *testing.T) {
	assert.Equal(t, []Weight{1, 2, 3}, []Weight{Nuisance, Damages, Kills})
	var deadly []string
	for _, kind := range vehicles.Kinds {
		if mayKill(kind) {
			deadly = append(deadly, kind)
		}
	}
	assert.ElementsMatch(t, []string{
		"brake line", "fuel line", "fuel tank", "gas tank", "gas pipe", "air line", "high-voltage cable", "traction battery", "wheel-sensor wire",
	}, deadly)
	for _, id := range []string{
		"exhaust.outlet", "exhaust.drains", "exhaust.fuel", "intake.apart", "stack.turret", "plate.on-floor", "plate.fitting", "plate.swage",
		"exhaust.edge", "exhaust.drain-gas", "stub.timber", "exhaust.facing", "exhaust.up", "intake.exhaust", "heater.store",
	} {
		assert.Equal(t, Kills, rulesByID()[id].Weight, id)
	}
	clearance := rulesByID()["cut.clearance"]
	assert.Equal(t, Damages, clearance.weightFor("crossmember"))
	assert.Equal(t, Kills, clearance.weightFor("brake line"))
	assert.Equal(t, Kills, rulesByID()["intake.clearance"].weightFor("fuel tank"))
}

// The weight a program reads is that of the rule, raised by the kind of thing.
func TestTheWeightIsWritten(t *testing.T) {
	var listed struct {
		Rules []struct {
			ID, Kind string
			Weight   Weight
		}
	}
	data, err := json.Marshal(Builtin())
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(data, &listed))
	byKey := map[string]Weight{}
	for _, r := range listed.Rules {
		byKey[rulesByID()[r.ID].Key(r.Kind)] = r.Weight
	}
	var checked struct {
		Findings []struct {
			ID, Kind, Against string
			Weight            Weight
		}
	}
	data, err = json.Marshal(judged(t, tidy()))
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(data, &checked))
	for _, f := range checked.Findings {
		rule := rulesByID()[f.ID]
		if rule == nil {
			continue // a case of a rule
		}
		want, ok := byKey[rule.Key(f.Kind)]
		switch {
		case f.Kind == "fuel tank" || f.Kind == "air line":
			assert.Equal(t, Kills, f.Weight, "%s, also where the rule has one value for all", f.ID)
		case ok:
			assert.Equal(t, want, f.Weight, "%s %s", f.ID, f.Kind)
		case f.Kind == "heat shield" || f.Kind == "":
			assert.Equal(t, byKey[rule.ID], f.Weight, f.ID)
		}
	}
}
