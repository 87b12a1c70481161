package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/vehicles"
)

// runs are the runs the job has, one under the other: how each falls, how it is seen from the side, its points and what hangs on it.
func (s *source) runs() Section {
	section := Section{Heading: "The runs: how they fall, and where they go"}
	var all Filled
	for _, of := range vehicles.RunKinds {
		if run, laid := s.Job.Run(of), s.Plan.Run(of); run != nil && laid != nil {
			all = append(all, func(most float64) Part { return s.run(of, run, laid, most) })
		}
	}
	if len(all) > 0 {
		section.Parts = []Part{all}
	}
	return section
}

// run is one run with pictures no higher than so many mm: they stay together, and so does what it is in figures.
func (s *source) run(of vehicles.RunKind, run *vehicles.Run, laid *vehicles.LaidRun, most float64) Part {
	head := fmt.Sprintf("The %s, %s across", of, survey.InMM(run.Across))
	if run.Bend.Set {
		head += ", bends at a radius of " + survey.InMM(run.Bend.Value)
	}
	if of == vehicles.FuelRun {
		head += "; it carries " + s.fuel(run)
	}
	parts := Parts{}
	if p, ok := s.profile(of, laid, head, most); ok {
		parts = append(parts, p)
	} else {
		parts = append(parts, Text{Words: head + ".", Bold: true})
	}
	parts = append(parts, Beside{Left: s.beside(drawing.SideOf(run, of), of, laid, most), Right: s.beside(scene.FromBehind, of, laid, most)})
	figures := Parts{Beside{Left: s.points(laid), Right: s.hanging(run, laid)}}
	if told := s.told(of, run); len(told) > 0 {
		figures = append(figures, List(told))
	}
	return Parts{Kept{parts}, Kept{figures}}
}

// told is what is said of a run that has no place along it.
func (s *source) told(of vehicles.RunKind, run *vehicles.Run) (all []string) {
	switch shields := run.Shielded; {
	case shields.All:
		all = append(all, "heat shields stand before all that is near it")
	case len(shields.Names) > 0:
		all = append(all, "heat shields stand before: "+strings.Join(shields.Names, ", "))
	}
	if of == vehicles.FuelRun {
		supply := run.Supply
		for i := range rules.FuelHoles(&s.Job, &s.Plan) {
			all = append(all, rules.HoleName(rules.AFuelHole, i)+": "+survey.InMM(supply.HoleAcross()))
		}
	}
	switch {
	case run.Clips == nil:
		all = append(all, "nobody has said where its clips are")
	case len(run.Clips) == 0:
		all = append(all, "it has no clips")
	}
	return all
}

// profile is how a run falls along its way.
func (s *source) profile(of vehicles.RunKind, laid *vehicles.LaidRun, head string, most float64) (Picture, bool) {
	const long = 160 // mm of paper
	stretch := drawing.Stretch(s.Result, of, long, most)
	falls, ok := drawing.Along(*s.Result, of, stretch)
	falls.Items = append(falls.Items, drawing.FarGround(*s.Result, of)...)
	if stretch != 1 {
		head += "; heights " + survey.Exact(stretch) + " times as high as they are"
	}
	return s.picture(head, falls, most), ok
}

// beside is a run as it is seen from a side.
func (s *source) beside(view scene.View, of vehicles.RunKind, laid *vehicles.LaidRun, most float64) Part {
	const rim = 60 // mm of the van
	seen := drawing.Draw(*s.Result, drawing.Options{View: view, Selected: -1})
	low, high := seen.Projection.Point(laid.Path[0]), seen.Projection.Point(laid.Path[0])
	for _, p := range laid.Path {
		at := seen.Projection.Point(p)
		low = geometry.Point{X: min(low.X, at.X), Y: min(low.Y, at.Y)}
		high = geometry.Point{X: max(high.X, at.X), Y: max(high.Y, at.Y)}
	}
	high.Y = max(high.Y, s.Job.Floor.Thickness) // how far below the floor it is must be seen
	picture := s.picture("", numbered(s.nearRun(seen, of)), most)
	picture.Around = &Around{low.Add(high).Scale(0.5), high.Sub(low).Scale(0.5).Add(geometry.Point{X: rim, Y: rim})}
	return picture
}

// nearRun leaves of a picture the floor, the cut, the run, and what under the floor comes near it: from the side all stands before all.
func (s *source) nearRun(seen scene.Scene, of vehicles.RunKind) scene.Scene {
	const near = 120 // mm
	subject := rules.SortOf(of)
	beside := map[int]bool{}
	for i := range s.Findings {
		f := &s.Findings[i]
		if f.Subject.Sort == subject && f.Against.Sort == rules.AnObstruction && f.Rule.Unit == rules.MM && f.Places == 2 && f.At[0].Sub(f.At[1]).Norm() < near {
			beside[int(f.Against.Index)] = true
		}
	}
	own := map[scene.Role]vehicles.RunKind{
		scene.Exhaust: vehicles.ExhaustRun, scene.Muffler: vehicles.ExhaustRun, scene.Outlet: vehicles.ExhaustRun,
		scene.Intake: vehicles.IntakeRun, scene.Mouth: vehicles.IntakeRun, scene.Fuel: vehicles.FuelRun,
	}
	var kept []scene.Item
	for _, it := range seen.Items {
		run, isRun := own[it.Role]
		if isRun && run == of || it.OfObstruction() && beside[it.Ref] || it.Role == scene.Floor || it.Role == scene.Cut {
			kept = append(kept, it)
		}
	}
	seen.Items = kept
	return seen
}

// taped is what the tapes say under a place, as it is found from below on the floor's underside.
func (s *source) taped(p geometry.Point) []string {
	at := rules.ReadBelow(&s.Job, p)
	return []string{survey.Figure(at.Bumper), survey.Figure(at.Left), survey.Figure(at.Right)}
}

// points are a run's corners, each with how the leg from it falls.
func (s *source) points(laid *vehicles.LaidRun) Table {
	t := Table{Size: small, Cols: []Col{
		{Head: "point"}, {Head: s.Job.Datum.Called(), Figure: true}, {Head: "left", Figure: true}, {Head: "right", Figure: true}, {Head: "below the floor", Figure: true},
		{Head: "leg to the next", Figure: true}, {Head: "its fall, mm/m"},
	}}
	for i, p := range laid.Path {
		name := strconv.Itoa(i)
		switch i {
		case 0:
			name = "begins"
		case len(laid.Path) - 1:
			name = "ends"
		}
		cells := append(append([]string{name}, s.taped(p.Plan())...), survey.Figure(-p.Z))
		if i+1 < len(laid.Path) {
			leg := laid.Path[i+1].Sub(p)
			cells = append(cells, survey.Figure(leg.Norm()), s.say.Fall(leg))
		}
		t.Rows = append(t.Rows, Row{Cells: cells})
	}
	return t
}

// hanging is what hangs on a run, with its place along it.
func (s *source) hanging(run *vehicles.Run, laid *vehicles.LaidRun) Table {
	t := Table{Size: small, Cols: []Col{
		{Head: "hangs on it"}, {Head: "along the run", Figure: true}, {Head: s.Job.Datum.Called(), Figure: true}, {Head: "left", Figure: true}, {Head: "right", Figure: true},
		{Head: "below the floor", Figure: true},
	}}
	add := func(name string, along float64, more string) {
		at := laid.Station(along)
		t.Rows = append(t.Rows, Row{Cells: append(append([]string{name, survey.Figure(along)}, s.taped(geometry.Point{X: at.X, Y: at.Y})...), survey.Figure(at.Drop)), Under: more})
	}
	for _, thing := range run.Hanging.Things() {
		from, to, ok := thing.Along(laid)
		name := thing.Kind.Called(thing.Kind.Full, thing.Index)
		switch {
		case !ok:
		case thing.Length() == 0:
			add(name, from, detailed(&thing))
		default:
			add(name+" begins", from, detailed(&thing))
			add(name+" ends", to, "")
		}
	}
	return t
}

// detailed is what a thing that hangs on a run is, beside its place.
func detailed(thing *vehicles.Hung) string {
	var all []string
	for _, d := range thing.Details() {
		if d.Paper == "" || d.Value() == nil {
			continue
		}
		text := d.Text()
		if d.Size != nil {
			text = survey.Figure(*d.Size)
		}
		all = append(all, fmt.Sprintf(d.Paper, text))
	}
	return strings.Join(all, ", ")
}
