package vehicles

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

// anyNamed draws a job in which some of three things are named by tapes, shields and the fuel line, as planned and as built.
func anyNamed(t *rapid.T) Job {
	things := []string{"tank", "rail", "brake pipe"}
	some := func(label string) (list []string) {
		for _, name := range things {
			if rapid.Bool().Draw(t, label+" "+name) {
				list = append(list, name)
			}
		}
		return list
	}
	cut := func(label string) *Cut {
		c := Cut{Across: 127}
		for _, name := range some(label) {
			c.Direct = append(c.Direct, DirectTape{name, survey.FromNumber(500, true)})
		}
		return &c
	}
	exhaust := func(label string) *Run { return &Run{Shielded: Shields{Names: some(label)}} }
	fuel := func(label string) *Run {
		return &Run{Supply: Supply{From: rapid.SampledFrom(append(things, "")).Draw(t, label)}}
	}
	job := NewJob("TL-42")
	for _, name := range things {
		job.Obstructions = append(job.Obstructions, Obstruction{Name: name})
	}
	job.Cut, job.Exhaust, job.Fuel = cut("tapes"), exhaust("shields"), fuel("from")
	if rapid.Bool().Draw(t, "built") {
		job = job.WithBuilt(Built{Cut: cut("tapes as built"), Exhaust: exhaust("shields as built"), Fuel: fuel("from as built")})
	}
	return job
}

// saying counts how often a job's file says a name outside its list of obstructions.
func saying(job Job, name string) int {
	job.Obstructions = nil
	return strings.Count(string(job.Format()), `"`+name+`"`)
}

// Under a new name the same is said of a thing as under the old one; the old name is said nowhere, other things are named as they were,
// and the old name again gives the same job.
func TestRenamingThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyNamed(t)
		text := string(job.Format())
		was := rapid.SampledFrom([]string{"tank", "rail", "brake pipe"}).Draw(t, "was")
		now := job.Renaming(was, "spare wheel")
		require.Equal(t, job.Naming(was), now.Naming("spare wheel"))
		require.Empty(t, now.Naming(was))
		require.Equal(t, saying(job, was), saying(now, "spare wheel"))
		require.Zero(t, saying(now, was))
		for _, other := range []string{"tank", "rail", "brake pipe"} {
			if other != was {
				require.Equal(t, job.Naming(other), now.Naming(other))
			}
		}
		require.Equal(t, text, string(now.Renaming("spare wheel", was).Format()))
		require.Equal(t, text, string(job.Format()), "the job before is as it was")
	})
}

// What is forgotten is said nowhere, forgetting again changes nothing, and of two things it is all the same which is forgotten first.
// Nothing else is touched.
func TestForgettingInAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyNamed(t)
		text := string(job.Format())
		names := rapid.Permutation([]string{"tank", "rail", "brake pipe"}).Draw(t, "order")
		a, b, stays := names[0], names[1], names[2]
		one := job.Forgetting(a)
		require.Empty(t, one.Naming(a))
		require.Zero(t, saying(one, a))
		require.Equal(t, string(one.Format()), string(one.Forgetting(a).Format()))
		both := one.Forgetting(b)
		require.Equal(t, string(job.Forgetting(b).Forgetting(a).Format()), string(both.Format()))
		require.Equal(t, job.Naming(stays), both.Naming(stays))
		require.Equal(t, text, string(job.Format()), "the job before is as it was")
		if len(job.Naming(a)) == 0 {
			require.Equal(t, text, string(one.Format()))
		}
	})
}

// What says a name as built says so; each way of naming is told once.
func TestEachWayOfNamingIsToldOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyNamed(t)
		for _, name := range []string{"tank", "rail", "brake pipe"} {
			said := job.Naming(name)
			require.Len(t, slices.Compact(slices.Sorted(slices.Values(said))), len(said))
			require.Equal(t, len(said) > 0, saying(job, name) > 0)
			planned, built := job, job
			planned.Built = nil
			want := planned.Naming(name)
			if job.Built != nil {
				built = built.AsBuilt()
				for _, text := range built.Naming(name) {
					want = append(want, text+" (as built)")
				}
			}
			require.Equal(t, want, said)
		}
	})
}
