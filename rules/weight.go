package rules

import (
	"slices"
	"strings"

	"bench.example/undermark/vehicles"
)

// Weight says what a fault can do.
type Weight uint8

// The weights.
const (
	Nuisance Weight = iota + 1 // the rest
	Damages                    // damage, or a heater that fails
	Kills                      // fire, brakes, high voltage, gas where people are
)

func (w Weight) String() string {
	return [...]string{Nuisance: "nuisance", Damages: "damage", Kills: "can kill"}[w]
}

// deadly are the kinds of obstruction that every fault with may kill: they hold what burns, or brake the van.
var deadly = []string{
	"brake line", "fuel line", fuelTank, "gas tank", "gas pipe", "air line", "high-voltage cable", "traction battery", "wheel-sensor wire",
}

// Danger is what a fault under the limit can do.
func (l *Limit) Danger() Weight { return l.weightFor(l.Kind) }

// highVoltage are the kinds of obstruction that kill whoever drills into them.
var highVoltage = []string{"high-voltage cable", "traction battery"}

// Advice says what to do about a finding of the result that is not clear.
func (r *Result) Advice(f *Finding) string {
	if f.Against.Sort != AnObstruction {
		return f.Rule.Advice
	}
	switch i := int(f.Against.Index); {
	case slices.Contains(highVoltage, r.Job.Obstructions[i].Kind):
		return "do not drill near it, trained people only; " + f.Rule.Advice
	case f.Rule.AtCut && fuelled(&r.Job, i) == fuelTank:
		return "lower the tank and take it out, or " + f.Rule.Advice
	}
	return f.Rule.Advice
}

// weightFor is what a fault under the rule can do with a thing of a kind; "" for none.
func (r *Rule) weightFor(kind string) Weight {
	if r.ByKind == AnObstruction && slices.Contains(deadly, strings.TrimSuffix(kind, ofDiesel)) {
		return Kills
	}
	return r.Weight
}

// weigh tells of each obstruction whether every fault with it may kill.
func weigh(things vehicles.List[vehicles.Obstruction]) []bool {
	kill := make([]bool, len(things))
	for i := range things {
		kill[i] = slices.Contains(deadly, things[i].Kind)
	}
	return kill
}

// mayKill tells whether every fault with a thing may kill.
func (j *judge) mayKill(t Thing) bool {
	switch t.Sort {
	case AnObstruction:
		return j.kills[t.Index]
	case AFitting:
		return slices.Contains(deadly, j.job.Fittings[t.Index].Kind)
	}
	return false
}
