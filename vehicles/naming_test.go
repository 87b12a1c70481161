package vehicles

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

// A name that stands nowhere else: a file in which it is written over with another is the job renamed.
const (
	oddName   = "the odd § tank"
	otherName = "another ¶ name"
)

// naming draws a job that says the odd name in any of the places where an obstruction's name may stand.
func naming(t *rapid.T) Job {
	job := anyJob(t)
	job.Cut, job.Exhaust, job.Fuel = nil, nil, nil
	usual := Obstruction{Name: "usual", Kind: "other", Measured: true, Place: Place{Shape: Disc, Centre: Pair{bareX(1), bareX(2)}, Across: Some(8)}}
	odd := usual
	odd.Name = oddName
	job.Obstructions = append(job.Obstructions[:len(job.Obstructions):len(job.Obstructions)], usual, odd)
	names := rapid.SliceOfN(rapid.SampledFrom([]string{"usual", oddName}), 0, 4)
	if rapid.Bool().Draw(t, "cut") {
		job.Cut = &Cut{At: [2]float64{1000, 200}, Across: 127, Drilled: &Pair{bareX(1000), bareX(200)}}
		for _, name := range names.Draw(t, "tapes") {
			job.Cut.Direct = append(job.Cut.Direct, DirectTape{name, survey.FromNumber(500, true)})
		}
	}
	if rapid.Bool().Draw(t, "exhaust") {
		job.Exhaust = &Run{Across: 26, Path: List[RunPoint]{{1, 2, 3}}}
		if shields := names.Draw(t, "shields"); len(shields) > 0 {
			job.Exhaust.Shielded.Names = shields
		}
	}
	if rapid.Bool().Draw(t, "fuel") {
		job.Fuel = &Run{Across: 5, Path: List[RunPoint]{{1, 2, 3}, {4, 5, 6}}, Supply: Supply{From: rapid.SampledFrom([]string{"", "usual", oddName}).Draw(t, "from")}}
	}
	return job
}

// withoutOdd is the job's file without the obstruction of the odd name itself.
func withoutOdd(job Job) string {
	job.Obstructions = slices.DeleteFunc(slices.Clone(job.Obstructions), func(o Obstruction) bool { return o.Name == oddName })
	return string(job.Format())
}

func TestARenamedObstructionIsAFileWrittenOver(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := naming(t)
		before := string(job.Format())
		last := len(job.Obstructions) - 1
		renamed := job.Obstructions[last]
		renamed.Name = otherName
		next := job.Renaming(oddName, otherName)
		next.Obstructions = next.Obstructions.With(last, renamed)
		require.Equal(t, strings.ReplaceAll(before, oddName, otherName), string(next.Format()))
		require.Equal(t, before, string(job.Format()), "the old job stays")
		back := next.Renaming(otherName, oddName)
		back.Obstructions = back.Obstructions.With(last, job.Obstructions[last])
		require.Equal(t, before, string(back.Format()), "and renamed back it is what it was")
		require.Equal(t, len(job.Naming(oddName)), len(next.Naming(otherName)))
		require.Empty(t, next.Naming(oddName))
	})
}

// Forgotten, a name stands nowhere in the file; what said another stays, in its order; and what there is to forget is said first.
func TestAForgottenNameStandsNowhereInTheFile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := naming(t)
		before := string(job.Format())
		require.Equal(t, strings.Contains(withoutOdd(job), oddName), len(job.Naming(oddName)) > 0)
		next := job.Forgetting(oddName)
		require.NotContains(t, withoutOdd(next), oddName)
		require.Equal(t, before, string(job.Format()), "the old job stays")
		require.Equal(t, job.Naming("usual"), next.Naming("usual"))
		require.Equal(t, strings.Count(before, "usual"), strings.Count(string(next.Format()), "usual"), "no other tape or shield went with it")
		require.Equal(t, string(next.Format()), string(next.Forgetting(oddName).Format()), "forgotten twice is forgotten once")
	})
}
