package rules

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// placeRules are the rules that ask something of where the heater stands.
var placeRules = []string{"cut.clearance", "cut.on-floor", "plate.on-floor", "plate.fitting", "body.space", "hole.clearance", "hole.on-floor"}

// worstPlaced judges a job with its cut moved, its heater turned and its pilot hole not yet drilled: the least margin of
// those rules.
func worstPlaced(t require.TestingT, job vehicles.Job, at geometry.Point, yaw float64) float64 {
	cut := vehicles.Cut{Across: vehicles.UsualAcross}
	if job.Cut != nil {
		cut = *job.Cut
	}
	cut.At, cut.Drilled = [2]float64{at.X, at.Y}, nil
	heater := *job.Heater
	heater.Yaw, job.Exhaust, job.Intake, job.Fuel = yaw, nil, nil, nil
	result, faults := Judge(job.WithCut(cut).WithHeater(heater), Builtin())
	require.Empty(t, faults)
	worst := math.Inf(1)
	for _, f := range result.Findings {
		if slices.Contains(placeRules, f.ID()) && f.Margin.Set && f.Subject.Sort != AFuelHole {
			worst = min(worst, f.Margin.Value)
		}
	}
	return worst
}

// searched are the cases that a search of the whole floor is held against a grid on: bare and crowded floors, long and short
// ones, heaters along, across and askew. All of them would take four times as long and come out the same way.
var searched = []string{"01", "05", "09", "10", "22", "24"}

func searchedCases(t *testing.T) []Result {
	list := slices.DeleteFunc(heatedCases(t), func(r Result) bool { return !slices.Contains(searched, strings.TrimPrefix(r.Job.Ref, "TL-")) })
	require.Len(t, list, len(searched))
	return list
}

// heatedCases are the cases with a heater that can be judged.
func heatedCases(t *testing.T) (list []Result) {
	for _, name := range caseNames(t) {
		if strings.Contains(name, "swapped") {
			continue
		}
		result, faults := Judge(readCase(t, name), Builtin())
		require.Empty(t, faults)
		if result.Job.Heater != nil {
			list = append(list, result)
		}
	}
	return list
}

func anywhere(r *rand.Rand, result *Result) geometry.Point {
	size := result.Plan.FloorMax.Sub(result.Plan.FloorMin)
	return result.Plan.FloorMin.Add(geometry.Point{X: size.X * r.Float64(), Y: size.Y * r.Float64()})
}

// roomForHeater returns what is left for the centre of the cut when the heater, turned to yaw, has to stand there too:
// the room for the saw, and what keeps plate, bolts and body clear. Without a heater it is that for the saw.
func roomForHeater(r *Result, yaw float64) Room {
	return RoomForSaw(r).with(r.heaterAt(yaw))
}

// The room of a heater is what the rules say of each place, one by one.
func TestRoomForHeaterIsWhatIsJudged(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for _, result := range heatedCases(t) {
		for range 12 {
			yaw, at := math.Round(r.Float64()*360), anywhere(r, &result)
			got := roomForHeater(&result, yaw).Margins.At(at).Margin
			want := worstPlaced(t, result.Job, at, yaw)
			require.InDelta(t, want, got, 1e-6, "%s at %v, yaw %v", result.Job.Ref, at, yaw)
		}
	}
}

// What is found between places rests on it: no margin changes by more than the place moves.
func TestNoMarginChangesByMoreThanThePlaceMoves(t *testing.T) {
	results := heatedCases(t)
	rapid.Check(t, func(t *rapid.T) {
		result := &results[rapid.IntRange(0, len(results)-1).Draw(t, "case")]
		x := func(name string) float64 { return rapid.Float64Range(-500, 4000).Draw(t, name) }
		p, q := geometry.Point{X: x("px"), Y: x("py") - 1800}, geometry.Point{X: x("qx"), Y: x("qy") - 1800}
		far := q.Sub(p).Norm() + 1e-6
		for _, d := range result.heaterAt(rapid.Float64Range(-180, 180).Draw(t, "yaw")) {
			assert.LessOrEqual(t, math.Abs(d.Margin(p)-d.Margin(q)), far, d.name)
		}
		heater := RoomForTurning(result).Margins
		assert.LessOrEqual(t, math.Abs(heater.At(p).Margin-heater.At(q).Margin), far)
	})
}

// Whatever is suggested holds when it is judged, and no place of a grid over the floor at any of the yaws tried is better than the
// best by more than half the grid's diagonal allows.
func TestTurningBestAgainstEveryPlaceOfAGrid(t *testing.T) {
	for _, result := range searchedCases(t) {
		places := RoomForTurning(&result).Best(2, untold)
		most := 0.0
		for i, s := range places {
			require.True(t, s.Yaw.Set)
			assert.InDelta(t, s.Margin, worstPlaced(t, result.Job, s.At, s.Yaw.Value), 0.001, result.Job.Ref)
			assert.GreaterOrEqual(t, s.Margin, 0.)
			if most = max(most, s.Margin); i > 0 {
				assert.LessOrEqual(t, s.Margin, places[i-1].Margin)
			}
		}
		const grid = 90
		heater, cut := newAnyYaw(&result), RoomForCut(&result)
		best := math.Inf(-1)
		for x := result.Plan.FloorMin.X; x <= result.Plan.FloorMax.X; x += grid {
			for y := result.Plan.FloorMin.Y; y <= result.Plan.FloorMax.Y; y += grid {
				p := geometry.Point{X: x, Y: y}
				best = max(best, min(cut.Margins.At(p).Margin, heater.margin(p)))
			}
		}
		if len(places) > 0 {
			assert.GreaterOrEqual(t, most, best-2, result.Job.Ref)
			assert.LessOrEqual(t, most, best+grid, result.Job.Ref)
		} else {
			assert.Negative(t, best, result.Job.Ref)
		}
	}
}

// A strip of floor 420 mm wide between a wall of a fitting and the floor's right edge: a 320 x 125 mm body with 200 mm
// before, 150 mm behind and 50 mm at its sides takes 670 x 225 mm and fits only along it. Worked out by hand: along x at
// yaw 0 or 180 the plate's 150 mm leave (420 - 225)/2 to the wall from the body's space, and so the best margin is where
// that to the wall is as large as the plate's, 75 mm either way, to the edge: (420 - 112.5 - 75)/2 = 116.25.
func TestTurningFitsAHeaterIntoAStrip(t *testing.T) {
	job, err := vehicles.ParseJob([]byte(`
format = 1
[job]
ref = "strip"
[floor]
from = 0
length = 3000
width = 1000
thickness = 20
ground = 400
[[fitting]]
name = "wall"
x = [0, 3000]
y = [-80, 500]
rise = [0, 900]
[heater]
class = "2 kW"
`), "strip.toml")
	require.NoError(t, err)
	job.Rules = map[string]float64{"cut.on-floor": 0, "plate.on-floor": 0, "body.space": 0}
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	places := RoomForTurning(&result).Best(1, untold)
	require.Len(t, places, 1)
	assert.InDelta(t, 116.25, places[0].Margin, 0.2)
	assert.InDelta(t, 0, math.Mod(places[0].Yaw.Value, 180), 1)
	assert.Negative(t, roomForHeater(&result, 90).Margins.Roomiest(0.1).Margin, "across it does not fit")
	near := RoomForTurning(&result).Near(geometry.Point{X: 1500, Y: 300})
	require.Len(t, near, 1)
	assert.InDelta(t, 0, near[0].Margin, 0.02)
	assert.InDelta(t, -80-112.5, near[0].At.Y, 0.02)
}

func TestSuggestJSONSaysYawOnlyWhereItWasAsked(t *testing.T) {
	plain, err := SuggestJSON([]Suggestion{{At: geometry.Point{X: 1, Y: 2}, Margin: 3, Against: "floor"}})
	require.NoError(t, err)
	assert.JSONEq(t, `{"places": [{"at": [1, 2], "margin": 3, "against": "floor"}]}`, string(plain))
	turned, err := SuggestJSON([]Suggestion{{Against: "floor", Yaw: vehicles.Some(0)}})
	require.NoError(t, err)
	var out struct{ Places []map[string]any }
	require.NoError(t, json.Unmarshal(turned, &out))
	assert.Equal(t, 0., out.Places[0]["yaw"])
}

// suggest answers as a command: 15 ms for the whole process is at once.
func BenchmarkSuggest(b *testing.B) {
	for _, n := range []int{50, 200, 500} {
		result, faults := Judge(crowded(n, false), Builtin())
		require.Empty(b, faults)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				RoomForCut(&result).Best(2)
			}
		})
	}
}

// With the yaw it is a search that one waits for: from a second on one wonders whether it hangs.
func BenchmarkSuggestYaw(b *testing.B) {
	for _, f := range furnishings {
		for _, n := range []int{30, 60, 200} {
			result, faults := Judge(furnished(f, n, 1), Builtin())
			require.Empty(b, faults)
			b.Run(fmt.Sprintf("%s/%d", f.name, n), func(b *testing.B) {
				for b.Loop() {
					RoomForTurning(&result).Best(2, untold)
				}
			})
		}
	}
}

// Whoever asks for what is shared may catch what falls over in it, on whichever core.
func TestWhatFallsOverInSharedWorkCanBeCaught(t *testing.T) {
	for workers := range 5 {
		assert.Panics(t, func() {
			share(200, workers+1, func(i int) {
				if i == 150 {
					panic("fell over")
				}
				time.Sleep(10 * time.Microsecond)
			})
		}, "%d workers", workers+1)
	}
}
