package geometry

// GapRounded returns the separation of a run (the first) from the prism, on the stretch between two places along it in
// mm: exact where the run is straight, within 1e-9 mm on its arcs. An empty stretch is the point at from.
func (p Prism) GapRounded(run Run, from, to float64) Separation3 {
	least := p.GapPoint(run.At(from))
	around := p.extent()
	for _, arcs := range [2]bool{false, true} { // the cheap pieces first, so that most arcs need no look
		for i := range run.pieces {
			if arcs != (run.pieces[i].radius > 0) {
				continue
			}
			part, ok := run.part(i, from, to)
			if low, high := part.corners(); !ok || around.apart2(&low, &high) >= least.Gap*least.Gap {
				continue
			}
			for j := range p.count() {
				s := p.solid(j)
				part.closer(&s, &least)
			}
		}
	}
	return least
}

// GapPath returns the separation of a stretch of the run (the first) from a path that is not rounded, or a single
// point, as exactly as GapRounded; Gap is +Inf when the path has no point.
func (r Run) GapPath(path []Point3, from, to float64) Separation3 {
	least := BetweenPaths([]Point3{r.At(from)}, path)
	for i := range r.pieces {
		part, ok := r.part(i, from, to)
		if !ok {
			continue
		}
		for j := range legCount(path) {
			leg := legOf(path, j)
			part.closer(&solid{line: &leg, within: extentOf(leg.A, leg.B)}, &least)
		}
	}
	return least
}
