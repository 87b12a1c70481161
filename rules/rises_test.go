package rules

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// roomToLead is the sample with its cut where runs can be led out.
func roomToLead(t *testing.T) Result {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At = [2]float64{1405, 195}
	job.Cut = &cut
	return judged(t, job)
}

// An exhaust that is found falls all the way, also behind its muffler, though no rule asks for that: at a depth that its outlet can't be led down to it is a
// miss, which says where it rises or what it hits, and from the least depth on where there is one there is one at each.
func TestAFoundExhaustFallsAllTheWay(t *testing.T) {
	r, first := roomToLead(t), 0.0
	rises := 0
	for drop := 60.0; drop <= 240; drop += 20 {
		found := FindRoute(context.Background(), &r, vehicles.ExhaustRun, Target{At: &vehicles.RunPoint{X: 1370, Y: 870, Drop: drop}}, nil)
		require.NotNil(t, found.Run, "at %g", drop)
		up := false
		for i := 1; i < len(found.Run.Path); i++ {
			up = up || found.Run.Path[i].Drop < found.Run.Path[i-1].Drop
		}
		if !found.Found() {
			assert.Zero(t, first, "there was one at %g, and none at %g", first, drop)
			require.NotEmpty(t, found.Missed(), "at %g", drop)
			for _, f := range found.Missed() {
				if f.Rule == ExhaustFall {
					rises++
					assert.Negative(t, f.Value)
				}
			}
			continue
		}
		if first == 0 {
			first = drop
		}
		assert.False(t, up, "at %g: %v", drop, found.Run.Path)
	}
	assert.Positive(t, rises, "and some of the misses break nothing else")
	assert.Positive(t, first)
}

// An intake that can't fall to its mouth may rise to it, with a drain hole where it is lowest: there is one to a mouth at each height to which one that breaks
// no rule leads.
func TestAnIntakeRisesWhereItCanNotFall(t *testing.T) {
	r, rose := roomToLead(t), 0
	for _, drop := range []float64{60, 80, 96, 98, 100, 102, 104, 110, 140} {
		found := FindRoute(context.Background(), &r, vehicles.IntakeRun, Target{At: &vehicles.RunPoint{X: 2480, Y: 330, Drop: drop}}, nil)
		require.True(t, found.Found(), "at %g", drop)
		laid, faults := Judge(r.Job.WithRun(vehicles.IntakeRun, found.Run), Builtin())
		require.Empty(t, faults)
		for _, f := range laid.Findings {
			assert.False(t, f.Subject.Sort == TheIntake && f.Verdict == Foul, "at %g: %s", drop, f.About())
		}
		if len(found.Run.Drains) > 0 {
			rose++
		}
	}
	assert.Greater(t, rose, 4)
}
