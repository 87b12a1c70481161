package rules

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Whatever was edited, and in whatever order, a job judged after another comes to what it comes to by itself.
func TestRejudgingIsJudging(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	job := crowded(60, true)
	before := Result{}
	for i := range 300 {
		what := edited(&job, r, i)
		want, faults := Judge(job, Builtin())
		got, also := Rejudge(&before, job, Builtin())
		require.Empty(t, faults, "edit %d: %s", i, what)
		require.Empty(t, also)
		require.Equal(t, want, got, "edit %d: %s", i, what)
		before = got
	}
}

// edited edits a job in one of the ways that move what is measured, or what is asked of it, and says how.
func edited(job *vehicles.Job, r *rand.Rand, n int) string {
	i := r.IntN(len(job.Obstructions))
	o, path := job.Obstructions[i], append([]vehicles.RunPoint(nil), job.Exhaust.Path...)
	switch r.IntN(9) {
	case 0:
		job.Obstructions = job.Obstructions.Without(i)
		return fmt.Sprint("without ", i)
	case 1:
		o.Name = fmt.Sprint("another ", n)
		job.Obstructions = job.Obstructions.Insert(i, o)
		return fmt.Sprint("twice ", i)
	case 2:
		path[2].X = 300 - 200*r.Float64()
		exhaust := *job.Exhaust
		exhaust.Path = path
		job.Exhaust = &exhaust
		return "exhaust led elsewhere"
	case 3:
		exhaust, muffler := *job.Exhaust, *job.Exhaust.Muffler
		muffler.Across = 50 + 20*r.Float64()
		exhaust.Muffler = &muffler
		job.Exhaust = &exhaust
		return "a wider muffler"
	case 4:
		cut := *job.Cut
		cut.At[0]++
		job.Cut = &cut
		return "cut moved"
	case 5:
		o.Drop.To = o.Drop.From + 5 + 150*r.Float64()
	case 6:
		o.Drop.From = o.Drop.To * r.Float64()
	case 7:
		o.Turn += 15
	case 8:
		o.X[1] = survey.FromNumber(o.X[1].Length+1, false)
		o.Kind = vehicles.Kinds[r.IntN(len(vehicles.Kinds))]
	}
	job.Obstructions = job.Obstructions.With(i, o)
	return fmt.Sprint("changed ", i)
}

// A digit typed into a form moves one thing.
func BenchmarkRejudge(b *testing.B) {
	for _, n := range []int{60, 500} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			job := crowded(n, true)
			before, _ := Judge(job, Builtin())
			o := job.Obstructions[7]
			for b.Loop() {
				o.Drop.To = 101 + 203 - o.Drop.To
				job.Obstructions = job.Obstructions.With(7, o)
				before, _ = Rejudge(&before, job, Builtin())
			}
		})
	}
}
