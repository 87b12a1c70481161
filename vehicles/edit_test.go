package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

// edits are all ways of changing a job, with an index that may not be there.
var edits = map[string]func(j Job, i, k int) Job{
	"cut":     func(j Job, i, _ int) Job { return j.WithCut(Cut{Across: float64(i)}) },
	"drilled": func(j Job, _, _ int) Job { return j.WithDrilled(&Pair{}) },
	"heater":  func(j Job, i, _ int) Job { return j.WithHeater(Heater{Yaw: float64(i)}) },
	"rule":    func(j Job, i, _ int) Job { return j.WithRule("cut.reach", float64(i)) },
	"without rule": func(j Job, _, _ int) Job {
		for id := range j.Rules {
			return j.WithoutRule(id)
		}
		return j
	},
	"looked":     func(j Job, _, _ int) Job { return j.WithLooked(Kinds[0], true) },
	"not looked": func(j Job, _, _ int) Job { return j.WithLooked(Kinds[0], false) },
	"looked round the runs": func(j Job, i, _ int) Job {
		return j.WithLookedAt(AtRuns, &Plan{}, Kinds[max(0, i)], true).WithLookedAt(AtRuns, &Plan{}, Kinds[1], true)
	},
	"not looked round the runs": func(j Job, _, _ int) Job { return j.WithLookedAt(AtRuns, &Plan{}, Kinds[0], false) },
	"looked for openings":       func(j Job, _, _ int) Job { return j.WithLookedAt(AtOutlet, &Plan{}, OpeningKinds[0], true) },
	"extra":                     func(j Job, i, _ int) Job { return j.Keeping("a", map[string]any{"b": int64(i)}) },
	"guess":                     func(j Job, i, _ int) Job { return j.WithFloorGuessed().WithoutGuess(FloorKeys[max(0, i)]) },
	"begun": func(j Job, i, k int) Job {
		u := &j.Unfinished.Obstructions
		*u = u.Insert(0, Begun{}).With(i, Begun{}.Saying(map[string]string{"x0": "1", "x1": ""})).Without(k)
		return j
	},
	"refused": func(j Job, _, _ int) Job { return j.WithRefused(append(j.Refused(), Refusal{Of: "floor"})) },
	"swapped": func(j Job, i, _ int) Job { return j.WithTieSidesSwapped(i > 0) },
	"exhaust points": func(j Job, i, k int) Job {
		if j.Exhaust == nil {
			return j.WithRun(ExhaustRun, &Run{Across: 1, Path: []RunPoint{{}}})
		}
		r := *j.Exhaust
		r.Muffler = &Muffler{Leg: 1, Length: 1, Across: 1}
		r.Path = r.Path.With(i, RunPoint{X: 1}).Insert(i, RunPoint{Y: 1}).Move(i, k).Insert(0, RunPoint{})
		return j.WithRun(ExhaustRun, &r)
	},
	"intake points": func(j Job, i, k int) Job {
		if j.Intake == nil {
			return j.WithRun(IntakeRun, &Run{Across: 1, Path: []RunPoint{{}}})
		}
		r := *j.Intake
		r.Path = r.Path.With(i, RunPoint{X: 1}).Insert(i, RunPoint{Y: 1}).Without(k).Insert(0, RunPoint{})
		return j.WithRun(IntakeRun, &r)
	},
	"line points": func(j Job, i, k int) Job {
		if len(j.Obstructions) == 0 {
			return j
		}
		o := j.Obstructions[0]
		if o.Shape == Piped {
			o.Path = o.Path.With(i, pointSaid()).Insert(i, pointSaid()).Move(i, k)
		}
		j.Obstructions = j.Obstructions.With(0, o)
		return j
	},
}

// pointSaid is a point that a file can hold.
func pointSaid() Pair { return Pair{survey.FromNumber(1, true), survey.FromNumber(2, true)} }

// listed adds the edits of one list of a job.
func listed[T any](name string, of func(*Job) *List[T], item T) {
	on := func(change func(l List[T], i, k int) List[T]) func(Job, int, int) Job {
		return func(j Job, i, k int) Job {
			l := of(&j)
			*l = change(*l, i, k)
			return j
		}
	}
	edits["with "+name] = on(func(l List[T], i, _ int) List[T] { return l.With(i, item) })
	edits["insert "+name] = on(func(l List[T], i, _ int) List[T] { return l.Insert(i, item) })
	edits["without "+name] = on(func(l List[T], i, _ int) List[T] { return l.Without(i) })
	edits["move "+name] = on(func(l List[T], i, k int) List[T] { return l.Move(i, k) })
}

func init() {
	listed("obstruction", func(j *Job) *List[Obstruction] { return &j.Obstructions }, Obstruction{Name: "new"})
	listed("opening", func(j *Job) *List[Opening] { return &j.Openings }, Opening{Name: "new"})
	listed("fitting", func(j *Job) *List[Fitting] { return &j.Fittings }, Fitting{Name: "new"})
	listed("tie", func(j *Job) *List[Tie] { return &j.Ties }, Tie{Name: "new"})
	listed("wheel", func(j *Job) *List[Wheel] { return &j.Wheels }, Wheel{Across: 1})
}

func TestAnEditLeavesTheOldJobAsItWas(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		before := string(job.Format())
		for range rapid.IntRange(1, 5).Draw(t, "edits") {
			name := rapid.SampledFrom(sortedKeys(edits)).Draw(t, "edit")
			i, k := rapid.IntRange(-1, 4).Draw(t, "i"), rapid.IntRange(-1, 4).Draw(t, "k")
			next := edits[name](job, i, k)
			require.Equal(t, before, string(job.Format()), name)
			// A second edit of the same old job must not reach into the first one's result either.
			first := string(next.Format())
			edits[name](job, i, k+1)
			edits[name](next, k, i)
			require.Equal(t, first, string(next.Format()), name)
			job, before = next, first
		}
	})
}

func TestEditsOfAList(t *testing.T) {
	list := List[string]{"a", "b", "c"}
	for _, c := range []struct{ got, want List[string] }{
		{list.With(1, "X"), List[string]{"a", "X", "c"}},
		{list.Insert(3, "X"), List[string]{"a", "b", "c", "X"}},
		{list.Insert(0, "X"), List[string]{"X", "a", "b", "c"}},
		{list.Without(1), List[string]{"a", "c"}},
		{list.Without(2), List[string]{"a", "b"}},
		{list.Move(0, 2), List[string]{"b", "c", "a"}},
		{list.Move(2, 0), List[string]{"c", "a", "b"}},
		{list.Move(1, 1), list},
		{list.Move(0, 3), list}, {list.Move(3, 0), list}, {list.Move(-1, 0), list}, {list.Move(0, -1), list},
		{list.With(-1, "X"), list}, {list.With(3, "X"), list},
		{list.Insert(4, "X"), list}, {list.Insert(-1, "X"), list},
		{list.Without(3), list}, {list.Without(-1), list},
		{List[string]{"a"}.Without(0), nil},
		{List[string](nil).Insert(0, "X"), List[string]{"X"}},
		{List[string](nil).Without(0), nil},
	} {
		assert.Equal(t, c.want, c.got)
	}
}

// However often a list is edited, and whatever room its slice has left, all that came before stays as it was.
func TestAnEditedListLeavesAllBeforeItAsTheyWere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		made := []List[int]{append(make(List[int], 0, 16), rapid.SliceOfN(rapid.Int(), 0, 6).Draw(t, "first")...)}
		var were [][]int
		keep := func(l List[int]) { were = append(were, append([]int(nil), l...)) }
		keep(made[0])
		for range rapid.IntRange(1, 12).Draw(t, "edits") {
			l := made[rapid.IntRange(0, len(made)-1).Draw(t, "of")]
			i, k := rapid.IntRange(-1, 7).Draw(t, "i"), rapid.IntRange(-1, 7).Draw(t, "k")
			switch rapid.IntRange(0, 3).Draw(t, "edit") {
			case 0:
				l = l.With(i, k)
			case 1:
				l = l.Insert(i, k)
			case 2:
				l = l.Without(i)
			default:
				l = l.Move(i, k)
			}
			made = append(made, l)
			keep(l)
			for n, was := range were {
				require.Equal(t, was, append([]int(nil), made[n]...))
			}
		}
	})
}

func TestANameIsUniqueAmongAllThings(t *testing.T) {
	job := NewJob("TL-09")
	job.Obstructions, job.Openings = List[Obstruction]{{Name: "rail"}}, List[Opening]{{Name: "rail 2"}}
	job.Fittings, job.Ties = List[Fitting]{{Name: "rail 3"}}, List[Tie]{{Name: "rail 4"}}
	assert.Equal(t, "rail 5", job.UniqueName("rail"))
	assert.Equal(t, "box", job.UniqueName("box"))
}

func TestANewJobIsAnEmptyVanOfWideErrors(t *testing.T) {
	job, err := ParseJob(NewJob("TL-09").Format(), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, NewJob("TL-09"), job)
	assert.Equal(t, 5.0, job.Frames())
	assert.Equal(t, 1.5, job.SurveyTape().Read)
	assert.Equal(t, 3.0, job.SurveyTape().Height)
}

// The defaults of the file format, and the 2 kW sizes of its sample.
func TestDefaultsAreThoseOfTheFormat(t *testing.T) {
	job, faults := parse([]byte(head+"[heater]\nclass = \"2 kW\"\n[cut]\nat = [1, 2]\nacross = 127\n"), "a.toml")
	require.Empty(t, faults)
	assert.Equal(t, []float64{890, 890, 890, 890, 2, 712},
		[]float64{job.SideLeft(), job.SideRight(), job.AboveLeft(), job.AboveRight(), job.Frames(), job.Pins()})
	tape := job.SurveyTape()
	assert.Equal(t, "II 1 1 2 1", string(tape.Class)+" "+survey.Exact(tape.Read)+" "+survey.Exact(tape.Mark)+" "+survey.Exact(tape.Height)+" "+survey.Exact(tape.Turn))
	assert.Equal(t, 6.0, job.Cut.PilotAcross())
	assert.Equal(t, Heater{
		Class: "2 kW", Body: [3]float64{320, 125, 125}, Plate: [2]float64{190, 150},
		Space: Space{Front: 200, Rear: 150, Sides: 50, Top: 50}, Turret: Some(45), StubDrop: 45,
		ExhaustStub: [2]float64{35, 25}, IntakeStub: [2]float64{-35, 25}, FuelStub: [2]float64{0, -35}, DuctAcross: 60, Bolt: 7, Given: HasClass,
	}, *job.Heater)
	job.Datum.Left, job.Datum.AboveRight = Some(880), Some(870)
	assert.Equal(t, []float64{880, 890, 880, 870}, []float64{job.SideLeft(), job.SideRight(), job.AboveLeft(), job.AboveRight()})
}
