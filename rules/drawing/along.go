package drawing

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Room left round a run that is shown beside itself, mm.
const (
	besideEnds = 30
	besideLow  = 30
)

// Along returns the scene of one run laid out straight, its heights stretched so many times: its centreline, the floor, and what
// the run passes under or over. ok is false where the job has no such run, or one that could not be laid.
func Along(result rules.Result, of vehicles.RunKind, stretch float64) (s scene.Scene, ok bool) {
	run := result.Plan.Run(of)
	if run == nil || len(run.Path) < 2 {
		return s, false
	}
	begins, ends := scene.Way("stub"), scene.Way(map[vehicles.RunKind]string{vehicles.ExhaustRun: "outlet", vehicles.IntakeRun: "mouth", vehicles.FuelRun: "stub"}[of])
	if of == vehicles.FuelRun {
		begins = "tank"
	}
	d := drawer{
		result: &result, job: &result.Job, plan: &result.Plan, opts: &Options{Selected: -1}, states: statesOf(&result),
		projection: scene.Beside(&run.Line, stretch, begins, ends),
	}
	d.floor()
	d.obstructions()
	role, subject := roleOf(of)
	d.add(scene.Item{Role: role, State: d.states.subjects[subject], Primitive: scene.Stroke, Path: run.Line.Pieces()})
	if m := run.Muffler; m != nil {
		d.add(scene.Item{Role: scene.Muffler, Primitive: scene.Stroke, Path: scene.Straight(m.Axis...)})
	}
	low, high := Heights(&result, run)
	return scene.Scene{
		Projection: d.projection, Items: d.items,
		Min: geometry.Point{X: -besideEnds, Y: low * stretch}, Max: geometry.Point{X: run.Line.Length() + besideEnds, Y: high * stretch},
	}, true
}

// Heights are the lowest and the highest place, mm of Z, that are shown beside a run.
func Heights(result *rules.Result, run *vehicles.LaidRun) (low, high float64) {
	high = result.Job.Floor.Thickness
	for _, p := range run.Path {
		low, high = min(low, p.Z), max(high, p.Z)
	}
	return low - besideLow, high
}

// roleOf is what draws a run, and what its findings are of.
func roleOf(of vehicles.RunKind) (scene.Role, rules.Sort) {
	switch of {
	case vehicles.IntakeRun:
		return scene.Intake, rules.TheIntake
	case vehicles.FuelRun:
		return scene.Fuel, rules.TheFuel
	}
	return scene.Exhaust, rules.TheExhaust
}
