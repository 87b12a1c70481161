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
	case f.Against.Sort == AnObstruction && f.Rule.AtCut && mayHoldPetrol(&r.Job, i):
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

// kindsOf are the kinds of obstructions, as vehicles.KindIndex has them.
func kindsOf(things vehicles.List[vehicles.Obstruction]) []uint8 {
	kinds := make([]uint8, len(things))
	for i := range things {
		kinds[i] = uint8(vehicles.KindIndex(things[i].Kind))
	}
	return kinds
}

// killing tells of each kind of obstruction, one that has no name too, whether every fault with it may kill.
var killing = func() []bool {
	kill := make([]bool, len(vehicles.Kinds)+1)
	for i, kind := range vehicles.Kinds {
		kill[i] = mayKill(kind)
	}
	return kill
}()

// is tells whether the kind of an obstruction, by index, has one of some traits.
func (j *judge) is(i int, t vehicles.Traits) bool { return vehicles.TraitsAt(int(j.kinds[i]))&t != 0 }

// mayKill tells whether every fault with a thing may kill.
func (j *judge) mayKill(t Thing) bool {
	switch t.Sort {
	case AnObstruction:
		return killing[j.kinds[t.Index]]
	case AFitting:
		return mayKill(j.job.Fittings[t.Index].Kind)
	}
	return false
}
