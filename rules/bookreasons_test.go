package rules

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/vehicles"
)

// What the values by kind owe each other, whatever they are.

// perils are the kinds of obstruction by why they have values.
func perils() map[peril][]string {
	by := map[peril][]string{}
	for _, v := range valuesByKind() {
		by[v.why] = append(by[v.why], v.kind)
	}
	return by
}

// extremes are the least and the largest value that a rule has for kinds.
func extremes(rule string, kinds ...[]string) (least, most float64) {
	least = math.Inf(1)
	for _, list := range kinds {
		for _, kind := range list {
			v := wanted(rule, kind)
			least, most = min(least, v), max(most, v)
		}
	}
	return least, most
}

// What can kill is told apart by its kind as it is in findings: kinds that are deadly there are in the table too.
func TestWhatTheTableCallsDeadlyIs(t *testing.T) {
	for _, v := range valuesByKind() {
		assert.Equal(t, mayKill(strings.TrimSuffix(v.kind, ofDiesel)), v.why == deadly, v.kind)
		assert.Equal(t, vehicles.KindOf(v.kind).Is(vehicles.GivesHeat), v.why == hot, v.kind)
		assert.Equal(t, vehicles.KindOf(v.kind).Is(vehicles.Travels), v.why == moves, v.kind)
		assert.Equal(t, vehicles.KindOf(v.kind).Is(vehicles.HoldsSeat), v.why == people, v.kind)
	}
}

// What a saw or a bit must not touch is kept no nearer the worse it is to touch it, and counts no less deep.
func TestWhatCanKillIsKeptNoNearerThanWhatOnlyFails(t *testing.T) {
	by := perils()
	for _, rule := range []string{"cut.clearance", "hole.clearance", "cut.reach", "hole.reach"} {
		least, _ := extremes(rule, by[deadly])
		_, fails := extremes(rule, by[leaks])
		assert.GreaterOrEqual(t, least, fails, rule)
		fail, _ := extremes(rule, by[leaks])
		_, body := extremes(rule, by[steel])
		assert.GreaterOrEqual(t, fail, body, rule)
	}
	for _, rule := range []string{"cut.reach", "hole.reach"} {
		least, _ := extremes(rule, by[deadly])
		assert.GreaterOrEqual(t, least, 20000., "%s: a bit goes further than its stop", rule)
	}
	moving, _ := extremes("cut.reach", by[moves])
	_, still := extremes("cut.reach", by[leaks][1:], by[hot], by[people], by[steel], by[hung]) // the tank of reductant counts at any depth
	assert.GreaterOrEqual(t, moving, still, "what comes up counts from deeper down than what stays")
	for _, v := range valuesByKind() {
		assert.LessOrEqual(t, wanted("hole.clearance", v.kind), wanted("cut.clearance", v.kind), "%s: a bit needs no more room than a saw", v.kind)
		assert.LessOrEqual(t, wanted("hole.reach", v.kind), wanted("cut.reach", v.kind), "%s: nor goes it deeper", v.kind)
	}
}

// What a hot pipe sets alight is kept away from it farther than what it only spoils, and that than bare steel.
func TestWhatBurnsIsKeptFromHeat(t *testing.T) {
	by := perils()
	fuel := []string{"fuel line", "fuel tank", "fuel tank.diesel", "gas pipe", "gas tank"}
	for _, rule := range []string{"exhaust.clearance", "exhaust.clearance.shielded"} {
		least, _ := extremes(rule, fuel)
		_, other := extremes(rule, []string{"brake line", "air line", "wheel-sensor wire"}, by[leaks], by[moves], by[hot], by[people], by[steel], by[hung])
		assert.GreaterOrEqual(t, least, other, rule)
		dead, _ := extremes(rule, by[deadly])
		_, body := extremes(rule, by[steel], by[people], by[hot])
		assert.GreaterOrEqual(t, dead, body, rule)
		assert.Greater(t, wanted(rule, "fuel tank"), wanted(rule, "fuel tank.diesel"), "petrol burns more easily")
	}
	for _, v := range valuesByKind() {
		bare, shielded := wanted("exhaust.clearance", v.kind), wanted("exhaust.clearance.shielded", v.kind)
		assert.LessOrEqual(t, shielded, bare, v.kind)
		if v.why == moves && v.kind != "tyre" { // which heat hurts too
			assert.Equal(t, bare, shielded, "%s moves, shield or not", v.kind)
		}
	}
	for _, rule := range []string{"intake.clearance", "fuel.clearance"} {
		heat, _ := extremes(rule, by[hot])
		_, other := extremes(rule, by[deadly], by[leaks], by[moves], by[people], by[steel], by[hung])
		assert.GreaterOrEqual(t, heat, other, "%s: warm air starves the flame, fuel boils", rule)
		moving, _ := extremes(rule, by[moves])
		_, still := extremes(rule, by[people], by[steel], by[hung])
		assert.GreaterOrEqual(t, moving, still, "%s: what moves wears it through", rule)
	}
}

// No kind of opening has less than the general distance, and where air is drawn in there is most to fear.
func TestOutletsAreKeptFarthestFromWhereAirIsDrawnIn(t *testing.T) {
	drawn := min(wanted("exhaust.outlet", "cab air inlet"), wanted("exhaust.outlet", "heater air inlet"))
	for _, kind := range vehicles.OpeningKinds {
		assert.GreaterOrEqual(t, wanted("exhaust.outlet", kind), practised["exhaust.outlet"], kind)
		assert.LessOrEqual(t, wanted("exhaust.outlet", kind), drawn, kind)
	}
}
