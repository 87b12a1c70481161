package drawing

import (
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Room left round a run that is shown beside itself, mm.
const (
	besideEnds = 30
	besideHigh = 10
	besideLow  = 15
)

// Along returns the scene of one run laid out straight, its heights stretched so many times: its centreline, the floor, the ground, the
// muffler with its level, and what the run passes under or over or comes nearer to than is asked, other runs and fittings among it, at its stations and
// in its heights, in the state that it has with this run. ok is false where the job has no such run, or one that could not be laid.
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
		result: &result, job: &result.Job, plan: &result.Plan, opts: &Options{Selected: -1},
		projection: scene.Beside(&run.Line, stretch, begins, ends),
	}
	beside := neighbours(&result, of)
	low, high := heights(run, result.Job.Floor.Ground, beside)
	role, subject := roleOf(of), rules.SortOf(of)
	d.states = statesOf(ofRunAlone(result, subject))
	d.floor()
	d.ground(low)
	d.obstructions()
	d.beside(beside)
	d.add(scene.Item{Role: role, State: d.states.subjects[subject], Primitive: scene.Stroke, Path: run.Line.Pieces()})
	if m := run.Muffler; m != nil {
		d.add(scene.Item{Role: scene.Muffler, Primitive: scene.Stroke, Path: scene.Straight(m.Axis...), Label: levelOf(m)})
	}
	return scene.Scene{
		Projection: d.projection, Items: d.items,
		Min: geometry.Point{X: -besideEnds, Y: low * stretch}, Max: geometry.Point{X: run.Line.Length() + besideEnds, Y: high * stretch},
	}, true
}

// ofRunAlone is a result with what is found about a run and nothing else.
func ofRunAlone(result rules.Result, subject rules.Sort) *rules.Result {
	result.Findings = slices.DeleteFunc(slices.Clone(result.Findings), func(f rules.Finding) bool {
		return f.Subject.Sort != subject && f.Against.Sort != subject
	})
	return &result
}

// radiusAt is the radius of what a run is at a place of its axis: its pipe, or its muffler.
func radiusAt(run *vehicles.LaidRun, at geometry.Point3) float64 {
	if m := run.Muffler; m != nil && geometry.BetweenPaths([]geometry.Point3{at}, m.Axis).Gap < touchesWithin {
		return m.Radius
	}
	return run.Radius
}

// touchesWithin is how far off its axis a place of a muffler is taken to be on it, mm: rounding, and the bends of the pipe beside it.
const touchesWithin = 2

// ground is the ground under the run, where the picture goes down to it.
func (d *drawer) ground(low float64) {
	if at := -d.job.Floor.Ground; at >= low {
		d.add(groundAt(at, d.plan))
	}
}

// groundAt is the ground drawn at a height.
func groundAt(z float64, plan *vehicles.Plan) scene.Item {
	far := geometry.Point{X: groundBeyond, Y: groundBeyond}
	everywhere := geometry.NewRectangle(plan.FloorMin.Sub(far), plan.FloorMax.Add(far), 0)
	return scene.Item{Role: scene.Floor, Primitive: scene.Edge, Solid: scene.Upright(everywhere, z, z), Label: "ground", Aside: true, Ref: -1}
}

// FarGround is the ground under a run that is farther down than its picture goes: a line at the picture's lower edge that says how much lower
// than the run it is. None where the ground is in the picture.
func FarGround(result rules.Result, of vehicles.RunKind) []scene.Item {
	run, ground := result.Plan.Run(of), result.Job.Floor.Ground
	if run == nil || !FarBelow(&result, of) {
		return nil
	}
	low, _ := heights(run, ground, neighbours(&result, of))
	it := groundAt(low, &result.Plan)
	it.Label, it.Measure = "ground lower by", &scene.Measure{Value: AboveGround(run, ground), Unit: scene.MM}
	return []scene.Item{it}
}

// FarBelow tells whether the ground is farther down than the picture of a run that is laid goes.
func FarBelow(result *rules.Result, of vehicles.RunKind) bool {
	ground := result.Job.Floor.Ground
	low, _ := heights(result.Plan.Run(of), ground, neighbours(result, of))
	return -ground < low
}

// AboveGround is how far the lowest of a run is above the ground, mm: its pipe or its muffler.
func AboveGround(run *vehicles.LaidRun, ground float64) float64 {
	lowest := -run.Line.Lowest().Z + run.Radius
	if m := run.Muffler; m != nil {
		lowest = max(lowest, -min(m.Axis[0].Z, m.Axis[len(m.Axis)-1].Z)+m.Radius)
	}
	return ground - lowest
}

// groundBeyond is how far past the floor the ground is drawn, mm: farther than any run goes.
const groundBeyond = 3000

// levelOf says how level a muffler hangs, to a tenth of a degree.
func levelOf(m *vehicles.LaidMuffler) string {
	return "muffler " + survey.InDegrees(OffLevel(m))
}

// OffLevel is by how much a muffler does not hang level, degrees, 0 to 90, from where it begins to where it ends.
func OffLevel(m *vehicles.LaidMuffler) float64 {
	along := m.Axis[len(m.Axis)-1].Sub(m.Axis[0])
	return math.Atan2(math.Abs(along.Z), along.Plan().Norm()) * 180 / math.Pi
}

// heights are the lowest and the highest place, mm of Z, that are shown beside a run: other runs that come too near, and the ground, so far below the
// floor, where it is near.
func heights(run *vehicles.LaidRun, ground float64, beside []neighbour) (low, high float64) {
	high = besideHigh
	for _, p := range run.Path {
		low, high = min(low, p.Z), max(high, p.Z+besideHigh)
	}
	for i := range beside {
		if s := &beside[i].stretch; s.run != nil {
			low, high = min(low, s.lowest()), max(high, s.highest()+besideHigh)
		}
	}
	if low+ground < groundNear {
		low = min(low, -ground)
	}
	return low - besideLow, high
}

// stretches are how many times the heights of a run laid out straight may be drawn as high as they are, so that a fall is seen.
var stretches = [...]float64{10, 5, 4, 2.5, 2, 1}

// Stretch is how many times the heights of a run that is laid may be drawn as high as they are on a picture so wide and high that shows all of it.
func Stretch(result *rules.Result, of vehicles.RunKind, wide, high float64) (times float64) {
	run := result.Plan.Run(of)
	low, top := heights(run, result.Job.Floor.Ground, neighbours(result, of))
	for _, times = range stretches {
		if (top-low)*times/high <= run.Line.Length()/wide {
			break
		}
	}
	return times
}

// groundNear is from how near on the ground is seen beside a run, mm of its axis: hardly more than is asked of that. common practice, no source
const groundNear = 170

// roleOf is what draws a run.
func roleOf(of vehicles.RunKind) scene.Role {
	return [...]scene.Role{vehicles.ExhaustRun: scene.Exhaust, vehicles.IntakeRun: scene.Intake, vehicles.FuelRun: scene.Fuel}[of]
}

// SideOf is the view of the van's side from where a run goes out, as that is how it is worked on.
func SideOf(run *vehicles.Run, of vehicles.RunKind) scene.View {
	return scene.FromSide(run.Path[of.FarEnd(len(run.Path))].Y)
}
