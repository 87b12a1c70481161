package rules

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// A point in the middle of a straight piece of pipe changes the pipe in nothing, and so no finding: the leg it is on becomes two
// that fall as it did. Left out are legs that count as level only in halves.
func TestAPointInsertedOnALegChangesNoFinding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := wandering(t)
		before, faults := Judge(job, Builtin())
		if len(faults) > 0 {
			t.Skip("a clip past the end")
		}
		run := before.Plan.Exhaust
		i := rapid.IntRange(0, len(run.Line.Legs)-1).Draw(t, "leg")
		leg := run.Line.Legs[i]
		if fall := math.Abs(leg.B.Z - leg.A.Z); len(run.Line.ShortLegs) > 0 || fall > flatLeg && fall < 20*flatLeg {
			t.Skip("too short for its bends, or nearly level")
		}
		along := leg.Begin + (leg.End-leg.Begin)*float64(rapid.IntRange(2, 8).Draw(t, "share"))/10
		if m := run.Muffler; m != nil && along > m.From && along < m.To {
			if along = m.To; along > leg.End {
				t.Skip("the muffler reaches into the bend")
			}
		}
		inserted, shifts, ok := job.WithPath(vehicles.ExhaustRun, job.Exhaust.Path.Insert(i, run.Station(along)))
		require.True(t, ok)
		require.Empty(t, shifts)
		after := judged(t, inserted)
		values := map[string]float64{}
		for _, f := range after.Findings {
			values[fmt.Sprint(f.Rule.ID, f.Subject, f.Against)] = f.Value
		}
		same := func(f *Finding, against Thing) {
			value, there := values[fmt.Sprint(f.Rule.ID, f.Subject, against)]
			assert.True(t, there, "%s against %s", f.ID(), against)
			assert.InDelta(t, f.Value, value, 1e-6, "%s against %s", f.ID(), against)
		}
		for k := range before.Findings {
			f := &before.Findings[k]
			against := f.Against
			if against.Sort == ALeg && int(against.Index) > i {
				against.Index++
			}
			same(f, against)
			if f.Against.Is(ALeg, i) && (run.Muffler == nil || against.Index < int32(run.Muffler.Leg)) {
				against.Index++ // its second half, but behind the muffler no leg is asked to fall
				same(f, against)
			}
		}
		assert.Equal(t, before.Verdict, after.Verdict)
	})
}
