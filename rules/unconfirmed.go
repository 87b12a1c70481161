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
	some := len(pipes) > 0 || r.Job.Cut != nil
	for i := range r.Plan.Obstructions {
		thing := &r.Plan.Obstructions[i]
		if thing.Measured || some && farFrom(&r, pipes, &thing.Prism.Footprint, within) {
			continue
		}
		if nearWork(&r, pipes, thing.Prism.Footprint) <= within {
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

// farFrom tells whether a footprint is farther from the cut and the runs' pipes than a distance, as the boxes round them have it:
// what they hold is as far apart at least.
func farFrom(r *Result, pipes []geometry.Footprint, f *geometry.Footprint, within float64) bool {
	low, high := f.Bounds()
	far := func(least, most geometry.Point) bool {
		return max(low.X-most.X, least.X-high.X, low.Y-most.Y, least.Y-high.Y) > within
	}
	if r.Job.Cut != nil {
		round := geometry.Point{X: r.Job.Cut.Across / 2, Y: r.Job.Cut.Across / 2}
		if !far(r.Plan.Cut.At.Sub(round), r.Plan.Cut.At.Add(round)) {
			return false
		}
	}
	for i := range pipes {
		if !far(pipes[i].Bounds()) {
			return false
		}
	}
	return true
}

// nearWork is the plan distance, mm, from a footprint to the nearest of the cut's circle and the runs' pipes; minus
// infinity when there is none of them.
func nearWork(r *Result, pipes []geometry.Footprint, f geometry.Footprint) float64 {
	gap := nearRuns(pipes, f)
	if r.Job.Cut != nil {
		gap = min(gap, f.GapOnly(r.Plan.Cut.At)-r.Job.Cut.Across/2)
	}
	if math.IsInf(gap, 1) {
		return math.Inf(-1)
	}
	return gap
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
