package rules

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// The cases' places were found without this program, by a grid over the floor and halving of its cells, with Shapely/GEOS.
// Along a ridge another place of the same margin is as good, and so is anything within 1 mm of the worst as what it is to.
func TestSuggestCases(t *testing.T) {
	compared := 0
	for _, name := range caseNames(t) {
		data, err := os.ReadFile(strings.TrimSuffix(name, ".toml") + ".expect.json")
		require.NoError(t, err)
		var want struct {
			Suggest *struct{ Places []placeJSON }
		}
		require.NoError(t, json.Unmarshal(data, &want))
		if want.Suggest == nil {
			continue
		}
		compared++
		result, faults := Judge(readCase(t, name), Builtin())
		require.Empty(t, faults)
		room := RoomForCut(&result)
		got := room.Best(2)
		require.Len(t, got, len(want.Suggest.Places), name)
		for i, w := range want.Suggest.Places {
			assert.InDelta(t, w.Margin, got[i].Margin, 1, name)
			there := geometry.Point{X: w.At[0], Y: w.At[1]}
			assert.InDelta(t, w.Margin, room.Margins.At(there).Margin, 0.01, "the case's own place, %s", name)
		}
	}
	require.Equal(t, 4, compared)
}

// What is suggested is judged again with the cut moved there: no margin to what is below or to the edge is less.
func TestASuggestedPlaceJudgedAgainHasItsMargin(t *testing.T) {
	for _, name := range caseNames(t) {
		if strings.Contains(name, "swapped") {
			continue
		}
		result, _ := Judge(readCase(t, name), Builtin())
		for _, s := range RoomForCut(&result).Best(1) {
			assert.InDelta(t, s.Margin, worstAtCut(t, result.Job, s.At), 0.02, name)
		}
	}
}

func TestSuggestNearIsOpenAndNearest(t *testing.T) {
	job := vehicles.Demo()
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	meant := geometry.Point{X: job.Cut.At[0], Y: job.Cut.At[1]}
	near := RoomForCut(&result).Near(meant)
	require.Len(t, near, 1)
	assert.GreaterOrEqual(t, near[0].Margin, 0.)
	assert.GreaterOrEqual(t, worstAtCut(t, job, near[0].At), -1e-6)
	away := near[0].At.Sub(meant).Norm()
	require.Positive(t, away, "the demo's cut starts foul")
	for deg := 0.; deg < 360; deg += 5 { // a ring just inside is closed all round
		on := meant.Add(geometry.Point{X: away - 0.1}.Turn(deg))
		assert.Negative(t, worstAtCut(t, job, on))
	}
}

func TestSuggestOnAFloorWithoutRoom(t *testing.T) {
	job := vehicles.Demo()
	job.Rules = map[string]float64{"cut.on-floor": 900}
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	assert.Empty(t, RoomForCut(&result).Best(1))
	assert.Empty(t, RoomForCut(&result).Near(geometry.Point{X: 1000}))
	data, err := SuggestJSON(nil)
	require.NoError(t, err)
	assert.JSONEq(t, `{"places": []}`, string(data))
}

// worstAtCut judges a job with its cut moved and its pilot hole not yet drilled.
func worstAtCut(t *testing.T, job vehicles.Job, at geometry.Point) float64 {
	cut := *job.Cut
	cut.At, cut.Drilled = [2]float64{at.X, at.Y}, nil
	job.Cut = &cut
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	worst := math.Inf(1)
	for _, f := range result.Findings {
		if (f.ID() == "cut.clearance" || f.ID() == "cut.on-floor") && f.Margin.Set {
			worst = min(worst, f.Margin.Value)
		}
	}
	return worst
}
