package rules

import "slices"

// Weight says what a fault can do.
type Weight uint8

// The weights.
const (
	Nuisance Weight = iota + 1 // the rest
	Damages                    // damage, or a heater that fails
	Kills                      // fire, brakes, high voltage, gas where people are
)

// deadly are the kinds of obstruction that every fault with may kill: they hold what burns, or brake the van.
var deadly = []string{"brake line", "fuel line", "fuel tank", "gas tank", "air line"}

// weightFor is what a fault under the rule can do with a thing of a kind; "" for none.
func (r *Rule) weightFor(kind string) Weight {
	if r.ByKind == AnObstruction && slices.Contains(deadly, kind) {
		return Kills
	}
	return r.Weight
}

// weightOf is what the fault that a finding is of, or would be, can do.
func (r *Result) weightOf(f *Finding) Weight { return f.Rule.weightFor(r.kindOf(f)) }
