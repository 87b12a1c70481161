package entryscreen

import (
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// Reveal goes to the first row that is wanted, out of any form, and puts what it is of in the middle of the plan.
func (e Entry) Reveal(wanted func(of form.Record) bool, s desk.State) (Entry, desk.Change) {
	all := e.spec.Records(s)
	i := slices.IndexFunc(all, wanted)
	if i < 0 {
		return e, desk.Change{}
	}
	e.Editor, e.whole, e.At = e.Editor.Close(), false, i
	e, change := e.picked(desk.Change{}, s)
	places := placesOf(all[i], s)
	a := e.arranged(s, e.w, e.h, false).picture
	if len(places) == 0 || a.H == 0 {
		return e, change
	}
	view := s.Camera.View
	if e.spec.Above {
		view = e.view
	}
	camera := canvas.Fit(view, places, vehicles.LookRound, a.W, a.H, s.Settings.Units)
	if e.spec.Above {
		e.view, camera.View = camera.View, s.Camera.View
	}
	change.Camera = &camera
	return e, change
}

// placesOf are the corners of what a record is of, in plan; none of what has no place.
func placesOf(of form.Record, s desk.State) []geometry.Point3 {
	feature, ok := of.(features.Record)
	if !ok || !feature.Real(s.Job) || len(s.Faults) > 0 {
		return nil
	}
	var f geometry.Footprint
	switch feature.List {
	case features.Obstructions:
		f = s.Plan.Obstructions[feature.Row].Prism.Footprint
	case features.Openings:
		f = s.Plan.Openings[feature.Row].Placed.Prism.Footprint
	case features.Fittings:
		f = s.Plan.Fittings[feature.Row].Prism.Footprint
	case features.Ties:
		at := s.Plan.Ties[feature.Row].Below
		f = geometry.NewRectangle(at, at, 0)
	}
	low, high := f.Bounds()
	return []geometry.Point3{low.At(0), high.At(0)}
}
