package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// builtBeside is the sample van with its cut so far forward as built, judged both ways.
func builtBeside(t *testing.T, by float64) (planned, built Result) {
	job := vehicles.Demo()
	cut := *job.Cut
	cut.At[0] += by
	planned, faults := Judge(job.WithBuilt(vehicles.Built{Cut: &cut}), Builtin())
	require.Empty(t, faults)
	built, faults = AsBuilt(&planned, Builtin())
	require.Empty(t, faults)
	return planned, built
}

// Each finding of either stands once, beside the one that it is of the same things with; the built ones in their own order.
func TestWhatWasBuiltStandsBesideWhatWasPlanned(t *testing.T) {
	planned, built := builtBeside(t, 60)
	list := Compare(&planned, &built)
	pairs := 0
	var order []*Finding
	for _, c := range list {
		require.True(t, c.Planned != nil || c.Built != nil)
		if c.Built != nil {
			order = append(order, c.Built)
		}
		if c.Planned != nil && c.Built != nil {
			pairs++
			assert.Equal(t, c.Planned.About(), c.Built.About())
			assert.Equal(t, c.Planned.Rule, c.Built.Rule)
		}
	}
	assert.Equal(t, ForPeople(built.Findings), order)
	assert.Len(t, list, len(planned.Findings)+len(built.Findings)-pairs)
	assert.Greater(t, pairs, len(planned.Findings)*9/10)
}

// A cut that came out where it was planned changes nothing; one moved over the pipe is worse there and says so.
func TestWorseAndSame(t *testing.T) {
	planned, built := builtBeside(t, 0)
	for _, c := range Compare(&planned, &built) {
		assert.True(t, c.Same(), c.Built.About())
		assert.False(t, c.Worse())
	}
	planned, built = builtBeside(t, -30)
	worse := map[string]bool{}
	for _, c := range Compare(&planned, &built) {
		if c.Worse() {
			worse[c.Built.About()] = true
			assert.False(t, c.Same())
		}
	}
	assert.True(t, worse["cut: middle crossmember"], "it is 30 mm nearer")
	assert.False(t, worse["cut: front crossmember"])
	clear, foul := &Finding{Verdict: Clear, Margin: vehicles.Some(5)}, &Finding{Verdict: Foul, Margin: vehicles.Some(-5)}
	assert.True(t, Compared{nil, foul}.Worse())
	assert.False(t, Compared{nil, clear}.Worse())
	assert.False(t, Compared{foul, nil}.Worse())
	assert.False(t, Compared{foul, nil}.Same())
	assert.True(t, Compared{clear, foul}.Worse())
	assert.False(t, Compared{foul, clear}.Worse())
}
