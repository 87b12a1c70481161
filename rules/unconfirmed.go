package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Unconfirmed returns the obstructions of a judged job, by index, that are within so many mm of the cut or of a run in
// plan and were not measured on this van: from the library or from another van. Without a cut and runs it is all of
// them.
func Unconfirmed(r Result, within float64) []int {
	var list []int
	pipes := pipesOf(&r)
	for i := range r.Plan.Obstructions {
		if thing := &r.Plan.Obstructions[i]; !thing.Measured && atWork(&r, pipes, &thing.Prism.Footprint, within) {
			list = append(list, i)
		}
	}
	return list
}

// Confirmed tells whether a thing was measured on this van, as far as that is said of things of its sort: of obstructions, openings and
// fittings.
func (r *Result) Confirmed(t Thing) bool {
	switch t.Sort {
	case AnObstruction:
		return r.Plan.Obstructions[t.Index].Measured
	case AnOpening:
		return r.Plan.Openings[t.Index].Measured
	case AFitting:
		return r.Plan.Fittings[t.Index].Measured
	}
	return true
}

// atWork tells whether a footprint is no farther in plan than a distance from the cut's circle or one of the runs' pipes; without any of
// them everything is.
func atWork(r *Result, pipes []geometry.Footprint, f *geometry.Footprint, within float64) bool {
	cut := r.Job.Cut
	if cut != nil && f.GapOnly(r.Plan.Cut.At)-cut.Across/2 <= within {
		return true
	}
	low, high := f.Bounds()
	for i := range pipes {
		least, most := pipes[i].Bounds()
		if max(low.X-most.X, least.X-high.X, low.Y-most.Y, least.Y-high.Y) > within {
			continue // so are what these boxes hold
		}
		if geometry.Between(pipes[i], *f).Gap <= within {
			return true
		}
	}
	return cut == nil && len(pipes) == 0
}

// nearRuns is the plan distance, mm, from a footprint to the nearest of the runs' pipes; infinity without any.
func nearRuns(pipes []geometry.Footprint, f geometry.Footprint) float64 {
	gap := math.Inf(1)
	for i := range pipes {
		gap = min(gap, geometry.Between(pipes[i], f).Gap)
	}
	return gap
}

// pipesOf are the runs' pipes and the mufflers in plan.
func pipesOf(r *Result) (pipes []geometry.Footprint) {
	pipe := func(path []geometry.Point3, radius float64) {
		flat := make([]geometry.Point, len(path))
		for i, p := range path {
			flat[i] = p.Plan()
		}
		pipes = append(pipes, geometry.NewLine(flat, radius))
	}
	for _, kind := range vehicles.RunKinds {
		if run := r.Plan.Run(kind); run != nil {
			pipe(run.Path, run.Radius)
			if m := run.Muffler; m != nil {
				pipe(m.Axis, m.Radius)
			}
		}
	}
	return pipes
}
