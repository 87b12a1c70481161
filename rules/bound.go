package rules

import (
	"fmt"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// How many things, each leg of a path one, may lie below, beside and above the floor where something is sought: several times what a van has. What a search takes grows
// faster than they do. At these, posts all over the floor that leave no way, each takes up to some 6 s of a core and 0.6 GB; at 10000 it is minutes and 10 GB.
const (
	MostToLayOut = 1000 // whole layouts, and places of the heater with its heading
	MostToSeek   = 1000 // one run
	MostToPair   = 500  // exhaust and intake together, which takes up to 24 searches
)

// Sought is what is not sought among too many things.
type Sought struct {
	most          int
	what, instead string
}

// What is sought.
var (
	ToLayOut = Sought{MostToLayOut, "the heater is laid out", "place the cut and lay its runs by hand"}
	ToSeek   = Sought{MostToSeek, "a run is sought", "lay it by hand"}
	ToPair   = Sought{MostToPair, "exhaust and intake are sought together", "seek one at a time"}
)

// TooMany says that something is not sought among so many things.
type TooMany struct {
	there int
	of    Sought
}

// Error names how many there are, and what to do.
func (e TooMany) Error() string {
	return fmt.Sprintf("%d obstructions, openings, fittings and legs of paths are more than the %d among which %s: leave out what lies far from where it may be, or %s", e.there, e.of.most, e.of.what, e.of.instead)
}

// May is nil, or TooMany where a judged job has too much for it.
func (s Sought) May(r *Result) error {
	if n := inTheWayOf(&r.Plan); n > s.most {
		return TooMany{n, s}
	}
	return nil
}

// inTheWayOf counts what a search has to go round or to keep away from.
func inTheWayOf(p *vehicles.Plan) int {
	n := len(p.Fittings) + len(p.Openings)
	for i := range p.Obstructions {
		n++
		if f := &p.Obstructions[i].Prism.Footprint; f.Shape == geometry.Line {
			n += max(0, len(f.Path)-2)
		}
	}
	return n
}
