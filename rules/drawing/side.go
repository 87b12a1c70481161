package drawing

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Side returns a run, "exhaust" or "intake", stretched out and seen from the side: X is the plan length along it from
// the stub, its bends taken sharp, Y the height above the floor's underside, both mm and to one scale. Every leg says
// how much it falls. Without that run, or a cut and a heater for it to start at, ok is false.
func Side(result rules.Result, run string, units survey.Units) (s scene.Scene, ok bool) {
	laid, role, end := result.Plan.Exhaust, scene.Exhaust, scene.Outlet
	if run == "intake" {
		laid, role, end = result.Plan.Intake, scene.Intake, scene.Mouth
	}
	if laid == nil {
		return scene.Scene{}, false
	}
	e := elevation{units: units, role: role, falls: fallsOf(&result, run)}
	line := stretched(laid.Path)
	last := line[len(line)-1]
	e.level(scene.Floor, 0, last.X, "floor")
	e.level(scene.Wheel, -result.Job.Floor.Ground, last.X, "ground")
	e.legs(line)
	e.add(scene.Item{Role: role, Footprint: geometry.NewLine(line, laid.Radius), Label: run})
	if laid.Muffler != nil {
		e.muffler(laid, line)
	}
	e.add(scene.Item{Role: end, Form: scene.Spot, Path: []geometry.Point{last}})
	rim := geometry.Point{X: 50, Y: 20}
	low, high := geometry.Point{Y: -result.Job.Floor.Ground}, geometry.Point{X: last.X}
	return scene.Scene{View: scene.Side, Min: low.Sub(rim), Max: high.Add(rim), Items: e.items}, true
}

type elevation struct {
	units survey.Units
	role  scene.Role
	falls map[int]scene.State
	items []scene.Item
}

func (e *elevation) add(it scene.Item) {
	it.Ref = -1
	e.items = append(e.items, it)
}

// level draws something level all along the run.
func (e *elevation) level(role scene.Role, height, length float64, name string) {
	path := []geometry.Point{{Y: height}, {X: length, Y: height}}
	e.add(scene.Item{Role: role, Form: scene.Stroke, Path: path, Label: name})
}

// legs says the fall of every leg that has a length in plan.
func (e *elevation) legs(line []geometry.Point) {
	for i := range line[1:] {
		from, to := line[i], line[i+1]
		if to.X > from.X {
			e.items = append(e.items, scene.Item{
				Role: e.role, State: e.falls[i], Form: scene.Stroke, Path: []geometry.Point{from, to},
				Label: fall(from.Y-to.Y, e.units), Ref: i,
			})
		}
	}
}

// fall says how much a leg falls from its beginning to its end.
func fall(by float64, units survey.Units) string {
	word := "falls "
	switch {
	case by == 0:
		return "level"
	case by < 0:
		word = "rises "
	}
	length := survey.Format(math.Abs(by), units)
	if units == survey.Millimetres {
		length += " mm"
	}
	return word + length
}

// muffler draws the muffler on its leg.
func (e *elevation) muffler(run *vehicles.LaidRun, line []geometry.Point) {
	m := run.Muffler
	onLine := func(p geometry.Point3) geometry.Point {
		corner := run.Path[m.Leg]
		return geometry.Point{X: line[m.Leg].X + p.Sub(corner).Plan().Norm(), Y: p.Z}
	}
	e.add(scene.Item{
		Role: scene.Muffler, Footprint: barrel(onLine(m.Axis[0]), onLine(m.Axis[len(m.Axis)-1]), m.Radius), Label: "muffler",
	})
}

// fallsOf returns how the legs of a run stand with the rule of its fall.
func fallsOf(result *rules.Result, run string) map[int]scene.State {
	falls := map[int]scene.State{}
	for i := range result.Findings {
		if f := &result.Findings[i]; f.ID == run+".fall" {
			falls[f.Index] = stateOf(f.Verdict)
		}
	}
	return falls
}

// stretched lays the corners of a run out: their plan distance along it from its start, and their height.
func stretched(path []geometry.Point3) []geometry.Point {
	line := make([]geometry.Point, len(path))
	for i, p := range path {
		line[i].Y = p.Z
		if i > 0 {
			line[i].X = line[i-1].X + p.Sub(path[i-1]).Plan().Norm()
		}
	}
	return line
}
