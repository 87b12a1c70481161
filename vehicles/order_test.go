package vehicles

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// The points of a bow may stand in any order; between two it is straight, at one it is that one's, beyond them it stays.
func TestABowByItsPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []BowPoint
		y := rapid.Float64Range(-900, -500).Draw(t, "first")
		for range rapid.IntRange(1, 6).Draw(t, "points") {
			points = append(points, BowPoint{Y: y, Offset: rapid.Float64Range(-30, 30).Draw(t, "offset")})
			y += rapid.Float64Range(1, 400).Draw(t, "apart")
		}
		sorted := slices.Clone(points)
		rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "order"), 0)).Shuffle(len(points), func(i, k int) { points[i], points[k] = points[k], points[i] })
		last := len(sorted) - 1
		require.Equal(t, sorted[0].Offset, bowAt(points, sorted[0].Y-rapid.Float64Range(0, 1e4).Draw(t, "beyond")))
		require.Equal(t, sorted[last].Offset, bowAt(points, sorted[last].Y+rapid.Float64Range(0, 1e4).Draw(t, "beyond")))
		for i, p := range sorted {
			require.Equal(t, p.Offset, bowAt(points, p.Y))
			if i < last {
				q, part := sorted[i+1], rapid.Float64Range(0.01, 0.99).Draw(t, "part")
				require.InDelta(t, p.Offset+part*(q.Offset-p.Offset), bowAt(points, p.Y+part*(q.Y-p.Y)), 1e-9)
			}
		}
	})
	assert.Zero(t, bowAt(nil, 100), "a straight bumper")
}

// What is measured from the bumper and what a tape must say of a mark are the inverse of each other.
func TestFromTheBumperAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		job.Datum.ShiftAbove = Some(rapid.Float64Range(-50, 50).Draw(t, "shift"))
		x := float64(rapid.IntRange(100, 3000).Draw(t, "x"))
		y := float64(rapid.IntRange(-800, 800).Draw(t, "y"))
		job.Datum.HookBelow = Number{}
		job.Obstructions = List[Obstruction]{{Name: "a", Place: Place{Shape: Disc, Across: Some(1), Centre: Pair{survey.FromNumber(x, true), survey.FromNumber(y, true)}}}}
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		at := plan.Obstructions[0].Prism.Footprint.Middle
		require.InDelta(t, x, job.BelowBumper(at), 1e-9)
		require.InDelta(t, x-job.Datum.ShiftAbove.Value, job.AboveBumper(at), 1e-9)
	})
}

// Openings are taped level, whatever hangs where, and reach the ground where nobody measured them.
func TestOpeningsAreTapedLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		level := job
		level.Datum.HookBelow, level.Datum.SideBelow = Number{}, Number{}
		under := job.Obstructions
		for _, o := range under {
			job.Openings = append(job.Openings, Opening{Name: o.Name, Kind: "other", Place: o.Place, Drop: o.Drop, Unconfirmed: !o.Measured})
		}
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		flat, faults := Reduce(level)
		require.Empty(t, faults)
		for i := range under {
			want, got := flat.Obstructions[i], plan.Openings[i].Placed
			require.Equal(t, want, got)
			require.False(t, got.Loose)
		}
	})
}

// Heights: a drop runs down from the floor, without one a thing reaches the ground and its ends are exact.
func TestHeightsOfThings(t *testing.T) {
	job := bare(edges(t, "measured", "100", "200", "0", "10", 20, 95), edges(t, "not", "100", "200", "0", "10"))
	job.Tape.Height = Some(3)
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	p := plan.Obstructions[0]
	assert.Equal(t, [2]float64{-95, -20}, [2]float64{p.Prism.Low, p.Prism.High})
	assert.InDeltaSlice(t, []float64{math.Sqrt(3), math.Sqrt(3)}, []float64{p.UTop, p.ULow}, 1e-12)
	assert.False(t, p.Assumed)
	p = plan.Obstructions[1]
	assert.Equal(t, [2]float64{-460, 0}, [2]float64{p.Prism.Low, p.Prism.High})
	assert.Zero(t, p.UTop+p.ULow)
	assert.True(t, p.Assumed)
	assert.Equal(t, geometry.Point{X: 40, Y: -890}, plan.FloorMin)
	assert.Equal(t, geometry.Point{X: 3240, Y: 890}, plan.FloorMax)
}

// A name made for a new thing is taken by none, and is the base itself where it may be.
func TestUniqueNamesAreUnique(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"rail", "rail 2", "rail 3", "rail 4", "pipe", ""})
		var job Job
		taken := map[string]bool{}
		for range rapid.IntRange(0, 6).Draw(t, "things") {
			n := name.Draw(t, "name")
			taken[n] = true
			switch rapid.IntRange(0, 3).Draw(t, "list") {
			case 0:
				job.Obstructions = append(job.Obstructions, Obstruction{Name: n})
			case 1:
				job.Openings = append(job.Openings, Opening{Name: n})
			case 2:
				job.Fittings = append(job.Fittings, Fitting{Name: n})
			default:
				job.Ties = append(job.Ties, Tie{Name: n})
			}
		}
		made := job.UniqueName("rail")
		require.False(t, taken[made])
		require.Equal(t, !taken["rail"], made == "rail")
	})
}

// Every van of the library and the sample is written as it stands in its file's style, and read again as the same job.
func TestTheLibraryIsWrittenAsItIsRead(t *testing.T) {
	jobs := []Job{Demo()}
	for _, s := range Library() {
		job, ok := FromLibrary(s.Name)
		require.True(t, ok)
		jobs = append(jobs, job)
	}
	for _, job := range jobs {
		again, err := ParseJob(job.Format(), "a.toml")
		require.NoError(t, err)
		assert.Equal(t, job, again)
		_, faults := Reduce(job)
		assert.Empty(t, faults)
		carried := CarryOver(job, "TL-99")
		plan, faults := Reduce(carried)
		assert.Empty(t, faults)
		for i := range plan.Obstructions {
			assert.False(t, plan.Obstructions[i].Measured, "%s: nothing of another van is measured on this one", job.Ref)
		}
	}
}
