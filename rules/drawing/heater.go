package drawing

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// heater draws plate, body, the space round it and the way the warm air blows. They stand on the floor.
func (d *drawer) heater() {
	if d.job.Heater == nil || d.job.Cut == nil {
		return
	}
	hidden := d.opts.View == scene.Below
	body := rules.Body(*d.job, *d.plan, false).Footprint
	d.add(scene.Item{
		Role: scene.Space, State: d.states.subjects[rules.TheBody], Form: scene.Outline,
		Footprint: rules.Body(*d.job, *d.plan, true).Footprint, Dashed: true,
	})
	d.add(scene.Item{Role: scene.Body, Form: scene.Outline, Footprint: body, Dashed: hidden})
	d.add(scene.Item{
		Role: scene.Plate, State: d.states.subjects[rules.ThePlate], Form: scene.Outline,
		Footprint: rules.Plate(*d.job, *d.plan), Dashed: hidden,
	})
	d.add(scene.Item{Role: scene.Body, Form: scene.Stroke, Path: arrow(body, d.job.Heater.Space.Front), Label: "warm air"})
}

// arrow returns an arrow from the front of a body through most of the space before it.
func arrow(body geometry.Footprint, room float64) []geometry.Point {
	shaft := max(room*0.7, 60)
	at := func(x, y float64) geometry.Point {
		return geometry.Point{X: body.Half.X + x, Y: y}.Turn(body.Turn).Add(body.Middle)
	}
	tip, barb := at(shaft, 0), shaft*0.3
	return []geometry.Point{at(0, 0), tip, at(shaft-barb, barb), tip, at(shaft-barb, -barb)}
}

// cut draws the hole where it is and, once the pilot is drilled beside it, where it was meant.
func (d *drawer) cut() {
	if d.job.Cut == nil {
		return
	}
	place, radius := &d.plan.Cut, d.job.Cut.Across/2
	d.add(scene.Item{
		Role: scene.Cut, State: d.states.subjects[rules.TheCut], Form: scene.Outline,
		Footprint: geometry.NewRound(place.At, radius), Label: "cut",
	})
	if !place.Drilled {
		d.add(scene.Item{Role: scene.CutCentre, Form: scene.Spot, Path: []geometry.Point{place.At}})
	} else {
		d.add(scene.Item{Role: scene.Pilot, Form: scene.Spot, Path: []geometry.Point{place.At}, Label: "pilot"})
		d.add(scene.Item{Role: scene.CutCentre, Form: scene.Spot, Path: []geometry.Point{place.Intended}})
		d.add(scene.Item{Role: scene.Wish, Form: scene.Outline, Footprint: geometry.NewRound(place.Intended, radius), Label: "meant", Dashed: true})
	}
	for _, w := range d.opts.Wishes {
		d.add(scene.Item{Role: scene.Wish, Form: scene.Outline, Footprint: geometry.NewRound(w, radius), Dashed: true})
	}
}

// runs draws exhaust, intake and fuel line in their thickness, with their ends.
func (d *drawer) runs() {
	if f := d.plan.Fuel; f != nil {
		d.pipe(scene.Fuel, rules.TheFuel, planOf(f.Path), f.Radius)
	}
	if r := d.plan.Intake; r != nil {
		d.pipe(scene.Intake, rules.TheIntake, sampled(r.Line), r.Radius)
		d.end(scene.Mouth, r, "air in")
	}
	if r := d.plan.Exhaust; r != nil {
		d.pipe(scene.Exhaust, rules.TheExhaust, sampled(r.Line), r.Radius)
		if m := r.Muffler; m != nil {
			from, to := m.Axis[0].Plan(), m.Axis[len(m.Axis)-1].Plan()
			d.add(scene.Item{Role: scene.Muffler, State: d.states.subjects[rules.TheExhaust], Footprint: barrel(from, to, m.Radius), Label: "muffler"})
		}
		d.end(scene.Outlet, r, "outlet")
	}
}

func (d *drawer) pipe(role scene.Role, run rules.Sort, path []geometry.Point, radius float64) {
	d.add(scene.Item{Role: role, State: d.states.subjects[run], Footprint: geometry.NewLine(path, radius), Label: run.String()})
}

func (d *drawer) end(role scene.Role, run *vehicles.LaidRun, name string) {
	at := run.Path[len(run.Path)-1].Plan()
	d.add(scene.Item{Role: role, Form: scene.Spot, Path: []geometry.Point{at}, Label: name})
}

func planOf(path []geometry.Point3) []geometry.Point {
	out := make([]geometry.Point, len(path))
	for i, p := range path {
		out[i] = p.Plan()
	}
	return out
}

// sampled returns points along a run in plan: the ends of its straight stretches, and in its bends one every 10 mm.
func sampled(run geometry.Run) []geometry.Point {
	const step = 10
	path := []geometry.Point3{run.At(0)}
	for i, leg := range run.Legs {
		path = append(path, run.At(leg.Begin), run.At(leg.End))
		end := leg.End
		if i+1 < len(run.Legs) {
			end = run.Legs[i+1].Begin
		}
		for s := leg.End + step; s < end; s += step {
			path = append(path, run.At(s))
		}
	}
	return planOf(append(path, run.At(run.Length())))
}

// barrel returns the outline of a round body along an axis; seen end on it is a round.
func barrel(from, to geometry.Point, radius float64) geometry.Footprint {
	along := to.Sub(from)
	if along.Norm() < 1 {
		return geometry.NewRound(from, radius)
	}
	middle, half := from.Add(to).Scale(0.5), geometry.Point{X: along.Norm() / 2, Y: radius}
	turn := math.Atan2(along.Y, along.X) * 180 / math.Pi
	return geometry.NewRectangle(middle.Sub(half), middle.Add(half), turn)
}
