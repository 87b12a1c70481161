package rules

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

func one(t *testing.T, job vehicles.Job, id, against string) Finding {
	t.Helper()
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	for _, f := range result.Findings {
		if f.ID() == id && f.Against.String() == against {
			return f
		}
	}
	require.Fail(t, "no finding", "%s %s", id, against)
	return Finding{}
}

// The sample of findings.md: the cut at (1210, 240) against the rear crossmember of the job file's sample, before the
// pilot hole was drilled. Value 412.824, sigma 1.792, nearest points (1146.5, 240) and (733.7, 240).
func TestTheSampleOfTheContract(t *testing.T) {
	job := tidy()
	job.Ties = nil
	job.Datum = vehicles.Datum{
		HookBelow: vehicles.Some(150), HookAbove: vehicles.Some(60), SideBelow: vehicles.Some(130),
		AboveLeft: vehicles.Some(885), AboveRight: vehicles.Some(885),
	}
	on, err := survey.Parse("+84", survey.X)
	require.NoError(t, err)
	member := box("rear crossmember", "crossmember", 652, 0, -850, 850, 0, 95)
	member.X[1] = on
	job.Obstructions = []vehicles.Obstruction{member}
	job.Rules = map[string]float64{"cut.clearance": 15}
	f := one(t, job, "cut.clearance", "rear crossmember")
	assert.InDelta(t, 412.824, f.Value, 0.001)
	assert.InDelta(t, 397.824, f.Margin.Value, 0.001)
	assert.InDelta(t, 1.792, f.Sigma, 0.001)
	assert.InDelta(t, 733.7, f.At[1].X, 0.05)
	assert.Equal(t, Clear, f.Verdict)
}

func TestVerdictsAreGuardedBothWays(t *testing.T) {
	m := func(v float64) vehicles.Number { return vehicles.Some(v) }
	for _, c := range []struct {
		margin vehicles.Number
		sigma  float64
		held   reasons
		want   Verdict
	}{
		{m(1.65), 1, 0, Clear}, {m(1.64), 1, 0, Doubtful}, {m(-1.64), 1, 0, Doubtful}, {m(-1.65), 1, 0, Foul},
		{m(0), 0, 0, Clear}, {m(-0.001), 0, 0, Foul}, {m(900), 1, unmeasured, Doubtful}, {m(-900), 1, unmeasured, Foul},
		{m(900), 1, loose, Doubtful}, {vehicles.Number{}, 0, 0, Doubtful},
	} {
		assert.Equal(t, c.want, verdict(c.margin, c.sigma, c.held), "%+v", c)
	}
}

func TestWhatNobodyHasJudgedIsDoubtful(t *testing.T) {
	var none Finding
	assert.Equal(t, Doubtful, none.Verdict)
	assert.Equal(t, Doubtful, Result{}.Verdict)
	j := judge{}
	assert.Equal(t, Doubtful, j.open(&Limit{Rule: &Rule{}}, the(TheCut), Thing{}).Verdict, "begun, and never ended")
	assert.Equal(t, []Verdict{Clear, Doubtful, Foul}, slices.Sorted(slices.Values([]Verdict{Foul, Clear, Doubtful})), "better first")
	for v, word := range map[Verdict]string{Clear: "clear", Doubtful: "doubtful", Foul: "foul"} {
		assert.Equal(t, word, v.String())
	}
}

func TestWhyIsSaidInAFittersWords(t *testing.T) {
	job := tidy()
	job.Rules = map[string]float64{"fuel.suction": 100}
	job.Obstructions = append(job.Obstructions, box("bracket", "other", 1210+63.5+6, 1400, 200, 300, 0, 50))
	assert.Equal(t, "14 mm too close", one(t, job, "cut.clearance", "bracket").Why)
	assert.Equal(t, "needs your heater's figure", one(t, job, "fuel.delivery", "").Why)
	assert.Equal(t, "100 mm too much", one(t, job, "fuel.suction", "").Why)
	job.Obstructions[len(job.Obstructions)-1].X = vehicles.Pair{at(1900), at(2000)}
	job.Obstructions[len(job.Obstructions)-1].Measured = false
	assert.Equal(t, "not measured on this van", one(t, job, "cut.clearance", "bracket").Why)
	assert.Equal(t, Doubtful, one(t, job, "cut.clearance", "bracket").Verdict)
}

func TestTiesThatDisagreeHoldBackWhatRestsOnThem(t *testing.T) {
	job := tidy()
	job.Ties[1].Above[0] = at(2820)
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	for _, f := range result.Findings {
		rests := f.ID() == "ties.fit" || f.Spread.Frames > 0
		assert.Equal(t, rests, f.Verdict == Doubtful, "%s %s", f.ID(), f.Against)
	}
	drilled := vehicles.Pair{at(1210), at(240)}
	job.Cut.Drilled = &drilled // measured from below: what was measured from below needs no ties any more
	assert.Equal(t, Clear, one(t, job, "cut.on-floor", "floor").Verdict)
	assert.Equal(t, Doubtful, one(t, job, "plate.fitting", "battery box").Verdict)
}

func TestAnIncompleteJobIsAtBestDoubtful(t *testing.T) {
	job := tidy()
	floor := vehicles.Job{Floor: job.Floor}
	result, faults := Judge(floor, Builtin())
	require.Empty(t, faults)
	assert.Equal(t, Doubtful, result.Verdict)
	assert.Equal(t, []Lack{"cut", "exhaust", "muffler", "clips", "intake", "fuel", "pump", "turret", "ties", "openings", "fittings"}, result.Unchecked)
	floor.Cut = job.Cut
	result, _ = Judge(floor, Builtin())
	assert.Equal(t, Clear, result.Findings[0].Verdict)
	assert.Equal(t, Doubtful, result.Verdict, "a cut and no obstruction")
	floor.Looked = map[string]bool{"wiring": true, "brake line": false}
	result, _ = Judge(floor, Builtin())
	assert.NotContains(t, result.NotLookedFor, "wiring")
	assert.Contains(t, result.NotLookedFor, "brake line")
	assert.NotContains(t, result.NotLookedFor, "other", "nobody can look for what has no name")
}

// A run without clips is one that hangs free; what nobody has said of is not checked.
func TestNoClipsAreOtherThanNothingSaidOfClips(t *testing.T) {
	job := tidy()
	for _, clips := range [][]float64{nil, {}, {200}} {
		run := *job.Exhaust
		run.Clips = clips
		result := judged(t, job.WithRun(vehicles.ExhaustRun, &run))
		assert.Equal(t, clips == nil, slices.Contains(result.Unchecked, "clips"), "%#v", clips)
		assert.Equal(t, clips != nil, slices.ContainsFunc(result.Findings, func(f Finding) bool { return f.ID() == "exhaust.clip-span" }), "%#v", clips)
	}
}

func TestShieldedValuesHoldForAShieldedExhaust(t *testing.T) {
	job := tidy()
	assert.Equal(t, 120.0, one(t, job, "exhaust.clearance", "a brake line").Required.Value)
	job.Exhaust.Shielded.All = true
	assert.Equal(t, 60.0, one(t, job, "exhaust.clearance", "a brake line").Required.Value)
	job.Rules["exhaust.clearance.shielded.brake line"] = 33
	assert.Equal(t, 33.0, one(t, job, "exhaust.clearance", "a brake line").Required.Value)
}

func TestLowPointsAreDrainedByMufflerOrOutlet(t *testing.T) {
	muffler := func(leg int, start, length float64) *vehicles.Muffler {
		return &vehicles.Muffler{Leg: leg, Start: start, Length: length, Across: 60}
	}
	for _, c := range []struct {
		name    string
		drops   []float64 // of points 400 mm apart, behind the stub's 45
		muffler *vehicles.Muffler
		want    float64
	}{
		{"falls to its outlet", []float64{100, 150, 160}, nil, 0},
		{"rises from its stub", []float64{40, 30, 20}, nil, 1},
		{"a sag", []float64{100, 200, 150}, nil, 1},
		{"a sag with the muffler off it", []float64{100, 200, 150}, muffler(3, 10, 100), 1},
		{"a sag with the muffler on it", []float64{100, 200, 150}, muffler(3, 0, 100), 0},
		{"a level sag", []float64{100, 200, 200.4, 150}, nil, 1},
		{"a level sag with the muffler in it", []float64{100, 200, 200.4, 150}, muffler(3, 100, 100), 0},
		{"a shelf of 0.5 mm above its sag counts with it", []float64{100, 200, 199.5, 250, 260}, nil, 0},
		{"a shelf of 0.6 mm above its sag does not", []float64{100, 200, 199.4, 250, 260}, nil, 1},
		{"two sags", []float64{200, 100, 200, 100}, nil, 2},
		{"level to its outlet", []float64{100, 200, 200}, nil, 0},
	} {
		job := tidy()
		job.Exhaust.Path, job.Exhaust.Clips, job.Exhaust.Muffler = nil, nil, c.muffler
		for i, drop := range c.drops {
			job.Exhaust.Path = append(job.Exhaust.Path, vehicles.RunPoint{X: 1245 + 400*float64(i+1), Y: 265, Drop: drop})
		}
		assert.Equal(t, c.want, one(t, job, "exhaust.drains", "").Value, c.name)
	}
}

func TestFallsOfLegs(t *testing.T) {
	job := tidy()
	assert.Equal(t, 1e6, one(t, job, "exhaust.fall", "leg 1").Value, "straight down")
	assert.InDelta(t, 1000*10./235, one(t, job, "exhaust.fall", "leg 2").Value, 1e-9)
	job.Exhaust.Path[0].Drop = 20
	assert.Equal(t, -1e6, one(t, job, "exhaust.fall", "leg 1").Value, "straight up")
}

func TestWhatIsMeasuredWrongOverlaps(t *testing.T) {
	job := tidy()
	plan, faults := vehicles.Reduce(job)
	require.Empty(t, faults)
	assert.Empty(t, overlapsOf(plan))
	n := len(job.Obstructions)
	job.Obstructions = append(job.Obstructions,
		box("rail", "chassis rail", 2000, 2400, 0, 80, 0, 90), box("pipe", "brake line", 2100, 2110, 40, 200, 50, 60),
		box("below the rail", "wiring", 2100, 2110, 0, 80, 95, 120), box("on its side", "floor rib", 2000, 2400, 78, 100, 0, 90))
	plan, faults = vehicles.Reduce(job)
	require.Empty(t, faults)
	assert.Equal(t, []Overlap{{A: n, B: n + 1, Depth: 40}, {A: n + 1, B: n + 3, Depth: 60}}, overlapsOf(plan))
}

func TestPilotMayMoveWhileTheCutSwallowsIt(t *testing.T) {
	job := tidy()
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	sheet := Marks(result)
	assert.Equal(t, 59.5, sheet.Pilot.Inside)  // 127 / 2 - 6 / 2 - 1, the contract's sample
	assert.Equal(t, 56.5, sheet.Pilot.MayMove) // 127 / 2 - 4 - 6 / 2
	assert.Nil(t, sheet.Pilot.Drilled)
	job.Cut = nil
	result, faults = Judge(job, Builtin())
	require.Empty(t, faults)
	assert.Empty(t, Marks(result).Marks)
	data, err := MarksJSON(result)
	require.NoError(t, err)
	assert.Contains(t, string(data), `"marks":[],"pilot":null`)
}

// Who reads that the exhaust is clear of a brake pipe must know that it counts on a shield.
func TestAShieldIsSaid(t *testing.T) {
	job := tidy()
	run := *job.Exhaust
	name := job.Obstructions[0].Name
	run.Shielded = vehicles.Shields{Names: []string{name}}
	result := judged(t, job.WithRun(vehicles.ExhaustRun, &run))
	said := 0
	for i := range result.Findings {
		if f := &result.Findings[i]; f.ID() == "exhaust.clearance" {
			assert.Equal(t, f.Against.Name == name, f.Shielded())
			assert.Equal(t, f.Shielded(), strings.HasSuffix(f.About(), " (shielded)"))
			if f.Shielded() {
				said++
			}
		}
	}
	assert.Equal(t, 1, said)
	data, err := json.Marshal(result)
	require.NoError(t, err)
	assert.Equal(t, 1, strings.Count(string(data), `"shielded":true`))
}
