package sheet

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Every finding has one place: in the table of things by parts, or as it is not clear in the list above that, or in the list below; those that need
// words have both.
func TestEveryFindingHasItsPlace(t *testing.T) {
	packed := vehicles.Demo()
	shields := *packed.Exhaust
	shields.Shielded.All = true
	for name, job := range map[string]vehicles.Job{
		"the sample": packed, "shielded": packed.WithRun(vehicles.ExhaustRun, &shields), "nothing below": {Ref: "TL-80", Floor: packed.Floor, Cut: packed.Cut, Heater: packed.Heater},
	} {
		r, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		inWords := func(f rules.Finding) string { // as if every tenth needed words
			if f.Verdict == rules.Clear && len(f.About())%10 == 0 {
				return "why"
			}
			return ""
		}
		s := source{&r, Words{WhyClear: inWords}}
		findings := rules.ForPeople(r.Findings)
		a := s.sorted(findings)
		places := map[*rules.Finding]int{}
		for _, thing := range a.things {
			for _, f := range a.of[thing] {
				if f != nil {
					places[f]++
				}
			}
		}
		listed := map[*rules.Finding]bool{}
		for _, f := range a.others {
			listed[f] = true
		}
		for _, f := range findings {
			_, _, apart := f.Apart()
			assert.Equal(t, apart, places[f] == 1, "%s: %s is in the table once", name, f.About())
			assert.Equal(t, f.Verdict == rules.Clear && (!apart || inWords(*f) != ""), listed[f], "%s: %s is in the list below", name, f.About())
		}
		assert.Len(t, a.things, len(a.of))
	}
}

// The row with the least to spare comes first: what is foul, then what is nearest.
func TestTheNearestThingComesFirst(t *testing.T) {
	r, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	s := source{&r, Words{WhyClear: func(rules.Finding) string { return "" }}}
	a := s.sorted(rules.ForPeople(r.Findings))
	assert.Equal(t, "brake pipe across", a.things[0])
	last := rules.Foul
	for _, thing := range a.things {
		worst := rules.Clear
		for _, f := range a.of[thing] {
			if f != nil {
				worst = max(worst, f.Verdict)
			}
		}
		assert.LessOrEqual(t, worst, last, thing)
		last = worst
	}
}
