package sheet

import (
	"fmt"
	"strconv"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/vehicles"
)

// runs are the runs the job has, one under the other: how each falls, how it is seen from the side, its points and what hangs on it.
func (s *source) runs() Section {
	section := Section{Heading: "The runs: how they fall, and where they go", Fresh: true}
	for _, of := range vehicles.RunKinds {
		if run, laid := s.Job.Run(of), s.Plan.Run(of); run != nil && laid != nil {
			section.Parts = append(section.Parts, s.run(of, run, laid))
		}
	}
	return section
}

// run is one run.
func (s *source) run(of vehicles.RunKind, run *vehicles.Run, laid *vehicles.LaidRun) Part {
	head := fmt.Sprintf("The %s, %s mm across", of, survey.Figure(run.Across))
	if run.Bend.Set {
		head += ", bends at a radius of " + survey.Figure(run.Bend.Value) + " mm"
	}
	parts := Parts{}
	if p, ok := s.profile(of, laid, head); ok {
		parts = append(parts, p)
	} else {
		parts = append(parts, Text{Words: head + ".", Bold: true})
	}
	parts = append(parts, Beside{s.beside(scene.FromRight, laid), s.beside(scene.FromBehind, laid)}, s.points(laid))
	if hanging := s.hanging(run, laid); len(hanging.Rows) > 0 {
		parts = append(parts, hanging)
	}
	return parts
}

// stretches are how many times the heights of a profile may be drawn as high as they are, so that a fall is seen.
var stretches = [...]float64{10, 5, 4, 2.5, 2, 1}

// profile is how a run falls along its way.
func (s *source) profile(of vehicles.RunKind, laid *vehicles.LaidRun, head string) (Picture, bool) {
	const most, long = 34, 160 // mm: of paper
	low, high := drawing.Heights(laid)
	stretch := 1.0
	for _, stretch = range stretches {
		if (high-low)*stretch/most <= laid.Line.Length()/long {
			break
		}
	}
	falls, ok := drawing.Along(*s.Result, of, stretch)
	if stretch != 1 {
		head += "; heights " + survey.Exact(stretch) + " times as high as they are"
	}
	return s.picture(head, falls, most), ok
}

// beside is a run as it is seen from a side.
func (s *source) beside(view scene.View, laid *vehicles.LaidRun) Part {
	const most, rim = 45, 60 // mm: of paper, and of the van
	seen := drawing.Draw(*s.Result, drawing.Options{View: view, Selected: -1})
	low, high := seen.Projection.Point(laid.Path[0]), seen.Projection.Point(laid.Path[0])
	for _, p := range laid.Path {
		at := seen.Projection.Point(p)
		low = geometry.Point{X: min(low.X, at.X), Y: min(low.Y, at.Y)}
		high = geometry.Point{X: max(high.X, at.X), Y: max(high.Y, at.Y)}
	}
	high.Y = max(high.Y, s.Job.Floor.Thickness) // how far below the floor it is must be seen
	picture := s.picture("", numbered(seen), most)
	picture.Around = &Around{low.Add(high).Scale(0.5), high.Sub(low).Scale(0.5).Add(geometry.Point{X: rim, Y: rim})}
	return picture
}

// points are a run's corners, each with how the leg from it falls.
func (s *source) points(laid *vehicles.LaidRun) Table {
	t := Table{Cols: []Col{
		{Head: "point"}, {Head: "x", Figure: true}, {Head: "y, left +", Figure: true}, {Head: "below the floor", Figure: true},
		{Head: "along the run", Figure: true}, {Head: "leg to the next", Figure: true}, {Head: "its fall, mm/m"},
	}}
	for i, p := range laid.Path {
		name := strconv.Itoa(i)
		switch i {
		case 0:
			name = "begins"
		case len(laid.Path) - 1:
			name = "ends"
		}
		cells := []string{name, survey.Figure(p.X), survey.Figure(p.Y), survey.Figure(-p.Z), survey.Figure(laid.CornerAlong(i))}
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
	t := Table{Cols: []Col{
		{Head: "hangs on it"}, {Head: "along the run", Figure: true}, {Head: "x", Figure: true}, {Head: "y, left +", Figure: true},
		{Head: "below the floor", Figure: true}, {Head: ""},
	}}
	add := func(name string, along float64, more string) {
		at := laid.Station(along)
		t.Rows = append(t.Rows, Row{Cells: []string{name, survey.Figure(along), survey.Figure(at.X), survey.Figure(at.Y), survey.Figure(at.Drop), more}})
	}
	if m := laid.Muffler; m != nil {
		drain := ""
		if run.Muffler.Drain != "" {
			drain = ", drain hole " + run.Muffler.Drain
		}
		add("muffler begins", m.From, survey.Figure(run.Muffler.Across)+" across"+drain)
		add("muffler ends", m.To, "")
	}
	for i, at := range run.Clips {
		add(fmt.Sprintf("clip %d", i+1), at, "")
	}
	for i, at := range run.Drains {
		add(fmt.Sprintf("drain hole %d", i+1), at, "")
	}
	if laid.Pump.Set {
		add("pump", laid.Pump.Value, "outlet "+survey.Figure(run.Pump.Tilt)+"° up from level")
	}
	return t
}
