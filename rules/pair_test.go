package rules

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Both are clear once both are put in, mouth and outlet a metre apart, and they keep more than the shortest ones do.
func TestAPairIsClearOnceItIsPutIn(t *testing.T) {
	r := moved(t)
	told := 0
	pair := FindPair(context.Background(), r, func(done, of int) {
		told++
		assert.LessOrEqual(t, done, of)
	})
	require.True(t, pair.Found())
	assert.Positive(t, told)
	after, faults := Judge(r.Job.WithRun(vehicles.ExhaustRun, pair.Exhaust.Run).WithRun(vehicles.IntakeRun, pair.Intake.Run), r.Book)
	require.Empty(t, faults)
	for _, f := range after.Findings {
		if f.Subject.Sort == TheExhaust || f.Subject.Sort == TheIntake {
			assert.Equal(t, Clear, f.Verdict, "%s: %s", f.About(), f.Why)
		}
	}
	assert.GreaterOrEqual(t, pair.Margin().Value, 10.0, "the shortest keep 2 or 3 mm")
}

// Where the stub itself is too near to something no pair is found, and the exhaust's miss is told.
func TestWithoutAPairTheMissIsTold(t *testing.T) {
	r, faults := Judge(vehicles.Demo(), Builtin())
	require.Empty(t, faults)
	pair := FindPair(context.Background(), &r, nil)
	assert.False(t, pair.Found())
	assert.NotEmpty(t, pair.Exhaust.Misses)
}

// The sample's intake ends under the van, not at an edge: a pair that can't keep more than it and the exhaust is not proposed in their place.
func TestAPairIsNeverWorseThanWhatIsThere(t *testing.T) {
	for _, checks := range []string{"", vehicles.InFull} {
		job := moved(t).Job
		job.RunChecks = checks
		r, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		own := leastOfRuns(&r)
		pair := FindPair(context.Background(), &r, nil)
		require.True(t, pair.Found())
		assert.GreaterOrEqual(t, pair.Margin().Value, own, "in full %q", checks)
		assert.Equal(t, pair.Exhaust.Here, pair.Margin().Value <= own+marginNoise, "what is there is said to be there")
		assert.Equal(t, pair.Exhaust.Here, pair.Intake.Here)

		exhaust, intake := *job.Exhaust, *job.Intake
		exhaust.Path, intake.Path = nil, nil
		bare := r
		bare.Job = job.WithRun(vehicles.ExhaustRun, &exhaust).WithRun(vehicles.IntakeRun, &intake)
		pair = FindPair(context.Background(), &bare, nil)
		require.True(t, pair.Found())
		assert.False(t, pair.Exhaust.Here)
		assert.Greater(t, pair.Margin().Value, own-2, "in full %q: as much as by hand, within a tape's mm", checks)
	}
}

// What is there but could keep more is moved until it does.
func TestAPairThatIsThereIsImproved(t *testing.T) {
	job := moved(t).Job
	intake := *job.Intake
	intake.Path = vehicles.List[vehicles.RunPoint]{{X: 1440, Y: 170, Drop: 116}, {X: 2560, Y: 150, Drop: 117}, {X: 2480, Y: 330, Drop: 123}}
	r, faults := Judge(job.WithRun(vehicles.IntakeRun, &intake), Builtin())
	require.Empty(t, faults)
	own, pair := leastOfRuns(&r), FindPair(context.Background(), &r, nil)
	assert.True(t, pair.Found())
	assert.Greater(t, pair.Margin().Value, own)
	assert.False(t, pair.Exhaust.Here)
}

// leastOfRuns is the least that the exhaust and the intake of a job keep from what is under the floor.
func leastOfRuns(r *Result) float64 {
	return LeastKept(r, vehicles.ExhaustRun, vehicles.IntakeRun).Or(math.Inf(1))
}

// An intake may end anywhere under the van that the rules allow, not at its edges alone.
func TestAnIntakeMayEndUnderTheVan(t *testing.T) {
	r := moved(t)
	found := FindRoute(context.Background(), r, vehicles.IntakeRun, Target{Edge: AnyEdge}, nil)
	require.True(t, found.Found())
	end := found.Run.Path[len(found.Run.Path)-1]
	inside := min(r.Job.OutlineLeft()-end.Y, r.Job.OutlineRight()+end.Y)
	assert.Greater(t, inside, 100.0, "%v", found.Run.Path)
	for _, edge := range Edges {
		if along := FindRoute(context.Background(), r, vehicles.IntakeRun, Target{Edge: edge}, nil); along.Found() {
			assert.LessOrEqual(t, found.Length, along.Length, edge)
		}
	}
	exhaust := FindRoute(context.Background(), r, vehicles.ExhaustRun, Target{Edge: AnyEdge}, nil)
	require.True(t, exhaust.Found())
	out := exhaust.Run.Path[len(exhaust.Run.Path)-1]
	assert.LessOrEqual(t, r.Job.OutlineLeft()-math.Abs(out.Y), 50.0, "an exhaust comes out")
}

// From the stubs of each of the sample's layouts a pair that leaves them straight down can be had, the layout's own: none that is proposed,
// in its place or on its own, gives that up for more room. Nor does a layout keep much less than a pair sought for its room alone, but for the
// step that it gives away for a plainer line.
func TestAPairFromALayoutsStubsLeavesThemStraightDown(t *testing.T) {
	r := judged(t, vehicles.Demo())
	for i, l := range layoutsOf(t, &r, 2).Best {
		bare := l.Result
		for _, of := range []vehicles.RunKind{vehicles.ExhaustRun, vehicles.IntakeRun} {
			run := *l.Result.Job.Run(of)
			run.Path = nil
			bare.Job = bare.Job.WithRun(of, &run)
		}
		for of, from := range map[string]*Result{"its own runs": &l.Result, "its stubs": &bare} {
			pair := FindPair(context.Background(), from, nil)
			require.True(t, pair.Found(), "%d, from %s", i+1, of)
			assert.Equal(t, [2]bool{true, true}, pair.straight(), "%d, from %s: %v, %v", i+1, of, pair.Exhaust.Run.Path, pair.Intake.Run.Path)
			t.Logf("%d, from %s: the layout keeps %.1f, a pair %.1f", i+1, of, leastOfRuns(&l.Result), pair.Margin().Value)
			assert.Greater(t, leastOfRuns(&l.Result), pair.Margin().Value-muchLess-marginGrade, "%d, from %s", i+1, of)
		}
	}
}

// muchLess is how much less a layout's exhaust and intake may keep than a pair that is sought for nothing but its room, mm.
const muchLess = 8

// Beside a pair the fuel line does not graze what it passes where there is room: the shortest keeps 2 or 3 mm of the rail.
func TestAFuelLineBesideAPairHasRoom(t *testing.T) {
	r := moved(t)
	line := *r.Job.Fuel
	bare := *r
	bare.Job = r.Job.WithRun(vehicles.FuelRun, nil)
	bare.Plan.Fuel = nil
	pair := Pair{Exhaust: Route{Run: r.Job.Exhaust}, Intake: Route{Run: r.Job.Intake}}
	found := FindFuelBeside(context.Background(), &bare, pair, &line, nil)
	require.True(t, found.Found())
	t.Logf("%.1f mm from %s, %.0f long", found.Margin.Value, found.Against, found.Length)
	assert.False(t, found.slopes)
	assert.GreaterOrEqual(t, found.Margin.Value, 10.0)
	after, faults := Judge(r.Job.WithRun(vehicles.FuelRun, found.Run), r.Book)
	require.Empty(t, faults)
	for _, f := range after.Findings {
		if f.Subject.Sort == TheFuel {
			assert.Equal(t, Clear, f.Verdict, "%s: %s", f.About(), f.Why)
		}
	}
}
