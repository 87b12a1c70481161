package work

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/vehicles"
)

func judged(t require.TestingT, job vehicles.Job) *rules.Result {
	r, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	return &r
}

// with is the sample van with something changed.
func with(change func(*vehicles.Job)) vehicles.Job {
	job := vehicles.Demo()
	change(&job)
	return job
}

// bare is a van in which nothing is planned and nothing was found.
var bare = vehicles.Job{Ref: "TL-80", Floor: vehicles.Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460}}

func found(kind string) vehicles.Job {
	return with(func(j *vehicles.Job) {
		o := j.Obstructions[0]
		o.Name, o.Kind = "what was found", kind
		j.Obstructions = j.Obstructions.Insert(0, o)
	})
}

// under is the sample van with a thing of a kind under its cut.
func under(kind string) vehicles.Job {
	return with(func(j *vehicles.Job) {
		o := j.Obstructions[slices.IndexFunc(j.Obstructions, func(o vehicles.Obstruction) bool { return o.Kind == "spare wheel" })]
		o.Name, o.Kind, o.Drop = "under the cut", kind, vehicles.Span{From: 40, To: 90, Set: true}
		j.Obstructions, j.Cut = j.Obstructions.Insert(0, o), &vehicles.Cut{At: [2]float64{425, 0}, Across: 127}
	})
}

func run(of vehicles.RunKind, change func(*vehicles.Run)) vehicles.Job {
	job := vehicles.Demo()
	r := *job.Run(of)
	change(&r)
	return job.WithRun(of, &r)
}

func heater(change func(*vehicles.Heater)) vehicles.Job {
	job := vehicles.Demo()
	h := *job.Heater
	change(&h)
	return job.WithHeater(h)
}

var (
	demo   = vehicles.Demo()
	timber = with(func(j *vehicles.Job) { j.Floor.Deck = vehicles.Timber })
	seats  = found("seat mount")
	// unlayered is the sample van of whose floor nobody has said the layers: ply, a lining and swages
	unlayered = with(func(j *vehicles.Job) { j.Stack = nil })
)

// examples are a job that has each step and one that has not; the last is nil for a step that every job has.
var examples = map[string][2]*vehicles.Job{
	"instructions": {&bare, nil}, "stands": {&bare, nil}, "battery-off": {&bare, nil}, "mat-up": {&bare, nil}, "extinguisher": {&bare, nil}, "battery-on": {&bare, nil},

	"high-voltage": {ref(under("high-voltage cable")), &demo}, "tank-lowered": {ref(under("fuel tank")), &demo}, "gas-shut": {ref(found("gas pipe")), &demo},
	"seat-wait": {&seats, &demo}, "seat-connectors": {ref(found("seat-belt mount")), &demo}, "seat-joined": {&seats, &demo}, "seat-bolts": {&seats, &demo},
	"restraint-lamp": {&seats, &demo}, "seat-travel": {&seats, &demo},

	"marked": {&demo, &bare}, "template-laid": {&demo, &bare}, "heater-set": {&demo, &bare}, "supply-laid": {&demo, &bare}, "control-laid": {&demo, &bare}, "sealant-cured": {&demo, &bare},
	"collar-cut": {&demo, &unlayered}, "stubs-joined": {&demo, &bare},
	"tank-take-off": {&demo, ref(run(vehicles.FuelRun, func(r *vehicles.Run) { r.Supply.From = "" }))},

	"dry-fit": {&demo, &bare}, "sealed": {&demo, &bare}, "fastened": {&demo, &bare}, "earth": {&demo, &bare}, "fuse": {&demo, &bare}, "alarm": {&demo, &bare}, "outside": {&demo, &bare},
	"start-current": {&demo, &bare}, "glow-voltage": {&demo, &bare}, "co-inside": {&demo, &bare}, "ran": {&demo, &bare}, "cooled": {&demo, &bare}, "power-off": {&demo, &bare},
	"clamps-again": {&demo, &bare}, "notice": {&demo, &bare}, "owner-shown": {&demo, &bare}, "service-agreed": {&demo, &bare}, "retorque": {&demo, &bare},

	"pilot-drilled": {&demo, &bare}, "pilot-looked": {&demo, &bare}, "depth": {&demo, &bare}, "sawn": {&demo, &bare}, "deburred": {&demo, &bare}, "swarf": {&demo, &bare},
	"bolts-drilled": {&demo, ref(heater(func(h *vehicles.Heater) { h.Bolts = nil }))},
	"clips-drilled": {&demo, &bare}, "pump-wired": {&demo, &bare},
	"fuel-hole": {ref(throughTheFloor()), &demo},
	"cut-back":  {&timber, &unlayered}, "timber-sealed": {&timber, &demo}, "primed": {&demo, &timber}, "scraped": {&demo, &timber}, "waxed": {&demo, &timber},
	"swages-packed": {ref(heater(func(h *vehicles.Heater) { h.Packed = true })), &unlayered},
	"ducts":         {ref(heater(func(h *vehicles.Heater) { h.Duct.Front = true })), &demo},

	"exhaust-hung": {&demo, &bare}, "exhaust-tight": {&demo, &bare}, "fall": {&demo, &bare}, "intake-hung": {&demo, &bare}, "intake-tight": {&demo, &bare},
	"drain-down": {&demo, ref(run(vehicles.ExhaustRun, func(r *vehicles.Run) { r.Muffler = nil }))},
	"shielded":   {ref(run(vehicles.ExhaustRun, func(r *vehicles.Run) { r.Shielded.All = true })), &demo},

	"tank-vented": {ref(run(vehicles.FuelRun, func(r *vehicles.Run) {
		r.Supply.From, r.Supply.Tank = "", &vehicles.Tank{At: [2]float64{2500, 660}, Rise: vehicles.Span{From: 50, To: 350, Set: true}}
	})), &demo},
	"line-whole": {&demo, &bare}, "fuel-clipped": {&demo, &bare}, "fuel-tight": {&demo, &bare},
	"pump-hung":   {&demo, &bare},
	"fuel-primed": {&demo, &bare},
}

func ref(j vehicles.Job) *vehicles.Job { return &j }

// throughTheFloor is the sample van with a fuel line that comes from above.
func throughTheFloor() vehicles.Job {
	return run(vehicles.FuelRun, func(r *vehicles.Run) {
		first := r.Path[0]
		first.Drop = -100
		r.Path, r.Pump = r.Path.Insert(0, first), nil
	})
}

func TestEachStepIsWhereItAppliesAndNowhereElse(t *testing.T) {
	for _, k := range vehicles.StepKinds {
		jobs, known := examples[k.ID]
		require.True(t, known, "%s has no job that has it and none that has not", k.ID)
		assert.GreaterOrEqual(t, Of(judged(t, *jobs[0])).Index(k.ID), 0, k.ID)
		i := slices.IndexFunc(table, func(row kind) bool { return row.id == k.ID })
		require.GreaterOrEqual(t, i, 0, "%s is not in the table", k.ID)
		if jobs[1] == nil {
			assert.Nil(t, table[i].applies, "%s applies always: say so", k.ID)
			continue
		}
		assert.Negative(t, Of(judged(t, *jobs[1])).Index(k.ID), k.ID)
	}
	assert.Len(t, examples, len(vehicles.StepKinds))
}

// The table is in the order of the file's steps, one row each: what is recorded and what is told go by one order.
func TestTheTableIsInTheOrderOfTheWork(t *testing.T) {
	require.Len(t, table, len(vehicles.StepKinds))
	for i, k := range table {
		require.Equal(t, vehicles.StepKinds[i].ID, k.id)
		if i > 0 {
			assert.GreaterOrEqual(t, k.part, table[i-1].part, k.id)
		}
		assert.Less(t, k.part, partCount)
	}
}

func TestEachStepIsWhole(t *testing.T) {
	abouts := map[string]bool{"": true}
	for _, c := range rules.Cautions() {
		abouts[c.About] = true
	}
	for i, k := range table {
		assert.Regexp(t, `^[A-Z].*\.$`, k.do, k.id)
		assert.LessOrEqual(t, len(k.do), 150, k.id)
		assert.Equal(t, vehicles.StepKinds[i].Measures(), k.measured != "", "%s: what is measured has a unit", k.id)
		assert.True(t, abouts[k.caution], "%s: there is no caution about %q", k.id, k.caution)
		assert.Equal(t, len(k.after) > 0, k.danger != "", "%s: an order that is safety says why", k.id)
		assert.True(t, k.since == "" || vehicles.StepKinds[i].Unit == "min" && vehicles.StepIndex(k.since) >= 0 && vehicles.StepIndex(k.since) < i, "%s: minutes since a step before it", k.id)
		for _, before := range k.after {
			assert.Less(t, vehicles.StepIndex(before), i, "%s comes after %s", k.id, before)
			assert.GreaterOrEqual(t, vehicles.StepIndex(before), 0, before)
		}
	}
}

// Whatever is expected of a value has a source; a step that measures either expects something or defers to whoever knows.
func TestWhatIsExpectedHasASource(t *testing.T) {
	for _, jobs := range examples {
		for _, s := range Of(judged(t, *jobs[0])) {
			e := s.Expected
			says := e.Least.Set || e.Most.Set || e.Words != ""
			assert.Equal(t, says, e.Source.String() != "", s.ID)
			assert.False(t, says && !s.Measures(), s.ID)
			assert.True(t, !s.Measures() || says || s.Defers != "", s.ID)
			assert.Equal(t, says, e.Text(s.Unit) != "", s.ID)
			if e.Least.Set && e.Most.Set {
				assert.Less(t, e.Least.Value, e.Most.Value, s.ID)
			}
		}
	}
}

// What is measured is held to what was expected: by hand, and by the book where that says it.
func TestAValueThatIsAmissIsSaid(t *testing.T) {
	for _, c := range []struct {
		step  string
		value float64
		want  string
	}{
		{"co-inside", 0, ""}, {"co-inside", 3, "3 ppm: 0 ppm at most is expected"},
		{"fall", 20, ""}, {"fall", 19.5, "19.5 mm/m: 20 mm/m at least is expected"}, {"fall", -3, "-3 mm/m: 20 mm/m at least is expected"},
		{"pump-hung", 15, ""}, {"pump-hung", 90, ""}, {"pump-hung", 10, "10 °: 15 to 90 ° is expected"},
		{"depth", 31, ""}, {"depth", 34, ""}, {"depth", 35, "35 mm: 8 to 34 mm is expected"}, {"template-laid", 3, ""}, {"template-laid", 5, "5 mm: 3 mm at most is expected"},
		{"collar-cut", 36, ""}, {"collar-cut", 35, "35 mm: 36 to 45 mm is expected"}, {"supply-laid", 4.2, ""}, {"supply-laid", 5, "5 m: 4.2 m at most is expected"},
		{"ran", 19, "19 min: 20 min at least is expected"}, {"start-current", 900, ""},
	} {
		list := Of(judged(t, demo.WithDone(vehicles.Done{Step: c.step, Value: vehicles.Some(c.value)})))
		assert.Equal(t, c.want, list[list.Index(c.step)].Amiss(), "%s %v", c.step, c.value)
	}
	own := demo.WithRule("exhaust.fall", 30).WithDone(vehicles.Done{Step: "fall", Value: vehicles.Some(25)})
	list := Of(judged(t, own))
	assert.Equal(t, "25 mm/m: 30 mm/m at least is expected", list[list.Index("fall")].Amiss())
	assert.Equal(t, rules.ThisJob, list[list.Index("fall")].Expected.Source.String())
}

// Where the order is safety, what is done before its time says what was to be done first.
func TestAStepBeforeItsTimeSaysWhatWasToComeFirst(t *testing.T) {
	at := func(l List, id string) string { return l.Warning(l.Index(id)) }
	l := Of(judged(t, seats))
	assert.Equal(t, "not done before it: battery off, seat wait. A belt or an airbag can go off in your hands.", at(l, "seat-connectors"))
	assert.Contains(t, at(l, "power-off"), "not done before it: cooled.")
	assert.Contains(t, at(l, "pilot-drilled"), "battery off, extinguisher")
	assert.Empty(t, at(l, "instructions"))
	ticked := seats.WithDone(vehicles.Done{Step: "battery-off", At: "2026-11-27"}).WithDone(vehicles.Done{Step: "seat-wait", Value: vehicles.Some(10)})
	l = Of(judged(t, ticked))
	assert.Equal(t, "not done before it: seat wait. A belt or an airbag can go off in your hands.", at(l, "seat-connectors"), "a value alone is no tick")
	assert.Equal(t, "", Of(judged(t, demo))[Of(judged(t, demo)).Index("battery-on")].Danger, "no seat to join in this van")
}

// Done in the order of the list, no step is before its time; the list stays the same, and the next is the first that is not done.
func TestInTheOrderOfTheListNothingIsBeforeItsTime(t *testing.T) {
	for _, job := range []vehicles.Job{demo, seats, bare, timber, under("fuel tank")} {
		first := Of(judged(t, job))
		for i, s := range first {
			l := Of(judged(t, job))
			require.Equal(t, i, l.Next())
			require.Equal(t, i, l.Count())
			assert.Empty(t, l.Early(i), s.ID)
			job = job.WithDone(vehicles.Done{Step: s.ID, At: "2026-11-27"})
		}
		last := Of(judged(t, job))
		assert.Negative(t, last.Next())
		assert.Len(t, last, len(first))
		assert.Empty(t, last.Elsewhere(&job))
	}
}

// A heater has exhaust, air and fuel whether somebody laid them or not: the steps that keep gas and fuel where they belong are there all the same, and
// nobody is let switch the heater on before them without a word.
func TestWhatNobodyLaidKeepsItsSafetySteps(t *testing.T) {
	job := demo.WithRun(vehicles.ExhaustRun, nil).WithRun(vehicles.IntakeRun, nil).WithRun(vehicles.FuelRun, nil)
	l := Of(judged(t, job))
	for _, id := range []string{"stubs-joined", "exhaust-hung", "exhaust-tight", "fall", "intake-hung", "intake-tight", "line-whole", "pump-hung", "fuel-clipped", "fuel-primed", "fuel-tight"} {
		require.GreaterOrEqual(t, l.Index(id), 0, id)
		assert.Contains(t, l[l.Index(id)].Sentence(), "nobody has laid it yet: lay it on Runs", id)
	}
	for _, id := range []string{"exhaust-tight", "intake-tight", "fuel-primed", "fuel-tight"} {
		assert.Contains(t, l[l.Index("start-current")].After, id)
	}
	assert.Equal(t, "exhaust (nobody has laid it yet: lay it on Runs), intake (nobody has laid it yet: lay it on Runs)", l[l.Index("stubs-joined")].Of)

	l = Of(judged(t, run(vehicles.FuelRun, func(r *vehicles.Run) { r.Pump = nil })))
	for _, id := range []string{"pump-hung", "fuel-primed"} {
		require.GreaterOrEqual(t, l.Index(id), 0, id)
		assert.Equal(t, "nobody has placed the pump yet: place it on Runs", l[l.Index(id)].Of)
	}
	assert.Contains(t, l[l.Index("start-current")].After, "fuel-primed")
}

// What is recorded of a step that the job has no longer is still told.
func TestARecordOfNoStepOfTheJobIsKept(t *testing.T) {
	job := demo.WithDone(vehicles.Done{Step: "seat-wait", At: "2026-11-27", Value: vehicles.Some(12)})
	l := Of(judged(t, job))
	assert.Negative(t, l.Index("seat-wait"))
	assert.Equal(t, job.Done, vehicles.List[vehicles.Done](l.Elsewhere(&job)))
}

// The names stand in lists and warnings: each tells its step from all others.
func TestNamesTellStepsApart(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range vehicles.StepKinds {
		assert.False(t, seen[k.Name()], k.Name())
		assert.LessOrEqual(t, len(k.Name()), 18, k.Name())
		assert.Equal(t, k.Name(), vehicles.StepName(k.ID))
		assert.Equal(t, strings.TrimSpace(k.Name()), k.Name())
		seen[k.Name()] = true
	}
}

// What a step defers to and what it is done to is said in the words of the job.
func TestStepsSayWhatOfTheJobTheyAreDoneTo(t *testing.T) {
	of := func(job vehicles.Job, id string) string {
		l := Of(judged(t, job))
		return l[l.Index(id)].Of
	}
	assert.Equal(t, "6 mm across, through up to 31 mm of floor", of(demo, "pilot-drilled"))
	assert.Equal(t, "127 mm across; the saw turns 68 rpm, in steel, at most; oil it, and let up before it is through", of(demo, "sawn"))
	assert.Equal(t, "planned to be read at 1263.9, left 693, right 1082", of(demo, "pilot-looked"), "where it is foul nothing may be off")
	assert.Equal(t, "30.5 ml in all", of(demo, "sealed"))
	assert.Equal(t, "4 bolts, 45 mm long at least", of(demo, "fastened"))
	assert.Equal(t, "4 bolts", of(with(func(j *vehicles.Job) { j.Stack = nil }), "fastened"))
	assert.Empty(t, of(heater(func(h *vehicles.Heater) { h.Bolts = nil }), "fastened"))
	assert.Empty(t, of(with(func(j *vehicles.Job) { j.Cut = nil }), "sealed"))
	assert.Equal(t, "4 holes, 7 mm across", of(demo, "bolts-drilled"))
	assert.Equal(t, "1 hole, 12 mm across", of(throughTheFloor(), "fuel-hole"))
	assert.Equal(t, "exhaust, intake", of(demo, "stubs-joined"))
	assert.Equal(t, "4 mm²", of(with(func(j *vehicles.Job) { j.Wiring = vehicles.Wiring{} }), "supply-laid"))
	assert.Equal(t, "fuel tank", of(demo, "tank-take-off"))
	assert.Equal(t, "3 clips, a muffler", of(demo, "exhaust-hung"))
	assert.Equal(t, "the muffler's", of(demo, "drain-down"))
	assert.Equal(t, "nobody has said how wide", of(timber.WithRun(vehicles.ExhaustRun, nil), "cut-back"))
	wide, found := sizing.Find(judged(t, timber), sizing.CutBack)
	require.True(t, found)
	assert.Equal(t, "to "+survey.InMM(wide.Value.Value)+" across", of(timber, "cut-back"), "as it was sized")
	relieved, cut := timber, *timber.Cut
	cut.Relieved = vehicles.Some(200.0)
	relieved.Cut = &cut
	assert.Equal(t, "to 200 mm across", of(relieved, "cut-back"), "as Place has it")
	assert.Equal(t, "whatever is near the exhaust", of(*examples["shielded"][0], "shielded"))
}

// A pilot that comes out so far beside its mark as is said leaves every clearance at the cut surely enough, whichever way; 2 mm more doesn't, one way.
func TestHowFarThePilotMayComeOutBeside(t *testing.T) {
	clear := *demo.Cut
	clear.At = [2]float64{1405, 195}
	job := demo.WithCut(clear)
	l := Of(judged(t, job))
	said := l[l.Index("pilot-looked")].Of
	require.Regexp(t, `; off by more than its ±, find what was misread first; up to \d+ mm off every clearance at the cut holds$`, said)
	var may float64
	_, err := fmt.Sscanf(said[strings.Index(said, "up to"):], "up to %f mm", &may)
	require.NoError(t, err)
	require.Positive(t, may)
	worst := func(off float64) (least float64) {
		least = math.Inf(1)
		for turn := range 72 {
			a := 2 * math.Pi * float64(turn) / 72
			moved := clear
			moved.At = [2]float64{clear.At[0] + off*math.Cos(a), clear.At[1] + off*math.Sin(a)}
			for _, f := range judged(t, demo.WithCut(moved)).Findings {
				if f.Rule.AtCut && f.Rule.Unit == rules.MM && f.Margin.Set && !strings.HasPrefix(f.ID(), "stub.in-cut") { // that is alike everywhere
					least = min(least, f.Margin.Value-f.ClearFrom())
				}
			}
		}
		return least
	}
	assert.GreaterOrEqual(t, worst(may), 0.0)
	assert.Less(t, worst(may+2), 0.0)
	drilled := job.WithDrilled(&vehicles.Pair{survey.FromNumber(1414, true), survey.FromNumber(195, true)})
	l = Of(judged(t, drilled))
	assert.NotContains(t, l[l.Index("pilot-looked")].Of, "up to", "it is judged where it is")
}

// Where the wiring goes is said in the step that it is of, as somebody wrote it; where the control goes is asked for.
func TestStepsSayWhereTheWiringGoes(t *testing.T) {
	of := func(w vehicles.Wiring, id string) string {
		l := Of(judged(t, with(func(j *vehicles.Job) { j.Wiring = w })))
		return l[l.Index(id)].Of
	}
	said := vehicles.Wiring{Battery: "under the seat.", Cable: "along the sill", Earth: "the battery ", Control: "by the door.", Alarm: "over the bed"}
	for id, want := range map[string][2]string{
		"supply-laid": {"4 mm², under the seat, along the sill", "4 mm²"}, "fuse": {"under the seat", ""}, "earth": {"the battery", ""},
		"control-laid": {"the control by the door", "nobody has said where the control goes; ask the owner"}, "alarm": {"over the bed", ""},
	} {
		assert.Equal(t, want[0], of(said, id))
		assert.Equal(t, want[1], of(vehicles.Wiring{}, id))
	}
}

// Whoever clips the ducts on reads where, how wide, how long, and round which bends.
func TestTheDuctsStepSaysWhereTheyGo(t *testing.T) {
	for want, d := range map[string]vehicles.Ductwork{
		"at the heater's front and rear, 60 mm across, 1500 mm along the middle, bends 90°, 45°": {Length: vehicles.Some(1500), Bends: []float64{90, 45}},
		"at the heater's front and rear, 60 mm across, no bends":                                 {Bends: []float64{}},
		"at the heater's front and rear, 60 mm across, bends not said":                           {},
	} {
		l := Of(judged(t, with(func(j *vehicles.Job) {
			h := *j.Heater
			h.Duct, h.DuctAcross = vehicles.Ends{Front: true, Rear: true}, 60
			j.Heater, j.Ductwork = &h, d
		})))
		assert.Equal(t, want, l[l.Index("ducts")].Of)
	}
	assert.Empty(t, Ducts(judged(t, demo)), "none in the sample")
}

// What lies in the floor's layers is heard: ply is cut back from the stub, swages are packed.
func TestTheFloorsLayersHaveTheirSteps(t *testing.T) {
	for _, id := range []string{"cut-back", "swages-packed"} {
		assert.GreaterOrEqual(t, Of(judged(t, demo)).Index(id), 0, id)
	}
}

// A step that is ticked, and did not come out as it must, does not clear the way: nobody lets a heater run that gases the van.
func TestWhatIsAmissIsNotDone(t *testing.T) {
	for value, want := range map[float64]string{0: "", 30: "not done before it: CO inside (30 ppm: 0 ppm at most is expected). Nobody goes in before the meter has been read."} {
		list := Of(judged(t, demo.WithDone(vehicles.Done{Step: "co-inside", At: "2026-11-27", Value: vehicles.Some(value)})))
		assert.Equal(t, want, list.Warning(list.Index("ran")))
	}
}

// While the cut is foul nobody is let drill or saw there without a word; where it is clear nothing is said.
func TestAFoulCutBarsDrillAndSaw(t *testing.T) {
	cut := *demo.Cut
	cut.At = [2]float64{1405, 195}
	for _, id := range []string{"pilot-drilled", "sawn", "bolts-drilled"} {
		list := Of(judged(t, demo))
		assert.Contains(t, list.Warning(list.Index(id)), "foul now: cut: brake pipe across, and ", id)
		list = Of(judged(t, demo.WithCut(cut)))
		assert.NotContains(t, list.Warning(list.Index(id)), "foul", id)
	}
}

// A fuel line's hole is drilled as the others are: not onto what is foul there, nor before what comes before any drill.
func TestTheFuelLinesHoleIsDrilledAsTheOthers(t *testing.T) {
	at := func(j vehicles.Job) (Step, string) {
		list := Of(judged(t, j))
		i := list.Index("fuel-hole")
		return list[i], list.Warning(i)
	}
	job := throughTheFloor()
	_, warned := at(job)
	assert.Contains(t, warned, "foul now: cut: brake pipe across, and ", "foul as drawn")
	step, _ := at(job)
	assert.ElementsMatch(t, []string{"battery-off", "extinguisher", "pilot-looked"}, step.After)
	assert.NotEmpty(t, step.Danger)
	over := under("fuel tank")
	job.Obstructions, job.Cut = over.Obstructions, over.Cut
	step, _ = at(job)
	assert.Contains(t, step.After, "tank-lowered")
}

// Clips and pump are drilled for among the holes, with the care that any drill takes; what is drilled is counted.
func TestTheClipsHolesAreDrilledAsTheOthers(t *testing.T) {
	at := func(j vehicles.Job) (List, int) {
		list := Of(judged(t, j))
		return list, list.Index("clips-drilled")
	}
	list, i := at(demo)
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, "12 holes, at the clips' readings with the runs, and one where the pump hangs", list[i].Of, "three, four and five clips")
	assert.Contains(t, list.Warning(i), "foul now: cut: brake pipe across, and ")
	assert.Equal(t, []string{"battery-off", "extinguisher", "pilot-looked"}, list[i].After)
	assert.Equal(t, rules.AboutDrilling, list[i].Caution)
	assert.Less(t, i, list.Index("deburred"))
	list, i = at(under("fuel tank"))
	assert.Contains(t, list[i].After, "tank-lowered")

	_, i = at(demo.WithRun(vehicles.ExhaustRun, nil).WithRun(vehicles.IntakeRun, nil).WithRun(vehicles.FuelRun, nil))
	assert.Negative(t, i, "no clip is placed")
	list, i = at(run(vehicles.FuelRun, func(r *vehicles.Run) { r.Pump = nil }))
	assert.Equal(t, "12 holes, at the clips' readings with the runs", list[i].Of)
}

// Wax goes in once nothing more is drilled or clipped on, and before the first run; the fuse once nothing more is wired.
func TestWaxAndFuseComeLast(t *testing.T) {
	l := Of(judged(t, demo))
	for _, before := range []string{"clips-drilled", "supply-laid", "exhaust-hung", "intake-hung", "pump-hung", "fuel-clipped"} {
		assert.Less(t, l.Index(before), l.Index("waxed"), before)
	}
	assert.Less(t, l.Index("waxed"), l.Index("start-current"))
	for _, before := range []string{"supply-laid", "control-laid", "pump-wired"} {
		assert.Less(t, l.Index(before), l.Index("fuse"), before)
	}
	assert.Less(t, l.Index("fuse"), l.Index("battery-on"), "nothing is live")
}

// The pump's lead is laid once the pump hangs, and it is said where it goes through the floor.
func TestThePumpsLeadIsLaidOnceItHangs(t *testing.T) {
	l := Of(judged(t, demo))
	assert.Greater(t, l.Index("pump-wired"), l.Index("pump-hung"))
	assert.Equal(t, "with the fuel line through the collar; no hole of its own", l[l.Index("pump-wired")].Of)
	assert.NotContains(t, l[l.Index("control-laid")].Do, "pump")
	path := throughTheFloor()
	inside := *path.Fuel
	inside.Pump = demo.Fuel.Pump
	l = Of(judged(t, path.WithRun(vehicles.FuelRun, &inside)))
	assert.Contains(t, l[l.Index("pump-wired")].Of, "up through the collar where the pump hangs below the floor")
}

// Nothing is sealed over swarf, burr or loose paint, nor fitted through a hole that is not there.
func TestWhatComesBeforeSealant(t *testing.T) {
	l := Of(judged(t, demo))
	assert.ElementsMatch(t, []string{"deburred", "swarf", "primed", "scraped", "swages-packed", "dry-fit"}, l[l.Index("sealed")].After)
	assert.Equal(t, []string{"sawn"}, l[l.Index("dry-fit")].After)
}

// Collar and stubs go through the floor only once there is a hole: the dry fit comes after the holes, and before sealant.
func TestTheDryFitIsThroughTheHole(t *testing.T) {
	l := Of(judged(t, demo))
	fit := l.Index("dry-fit")
	assert.Greater(t, fit, l.Index("swarf"))
	assert.Greater(t, fit, l.Index("collar-cut"))
	assert.Less(t, fit, l.Index("sealed"))
	assert.Contains(t, l[l.Index("sealed")].After, "dry-fit")
}

// Round which centre the saw goes is said where the pilot hole is beside its mark, and what the other takes.
func TestTheSawStepSaysRoundWhichCentre(t *testing.T) {
	of := func(j vehicles.Job) string {
		l := Of(judged(t, j))
		return l[l.Index("sawn")].Of
	}
	assert.NotContains(t, of(demo), "round")
	at := func(v float64) survey.Reading { return survey.FromNumber(v, false) }
	off := demo.WithDrilled(&vehicles.Pair{at(demo.Cut.At[0] + 14), at(demo.Cut.At[1])})
	assert.Contains(t, of(off), "round the pilot hole, as all is judged: to saw round the centre as meant takes more, ")
	assert.Contains(t, of(off), "guide board")
}

// The current is what can first set the fuel or the cable on fire: it comes after both are there as they must be.
func TestTheHeaterIsSwitchedOnWithFuseCableAndFuelInOrder(t *testing.T) {
	l := Of(judged(t, demo))
	step := l[l.Index("start-current")]
	for _, before := range []string{"supply-laid", "fuse", "fuel-primed", "fuel-tight", "exhaust-tight", "alarm"} {
		assert.Contains(t, step.After, before)
	}
	assert.Contains(t, step.Danger, "catch fire")
}

// What was entered elsewhere is not asked again: a pilot hole that was measured on Marks is drilled and looked at, a hole that was read as built is
// sawn. What comes after them then warns of no step that nobody ticked; a step that is ticked amiss still does.
func TestWhatTheJobKnowsIsNotAskedAgain(t *testing.T) {
	planned := vehicles.Demo()
	measured := with(func(j *vehicles.Job) {
		cut := *j.Cut
		cut.Drilled = &vehicles.Pair{survey.FromNumber(cut.At[0]+8, false), survey.FromNumber(cut.At[1]-1.5, false)}
		j.Cut, j.Datum.HookBelow = &cut, vehicles.Number{}
	})
	step := func(job vehicles.Job, id string) (Step, []Step) {
		list := Of(judged(t, job))
		return list[list.Index(id)], list.Early(list.Index(id))
	}
	for _, id := range []string{"pilot-drilled", "pilot-looked"} {
		now, _ := step(planned, id)
		assert.Empty(t, now.Known)
		now, _ = step(measured, id)
		assert.Equal(t, "measured on Marks, 8 mm forward and 1.5 mm right of its mark", now.Known)
		assert.Contains(t, now.Sentence(), "The job has it: measured on Marks")
		assert.False(t, now.Ticked(), "nobody said when")
	}
	_, early := step(planned, "sawn")
	assert.NotEmpty(t, early)
	_, early = step(measured, "sawn")
	assert.Empty(t, early)
	_, early = step(measured, "pilot-drilled")
	assert.NotEmpty(t, early, "the battery and the extinguisher are nobody's but who ticks them")

	sawn, _ := step(planned.WithBuilt(vehicles.Built{Cut: measured.Cut}), "sawn")
	assert.Equal(t, "read as built", sawn.Known)
	shorter := *planned.Heater
	shorter.Turret = vehicles.Some(40)
	collar, _ := step(planned.WithBuilt(vehicles.Built{Heater: &shorter}), "collar-cut")
	assert.Equal(t, "40 mm as built", collar.Known)
}
