package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// A chain that ends behind the datum line: the overall reading that is advised has its minus, or it would contradict the chain
// and decide nothing.
func TestAnOverallReadingBehindTheDatumHasItsMinus(t *testing.T) {
	job := tidy()
	job.Datum.Name, job.Datum.HookBelow, job.Floor.From = "door step", vehicles.Some(100), -1200
	on, err := survey.Parse("+60", survey.X)
	require.NoError(t, err)
	o := box("member", "crossmember", -700, 0, -700, -600, 0, 60)
	o.X[1], o.TapedAt, o.Total[survey.X] = on, vehicles.Some(60), at(-500)
	job.Obstructions = vehicles.List[vehicles.Obstruction]{o}
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	for _, a := range Next(result, Builtin()) {
		if a.Field == "total.x" {
			assert.Contains(t, a.Text, "overall reading from the door step to where its chain ends")
			assert.Positive(t, a.Decides)
			return
		}
	}
	t.Fatal("the overall reading is not advised")
}

// Nobody knows where the van's skin ends behind a line of another name: no finding has a point there.
func TestNoRearEdgeIsSpokenOfWithADatumOfItsOwn(t *testing.T) {
	job := tidy()
	job.Exhaust.Path = vehicles.List[vehicles.RunPoint]{{X: 1245, Y: 265, Drop: 150}, {X: 60, Y: 265, Drop: 165}}
	job.Exhaust.Muffler, job.Exhaust.Clips = nil, nil
	edge := func(job vehicles.Job) Finding {
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		for _, f := range result.Findings {
			if f.ID() == "exhaust.edge" {
				return f
			}
		}
		t.Fatal("no exhaust.edge")
		return Finding{}
	}
	f := edge(job)
	assert.InDelta(t, 60, f.Value, 1e-9, "to the bumper")
	assert.Zero(t, f.At[1].X)
	job.Datum.Name = "door step"
	f = edge(job)
	assert.InDelta(t, 890-265, f.Value, 1e-9, "to the van's side")
	assert.InDelta(t, 890, f.At[1].Y, 1e-9)
	job.Floor.Outline.Rear = vehicles.Some(-1560)
	assert.InDelta(t, 625, edge(job).Value, 1e-9, "nearer than the rear, which is known now")
}
