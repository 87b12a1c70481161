package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// edits are all ways of changing a job, with an index that may not be there.
var edits = map[string]func(j Job, i, k int) Job{
	"with obstruction":    func(j Job, i, _ int) Job { return j.WithObstruction(i, Obstruction{Name: "new"}) },
	"insert obstruction":  func(j Job, i, _ int) Job { return j.InsertObstruction(i, Obstruction{Name: "new"}) },
	"without obstruction": func(j Job, i, _ int) Job { return j.WithoutObstruction(i) },
	"move obstruction":    func(j Job, i, k int) Job { return j.MoveObstruction(i, k) },
	"with opening":        func(j Job, i, _ int) Job { return j.WithOpening(i, Opening{Name: "new"}) },
	"insert opening":      func(j Job, i, _ int) Job { return j.InsertOpening(i, Opening{Name: "new"}) },
	"without opening":     func(j Job, i, _ int) Job { return j.WithoutOpening(i) },
	"move opening":        func(j Job, i, k int) Job { return j.MoveOpening(i, k) },
	"with fitting":        func(j Job, i, _ int) Job { return j.WithFitting(i, Fitting{Name: "new"}) },
	"insert fitting":      func(j Job, i, _ int) Job { return j.InsertFitting(i, Fitting{Name: "new"}) },
	"without fitting":     func(j Job, i, _ int) Job { return j.WithoutFitting(i) },
	"move fitting":        func(j Job, i, k int) Job { return j.MoveFitting(i, k) },
	"with tie":            func(j Job, i, _ int) Job { return j.WithTie(i, Tie{Name: "new"}) },
	"insert tie":          func(j Job, i, _ int) Job { return j.InsertTie(i, Tie{Name: "new"}) },
	"without tie":         func(j Job, i, _ int) Job { return j.WithoutTie(i) },
	"move tie":            func(j Job, i, k int) Job { return j.MoveTie(i, k) },
	"with wheel":          func(j Job, i, _ int) Job { return j.WithWheel(i, Wheel{Across: 1}) },
	"insert wheel":        func(j Job, i, _ int) Job { return j.InsertWheel(i, Wheel{Across: 1}) },
	"without wheel":       func(j Job, i, _ int) Job { return j.WithoutWheel(i) },
	"cut":                 func(j Job, i, _ int) Job { return j.WithCut(Cut{Across: float64(i)}) },
	"drilled":             func(j Job, _, _ int) Job { return j.WithDrilled(&Pair{}) },
	"wish":                func(j Job, i, _ int) Job { return j.WithWish(Wish{At: [2]float64{float64(i), 1}}) },
	"heater":              func(j Job, i, _ int) Job { return j.WithHeater(Heater{Yaw: float64(i)}) },
	"rule":                func(j Job, i, _ int) Job { return j.WithRule("cut.reach", float64(i)) },
	"without rule": func(j Job, _, _ int) Job {
		for id := range j.Rules {
			return j.WithoutRule(id)
		}
		return j
	},
	"looked":     func(j Job, i, _ int) Job { return j.WithLooked(Kinds[0], true) },
	"not looked": func(j Job, i, _ int) Job { return j.WithLooked(Kinds[0], false) },
	"run points": func(j Job, i, _ int) Job {
		if j.Exhaust == nil {
			return j.WithIntake(Run{Across: 1})
		}
		r := j.Exhaust.WithPoint(i, RunPoint{X: 1}).InsertPoint(i, RunPoint{Y: 1}).WithoutPoint(i).WithClips([]float64{1}).WithMuffler(nil)
		return j.WithExhaust(r)
	},
	"fuel points": func(j Job, i, _ int) Job {
		if j.Fuel == nil {
			return j.WithFuel(Fuel{Kind: "diesel"})
		}
		return j.WithFuel(j.Fuel.WithPoint(i, RunPoint{X: 1}).InsertPoint(i, RunPoint{Y: 1}).WithoutPoint(i))
	},
	"line points": func(j Job, i, _ int) Job {
		if len(j.Obstructions) == 0 {
			return j
		}
		o := j.Obstructions[0]
		o.Place = o.Place.WithPoint(i, Pair{}).InsertPoint(i, Pair{}).WithoutPoint(i)
		return j.WithObstruction(0, o)
	},
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
	list := []string{"a", "b", "c"}
	assert.Equal(t, []string{"a", "X", "c"}, replaced(list, 1, "X"))
	assert.Equal(t, []string{"a", "b", "c", "X"}, inserted(list, 3, "X"))
	assert.Equal(t, []string{"X", "a", "b", "c"}, inserted(list, 0, "X"))
	assert.Equal(t, []string{"a", "c"}, without(list, 1))
	assert.Equal(t, []string{"b", "c", "a"}, moved(list, 0, 2))
	assert.Equal(t, []string{"c", "a", "b"}, moved(list, 2, 0))
	assert.Equal(t, list, moved(list, 0, 3))
	assert.Equal(t, list, replaced(list, -1, "X"))
	assert.Equal(t, list, inserted(list, 4, "X"))
	assert.Nil(t, without([]string{"a"}, 0))
}

func TestANameIsUniqueAmongAllThings(t *testing.T) {
	job := NewJob("TL-09").
		InsertObstruction(0, Obstruction{Name: "rail"}).InsertOpening(0, Opening{Name: "rail 2"}).
		InsertFitting(0, Fitting{Name: "rail 3"}).InsertTie(0, Tie{Name: "rail 4"})
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
	assert.Equal(t, "II 1 1 2 1", string(tape.Class)+" "+plain(tape.Read)+" "+plain(tape.Mark)+" "+plain(tape.Height)+" "+plain(tape.Turn))
	assert.Equal(t, 6.0, job.Cut.PilotAcross())
	assert.Equal(t, Heater{
		Class: "2 kW", Body: [3]float64{320, 125, 125}, Plate: [2]float64{190, 150},
		Space: Space{Front: 200, Rear: 150, Sides: 50, Top: 50}, Turret: Some(45), StubDrop: 45,
		ExhaustStub: [2]float64{35, 25}, IntakeStub: [2]float64{-35, 25}, FuelStub: [2]float64{0, -35}, Given: HasClass,
	}, *job.Heater)
	job.Datum.Left, job.Datum.AboveRight = Some(880), Some(870)
	assert.Equal(t, []float64{880, 890, 880, 870}, []float64{job.SideLeft(), job.SideRight(), job.AboveLeft(), job.AboveRight()})
}
