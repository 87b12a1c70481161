package vehicles

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestLookingHoldsForOnePlaceOfTheCut(t *testing.T) {
	job := Demo()
	job.Looked, job.LookedAt = nil, nil
	job.Cut = &Cut{At: [2]float64{1200, 240}, Across: 127}
	looked := job.WithLooked("air line", true).WithLooked("brake line", true)
	assert.Empty(t, looked.LookedElsewhere())

	moved := looked.WithCut(Cut{At: [2]float64{1240, 240}, Across: 127})
	assert.Empty(t, moved.LookedElsewhere(), "looking 300 mm round bears a few centimetres")
	moved = looked.WithCut(Cut{At: [2]float64{1230, 280}, Across: 127})
	assert.Empty(t, moved.LookedElsewhere(), "50 mm away")
	moved = looked.WithCut(Cut{At: [2]float64{1231, 280}, Across: 127})
	assert.Len(t, moved.LookedElsewhere(), 2, "50.6 mm away")
	moved = looked.WithCut(Cut{At: [2]float64{1600, 240}, Across: 127})
	assert.Equal(t, []string{"brake line", "air line"}, moved.LookedElsewhere())

	again := moved.WithLooked("air line", true)
	assert.Equal(t, []string{"brake line"}, again.LookedElsewhere())

	read, err := ParseJob(again.Format(), "again.toml")
	require.NoError(t, err)
	assert.Equal(t, []string{"brake line"}, read.LookedElsewhere(), "kept in the file")

	none := again.WithLooked("air line", false).WithLooked("brake line", false)
	assert.Nil(t, none.LookedAt, "nothing is left behind")
	assert.Nil(t, none.Looked)
}

// runsAfter is the demo job with a change made to its exhaust, and its plan.
func runsAfter(t *testing.T, job Job, change func(r *Run)) (Job, *Plan) {
	r := *job.Exhaust
	r.Path = append(List[RunPoint]{}, r.Path...)
	change(&r)
	job = job.WithRun(ExhaustRun, &r)
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	return job, &plan
}

func TestLookingRoundTheRunsHoldsForWhereTheyAre(t *testing.T) {
	bare := Demo()
	bare.RunLooks, bare.LookedRuns = nil, nil
	bare = bare.WithDrilled(nil)
	require.NotNil(t, bare.Exhaust)
	job, plan := runsAfter(t, bare, func(*Run) {})
	looked := job.WithLookedAt(AtRuns, plan, "air line", true).WithLookedAt(AtRuns, plan, "brake line", true).WithLookedAt(AtOutlet, plan, "roof vent", true)
	assert.Len(t, looked.RunLooks, 1, "both looked for round the same runs")
	assert.Empty(t, looked.LookedBefore(AtRuns, plan))
	moved := func(dx, dy, drop float64) []string {
		after, plan := runsAfter(t, looked, func(r *Run) {
			p := &r.Path[len(r.Path)-1]
			*p = RunPoint{p.X + dx, p.Y + dy, p.Drop + drop}
		})
		return after.LookedBefore(AtRuns, plan)
	}
	assert.Empty(t, moved(0, 0, 0))
	assert.Empty(t, moved(0, 0, 50), "its end 50 mm lower")
	assert.Equal(t, []string{"brake line", "air line"}, moved(0, 0, 80))
	atOutlet := func(drop float64) []string {
		after, plan := runsAfter(t, looked, func(r *Run) { r.Path[len(r.Path)-1].Drop += drop })
		return after.LookedBefore(AtOutlet, plan)
	}
	assert.Empty(t, atOutlet(199))
	assert.Equal(t, []string{"roof vent"}, atOutlet(201), "200 mm away openings are looked for anew")

	end := len(job.Exhaust.Path) - 1
	after, plan := runsAfter(t, looked, func(r *Run) {
		p, q := r.Path[end-1], r.Path[end]
		r.Muffler, r.Clips, r.Drains = nil, nil, nil
		r.Path[end] = RunPoint{(p.X + q.X) / 2, (p.Y + q.Y) / 2, (p.Drop + q.Drop) / 2}
	})
	assert.Empty(t, after.LookedBefore(AtRuns, plan), "cut shorter it is where it was")

	cut := *job.Cut
	cut.At, cut.Drilled = [2]float64{cut.At[0] + 120, cut.At[1]}, nil
	after = looked.WithCut(cut)
	laid, faults := Reduce(after)
	require.Empty(t, faults)
	assert.Len(t, after.LookedBefore(AtRuns, &laid), 2, "the stub went with the cut")
	assert.Empty(t, after.LookedBefore(AtOutlet, &laid), "openings are looked for farther round")
	assert.Equal(t, after.LookedElsewhere(), after.LookedBefore(AtCut, &laid))

	again := after.WithLookedAt(AtRuns, &laid, "air line", true)
	assert.Equal(t, []string{"brake line"}, again.LookedBefore(AtRuns, &laid))
	read, err := ParseJob(again.Format(), "again.toml")
	require.NoError(t, err)
	assert.Equal(t, []string{"brake line"}, read.LookedBefore(AtRuns, &laid), "kept in the file")

	none := again.WithLookedAt(AtRuns, &laid, "air line", false).WithLookedAt(AtRuns, &laid, "brake line", false).WithLookedAt(AtOutlet, &laid, "roof vent", false)
	assert.Nil(t, none.RunLooks, "nothing is left behind")
	assert.Nil(t, none.LookedRuns)
	assert.Nil(t, none.OpeningLooks)
	assert.Nil(t, none.LookedOpenings)
}

func TestARunThatWasNotThereWasNotLookedRound(t *testing.T) {
	job := Demo()
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	bare := job.WithRun(IntakeRun, nil).WithRun(FuelRun, nil)
	none, faults := Reduce(bare)
	require.Empty(t, faults)
	looked := bare.WithLookedAt(AtRuns, &none, "axle", true)
	for _, k := range RunKinds {
		looked = looked.WithRun(k, job.Run(k))
	}
	if job.Intake != nil || job.Fuel != nil {
		assert.Equal(t, []string{"axle"}, looked.LookedBefore(AtRuns, &plan))
	}
	looked = job.WithLookedAt(AtRuns, &plan, "axle", true)
	fewer := looked.WithRun(IntakeRun, nil).WithRun(FuelRun, nil)
	assert.Empty(t, fewer.LookedBefore(AtRuns, &none), "one run less")
	looked.RunLooks = nil
	assert.Empty(t, looked.LookedBefore(AtRuns, &plan), "nobody wrote down where")
}

// A run that goes straight where the other went round a corner is far from it in the middle, whatever its ends.
func TestARunIsHeldAgainstWhereItWasAllAlong(t *testing.T) {
	round := List[RunPoint]{{0, 0, 0}, {1000, 0, 0}, {1000, 1000, 0}}
	straight := List[RunPoint]{{0, 0, 0}, {1000, 1000, 0}}
	assert.False(t, along(straight, round, 500-lookStep/2))
	assert.True(t, along(straight, round, 500), "half of 1000 in the middle")
	assert.False(t, along(round, straight, math.Sqrt(500000)-lookStep/2))
	assert.True(t, along(round, straight, math.Sqrt(500000)+0.001), "the corner's height over the diagonal")
	assert.False(t, along(round, nil, 1000))
	assert.True(t, along(nil, round, 0))
	assert.True(t, along(round, round, 0))
	assert.True(t, along(List[RunPoint]{{50, 3, 4}}, round, 5), "a point is 5 from it")
	assert.False(t, along(List[RunPoint]{{50, 3, 4}}, round, 4.99))
}

// Every key press asks this once a list: a run that has moved is held against where it was, one that has not costs nothing.
func BenchmarkLookedBefore(b *testing.B) {
	job := Demo()
	plan, _ := Reduce(job)
	looked := job.WithLookedAt(AtRuns, &plan, "axle", true)
	moved := *job.Exhaust
	moved.Path = append(List[RunPoint]{}, moved.Path...)
	moved.Path[len(moved.Path)-1].Drop += 20
	after := looked.WithRun(ExhaustRun, &moved)
	laid, _ := Reduce(after)
	for name, c := range map[string]struct {
		job  *Job
		plan *Plan
	}{"where it was": {&looked, &plan}, "moved": {&after, &laid}} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				c.job.LookedBefore(AtRuns, c.plan)
			}
		})
	}
}

// A job has a thing of a kind where it has one or more; what is neither an opening nor an obstruction is on no list.
func TestWhatIsEnteredIsCounted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		for _, l := range LookLists {
			sum := 0
			for _, kind := range l.Kinds() {
				n := job.Entered(l, kind)
				assert.Equal(t, n > 0, job.Has(l, kind), kind)
				assert.Equal(t, kind, l.KindOf(kind).Name)
				sum += n
			}
			if l == AtOutlet {
				assert.Equal(t, len(job.Openings), sum)
			} else {
				assert.Equal(t, len(job.Obstructions), sum)
			}
		}
		assert.True(t, job.HasToLookRound(AtCut))
		assert.Equal(t, job.Exhaust != nil, job.HasToLookRound(AtOutlet))
		assert.Equal(t, job.Exhaust != nil || job.Intake != nil || job.Fuel != nil, job.HasToLookRound(AtRuns))
	})
}
