package rules

import (
	"fmt"

	"bench.example/undermark/geometry"
)

// MostToLayOut is how many things, each leg of a path one, may lie below and above the floor where whole layouts or places of the
// heater with its heading are sought: several times what a van has. What that takes grows faster than they do: at 1000 some 3 s and
// 0.2 GB on two cores, at 10000 minutes and 8 GB.
const MostToLayOut = 1000

// TooManyToLayOut says that whole layouts, or places of the heater with its heading, are not sought among so many things.
type TooManyToLayOut int

// Error names how many there are, and what to do.
func (n TooManyToLayOut) Error() string {
	return fmt.Sprintf("%d obstructions, legs of paths and fittings are more than the %d among which the heater is laid out: leave out what lies far from where it may be, or place the cut by hand and seek one run at a time", int(n), MostToLayOut)
}

// MayLayOut is nil, or TooManyToLayOut where a job has too much for it.
func MayLayOut(r *Result) error {
	n := len(r.Plan.Fittings)
	for i := range r.Plan.Obstructions {
		n++
		if f := &r.Plan.Obstructions[i].Prism.Footprint; f.Shape == geometry.Line {
			n += max(0, len(f.Path)-2)
		}
	}
	if n > MostToLayOut {
		return TooManyToLayOut(n)
	}
	return nil
}
