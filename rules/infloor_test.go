package rules

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// loom is a fitting of a kind along the van at y, 20 thick.
func loom(kind string, y, foot, top float64) vehicles.Fitting {
	return vehicles.Fitting{Name: "loom", Kind: kind, Rise: vehicles.Span{From: foot, To: top, Set: true}, Place: vehicles.Place{
		Shape: vehicles.Piped, Path: []vehicles.Pair{{at(200), at(y)}, {at(3000), at(y)}}, Across: vehicles.Some(20),
	}}
}

// drawnFitting is something inside the floor, wherever and of whatever shape.
func drawnFitting(t *rapid.T) vehicles.Fitting {
	f := loom(rapid.SampledFrom(vehicles.Kinds).Draw(t, "kind"), 0, -float64(rapid.IntRange(0, 20).Draw(t, "foot")), 4)
	f.Place = things(t)[0].Place
	return f
}

func findingOf(r *Result, id, against string) *Finding {
	for i := range r.Findings {
		if f := &r.Findings[i]; f.ID() == id && f.Against.Name == against {
			return f
		}
	}
	return nil
}

// Moving what lies inside the floor and the hole by the same way changes no distance between them.
func TestMovingCutAndLoomTogetherChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := tidy()
		job.Ties, job.Fittings, job.Obstructions = nil, []vehicles.Fitting{drawnFitting(t)}, nil
		job.Exhaust, job.Intake, job.Fuel = nil, nil, nil
		heater := *job.Heater
		heater.Yaw, heater.Bolts, heater.Bolt = float64(rapid.IntRange(-180, 180).Draw(t, "yaw")), [][2]float64{{80, 60}, {-80, -60}}, 7
		job.Heater = &heater
		before := judged(t, job)
		dx, dy := float64(rapid.IntRange(0, 900).Draw(t, "dx")), float64(rapid.IntRange(-400, 400).Draw(t, "dy"))
		job.Openings = nil
		job = changed(withoutRuns(job), func(x float64) float64 { return x + dx }, func(y float64) float64 { return y + dy }, 1)
		job.Exhaust, job.Intake, job.Fuel = nil, nil, nil
		after := judged(t, job)
		for _, id := range []string{"cut.fitting", "hole.fitting"} {
			p, q := findingOf(&before, id, "loom"), findingOf(&after, id, "loom")
			if require.Equal(t, p == nil, q == nil); p == nil {
				require.Equal(t, "swage", job.Fittings[0].Kind)
				continue
			}
			require.InDelta(t, p.Value, q.Value, 1e-9)
			require.Equal(t, p.Required, q.Required)
		}
	})
}

// withoutRuns gives a job empty runs, for changed.
func withoutRuns(job vehicles.Job) vehicles.Job {
	job.Exhaust, job.Intake, job.Fuel = &vehicles.Run{}, &vehicles.Run{}, &vehicles.Run{}
	return job
}

// What it asks of the place of the cut is what its findings say there.
func TestWhatLiesInsideTheFloorCountsForThePlaceOfTheCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := tidy()
		heater := *job.Heater
		heater.Yaw, heater.Bolts, heater.Bolt = float64(rapid.IntRange(-180, 180).Draw(t, "yaw")), [][2]float64{{80, 60}, {-80, -60}}, 7
		job.Heater, job.Fuel = &heater, nil
		job.Obstructions, job.Fittings = nil, []vehicles.Fitting{drawnFitting(t)}
		r := judged(t, job)
		j := newJudge(&r.Job, &r.Plan, r.Book)
		for id, keeps := range map[string][]keep{"cut.fitting": j.keeps(AFitting), "hole.fitting": keepBoltsInFloor(&j, rulesByID()["hole.fitting"])} {
			f := findingOf(&r, id, "loom")
			if f == nil {
				require.Empty(t, keeps)
				continue
			}
			margin, _ := worst(keeps, r.Plan.Cut.At)
			require.Equal(t, f.Margin.Value > 0, margin > 0, "%s: %v, %v", id, f.Margin.Value, margin)
			if f.Value > 0 {
				require.InDelta(t, f.Margin.Value, margin, 1e-6, id)
			}
		}
	})
}

// The room for the cut alone is that of its clearance and the floor, as other programs know it: a loom that lies across the
// best place moves neither. The saw's room and with it the heater's, the shade, the assistant and the best move know of it.
func TestPlainSuggestLeavesOutWhatLiesInsideTheFloor(t *testing.T) {
	job := tidy()
	job.Ties, job.Obstructions = nil, nil
	plain := judged(t, job)
	job.Fittings = append(job.Fittings, loom("brake line", 240, -12, 0))
	with := judged(t, job)
	at := geometry.Point{X: 1210, Y: 240}
	assert.Equal(t, RoomForCut(&plain).Margins.At(at).Margin, RoomForCut(&with).Margins.At(at).Margin)
	assert.InDelta(t, -10-63.5-60, roomForHeater(&with, 0).Margins.At(at).Margin, 1e-9, "through its middle: 10 of the loom, the cut, and 60 asked")
	assert.Greater(t, roomForHeater(&plain, 0).Margins.At(at).Margin, 0.0)
	near := RoomForTurning(&with).Near(at)
	require.Len(t, near, 1)
	assert.InDelta(t, 10+63.5+60, math.Abs(near[0].At.Y-240), 0.2, "suggest --yaw: aside by the loom, the cut and what is asked")
	move := bestMove(&with, 200)
	assert.Greater(t, move.Margin, move.Before)
	assert.InDelta(t, 200-133.5, move.Margin, 1, "straight away from it")
	assert.InDelta(t, -10-63.5-60, RoomForSaw(&with).Margins.At(at).Margin, 1e-9)
	doubt := DoubtOfCut(Doubt{}, &with)
	assert.Less(t, doubt.Sure.Margins.At(at).Margin, -10-63.5-60.)
	assert.InDelta(t, 2*(-10-63.5-60), doubt.Sure.Margins.At(at).Margin+doubt.Possible.Margins.At(at).Margin, 1e-9, "as much to either side")
	with.Job.Heater = nil
	assert.InDelta(t, -10-63.5-60, bestMove(&with, 20).Before, 1e-9, "without a heater too")
}

// Only what may be moved is said to be in the way: a loom is, a brake line is not, whichever side of the sheet it is on.
func TestWhatLiesInsideTheFloorIsMovedOnlyWhereItMayBe(t *testing.T) {
	job := tidy()
	job.Obstructions = nil
	job.Fittings = append(job.Fittings, loom("brake line", 240, -12, 0), loom("wiring", 300, -12, 0))
	job.Fittings[1].Name = "brake pipe"
	var names []string
	r := judged(t, job)
	for _, s := range movableOf(&r) {
		names = append(names, s.Name)
	}
	assert.Equal(t, []string{"battery box", "loom"}, names)
	job.Fittings = job.Fittings.Without(1)
	job.Wish = &vehicles.Wish{At: job.Cut.At, Within: vehicles.Some(20)}
	r = judged(t, job)
	a, err := FindLayouts(t.Context(), &r, 2, func(Progress) {})
	require.NoError(t, err)
	require.NotEmpty(t, a.Shifts, "the loom lies across it")
	assert.Equal(t, "loom", a.Shifts[0].Name)
	assert.InDelta(t, 45, a.Shifts[0].By.Norm(), 1e-9, "from 300 to what is asked as far from the wish as may be, 50+63.5+10+1-20-60, in whole fives")
}

// A fault with a fitting of a deadly kind may kill, under whatever rule; the values are those of what lies below the floor.
func TestWhatAFaultWithAFittingCanDo(t *testing.T) {
	job := tidy()
	job.Fittings = []vehicles.Fitting{loom("gas pipe", 400, -12, 10), loom("wiring", 500, -12, 10)}
	job.Fittings[1].Name = "wires"
	job.Rules["cut.clearance.gas pipe"] = 77
	r := judged(t, job)
	pipe, wires := findingOf(&r, "cut.fitting", "loom"), findingOf(&r, "cut.fitting", "wires")
	assert.Equal(t, []Weight{Kills, Damages}, []Weight{pipe.Weight, wires.Weight})
	assert.Equal(t, []float64{77, 50}, []float64{pipe.Required.Value, wires.Required.Value})
	assert.Equal(t, "cut.clearance.gas pipe", pipe.Key(), "where a value of one's own goes")
	assert.Equal(t, Kills, findingOf(&r, "plate.fitting", "loom").Weight)
	assert.Equal(t, Kills, findingOf(&r, "body.space", "loom").Weight)
	data, err := json.Marshal(r)
	require.NoError(t, err)
	assert.Contains(t, string(data), `"id":"cut.fitting","subject":"cut","against":"loom","kind":"gas pipe"`)
}

func TestValuesOfWhatLiesInsideTheFloorAreGivenUnderTheOtherRule(t *testing.T) {
	job := tidy()
	job.Rules = map[string]float64{"cut.fitting": 40}
	faults := Builtin().Wrong(job)
	require.Len(t, faults, 1)
	assert.Equal(t, `rules: "cut.fitting" goes by the values of "cut.clearance": give yours there`, faults[0].Text)
	_, err := LoadBook(writeBook(t, "format = 1\n[[rule]]\nid = \"hole.fitting\"\nvalue = 3\n"))
	assert.ErrorContains(t, err, `"hole.fitting" goes by the values of "hole.clearance": give yours there`)
}

// The cut is at y 240 and its rim at 303.5: a cable's edge at 593.5 is 290 mm from the cut, one at 613.5 is 310 mm away.
func TestWhatIsDangerousAboveCallsForItsCaution(t *testing.T) {
	for _, c := range []struct {
		about, kind string
		y, foot     float64
		applies     bool
	}{
		{"inside the floor", "high-voltage cable", 603.5, -12, true},
		{"a battery there", "traction battery", 603.5, -12, true},
		{"beyond reach", "high-voltage cable", 623.5, -12, false},
		{"a loom is none", "wiring", 603.5, -12, false},
		{"on top of the floor", "high-voltage cable", 603.5, 100, true},
		{"a battery that stands on it", "traction battery", 603.5, 0, true},
		{"a battery there, beyond reach", "traction battery", 623.5, 0, false},
		{"a loom on top is none", "wiring", 603.5, 100, false},
		{"a fuel tank on top, of nobody knows what", "fuel tank", 603.5, 100, true},
		{"a fuel tank there, beyond reach", "fuel tank", 623.5, 100, false},
	} {
		job := tidy()
		job.Exhaust, job.Intake, job.Fuel, job.Heater, job.Obstructions = nil, nil, nil, nil, nil
		job.Fittings = []vehicles.Fitting{loom(c.kind, c.y, c.foot, 110)}
		r := judged(t, job)
		assert.Equal(t, c.applies, len(Dangers(&r)) == 1, c.about)
	}
}

func TestWhatToDoAboutHighVoltageInsideTheFloor(t *testing.T) {
	job := tidy()
	job.Fittings = []vehicles.Fitting{loom("high-voltage cable", 310, -12, 10), loom("gas pipe", 320, -12, 10)}
	job.Fittings[1].Name = "pipe"
	r := judged(t, job)
	const move = "move the cut away from it, in Place, or lay it elsewhere."
	assert.Equal(t, "do not drill near it, trained people only; "+move, r.Advice(findingOf(&r, "cut.fitting", "loom")))
	assert.Equal(t, move, r.Advice(findingOf(&r, "cut.fitting", "pipe")))
}

// A swage is pressed into the sheet: no loom runs in it, and it is judged under the plate.
func TestASwageIsNotInsideTheFloor(t *testing.T) {
	for kind, inside := range map[string]bool{"swage": false, "wiring": true, "": true} {
		assert.Equal(t, inside, InsideFloor(&vehicles.Fitting{Kind: kind, Rise: vehicles.Span{From: -3, To: 2}}), kind)
	}
}

// What has a kind runs inside the floor where its foot is lower than 5 mm above it, as DEVELOPERS.md says of `kind`; a swage is the sheet itself,
// and what has no kind is inside only below it. common practice, no source
func TestWhatLiesLowerThanAMatIsInsideTheFloor(t *testing.T) {
	for _, c := range []struct {
		kind   string
		foot   float64
		inside bool
	}{{"wiring", 4.9, true}, {"wiring", 5, false}, {"swage", -3, false}, {"", -0.1, true}, {"", 0, false}, {"", 4.9, false}} {
		f := loom(c.kind, 0, c.foot, 30)
		assert.Equal(t, c.inside, InsideFloor(&f), "%q, its foot at %g", c.kind, c.foot)
	}
}
