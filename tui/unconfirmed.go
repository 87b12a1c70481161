package tui

import (
	"fmt"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// unconfirmed says how many obstructions as near to the cut and the runs as one looks for them were not measured on this
// van; "" for none.
func unconfirmed(r rules.Result) string {
	n := len(rules.Unconfirmed(r, vehicles.LookRound))
	switch {
	case n == 0:
		return ""
	case r.Job.Cut == nil && r.Plan.Fuel == nil:
		return fmt.Sprintf(", %d not confirmed", n)
	}
	return fmt.Sprintf(", %d near by not confirmed", n)
}
