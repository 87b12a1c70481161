package rules

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// A level run is in the way of the spare wheel as long as anything of it, its muffler too, is lower than the wheel's underside;
// once it is above, there is nothing to say.
func TestARunAboveTheUndersideIsInNobodysWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := tidy()
		bottom := float64(rapid.IntRange(150, 400).Draw(t, "bottom"))
		wheel := things(t)[0]
		wheel.Name, wheel.Kind = "spare", rapid.SampledFrom([]string{"spare wheel", "jacking point"}).Draw(t, "kind")
		wheel.Drop = vehicles.Span{From: 0, To: bottom, Set: true}
		job.Obstructions = []vehicles.Obstruction{wheel}
		thick := rapid.SampledFrom([]float64{26, 68}).Draw(t, "muffler")
		level := func(run *vehicles.Run, drop float64) {
			path := make([]vehicles.RunPoint, len(run.Path))
			for i, p := range run.Path {
				path[i] = vehicles.RunPoint{X: p.X, Y: p.Y, Drop: drop}
			}
			run.Path = path
		}
		found := func(exhaust, intake float64) (ids int) {
			level(job.Exhaust, exhaust)
			level(job.Intake, intake)
			job.Exhaust.Hanging = vehicles.Hanging{Muffler: &vehicles.Muffler{Leg: 3, Start: 100, Length: 180, Across: thick}}
			r := judged(t, job)
			for _, id := range []string{"exhaust.under", "intake.under"} {
				if f := findingOf(&r, id, "spare"); f != nil {
					ids++
					require.Equal(t, Damages, f.Weight)
				}
			}
			return ids
		}
		less := float64(rapid.IntRange(1, 20).Draw(t, "less"))
		require.Equal(t, 2, found(bottom-thick/2+less, bottom-14+less), "both dip below it by so much")
		require.Equal(t, 1, found(bottom-thick/2-less, bottom-14+less))
		require.Equal(t, 0, found(bottom-thick/2-less, bottom-14-less))
	})
}

// What was not measured on this van is no better than doubtful, and the way it is taped counts.
func TestWhatIsNotConfirmedIsNotClearOfARunBelow(t *testing.T) {
	job := tidy()
	wheel := box("spare", "spare wheel", 300, 900, -300, 300, 40, 100)
	wheel.Measured = false
	job.Obstructions = []vehicles.Obstruction{wheel}
	r := judged(t, job)
	f := findingOf(&r, "exhaust.under", "spare")
	require.NotNil(t, f)
	assert.Equal(t, Doubtful, f.Verdict)
	assert.Equal(t, "not measured on this van", f.Why)
	assert.Greater(t, f.Margin.Value, 100.0)
	assert.Greater(t, f.Sigma, 1.0)
}

// What is there and nobody has said how stands in a list of its own: the one that other programs compare stays as it was.
func TestHowTheMufflersDrainPointsIsAsked(t *testing.T) {
	job := tidy()
	r := judged(t, job)
	assert.Empty(t, r.Unchecked)
	assert.Contains(t, r.Unanswered, "muffler drain")
	data, err := json.Marshal(r)
	require.NoError(t, err)
	assert.Contains(t, string(data), `"unchecked":[],"unanswered":["muffler drain"`)
	for drain, value := range map[string]float64{vehicles.DrainDown: 0, vehicles.DrainAside: 1} {
		muffler := *job.Exhaust.Muffler
		muffler.Drain = drain
		job.Exhaust.Muffler = &muffler
		r = judged(t, job)
		assert.NotContains(t, r.Unanswered, "muffler drain")
		assert.Equal(t, value, r.finding(t, "muffler.drain").Value)
	}
	job.Exhaust.Muffler = nil
	assert.NotContains(t, judged(t, job).Unanswered, "muffler drain", "there is none to look at")
}

// finding is the one finding of an id.
func (r Result) finding(t *testing.T, id string) (f Finding) {
	for i := range r.Findings {
		if r.Findings[i].ID() == id {
			require.Empty(t, f.Limit, "more than one %s", id)
			f = r.Findings[i]
		}
	}
	require.NotNil(t, f.Limit, "no %s", id)
	return f
}
