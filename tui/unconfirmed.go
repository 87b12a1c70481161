package tui

import (
	"fmt"

	"bench.example/undermark/rules"
)

// nearBy is how far from the cut and the runs one looks for what was not measured on this van, mm: as far as one looks
// for obstructions.
const nearBy = 300

// unconfirmed says how many obstructions near the cut and the runs were not measured on this van; "" for none.
func unconfirmed(r rules.Result) string {
	n := len(rules.Unconfirmed(r, nearBy))
	switch {
	case n == 0:
		return ""
	case r.Job.Cut == nil && r.Plan.Fuel == nil:
		return fmt.Sprintf(", %d not confirmed", n)
	}
	return fmt.Sprintf(", %d near by not confirmed", n)
}
