package cutlist

import (
	"testing"

	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Whatever sits where in a run, its pieces and what parts them come to the whole run, one after the other; at each end that a piece
// shares there is a clamp; and what is cut, sold and left over come to the same.
func TestPiecesAndPartsComeToTheRun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := vehicles.Demo()
		length := func(what string, least, most float64) float64 { return rapid.Float64Range(least, most).Draw(t, what) }
		exhaust, fuel := *job.Exhaust, *job.Fuel
		exhaust.Bend = vehicles.Some(length("bend", 0, 70))
		muffler := vehicles.Muffler{Leg: 1 + rapid.IntRange(0, 2).Draw(t, "leg"), Start: length("start", 0, 400), Length: length("long", 40, 250), Across: 68}
		if exhaust.Muffler = &muffler; rapid.Bool().Draw(t, "no muffler") {
			exhaust.Muffler = nil
		}
		if rapid.Bool().Draw(t, "filter") {
			fuel.Filter = &vehicles.Filter{Leg: fuel.Pump.Leg, Start: length("filter at", 0, 400)}
		}
		job = job.WithRun(vehicles.ExhaustRun, &exhaust).WithRun(vehicles.FuelRun, &fuel)
		r, faults := rules.Judge(job, rules.Builtin())
		if len(faults) > 0 {
			t.Skip(faults[0].Text) // what sits on a leg is longer than that
		}
		kit := Usual()
		l := Of(&r, kit)
		for _, of := range vehicles.RunKinds {
			run, laid := r.Job.Run(of), r.Plan.Run(of)
			all, ends := 0.0, ""
			within := inLine(run, laid)
			for _, part := range within {
				all += part.to - part.from
			}
			pieces, shared := 0, 0
			for _, p := range l.Pieces {
				if p.Run != of {
					continue
				}
				if pieces > 0 && p.From != ends {
					t.Fatalf("%s: a piece begins at %q behind one that ends at %q", of, p.From, ends)
				}
				pieces, ends, all = pieces+1, p.To, all+p.Developed
				over := (p.Cut - p.Developed - 2*kit.Allow.Trim) / kit.Allow.Overlap
				shared += int(over + 0.5)
			}
			if off := all - laid.Line.Length(); off > 1e-6 || off < -1e-6 {
				t.Fatalf("%s: pieces and parts come to %g mm of %g", of, all, laid.Line.Length())
			}
			clamps := map[Thing]int{}
			for _, p := range l.Parts {
				if p.Run == of {
					clamps[p.Of] += p.Count
				}
			}
			joined := 1 + 2*len(within)
			if of == vehicles.FuelRun {
				if joined++; clamps[FuelJoint] != joined || clamps[FuelClamp] != 2*joined {
					t.Fatalf("%s: %v, joined at %d places", of, clamps, joined)
				}
			} else if clamps[ExhaustClamp]+clamps[IntakeClamp] != joined || pieces == len(within)+1 && shared != joined {
				t.Fatalf("%s: %v, joined at %d places, %d ends go over", of, clamps, joined, shared)
			}
		}
	})
}
