package rules

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Each value by kind is what a job is held to: a thing of that kind just nearer than the value and what the tape explains is
// foul, just farther is clear. The values are those of the table, not of the book.

// sharply is how close to its limit a thing is put, mm: less than any two values differ by.
const sharply = 0.05

// guard is how far from its limit a finding with a standard uncertainty must be to be clear or foul, mm: the 95 % point of the
// normal distribution.
func guard(sigma float64) float64 { return 1.645 * sigma }

// plainVan is a floor with a cut and nothing else, taped by a good tape.
func plainVan() vehicles.Job {
	return vehicles.Job{
		Ref:   "TL-07",
		Floor: vehicles.Floor{Length: 3200, Width: 1800, Thickness: 30, Ground: 450, Deck: vehicles.Steel, Layers: vehicles.NoLayers},
		Cut:   &vehicles.Cut{At: [2]float64{1200, 200}, Across: 127},
	}
}

// kinded is a thing of a kind of the table, which of a tank may say what it holds.
func kinded(kind string, near, far, right, left, top, bottom float64) vehicles.Obstruction {
	plain, diesel := strings.CutSuffix(kind, ofDiesel)
	o := box("thing", plain, near, far, right, left, top, bottom)
	if diesel {
		o.Holds = vehicles.Diesel
	}
	return o
}

// inTheMat is what runs inside the floor, from above.
func inTheMat(kind string, near, right, left float64) vehicles.Fitting {
	return vehicles.Fitting{
		Name: "thing", Kind: kind, Rise: vehicles.Span{From: -20, To: 4, Set: true},
		Place: vehicles.Place{X: vehicles.Pair{at(near), at(near + 80)}, Y: vehicles.Pair{at(right), at(left)}},
	}
}

// bolted has a bolt hole ahead of the cut, 7 mm across, at (1280, 260).
func bolted(job vehicles.Job) vehicles.Job {
	h, _ := vehicles.HeaterClass("2 kW")
	h.Bolts = [][2]float64{{80, 60}}
	h.Bolt = 7
	job.Heater = &h
	return job
}

// underneath has its heater over the beginning of a straight run, where both stubs come down.
func underneath(x float64) vehicles.Job {
	job := bolted(plainVan())
	job.Cut.At = [2]float64{x, 0}
	job.Heater.ExhaustStub, job.Heater.IntakeStub = [2]float64{}, [2]float64{}
	return job
}

// straight is a run under the floor's middle, from 500 to 2500, its centreline 100 deep.
func straight(across float64) *vehicles.Run {
	path := vehicles.List[vehicles.RunPoint]{{X: 500, Drop: 100}, {X: 2500, Drop: 100}}
	return &vehicles.Run{Across: across, Bend: vehicles.Some(60), Path: path}
}

// besideRun is a thing whose right side is so far from the surface of a straight run.
func besideRun(kind string, across, gap float64) vehicles.List[vehicles.Obstruction] {
	return vehicles.List[vehicles.Obstruction]{kinded(kind, 1000, 1100, across/2+gap, across/2+gap+100, 50, 150)}
}

// probes put a thing of a kind at a distance, mm, as each rule takes that, by rule.
var probes = map[string]func(kind string, gap float64) vehicles.Job{
	"cut.clearance": func(kind string, gap float64) vehicles.Job {
		job := plainVan()
		job.Obstructions = vehicles.List[vehicles.Obstruction]{kinded(kind, 1200+63.5+gap, 2100, 100, 300, 0, 60)}
		return job
	},
	"cut.fitting": func(kind string, gap float64) vehicles.Job {
		job := plainVan()
		job.Fittings = vehicles.List[vehicles.Fitting]{inTheMat(kind, 1200+63.5+gap, 100, 300)}
		return job
	},
	"hole.clearance": func(kind string, gap float64) vehicles.Job {
		job := bolted(plainVan())
		job.Obstructions = vehicles.List[vehicles.Obstruction]{kinded(kind, 1280+3.5+gap, 2100, 200, 300, 0, 60)}
		return job
	},
	"hole.fitting": func(kind string, gap float64) vehicles.Job {
		job := bolted(plainVan())
		job.Fittings = vehicles.List[vehicles.Fitting]{inTheMat(kind, 1280+3.5+gap, 200, 300)}
		return job
	},
	"exhaust.clearance": func(kind string, gap float64) vehicles.Job {
		job := underneath(500)
		job.Exhaust, job.Obstructions = straight(26), besideRun(kind, 26, gap)
		return job
	},
	"exhaust.clearance.shielded": func(kind string, gap float64) vehicles.Job {
		job := underneath(500)
		job.Exhaust, job.Obstructions = straight(26), besideRun(kind, 26, gap)
		job.Exhaust.Shielded.Names = []string{"thing"}
		return job
	},
	"intake.clearance": func(kind string, gap float64) vehicles.Job {
		job := underneath(500)
		job.Intake, job.Obstructions = straight(28), besideRun(kind, 28, gap)
		return job
	},
	"fuel.clearance": func(kind string, gap float64) vehicles.Job {
		job := underneath(500)
		job.Fuel, job.Obstructions = straight(4.5), besideRun(kind, 4.5, gap)
		job.Fuel.Bend = vehicles.Number{}
		return job
	},
	"exhaust.outlet": func(kind string, gap float64) vehicles.Job {
		job := underneath(350)
		job.Exhaust = straight(26)
		// From 450 no value leads to a full metre, where the tape gets worse.
		job.Exhaust.Path = vehicles.List[vehicles.RunPoint]{{X: 350, Drop: 150}, {X: 450, Drop: 150}}
		job.Openings = vehicles.List[vehicles.Opening]{{Name: "thing", Kind: kind, Drop: vehicles.Span{From: 100, To: 200, Set: true},
			Place: vehicles.Place{X: vehicles.Pair{at(450 + gap), at(2300)}, Y: vehicles.Pair{at(-100), at(100)}}}}
		return job
	},
	"stub.in-cut": func(kind string, gap float64) vehicles.Job {
		job := bolted(plainVan())
		run := straight(20)
		out := [2]float64{63.5 - 10 - gap, 0}
		switch kind {
		case "exhaust":
			job.Exhaust, job.Heater.ExhaustStub = run, out
		case "intake":
			job.Intake, job.Heater.IntakeStub = run, out
		default:
			job.Fuel, job.Heater.FuelStub = run, out
			run.Bend = vehicles.Number{}
		}
		return job
	},
	"runs.clip-span": func(kind string, gap float64) vehicles.Job {
		job, run := held(kind)
		run.Clips = []float64{250, 500, 500 + gap}
		for run.Clips[len(run.Clips)-1] < 1750 {
			run.Clips = append(run.Clips, run.Clips[len(run.Clips)-1]+250)
		}
		return job
	},
	"runs.clip-hold": func(kind string, gap float64) vehicles.Job {
		job, run := held(kind)
		for i := range run.Path { // the floor alone holds it
			run.Path[i].Drop = gap + run.Across/2
		}
		run.Clips = []float64{1000}
		return job
	},
}

// held is a job with one run, held to all that is asked of it.
func held(kind string) (job vehicles.Job, run *vehicles.Run) {
	job = underneath(500)
	job.RunChecks = vehicles.InFull
	switch kind {
	case "exhaust":
		job.Exhaust = straight(26)
		return job, job.Exhaust
	case "intake":
		job.Intake = straight(28)
		return job, job.Intake
	}
	job.Fuel = straight(4.5)
	job.Fuel.Bend = vehicles.Number{}
	return job, job.Fuel
}

// found is the finding of a rule that a job has one of, at most.
func found(t *testing.T, rule *Rule, job vehicles.Job) *Finding {
	t.Helper()
	var only *Finding
	result := judged(t, job)
	for i := range result.Findings {
		if f := &result.Findings[i]; f.Rule == rule {
			require.Nil(t, only, "two findings")
			only = f
		}
	}
	return only
}

func TestEachValueByKindIsWhatAThingOfThatKindIsHeldTo(t *testing.T) {
	for _, rule := range allRules {
		if rule.reach || len(entered()[rule.valued().ID]) == 0 {
			continue
		}
		require.Contains(t, probes, rule.ID, "a rule with values by kind")
		for _, kind := range rule.kinds() {
			t.Run(rule.ID+" "+kind, func(t *testing.T) { heldSharply(t, rule, kind) })
		}
	}
}

// heldSharply holds a rule to its value for a kind, from both sides.
func heldSharply(t *testing.T, rule *Rule, kind string) {
	need, probe := wanted(rule.valued().ID, kind), probes[rule.ID]
	just := found(t, rule, probe(kind, need))
	if none := vehicles.KindOf(kind).Is(vehicles.InSheetMetal) || rule == otherClipSpan && kind == "exhaust"; none {
		assert.Nil(t, just, "a swage is the sheet itself; the exhaust's clips have a rule of their own")
		return
	}
	require.NotNil(t, just)
	assert.InDelta(t, need, just.Value, 1e-6, "the thing is put where the value says")
	assert.Equal(t, vehicles.Some(need), just.Required)
	worse, off := -1., guard(just.Sigma)+sharply
	if rule.Sense == Most {
		worse = 1
	}
	assert.Less(t, off, 15., "else this would say little")
	assert.Equal(t, Foul, found(t, rule, probe(kind, need+worse*off)).Verdict)
	assert.Equal(t, Clear, found(t, rule, probe(kind, need-worse*off)).Verdict)
	if near := off - 2*sharply; near > 0 {
		assert.Equal(t, Doubtful, found(t, rule, probe(kind, need+worse*near)).Verdict)
		assert.Equal(t, Doubtful, found(t, rule, probe(kind, need-worse*near)).Verdict)
	}
}

// What lies as deep as the reach of its kind counts, with what the tape explains of its height; what lies deeper does not. What
// would kill counts however deep a job may say that it lies.
func TestEachReachByKindSaysHowDeepAThingOfThatKindCounts(t *testing.T) {
	for reach, clear := range map[*Rule]*Rule{cutReach: cutClear, holeReach: holeClear} {
		for _, kind := range reach.kinds() {
			t.Run(reach.ID+" "+kind, func(t *testing.T) {
				counts := func(top float64) bool {
					job := bolted(plainVan())
					job.Obstructions = vehicles.List[vehicles.Obstruction]{kinded(kind, 1100, 1300, 100, 300, top, min(top+50, survey.Longest))}
					return found(t, clear, job) != nil
				}
				need := wanted(reach.ID, kind)
				if vehicles.KindOf(kind).Is(vehicles.InSheetMetal) {
					assert.False(t, counts(0))
					return
				}
				height := guard(2 / math.Sqrt(3)) // a height is taken to 2 mm either way
				if need == survey.Longest {
					assert.True(t, counts(need))
					return
				}
				assert.True(t, counts(need+height-sharply))
				assert.False(t, counts(need+height+sharply))
			})
		}
	}
}
