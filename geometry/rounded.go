package geometry

// GapRounded returns the separation of a run (the first) from the prism, on the stretch between two places along it in
// mm: exact where the run is straight, within 1e-9 mm on its arcs. An empty stretch is the point at from. A Tube does
// it for many prisms at less cost.
func (p Prism) GapRounded(run Run, from, to float64) Separation3 {
	var t Tube
	t.AddRun(&run, from, to, 0)
	return t.Gap(&p).Separation3
}

// GapPath returns the separation of a stretch of the run (the first) from a path that is not rounded, or a single
// point, as exactly as GapRounded; Gap is +Inf when the path has no point.
func (r Run) GapPath(path []Point3, from, to float64) Separation3 {
	var t Tube
	t.AddRun(&r, from, to, 0)
	return t.GapPath(path).Separation3
}
