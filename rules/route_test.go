package rules

import (
	"context"
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// moved is the demo with its cut where heater and exhaust have room, and nothing left unmeasured.
func moved(t testing.TB) *Result {
	t.Helper()
	job := vehicles.Demo()
	job.RunChecks = "" // in full the springs' and the axle's travel leaves no way to the rear
	cut := *job.Cut
	cut.At = [2]float64{1400, 250}
	job = job.WithCut(cut)
	for i, o := range job.Obstructions {
		o.Measured = true
		job.Obstructions = job.Obstructions.With(i, o)
	}
	r, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	return &r
}

// toPlace is a place as a target.
func toPlace(x, y, drop float64) Target {
	return Target{At: &vehicles.RunPoint{X: x, Y: y, Drop: drop}}
}

// judgedWith judges a job with a run put in.
func judgedWith(t *testing.T, r *Result, kind vehicles.RunKind, found *Route) []Finding {
	t.Helper()
	after, faults := Judge(r.Job.WithRun(kind, found.Run), r.Book)
	require.Empty(t, faults)
	var of []Finding
	for _, f := range after.Findings {
		if f.Subject.Sort == sortOfRun[kind] {
			of = append(of, f)
		}
	}
	return of
}

var sortOfRun = map[vehicles.RunKind]Sort{vehicles.ExhaustRun: TheExhaust, vehicles.IntakeRun: TheIntake}

// What is found is clear by the judge of all jobs, not by the search's own word.
func TestAFoundRunIsClearOnceItIsPutIn(t *testing.T) {
	r := moved(t)
	for _, c := range []struct {
		name string
		kind vehicles.RunKind
		to   Target
	}{
		{"exhaust to a place", vehicles.ExhaustRun, toPlace(1370, 870, 187)},
		{"exhaust to the left", vehicles.ExhaustRun, Target{Edge: LeftEdge}},
		{"intake to a place", vehicles.IntakeRun, toPlace(2480, 330, 136)},
		{"intake to the rear", vehicles.IntakeRun, Target{Edge: RearEdge}},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := FindRoute(context.Background(), r, c.kind, c.to, nil)
			require.True(t, found.Found())
			assert.Equal(t, Clear, found.Verdict)
			assert.Empty(t, found.Misses)
			assert.GreaterOrEqual(t, found.Margin.Value, 0.0)
			for _, f := range judgedWith(t, r, c.kind, &found) {
				assert.Equal(t, Clear, f.Verdict, "%s: %s", f.About(), f.Why)
			}
			if c.to.At != nil {
				assert.Equal(t, *c.to.At, found.Run.Path[len(found.Run.Path)-1])
			}
			for _, p := range found.Run.Path {
				assert.Equal(t, vehicles.RunPoint{X: math.Round(p.X), Y: math.Round(p.Y), Drop: math.Round(p.Drop)}, p, "whole mm")
			}
			if c.kind == vehicles.ExhaustRun {
				require.NotNil(t, found.Run.Muffler)
				assert.Equal(t, r.Job.Exhaust.Muffler.Length, found.Run.Muffler.Length)
				assert.NotNil(t, found.Run.Clips)
			}
		})
	}
}

func TestTheSameQuestionHasTheSameAnswer(t *testing.T) {
	r := moved(t)
	a := FindRoute(context.Background(), r, vehicles.ExhaustRun, toPlace(1370, 870, 187), nil)
	b := FindRoute(context.Background(), r, vehicles.ExhaustRun, toPlace(1370, 870, 187), nil)
	assert.Equal(t, a.Run, b.Run)
}

// The run does not depend on the path that the job has, nor on what hangs along that.
func TestTheOldPathDoesNotMatter(t *testing.T) {
	r := moved(t)
	job := r.Job
	run := *job.Exhaust
	run.Path = []vehicles.RunPoint{{X: 1400, Y: 220, Drop: 300}, {X: 1400, Y: 800, Drop: 300}}
	muffler := *run.Muffler
	muffler.Leg = 1
	run.Clips, run.Muffler = nil, &muffler
	other, faults := Judge(job.WithRun(vehicles.ExhaustRun, &run), Builtin())
	require.Empty(t, faults)
	a := FindRoute(context.Background(), r, vehicles.ExhaustRun, toPlace(1370, 870, 187), nil)
	b := FindRoute(context.Background(), &other, vehicles.ExhaustRun, toPlace(1370, 870, 187), nil)
	assert.Equal(t, a.Run.Path, b.Run.Path)
}

// The demo's cut lies beside a brake pipe: no run from there keeps clear of it, and it is named.
func TestTheNearestMissIsNamed(t *testing.T) {
	r, faults := Judge(vehicles.Demo(), Builtin())
	require.Empty(t, faults)
	found := FindRoute(context.Background(), &r, vehicles.ExhaustRun, toPlace(1370, 870, 187), nil)
	assert.False(t, found.Found())
	require.NotNil(t, found.Run)
	require.NotEmpty(t, found.Misses)
	assert.Equal(t, "exhaust: brake pipe across", found.Misses[0].About())
	assert.Equal(t, Foul, found.Misses[0].Verdict)
}

// Its stub is 45 mm down, and the place 50 mm: 20 mm per m of fall are 6 mm over 300 mm.
func TestAPlaceTooHighIsMissedByItsFall(t *testing.T) {
	r := plainFloor(t, "")
	found := FindRoute(context.Background(), r, vehicles.ExhaustRun, toPlace(1000, 880, 50), nil)
	assert.False(t, found.Found())
	require.NotEmpty(t, found.Misses)
	var ids []string
	for _, f := range found.Misses {
		ids = append(ids, f.ID())
	}
	assert.Contains(t, ids, "exhaust.fall")
}

// A run that can't be shorter than is allowed is missed by its length, which is named with by how much.
func TestALengthThatCantBeKeptIsNamed(t *testing.T) {
	r := plainFloor(t, "\"exhaust.length\" = 600\n")
	found := FindRoute(context.Background(), r, vehicles.ExhaustRun, toPlace(1000, 880, 150), nil)
	assert.False(t, found.Found())
	require.Len(t, found.Misses, 1)
	assert.Equal(t, "exhaust.length", found.Misses[0].ID())
	assert.InDelta(t, found.Length-600, -found.Misses[0].Margin.Value, 1e-9)
}

// With nothing under the floor the run is the straight line.
func TestOnAnEmptyFloorTheRunIsStraight(t *testing.T) {
	r := plainFloor(t, "")
	found := FindRoute(context.Background(), r, vehicles.ExhaustRun, toPlace(1000, 880, 150), nil)
	require.True(t, found.Found())
	assert.Len(t, found.Run.Path, 1)
	mouth := r.Plan.Mouth(&r.Job, vehicles.ExhaustRun)
	assert.InDelta(t, mouth.Sub(geometry.Point3{X: 1000, Y: 880, Z: -150}).Norm(), found.Length, 1e-9)
	assert.Zero(t, found.Bends)
	assert.False(t, found.Margin.Set)
}

// A done context ends a search with what there is, which may be nothing.
func TestASearchCanBeStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	found := FindRoute(ctx, moved(t), vehicles.ExhaustRun, Target{Edge: LeftEdge}, nil)
	assert.False(t, found.Found())
}

// plainFloor is a floor with a cut, a heater and an exhaust, nothing under it, and rules of its own.
func plainFloor(t *testing.T, rules string) *Result {
	t.Helper()
	job, err := vehicles.ParseJob([]byte(`format = 1
[job]
ref = "TL-07"
[floor]
from = 40
length = 3200
width = 1780
thickness = 31
ground = 460
[heater]
[cut]
at = [1000, 200]
across = 127
[exhaust]
across = 26
bend = 60
path = [[1000, 400, 150]]
[rules]
`+rules), "plain.toml", Builtin())
	require.NoError(t, err)
	r, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	return &r
}

// Clips are no farther apart than asked, and none is where the muffler is.
func TestClipsAreSpread(t *testing.T) {
	r := plainFloor(t, "\"exhaust.clip-span\" = 150\n")
	found := FindRoute(context.Background(), r, vehicles.ExhaustRun, toPlace(1000, 880, 150), nil)
	require.True(t, found.Found())
	assert.Len(t, found.Run.Clips, int(math.Ceil(found.Length/150))-1)
	for _, f := range judgedWith(t, r, vehicles.ExhaustRun, &found) {
		if f.ID() == "exhaust.clip-span" {
			assert.LessOrEqual(t, f.Value, 150.0)
		}
	}
}

func TestRouteJSON(t *testing.T) {
	r := moved(t)
	found := FindRoute(context.Background(), r, vehicles.ExhaustRun, toPlace(1370, 870, 187), nil)
	data, err := RouteJSON(found)
	require.NoError(t, err)
	var out map[string]any
	require.NoError(t, json.Unmarshal(data, &out))
	for _, key := range []string{"path", "length", "bends", "margin", "muffler", "clips"} {
		assert.Contains(t, out, key)
	}
	assert.NotContains(t, out, "miss")

	data, err = RouteJSON(Route{Verdict: Foul})
	require.NoError(t, err)
	assert.JSONEq(t, `{"path": [], "length": null, "bends": null, "margin": null}`, string(data))
}

// All that hangs on the legs of a run hangs on the one that is found, too, and is told with what it is.
func TestWhatHangsOnTheLegsHangsOnTheRunThatIsFound(t *testing.T) {
	r := moved(t)
	for _, kind := range vehicles.RunKinds {
		run := *r.Job.Run(kind)
		for _, k := range vehicles.HangingOn(kind) {
			if !k.Many() && !k.Has(run.Hanging) {
				k.Hang(&run.Hanging, 1, 0)
			}
		}
		with := *r
		with.Job = r.Job.WithRun(kind, &run)
		end := run.Path[kind.FarEnd(len(run.Path))]
		found := FindRoute(context.Background(), &with, kind, Target{At: &end}, nil)
		require.NotNil(t, found.Run)
		data, err := RouteJSON(found)
		require.NoError(t, err)
		var told map[string]any
		require.NoError(t, json.Unmarshal(data, &told))
		if miss, ok := told["miss"]; ok {
			told = miss.(map[string]any)
		}
		for _, thing := range run.Hanging.OnLegs().Things() {
			hung := found.Run.Hanging.Thing(thing.Kind, 0)
			require.NotNil(t, hung, "%s: %s", kind, thing.Name())
			fields, ok := told[thing.Kind.Key].(map[string]any)
			require.True(t, ok, "%s: %s: %s", kind, thing.Name(), data)
			assert.InDelta(t, hung.Leg(), fields["leg"], 0)
			assert.InDelta(t, hung.Start(), fields["start"], 0)
			for i, d := range hung.Details() {
				assert.Equal(t, thing.Details()[i].Value(), d.Value(), d.Key)
				assert.Equal(t, d.Value(), fields[d.Key], d.Key)
			}
		}
	}
}

// Along any edge the run is no longer than along the best of them, and ends at one.
func TestTheBestEdgeIsTheBestOfAll(t *testing.T) {
	r := moved(t)
	for _, kind := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
		shortest := math.Inf(1)
		for _, edge := range Edges {
			if found := FindRoute(context.Background(), r, kind, Target{Edge: edge}, nil); found.Found() && found.Verdict == Clear {
				shortest = min(shortest, found.Length)
			}
		}
		best := FindRoute(context.Background(), r, kind, Target{Edge: AnyEdge}, nil)
		require.Equal(t, Clear, best.Verdict)
		assert.LessOrEqual(t, best.Length, shortest*1.001, kind)
	}
}

// A run that can end where it does is found to there; one that can't is found to as near as can be.
func TestARunIsFoundNearWhereItEnds(t *testing.T) {
	r := moved(t)
	at := func(p vehicles.RunPoint) Route {
		run := *r.Job.Exhaust
		run.Path = []vehicles.RunPoint{p}
		muffler := *run.Muffler
		muffler.Leg = 1
		run.Hanging = vehicles.Hanging{Muffler: &muffler}
		own := *r
		own.Job = r.Job.WithRun(vehicles.ExhaustRun, &run)
		return FindNear(context.Background(), &own, vehicles.ExhaustRun, nil)
	}
	fits := vehicles.RunPoint{X: 1370, Y: 870, Drop: 187}
	found := at(fits)
	require.True(t, found.Found())
	assert.Equal(t, fits, found.Run.Path[len(found.Run.Path)-1])

	under := vehicles.RunPoint{X: 1300, Y: 790, Drop: 187} // 100 mm inside the outline: too far under the van
	found = at(under)
	require.True(t, found.Found())
	end := found.Run.Path[len(found.Run.Path)-1]
	assert.LessOrEqual(t, math.Hypot(end.X-under.X, end.Y-under.Y), 100.0)
}

// What hangs on an intake that is found hangs on its new path: clips as the book has them, and a drain where it has a low point.
func TestAFoundIntakeHasItsClips(t *testing.T) {
	r := moved(t)
	found := FindRoute(context.Background(), r, vehicles.IntakeRun, toPlace(2480, 330, 136), nil)
	require.True(t, found.Found())
	span := r.Book.of(clipSpanRule).Value.Value
	assert.Len(t, found.Run.Clips, int(math.Ceil(found.Length/span))-1)
	after, faults := Judge(r.Job.WithRun(vehicles.IntakeRun, found.Run), r.Book)
	require.Empty(t, faults)
	assert.Empty(t, Undrained(after.Plan.Intake, found.Run.Drains))
}

func TestDrainsOfALaidRunAreAtItsLowPoints(t *testing.T) {
	r := moved(t)
	run := *r.Job.Intake
	run.Path = []vehicles.RunPoint{{X: 1400, Y: 100, Drop: 160}, {X: 1900, Y: 100, Drop: 100}, {X: 2400, Y: 100, Drop: 140}}
	run.Clips, run.Drains = nil, nil
	after, faults := Judge(r.Job.WithRun(vehicles.IntakeRun, &run), r.Book)
	require.Empty(t, faults)
	drains := drainsOf(after.Plan.Intake)
	require.NotEmpty(t, drains)
	assert.Empty(t, Undrained(after.Plan.Intake, drains))
}
