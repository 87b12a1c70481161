package rules

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Values that hurt people when they are too small are entered twice: once in the book, once here. A slip in either shows.
// Nobody has printed any of them but the one that printed names: they are common practice, without a source.

// peril is why a kind of thing has values of its own.
type peril string

const (
	deadly peril = "it can kill: it brakes the van, or holds what burns, chokes or electrocutes"
	leaks  peril = "it leaks, shorts or fails"
	moves  peril = "it moves as the van drives"
	hot    peril = "it is hot itself"
	people peril = "it holds a seat or its belt"
	steel  peril = "it is of the body"
	hung   peril = "it hangs there, or nobody knows it"
)

// none stands where a kind has no value of its own: it goes by the general one.
const none = 0

// kindValues are what a book has of its own for a kind of obstruction, mm.
type kindValues struct {
	kind             string
	why              peril
	cutReach, cut    float64
	holeReach, hole  float64
	exhaust, shield  float64 // bare, and with a shield between
	intake, fuelLine float64
}

func valuesByKind() []kindValues {
	return []kindValues{
		{"brake line", deadly, 20000, 60, 20000, 40, 120, 60, none, none},
		{"air line", deadly, 20000, 60, 20000, 40, 150, 80, none, none},
		{"wheel-sensor wire", deadly, 20000, 60, 20000, 40, 120, 60, none, 40},
		{"fuel line", deadly, 20000, 60, 20000, 40, 150, 80, none, none},
		{"gas pipe", deadly, 20000, 60, 20000, 60, 150, 80, none, none},
		{"fuel tank", deadly, 20000, 60, 20000, 60, 305, 150, none, none},
		{"fuel tank.diesel", deadly, none, none, none, none, 150, 80, none, none},
		{"gas tank", deadly, 20000, 100, 20000, 100, 305, 200, none, none},
		{"high-voltage cable", deadly, 20000, 300, 20000, 300, 300, 150, 50, 100},
		{"traction battery", deadly, 20000, 300, 20000, 300, 300, 200, 50, 100},

		{"reductant tank", leaks, 20000, 60, 20000, 40, 150, 80, none, none},
		{"wiring", leaks, 200, 50, 100, 40, 120, 60, none, 40},
		{"hand-brake cable", leaks, 200, 50, 100, 30, 120, 60, 20, 30},
		{"coolant pipe", leaks, 200, 50, 100, 30, 100, 50, none, none},
		{"water tank", leaks, 200, 50, 100, 30, 100, 50, none, none},

		{"suspension", moves, 300, 30, none, 30, none, 80, 40, 40},
		{"axle", moves, 300, 30, none, 30, none, 80, 40, 40},
		{"driveshaft", moves, 300, 50, none, 40, none, 80, 60, 60},
		{"tyre", moves, 300, 60, none, 60, 150, 80, 60, 60},

		{"vehicle exhaust", hot, 250, 40, none, 30, 40, 30, 100, 150},
		{"catalyst", hot, 250, 60, none, 50, 40, 30, 100, 150},
		{"particulate filter", hot, 250, 60, none, 50, 40, 30, 100, 150},

		{"seat mount", people, none, 50, none, 30, 30, 20, none, none},
		{"seat-belt mount", people, none, 50, none, 50, 30, 20, none, none},

		{"crossmember", steel, none, 15, none, none, 30, 20, none, none},
		{"chassis rail", steel, none, 15, none, 15, 30, 20, none, none},
		{"floor rib", steel, none, 20, none, 8, 30, 20, none, none},
		{"body sill", steel, none, 30, none, 15, 30, 20, none, none},
		{"wheel arch", steel, none, 30, none, 15, 30, 20, none, none},
		{"double skin", steel, none, 20, none, none, 30, 20, none, none},
		{"tow bar", steel, none, 15, none, 15, 30, 20, none, none},
		{"jacking point", steel, none, 30, none, 30, 40, none, none, none},

		{"spare wheel", hung, 250, 30, none, 20, 120, 60, 20, 30},
		{"plastic part", hung, none, 30, none, 15, 80, 40, none, none},
		{"heat shield", hung, none, 20, none, 15, 20, 20, none, none},
		{"swage", hung, none, none, none, none, none, none, none, none},
		{"other", hung, none, none, none, none, none, none, none, none},
	}
}

// practised are the general values of the rules that may have others by kind: mm, of ramps degrees.
var practised = map[string]float64{
	"cut.reach": 150, "cut.clearance": 20, "hole.reach": 60, "hole.clearance": 10,
	"exhaust.clearance": 80, "exhaust.clearance.shielded": 40, "intake.clearance": 10, "fuel.clearance": 15,
	"exhaust.outlet": 600, "stub.in-cut": 2, "runs.first-clip": 300, "runs.clip-span": 400, "runs.clip-hold": 150,
	"runs.travel": 20, "runs.fitting": 5, "runs.departure": 12, "runs.breakover": 12,
}

// otherKinds are the values of kinds of opening and of runs, mm, by rule: gas that comes out must have no way in, least of all
// where air is drawn in; a hot pipe keeps farther from the rim; a thin line sags more, and a bracket of an exhaust's clip is longer.
var otherKinds = map[string]map[string]float64{
	"exhaust.outlet": {
		"window": 1000, "vent": 1000, "cab air inlet": 1500, "heater air inlet": 1500, "tank breather": 1000, "gas locker vent": 1000,
		"roof vent": 1000,
	},
	"stub.in-cut":    {"exhaust": 5},
	"runs.clip-span": {"fuel": 300},
	"runs.clip-hold": {"exhaust": 200},
}

// otherSources are those of values that are not plain practice, of a kind or ("") in general.
var otherSources = map[string]map[string]string{
	"exhaust.clearance": {
		"fuel tank": "COMAR 11.19.03.08 (12 in from a petrol tank without a heat baffle), for a bus's own exhaust; taken over here",
		"gas tank":  "common practice, no source; as for a fuel tank",
	},
	"exhaust.outlet": {
		"": "common practice, no source; UN Regulation No. 122, 5.3.4 (its number from memory), asks for it without a distance",
	},
	"stub.in-cut":    {"exhaust": "common practice, no source; larger, as the exhaust is hot"},
	"runs.departure": {"": "common practice, no source; the angle as ISO 612 defines it (from memory), which gives no value"},
	"runs.breakover": {"": "common practice, no source; the angle as ISO 612 defines it (from memory), which gives no value"},
}

// entered are all the values by kind, by rule and kind, as they are entered here.
func entered() map[string]map[string]float64 {
	by := map[string]map[string]float64{}
	put := func(rule, kind string, value float64) {
		if by[rule] == nil {
			by[rule] = map[string]float64{}
		}
		if value != none {
			by[rule][kind] = value
		}
	}
	for _, v := range valuesByKind() {
		for rule, value := range map[string]float64{
			"cut.reach": v.cutReach, "cut.clearance": v.cut, "hole.reach": v.holeReach, "hole.clearance": v.hole,
			"exhaust.clearance": v.exhaust, "exhaust.clearance.shielded": v.shield,
			"intake.clearance": v.intake, "fuel.clearance": v.fuelLine,
		} {
			put(rule, v.kind, value)
		}
	}
	for rule, kinds := range otherKinds {
		for kind, value := range kinds {
			put(rule, kind, value)
		}
	}
	return by
}

// wanted is what is asked of a kind by the values that are entered here.
func wanted(rule, kind string) float64 {
	own := entered()[rule]
	for _, of := range []string{kind, strings.TrimSuffix(kind, ofDiesel)} {
		if value, there := own[of]; there {
			return value
		}
	}
	return practised[rule]
}

func TestTheBookHasEachValueByKindAsItIsEnteredOnceMore(t *testing.T) {
	own := entered()
	for _, r := range ownValues() {
		kinds := r.kinds()
		if kinds == nil {
			continue
		}
		said := Builtin().by[r]
		require.NotNil(t, said.general, r.ID)
		require.Contains(t, practised, r.ID)
		assert.Equal(t, vehicles.Some(practised[r.ID]), said.general.Value, r.ID)
		assert.Equal(t, sourceOf(r.ID, ""), said.general.Source, r.ID)
		assert.Len(t, said.kinds, len(own[r.ID]), r.ID)
		for kind, value := range own[r.ID] {
			require.Contains(t, kinds, kind, r.ID)
			require.Contains(t, said.kinds, kind, r.ID)
			assert.Equal(t, vehicles.Some(value), said.kinds[kind].Value, "%s of %s", r.ID, kind)
			assert.Equal(t, sourceOf(r.ID, kind), said.kinds[kind].Source, "%s of %s", r.ID, kind)
		}
	}
	for rule := range practised {
		assert.NotEmpty(t, rulesByID()[rule].kinds(), rule)
	}
	for rule := range otherKinds {
		assert.Contains(t, practised, rule)
	}
	const inch = 25.4
	assert.Equal(t, math.Ceil(12*inch), wanted("exhaust.clearance", "fuel tank"), "the 12 in that are printed, rounded away from the tank")
}

// sourceOf is the source of a value: a kind's own, the rule's, or none.
func sourceOf(rule, kind string) string {
	for _, of := range []string{kind, ""} {
		if said, there := otherSources[rule][of]; there {
			return said
		}
	}
	return Practice
}

// Every kind stands in the table, once.
func TestEveryKindHasItsRowOfValues(t *testing.T) {
	seen := map[string]bool{}
	for _, v := range valuesByKind() {
		assert.False(t, seen[v.kind], v.kind)
		seen[v.kind] = true
	}
	kinds := rulesByID()["exhaust.clearance"].kinds()
	assert.Len(t, seen, len(kinds))
	for _, kind := range kinds {
		assert.True(t, seen[kind], kind)
	}
}
