package vehicles

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// Moving the whole van forward of its bumper moves every place by as much; only what reads the same keeps its uncertainty,
// as a tape's error grows by the metre.
func TestMovingAVanMovesItsPlaces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		job.Datum.HookBelow = Number{} // a slope is another one farther off
		by := float64(rapid.IntRange(1, 900).Draw(t, "by"))
		moved, ahead := job, true
		moved.Obstructions = nil
		forward := func(r survey.Reading) survey.Reading {
			if r.Start == survey.On {
				return r
			}
			ahead = ahead && r.Length >= 0 // behind the bumper a van that moves forward comes nearer to it
			return survey.FromNumber(r.Length+by, false)
		}
		for _, o := range job.Obstructions {
			o.X = Pair{forward(o.X[0]), forward(o.X[1])}
			o.Centre[0] = forward(o.Centre[0])
			path := o.Path
			o.Path = nil
			for _, p := range path {
				o.Path = append(o.Path, Pair{forward(p[0]), p[1]})
			}
			moved.Obstructions = append(moved.Obstructions, o)
		}
		before, faults := Reduce(job)
		require.Empty(t, faults)
		after, faults := Reduce(moved)
		require.Empty(t, faults)
		for i := range before.Obstructions {
			p, q := before.Obstructions[i], after.Obstructions[i]
			way := q.Prism.Footprint.Middle.Sub(p.Prism.Footprint.Middle)
			require.InDelta(t, 0, way.Sub(geometry.Point{X: by}).Norm(), 1e-8)
			require.Equal(t, p.Y.U, q.Y.U)
			if ahead {
				require.GreaterOrEqual(t, q.X.U, p.X.U-1e-12)
			}
			require.Equal(t, p.Loose, q.Loose)
		}
	})
}

// The van in a mirror: left is right, what was measured from the centreline changes its sign, and so does every y.
func TestAVanInAMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		other := job
		other.Datum.Left, other.Datum.Right = job.Datum.Right, job.Datum.Left
		other.Bow, other.Obstructions = nil, nil
		for i := len(job.Bow) - 1; i >= 0; i-- {
			other.Bow = append(other.Bow, BowPoint{Y: -job.Bow[i].Y, Offset: job.Bow[i].Offset})
		}
		for _, o := range job.Obstructions {
			if chainsAcross(&o) {
				t.Skip("a chain in y from the centreline runs to the left on both sides")
			}
			o.Y = Pair{mirrored(o.Y[0]), mirrored(o.Y[1])}
			o.Centre[1] = mirrored(o.Centre[1])
			path := o.Path
			o.Path, o.Turn = nil, -o.Turn
			for _, p := range path {
				o.Path = append(o.Path, Pair{p[0], mirrored(p[1])})
			}
			other.Obstructions = append(other.Obstructions, o)
		}
		before, faults := Reduce(job)
		require.Empty(t, faults)
		after, faults := Reduce(other)
		require.Empty(t, faults)
		for i := range before.Obstructions {
			p, q := before.Obstructions[i], after.Obstructions[i]
			low, high := p.Prism.Footprint.Bounds()
			isLow, isHigh := q.Prism.Footprint.Bounds()
			require.InDelta(t, 0, math.Abs(low.X-isLow.X)+math.Abs(high.X-isHigh.X), 1e-8)
			require.InDelta(t, 0, math.Abs(low.Y+isHigh.Y)+math.Abs(high.Y+isLow.Y), 1e-8)
			require.InDelta(t, p.X.U, q.X.U, 1e-12)
			require.InDelta(t, p.Y.U, q.Y.U, 1e-12)
			if o := &job.Obstructions[i]; o.Shape == Box { // the right edge is the left one now
				require.InDeltaSlice(t, []float64{p.Edges[0].U, p.Edges[1].U, p.Edges[3].U, p.Edges[2].U},
					[]float64{q.Edges[0].U, q.Edges[1].U, q.Edges[2].U, q.Edges[3].U}, 1e-12)
			}
		}
	})
}

// chainsAcross says whether a thing has a reading in y that runs on.
func chainsAcross(o *Obstruction) bool {
	on := o.Y[0].Start == survey.On || o.Y[1].Start == survey.On || o.Centre[1].Start == survey.On
	for _, p := range o.Path {
		on = on || p[1].Start == survey.On
	}
	return on
}

// Whatever a job says, every thing has its place in the plan, in order, and every fault a line of the file that says it.
func TestEveryFaultHasItsLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		plan, faults := Reduce(job)
		require.Len(t, plan.Obstructions, len(job.Obstructions))
		require.Len(t, plan.Openings, len(job.Openings))
		require.Len(t, plan.Fittings, len(job.Fittings))
		require.Len(t, plan.Ties, len(job.Ties))
		text := string(job.Format())
		at, rows := locate(text), strings.Split(text, "\n")
		for _, f := range faults {
			line := at.find(f.Key)
			require.LessOrEqual(t, line, len(rows))
			leaf := strings.Split(f.Key[strings.LastIndex(f.Key, ".")+1:], "[")[0]
			require.Contains(t, rows[line-1], leaf, "%s: %s", f.Key, f.Text)
			require.NotContains(t, f.Text, "\n")
		}
	})
}

// What Format writes, read by the TOML library alone: every list and every number is there, by the names of the format.
func TestAnotherReaderFindsEverythingInAFile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		var file struct {
			Format int
			Job    struct{ Ref, Vehicle, Fitter, Notes string }
			Floor  struct{ From, Length, Width, Thickness, Ground float64 }
			Datum  struct {
				HookBelow *float64 `toml:"hook_below"`
				Frames    *float64
				Bow       []struct{ Y, Offset float64 }
			}
			Obstruction []struct {
				Name, Kind string
				Turn       float64
				Across     *float64
				Drop       []float64
				TapedAt    *float64 `toml:"taped_at"`
				Measured   *bool
				X, Y, Path []any
				Centre     []any
			}
			Opening, Fitting, Tie []struct{ Name string }
			Wheel                 []struct {
				At            []float64
				Across, Width float64
			}
			Cut *struct {
				At     []float64
				Across float64
			}
			Exhaust, Intake *struct {
				Across float64
				Bend   *float64
				Path   [][]float64
				Clips  []float64
			}
			Looked map[string]bool
			Rules  map[string]float64
		}
		_, err := toml.Decode(string(job.Format()), &file)
		require.NoError(t, err)
		require.Equal(t, 1, file.Format)
		require.Equal(t, []string{job.Ref, job.Vehicle, job.Fitter, job.Notes}, []string{file.Job.Ref, file.Job.Vehicle, file.Job.Fitter, file.Job.Notes})
		require.Equal(t, []float64{job.Floor.From, job.Floor.Length, job.Floor.Width, job.Floor.Thickness, job.Floor.Ground},
			[]float64{file.Floor.From, file.Floor.Length, file.Floor.Width, file.Floor.Thickness, file.Floor.Ground})
		same := func(n Number, p *float64) {
			require.Equal(t, n.Set, p != nil)
			if n.Set {
				require.Equal(t, n.Value, *p)
			}
		}
		same(job.Datum.HookBelow, file.Datum.HookBelow)
		same(job.Datum.Frames, file.Datum.Frames)
		require.Len(t, file.Datum.Bow, len(job.Bow))
		require.Len(t, file.Obstruction, len(job.Obstructions))
		for i, o := range job.Obstructions {
			f := file.Obstruction[i]
			require.Equal(t, []string{o.Name, o.Kind}, []string{f.Name, f.Kind})
			require.Equal(t, o.Turn, f.Turn)
			require.Equal(t, o.Drop.Set, f.Drop != nil)
			require.Equal(t, o.Measured, f.Measured == nil || *f.Measured)
			same(o.TapedAt, f.TapedAt)
			same(o.Across, f.Across)
			require.Equal(t, [3]bool{o.Shape == Box, o.Shape == Piped, o.Shape == Disc}, [3]bool{f.X != nil && f.Y != nil, f.Path != nil, f.Centre != nil})
			if o.Shape == Piped {
				require.Len(t, f.Path, len(o.Path))
			}
		}
		require.Equal(t, []int{len(job.Openings), len(job.Fittings), len(job.Ties), len(job.Wheels)},
			[]int{len(file.Opening), len(file.Fitting), len(file.Tie), len(file.Wheel)})
		for i, w := range job.Wheels {
			require.Equal(t, []float64{w.At[0], w.At[1], w.Across, w.Width}, append(file.Wheel[i].At, file.Wheel[i].Across, file.Wheel[i].Width))
		}
		if require.Equal(t, job.Cut != nil, file.Cut != nil); job.Cut != nil {
			require.Equal(t, append(job.Cut.At[:], job.Cut.Across), append(file.Cut.At, file.Cut.Across))
		}
		if require.Equal(t, job.Exhaust != nil, file.Exhaust != nil); job.Exhaust != nil {
			require.Equal(t, job.Exhaust.Across, file.Exhaust.Across)
			same(job.Exhaust.Bend, file.Exhaust.Bend)
			require.Equal(t, job.Exhaust.Clips, file.Exhaust.Clips)
			require.Len(t, file.Exhaust.Path, len(job.Exhaust.Path))
			for i, p := range job.Exhaust.Path {
				require.Equal(t, []float64{p.X, p.Y, p.Drop}, file.Exhaust.Path[i])
			}
		}
		require.Equal(t, job.Intake != nil, file.Intake != nil)
		require.Equal(t, job.Looked, file.Looked)
		require.Equal(t, job.Rules, file.Rules)
	})
}

// A chain of any length, in x or y, closed by one overall reading or not explained by it, against least squares.
func TestAnyChainIsClosedAsLeastSquaresDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		axis := survey.Axis(rapid.IntRange(0, 1).Draw(t, "axis"))
		tape := new(Job).SurveyTape()
		readings := []float64{float64(rapid.IntRange(100, 700).Draw(t, "first"))}
		variances := []float64{tape.Variance(readings[0], true)}
		var list []Obstruction
		for i := range rapid.IntRange(1, 5).Draw(t, "things") {
			across := Pair{survey.FromNumber(10, true), survey.FromNumber(20, true)}
			along := across
			for k := range along {
				if i+k == 0 {
					along[0] = survey.FromNumber(readings[0], true)
					continue
				}
				on := float64(rapid.IntRange(5, 40).Draw(t, "on"))
				along[k] = mustSay(fmt.Sprintf("+%v", on), axis)
				readings, variances = append(readings, on), append(variances, tape.Variance(on, false))
			}
			o := Obstruction{Name: fmt.Sprint(i), Measured: true, Place: Place{X: across, Y: across}}
			if axis == survey.X {
				o.X = along
			} else {
				o.Y = along
			}
			list = append(list, o)
		}
		end := 0.
		for _, r := range readings {
			end += r
		}
		miss := rapid.Float64Range(-6, 6).Draw(t, "miss")
		list[len(list)-1].Total[axis] = survey.FromNumber(end-miss, false)
		plan, faults := Reduce(bare(list...))
		require.Empty(t, faults)
		require.Len(t, plan.Closures, 1)
		c := plan.Closures[0]
		require.InDelta(t, miss, c.Misclosure, 1e-9)
		total := tape.Variance(end-miss, true)
		sum := total
		for _, v := range variances {
			sum += v
		}
		require.InDelta(t, miss*miss/sum, c.Statistic, 1e-9)
		require.InDelta(t, math.Sqrt(sum), c.U, 1e-9)
		require.Equal(t, c.Statistic <= ClosureLimit(), c.Closes)
		wantX, wantV := leastSquares(readings, variances, end-miss, total)
		for i := range list {
			p := plan.Obstructions[i]
			require.Equal(t, !c.Closes, p.Unclosed)
			if !c.Closes {
				continue
			}
			low, high := p.Prism.Footprint.Bounds()
			got := []float64{low.X, high.X, p.Edges[0].U * p.Edges[0].U, p.Edges[1].U * p.Edges[1].U}
			if axis == survey.Y {
				got = []float64{low.Y, high.Y, p.Edges[2].U * p.Edges[2].U, p.Edges[3].U * p.Edges[3].U}
			}
			require.InDeltaSlice(t, []float64{wantX[2*i], wantX[2*i+1], wantV[2*i], wantV[2*i+1]}, got, 1e-9)
		}
	})
}
