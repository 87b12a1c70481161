package vehicles

import (
	"slices"
	"strings"
)

// RuleIDs are the rules a job file of format 1 may carry its own value for, without a kind.
var RuleIDs = []string{
	"cut.reach", "cut.clearance", "cut.on-floor", "plate.on-floor", "plate.fitting", "body.space",
	"exhaust.clearance", "exhaust.clearance.shielded", "exhaust.fall", "exhaust.drains", "exhaust.muffler-level",
	"exhaust.length", "exhaust.bends", "exhaust.bend-room", "exhaust.clip-span", "exhaust.outlet", "exhaust.floor",
	"exhaust.edge", "exhaust.ground", "exhaust.fuel",
	"intake.clearance", "intake.length", "intake.bends", "intake.bend-room", "intake.floor", "intake.ground",
	"intake.apart", "intake.facing",
	"stub.in-cut",
	"fuel.clearance", "fuel.pump-tilt.least", "fuel.pump-tilt.most", "fuel.suction", "fuel.delivery",
	"ties.fit", "chain.closure", "stack.turret",
}

// kindsByRule are the kinds that may stand behind a rule's id and a point: "cut.clearance.brake line".
var kindsByRule = map[string][]string{
	"cut.clearance": Kinds, "exhaust.clearance": Kinds, "exhaust.clearance.shielded": Kinds,
	"intake.clearance": Kinds, "fuel.clearance": Kinds, "exhaust.outlet": OpeningKinds,
	"stub.in-cut": {"exhaust", "intake", "fuel"},
}

// otherUnits are the rules whose value is not a length.
var otherUnits = []string{
	"exhaust.fall", "exhaust.drains", "exhaust.muffler-level", "exhaust.bends", "exhaust.bend-room",
	"intake.bends", "intake.bend-room", "intake.facing", "fuel.pump-tilt.least", "fuel.pump-tilt.most", "ties.fit",
	"chain.closure",
}

// SplitRule parts a rule's key into its id and its kind, "" when it has none. ok is false for a rule or a kind
// the file format does not know; hint is then the nearest key it does know, "" when none is near.
func SplitRule(key string) (id, kind, hint string, ok bool) {
	if slices.Contains(RuleIDs, key) {
		return key, "", "", true
	}
	for id, kinds := range kindsByRule {
		kind, found := strings.CutPrefix(key, id+".")
		if found && slices.Contains(kinds, kind) {
			return id, kind, "", true
		}
	}
	return "", "", nearest(key, ruleKeys()), false
}

// ruleKeys are all keys of the table of rules.
func ruleKeys() []string {
	keys := slices.Clone(RuleIDs)
	for _, id := range RuleIDs {
		for _, kind := range kindsByRule[id] {
			keys = append(keys, id+"."+kind)
		}
	}
	return keys
}
