package rules

import (
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

// Danger is what a fault under the limit can do.
func (l *Limit) Danger() Weight { return l.weightFor(l.Kind) }

// Advice says what to do about a finding of the result that is not clear.
func (r *Result) Advice(f *Finding) string {
	switch i := int(f.Against.Index); {
	case r.underHighVoltage(f.Against):
		return "do not drill near it, trained people only; " + f.Rule.Advice
	case f.Against.Sort == AnObstruction && f.Rule.AtCut && fuelled(&r.Job, i) == vehicles.FuelTank:
		return "lower the tank and take it out, or " + f.Rule.Advice
	}
	return f.Rule.Advice
}

// underHighVoltage tells whether a thing below the floor or inside it carries high voltage.
func (r *Result) underHighVoltage(t Thing) bool {
	switch t.Sort {
	case AnObstruction:
		return vehicles.PerilOf(r.Job.Obstructions[t.Index].Kind) == vehicles.HighVoltage
	case AFitting:
		f := &r.Job.Fittings[t.Index]
		return InsideFloor(f) && vehicles.PerilOf(f.Kind) == vehicles.HighVoltage
	}
	return false
}

// weightFor is what a fault under the rule can do with a thing of a kind; "" for none.
func (r *Rule) weightFor(kind string) Weight {
	if r.ByKind == AnObstruction && mayKill(strings.TrimSuffix(kind, ofDiesel)) {
		return Kills
	}
	return r.Weight
}

// mayKill tells whether every fault with a thing of a kind may kill.
func mayKill(kind string) bool { return vehicles.PerilOf(kind) != vehicles.Usual }

// weigh tells of each obstruction whether every fault with it may kill.
func weigh(things vehicles.List[vehicles.Obstruction]) []bool {
	kill := make([]bool, len(things))
	for i := range things {
		kill[i] = mayKill(things[i].Kind)
	}
	return kill
}

// mayKill tells whether every fault with a thing may kill.
func (j *judge) mayKill(t Thing) bool {
	switch t.Sort {
	case AnObstruction:
		return j.kills[t.Index]
	case AFitting:
		return mayKill(j.job.Fittings[t.Index].Kind)
	}
	return false
}
