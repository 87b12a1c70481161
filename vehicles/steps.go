package vehicles

import (
	"slices"
	"strings"
)

// StepKind is a step of the work as a job file records it: its id, which is never given to another, and the unit of what is measured
// in it. What is done in a step, and in which jobs it is there, package rules/work says.
type StepKind struct {
	ID     string
	Unit   string // of its value; "" where nothing is measured
	Signed bool   // its value may be less than 0

	called string // what it is called where that is not its id's words
}

// Name is what the step is called: "battery off".
func (k StepKind) Name() string {
	if k.called != "" {
		return k.called
	}
	return strings.ReplaceAll(k.ID, "-", " ")
}

// StepName is what the step of an id is called, the id itself for one that none has.
func StepName(id string) string {
	if i := StepIndex(id); i >= 0 {
		return StepKinds[i].Name()
	}
	return id
}

// Measures tells whether something is measured in the step.
func (k StepKind) Measures() bool { return k.Unit != "" }

// PilotDrilled is the step that drills the pilot hole: from then on the cut stays with it, measured or not.
const PilotDrilled = "pilot-drilled"

// PilotLooked is the step that looks at it from below.
const PilotLooked = "pilot-looked"

// Sawn is the step that cuts the hole: from then on it is where it is.
const Sawn = "sawn"

// BoltsDrilled is the step that drills the holes of the heater's bolts: from then on its heading is what it is.
const BoltsDrilled = "bolts-drilled"

// StepKinds are all steps, in the order of the work.
var StepKinds = []StepKind{
	{ID: "instructions"}, {ID: "stands"}, {ID: "high-voltage"}, {ID: "battery-off"}, {ID: "seat-wait", Unit: "min"}, {ID: "seat-connectors"},
	{ID: "tank-lowered"}, {ID: "gas-shut"}, {ID: "mat-up"},

	{ID: "extinguisher"}, {ID: "marked"}, {ID: "template-laid", Unit: "mm"}, {ID: PilotDrilled}, {ID: PilotLooked, called: "pilot looked at"}, {ID: "depth", Unit: "mm"}, {ID: Sawn}, {ID: BoltsDrilled}, {ID: "fuel-hole"}, {ID: "clips-drilled"},
	{ID: "cut-back"}, {ID: "deburred"}, {ID: "swarf"},

	{ID: "primed", Unit: "h"}, {ID: "timber-sealed"}, {ID: "scraped"}, {ID: "swages-packed"},

	{ID: "collar-cut", Unit: "mm"}, {ID: "dry-fit"}, {ID: "sealed"}, {ID: "heater-set"}, {ID: "fastened", Unit: "N·m"}, {ID: "ducts"}, {ID: "earth"},
	{ID: "supply-laid", Unit: "m"}, {ID: "control-laid"},

	{ID: "stubs-joined"}, {ID: "exhaust-hung"}, {ID: "exhaust-tight"}, {ID: "fall", Unit: "mm/m", Signed: true}, {ID: "drain-down"}, {ID: "shielded"}, {ID: "intake-hung"}, {ID: "intake-tight"},

	{ID: "tank-vented"}, {ID: "tank-take-off", called: "tank take-off"}, {ID: "line-whole"}, {ID: "pump-hung", Unit: "°", Signed: true}, {ID: "pump-wired"}, {ID: "fuel-clipped"},

	{ID: "waxed"}, {ID: "fuse", Unit: "A"}, {ID: "seat-joined"}, {ID: "seat-bolts", Unit: "N·m"}, {ID: "battery-on"}, {ID: "restraint-lamp"}, {ID: "seat-travel"},

	{ID: "sealant-cured", Unit: "h"}, {ID: "alarm"}, {ID: "outside"}, {ID: "fuel-primed", Unit: "strokes"}, {ID: "fuel-tight"}, {ID: "start-current", Unit: "A"}, {ID: "glow-voltage", Unit: "V"},
	{ID: "co-inside", Unit: "ppm", called: "CO inside"}, {ID: "ran", Unit: "min"}, {ID: "cooled", Unit: "min"}, {ID: "power-off"},

	{ID: "clamps-again"}, {ID: "notice"}, {ID: "owner-shown"}, {ID: "service-agreed"}, {ID: "retorque"},
}

// StepUnit is the unit of what is measured in the step of an id, "" where nothing is.
func StepUnit(id string) string {
	if i := StepIndex(id); i >= 0 {
		return StepKinds[i].Unit
	}
	return ""
}

// StepIndex is where a step stands among StepKinds, -1 for an id that none has.
func StepIndex(id string) int {
	return slices.IndexFunc(StepKinds, func(k StepKind) bool { return k.ID == id })
}

// StepIDs are the ids of all steps.
func StepIDs() []string {
	ids := make([]string, len(StepKinds))
	for i, k := range StepKinds {
		ids[i] = k.ID
	}
	return ids
}
