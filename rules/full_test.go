package rules

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// askedInFull are the rules that only a job asks that says so.
var askedInFull = []*Rule{
	exhaustBlast, exhaustUpwind, exhaustFiller, intakeUpwind, intakeSpray, departure, breakover, fullTravel, throughFitting, firstClip,
	otherClipSpan, clipHold, mufflerReach, pumpReach, filterReach, fuelHumps, pumpHeat, petrolHeat, FuelLift, petrolLift, FuelHead, petrolHead, petrolSuction,
	petrolDeliver,
}

// What other programs' jobs give is what it was: none of these rules says a word of them, whatever they have.
func TestJobsThatDoNotAskAreJudgedAsBefore(t *testing.T) {
	files, err := filepath.Glob("../testdata/cases/*.toml")
	require.NoError(t, err)
	require.Len(t, files, 34)
	jobs := []vehicles.Job{vehicles.Demo()}
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		if job, err := vehicles.ParseJob(data, file, Builtin()); err == nil {
			jobs = append(jobs, job)
		}
	}
	require.Greater(t, len(jobs), 30)
	for _, job := range jobs {
		job.RunChecks = ""
		for _, f := range judged(t, job).Findings {
			assert.False(t, slices.Contains(askedInFull, f.Rule), "%s: %s", job.Ref, f.Rule.ID)
		}
	}
}

// In full each rule that a job has anything for says something, and no two findings are called alike.
func TestTheSampleVanIsAskedInFull(t *testing.T) {
	said, called := map[*Rule]bool{}, map[string]bool{}
	for _, f := range judged(t, vehicles.Demo()).Findings {
		said[f.Rule] = true
		name := f.Rule.Title + f.About()
		assert.False(t, called[name], name)
		called[name] = true
	}
	for _, r := range []*Rule{
		exhaustBlast, exhaustUpwind, exhaustFiller, intakeUpwind, intakeSpray, breakover, fullTravel, firstClip, otherClipSpan, clipHold,
		mufflerReach, pumpReach, pumpHeat, FuelLift, FuelHead,
	} {
		assert.True(t, said[r], r.ID)
	}
}

// What is asked in full rests on what somebody must say.
func TestWhatIsAskedInFullIsUnanswered(t *testing.T) {
	job := vehicles.Demo()
	unanswered := func(change func(*vehicles.Job)) []string {
		job := job
		change(&job)
		return judged(t, job).Unanswered
	}
	of := func(kind vehicles.RunKind, change func(*vehicles.Run)) func(*vehicles.Job) {
		return func(j *vehicles.Job) {
			run := *j.Run(kind)
			change(&run)
			*j = j.WithRun(kind, &run)
		}
	}
	before := unanswered(func(*vehicles.Job) {})
	for word, change := range map[string]func(*vehicles.Job){
		RunsInFull:               func(j *vehicles.Job) { j.RunChecks = "" },
		"where the wheels stand": func(j *vehicles.Job) { j.Wheels = j.Wheels[:2] },
		"clips of the intake":    of(vehicles.IntakeRun, func(r *vehicles.Run) { r.Clips = nil }),
		"clips of the fuel line": of(vehicles.FuelRun, func(r *vehicles.Run) { r.Clips = nil }),
		"diesel or petrol":       of(vehicles.FuelRun, func(r *vehicles.Run) { r.Supply.Kind = "" }),
	} {
		assert.NotContains(t, before, word)
		assert.Equal(t, append(slices.Clone(before), word), unanswered(change))
	}
	bare := func(j *vehicles.Job) { j.Exhaust, j.Intake, j.Fuel, j.Wheels, j.RunChecks = nil, nil, nil, nil, "" }
	assert.NotContains(t, unanswered(bare), RunsInFull, "there is nothing to ask of")
}

// Of the deck that the stub stands in it is asked what it is; of any but timber what lies on it, and where that is wood how far it is cut back, as long as
// nobody said so.
func TestWhatIsAskedOfTheDeck(t *testing.T) {
	const what, lining, back = "deck: steel or timber", "wood, foam or lining on the deck", "how wide wood is cut back at the hole"
	for _, c := range []struct {
		deck, layers string
		back         vehicles.Number
		asked        []string
	}{
		{"", "", vehicles.Number{}, []string{what, lining}},
		{vehicles.Steel, "", vehicles.Number{}, []string{lining}},
		{vehicles.Timber, "", vehicles.Number{}, nil},
		{vehicles.Steel, vehicles.NoLayers, vehicles.Number{}, nil},
		{vehicles.Steel, "", vehicles.Some(60), nil},
	} {
		job := vehicles.Demo()
		cut := *job.Cut
		cut.Relieved = c.back
		job.Cut, job.Stack, job.Floor.Deck, job.Floor.Layers = &cut, nil, c.deck, c.layers
		var asked []string
		for _, word := range judged(t, job).Unanswered {
			if word == what || word == lining || word == back {
				asked = append(asked, word)
			}
		}
		assert.Equal(t, c.asked, asked, "%q with %q on it, cut back by %v", c.deck, c.layers, c.back)
	}
}

// The angle of a ramp is the greatest at which a plane that touches the tyre leaves the round above it, by that definition alone: ISO 612
// from memory.
func TestTheAngleOfARampIsThatOfItsDefinition(t *testing.T) {
	const ground = 450.0
	r := rand.New(rand.NewPCG(612, 1))
	for n := range 2000 {
		a := axle{2000 * r.Float64(), 250 + 150*r.Float64()}
		radius := 2 + 40*r.Float64()
		at := geometry.Point3{X: a.x + (a.radius+radius+5+1500*r.Float64())*[]float64{-1, 1}[n%2], Z: radius - ground + 400*r.Float64()}
		clears := func(deg float64) bool {
			sin, cos := math.Sincos(deg * math.Pi / 180)
			// the plane touches the tyre, whose middle is a.radius over the ground, at its lower side away from the van
			along, up := math.Abs(at.X-a.x)-a.radius*sin, at.Z+ground-(a.radius-a.radius*cos)
			return up*cos-along*sin >= radius
		}
		low, high := -60.0, 90.0
		for high-low > 1e-9 {
			if middle := (low + high) / 2; clears(middle) {
				low = middle
			} else {
				high = middle
			}
		}
		assert.InDelta(t, low, a.steep(ground, at.X, at.Z, radius), 1e-6, "%v %v %v", a, at, radius)
	}
	over := axle{1000, 340}
	assert.Equal(t, 90.0, over.steep(ground, 1100, -100, 13), "right over the tyre no ramp reaches it")
}

// What is between two places that are asked is no lower than what is said by more than 0.01 degrees: all along the van, and near the
// tyre, where the angle changes most.
func TestRampsAreAskedFinelyEnough(t *testing.T) {
	rear, front := &axle{600, 340}, &axle{3900, 340}
	for _, c := range []struct{ span, bend float64 }{{2800, 60}, {600, 60}, {600, 25}, {200, 60}} {
		r := rand.New(rand.NewPCG(612, 2))
		for range 400 {
			corner := func() geometry.Point3 {
				return geometry.Point3{X: 650 + c.span*r.Float64(), Y: 1000*r.Float64() - 500, Z: -50 - 300*r.Float64()}
			}
			run := &vehicles.LaidRun{Path: []geometry.Point3{corner(), corner(), corner(), corner()}, Radius: 13}
			run.Line = geometry.Rounded(run.Path, c.bend)
			said, finest := math.Inf(1), math.Inf(1)
			eachRound(run, everyPlace, func(at geometry.Point3, radius float64) {
				if deg, ok := breaking(450, rear, front, placeAt(at), radius); ok {
					said = min(said, deg)
				}
			})
			for s := 0.0; s <= run.Line.Length(); s += 0.25 {
				if deg, ok := breaking(450, rear, front, placeAt(run.Line.At(s)), 13); ok {
					finest = min(finest, deg)
				}
			}
			assert.LessOrEqual(t, said, finest+0.01, "%+v", c)
		}
	}
}

// What a ramp's angle owes to the height that a run is put up at.
func TestTheSigmaOfARamp(t *testing.T) {
	for _, f := range judged(t, vehicles.Demo()).Findings {
		if f.Rule != breakover {
			continue
		}
		at, half := f.At[0], 1e-3
		radius := map[Sort]float64{TheExhaust: 34, TheIntake: 14, TheFuel: 2.25}[f.Subject.Sort]
		rear, front := &axle{820, 340}, &axle{4490, 340}
		angle := func(z float64) float64 {
			deg, ok := breaking(460, rear, front, placeAt(geometry.Point3{X: at.X, Y: at.Y, Z: z}), radius)
			require.True(t, ok)
			return deg
		}
		assert.InDelta(t, f.Value, angle(at.Z), 1e-9, f.About())
		slope := (angle(at.Z+half) - angle(at.Z-half)) / (2 * half)
		assert.InDelta(t, slope*2/math.Sqrt(3), f.Sigma, 1e-3, f.About()) // heights are good to 2 mm either way
		assert.Equal(t, uint8(1), f.Places)
	}
}

// A run that is sought in a job that asks for everything keeps everything, by the judge of all jobs.
func TestARunSoughtInFullKeepsAllThatIsAsked(t *testing.T) {
	r := moved(t)
	job := r.Job
	job.RunChecks = vehicles.InFull
	job.Obstructions = slices.DeleteFunc(slices.Clone(job.Obstructions), func(o vehicles.Obstruction) bool {
		return o.Is(vehicles.Travels) || o.Kind == "spare wheel" // else none leads to the rear
	})
	fuel := *job.Fuel
	fuel.Clips = []float64{} // breaks a rule that is not of what is sought
	job = job.WithRun(vehicles.FuelRun, &fuel)
	full := judged(t, job)
	for _, c := range []struct {
		kind vehicles.RunKind
		edge Edge
	}{{vehicles.ExhaustRun, LeftEdge}, {vehicles.IntakeRun, RearEdge}} {
		t.Run(fmt.Sprint(c.kind, c.edge), func(t *testing.T) {
			found := FindRoute(context.Background(), &full, c.kind, Target{Edge: c.edge}, nil)
			require.True(t, found.Found())
			assert.Equal(t, Clear, found.Verdict)
			kept := map[*Rule]bool{}
			for _, f := range judgedWith(t, &full, c.kind, &found) {
				assert.Equal(t, Clear, f.Verdict, "%s: %s", f.About(), f.Why)
				kept[f.Rule] = true
			}
			if c.kind == vehicles.IntakeRun {
				assert.True(t, kept[departure] && kept[breakover] && kept[intakeSpray])
			} else {
				assert.True(t, kept[firstClip] && kept[clipHold] && kept[mufflerReach])
			}
		})
	}
}

// The way of a run that is sought is kept off what moves, and over ramps, before any is judged.
func TestTheSearchHeedsTravelAndRamps(t *testing.T) {
	count := func(change func(*vehicles.Job)) int {
		job := moved(t).Job
		change(&job)
		result := judged(t, job)
		j := newJudge(&result.Job, &result.Plan, result.Book)
		return len(newCourse(j, vehicles.IntakeRun, nil, demand{searched: coverage}).query.Obstacles)
	}
	plain := count(func(*vehicles.Job) {})
	full := func(j *vehicles.Job) { j.RunChecks, j.Wheels = vehicles.InFull, nil }
	assert.Equal(t, plain+6, count(full), "axle, two springs, two tyres, shaft")
	assert.Equal(t, plain+1, count(func(j *vehicles.Job) {
		at, _ := j.ObstructionNamed("rear axle")
		axle := j.Obstructions[at]
		axle.Travel = vehicles.Some(50)
		j.Obstructions = j.Obstructions.With(at, axle)
	}), "of a thing whose travel is said in any job")
	low := func(j *vehicles.Job) {
		full(j)
		j.Wheels = vehicles.Demo().Wheels
		j.Rules = map[string]float64{"intake.ground": 1, "runs.departure": 25, "runs.breakover": 25}
	}
	assert.Greater(t, count(low), plain+6)
}

// A key press judges anew: what is asked in full must not be felt.
func BenchmarkInFull(b *testing.B) {
	for _, asked := range []string{"", vehicles.InFull} {
		job := vehicles.Demo()
		job.RunChecks = asked
		b.Run("runs="+asked, func(b *testing.B) {
			for b.Loop() {
				if _, faults := Judge(job, Builtin()); len(faults) > 0 {
					b.Fatal(faults)
				}
			}
		})
	}
}
