package vehicles

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// How a coordinate goes with the height of its zero, against a derivative of the whole reduction: each zero is hung a hair lower
// and higher, and the same readings are reduced again.

const tiltStep = 1e-3 // mm

// byZero is the derivative of some coordinates of the plan by the height of a zero.
func byZero(t require.TestingT, job Job, zero func(*Datum) *Number, of func(*Plan) []float64) []float64 {
	at := func(step float64) []float64 {
		moved := job
		n := zero(&moved.Datum)
		n.Value += step
		plan, faults := Reduce(moved)
		require.Empty(t, faults)
		return of(&plan)
	}
	low, high := at(-tiltStep), at(tiltStep)
	for i := range high {
		high[i] = (high[i] - low[i]) / (2 * tiltStep)
	}
	return high
}

// The zeros, as a job has them.
func hookBelow(d *Datum) *Number { return &d.HookBelow }
func sideBelow(d *Datum) *Number { return &d.SideBelow }
func hookAbove(d *Datum) *Number { return &d.HookAbove }
func sideAbove(d *Datum) *Number { return &d.SideAbove }

// hang gives a job all four zeros, each of its own height.
func hang(t *rapid.T, job *Job) {
	height := func(name string, most float64) Number { return Some(rapid.Float64Range(1, most).Draw(t, name)) }
	job.Datum.HookBelow, job.Datum.SideBelow = height("hook below", 150), height("side below", 60)
	job.Datum.HookAbove, job.Datum.SideAbove = height("hook above", 120), height("side above", 80)
	job.Datum.AboveLeft, job.Datum.AboveRight = Some(860), Some(855)
	job.Bow = nil // where a tape from the bumper runs is another question than how it leans
}

// tilts are those of a thing's edges: x near, x far, y right, y left.
func tilts(p *Placed) (list []float64) {
	for _, e := range p.Edges {
		list = append(list, e.Tilt)
	}
	return list
}

// asDiscs is a table with each line taken apart into rounds at its points: the same readings, one after another, so that each
// has its place and its lean by itself.
func asDiscs(list List[Obstruction]) (apart List[Obstruction], of []int) {
	for i, o := range list {
		points := o.Path
		if o.Shape != Piped {
			apart, of = append(apart, o), append(of, i)
			continue
		}
		for k, p := range points {
			disc := o
			disc.Name, disc.Place = fmt.Sprint(o.Name, ".", k), Place{Shape: Disc, Centre: p, Across: Some(8)}
			apart, of = append(apart, disc), append(of, i)
		}
	}
	return apart, of
}

// level sets a turn to 0: a turned rectangle has the edges that it had before it was turned.
func level(list List[Obstruction]) List[Obstruction] {
	for i, o := range list {
		if o.Turn != 0 {
			o.Turn = 0
			list = list.With(i, o)
		}
	}
	return list
}

func requireTilts(t require.TestingT, job Job, within float64) {
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	for i, o := range job.Obstructions {
		if o.Shape == Piped {
			continue
		}
		edges := func(p *Plan) []float64 { return slice(corners(p.Obstructions[i])) }
		byHook, bySide := byZero(t, job, hookBelow, edges), byZero(t, job, sideBelow, edges)
		got, want := tilts(&plan.Obstructions[i]), []float64{byHook[0], byHook[1], bySide[2], bySide[3]}
		if o.Shape == Disc {
			got, want = []float64{plan.Obstructions[i].X.Tilt, plan.Obstructions[i].Y.Tilt}, []float64{byHook[0], bySide[2]}
		}
		require.InDeltaSlice(t, want, got, within, "%s: %+v", o.Name, o.Place)
	}
}

// Rectangles, rounds and lines, each from a zero or on from the last, with and without a known height.
func TestEveryTiltIsADerivativeOfTheReduction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		hang(t, &job)
		job.Obstructions = level(job.Obstructions)
		whole := job
		apart, of := asDiscs(job.Obstructions)
		job.Obstructions = apart
		requireTilts(t, job, 1e-6)
		plan, _ := Reduce(whole)
		parts, _ := Reduce(job)
		var worst [6][2]Taped
		for i := range parts.Obstructions {
			p, w := &parts.Obstructions[i], &worst[of[i]]
			for axis, c := range [2]Taped{p.X, p.Y} {
				if c.U > w[axis].U {
					w[axis] = c
				}
			}
		}
		for i := range plan.Obstructions {
			p := &plan.Obstructions[i]
			require.Equal(t, worst[i], [2]Taped{p.X, p.Y}, "of a line's points the least certain")
		}
	})
}

// What a coordinate is uncertain by is the tape's own and its zero's height, told apart by the tilt: with heights that are
// exact only the first is left, but for the height of the point itself.
func TestTheOwnPartOfAnUncertaintyIsWhatAnExactZeroLeaves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		hang(t, &job)
		for i, o := range job.Obstructions {
			o.TapedAt = Some(job.Datum.HookBelow.Value + float64(rapid.IntRange(-90, 90).Draw(t, "lower")))
			job.Obstructions[i] = o
		}
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		exact := job
		exact.Tape.Height = Some(0)
		bare, faults := Reduce(exact)
		require.Empty(t, faults)
		heightU := job.SurveyTape().HeightU()
		for i, o := range job.Obstructions {
			if o.Shape != Box {
				continue
			}
			for k, e := range plan.Obstructions[i].Edges {
				tape := bare.Obstructions[i].Edges[k]
				point := tape.U*tape.U + e.Tilt*e.Tilt*heightU*heightU // the height of the point leans the tape as much
				require.InDelta(t, point, e.Own(heightU), 1e-9)
				require.InDelta(t, tape.Tilt, e.Tilt, 1e-12)
			}
		}
	})
}

// A chain that an overall reading closes: each end of it goes with the zeros of both, by its share. The chain comes out at the
// overall reading exactly, so that the shares, which lean too, move nothing.
func TestTheTiltOfAClosedChainIsADerivative(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := bare()
		job.Tape = Tape{Class: "II", Read: Some(1), Height: Some(2)}
		job.Datum.Left, job.Datum.Right = Some(890), Some(890)
		hang(t, &job)
		whole := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
		start := rapid.SampledFrom([]string{"L ", "R ", "", "-"}).Draw(t, "start")
		text := func(v float64) string { return fmt.Sprintf("+%v", v) }
		for i := range rapid.IntRange(1, 4).Draw(t, "things") {
			x, y := survey.FromNumber(whole("x", 400, 2000), true), mustSay(fmt.Sprint(start, whole("y", 300, 600)), survey.Y)
			if i > 0 {
				x, y = mustSay(text(whole("on", 20, 200)), survey.X), mustSay(text(whole("across", 10, 60)), survey.Y)
			}
			o := Obstruction{Name: fmt.Sprint(i), Kind: "other", Measured: true, TapedAt: Some(whole("taped at", 0, 100)), Place: Place{
				X: Pair{x, mustSay(text(whole("long", 20, 200)), survey.X)}, Y: Pair{y, mustSay(text(whole("wide", 10, 60)), survey.Y)},
			}}
			job.Obstructions = append(job.Obstructions, o)
		}
		last := len(job.Obstructions) - 1
		open, faults := Reduce(job)
		require.Empty(t, faults)
		end := corners(open.Obstructions[last])
		o := job.Obstructions[last]
		slant := func(plan float64, zero Number) survey.Reading {
			return survey.FromNumber(math.Hypot(plan, zero.Value-o.TapedAt.Value), false)
		}
		o.Total[survey.X] = slant(end[1], job.Datum.HookBelow)
		left := job.Datum.Left.Value - end[3] // the overall reading in y is from the van's left edge, whatever the chain began at
		if open.Obstructions[last].LeftOne {
			left = job.Datum.Left.Value - end[2]
		}
		if left < 0 {
			t.Skip("the chain ends beyond the van's edge, and a tape has no sign")
		}
		o.Total[survey.Y] = slant(left, job.Datum.SideBelow)
		o.Total[survey.Y].Start, o.Total[survey.Y].Text = survey.FromLeft, "L "+o.Total[survey.Y].Text
		job.Obstructions = job.Obstructions.With(last, o)
		closed, faults := Reduce(job)
		require.Empty(t, faults)
		require.Len(t, closed.Closures, 2)
		for _, c := range closed.Closures {
			require.InDelta(t, 0, c.Misclosure, 1e-9)
		}
		requireTilts(t, job, 1e-6)
	})
}

// Behind the zero, under it at an angle, and level: by hand from 3-4-5. A point 300 higher than the zero at 500 of tape lies 400
// out; a zero that hangs a hair lower brings it 3/4 of that nearer to the zero, which behind it is forward.
func TestTiltsByHand(t *testing.T) {
	for _, c := range []struct {
		name, x     string
		hook, taped float64
		at, tilt    float64
	}{
		{"ahead, the zero lower", "500", 300, 0, 400, -0.75},
		{"behind, the zero lower", "-500", 300, 0, -400, 0.75},
		{"ahead, the zero higher", "500", 0, 300, 400, 0.75},
		{"behind, the zero higher", "-500", 0, 300, -400, -0.75},
		{"level", "500", 120, 120, 500, 0},
		{"behind and level", "-500", 120, 120, -500, 0},
	} {
		o := Obstruction{Name: c.name, Measured: true, TapedAt: Some(c.taped), Place: Place{Shape: Disc, Centre: said(t, c.x, "0"), Across: Some(8)}}
		job := bare(o)
		job.Datum.HookBelow = Some(c.hook)
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		p := plan.Obstructions[0]
		require.InDelta(t, c.at, p.Prism.Footprint.Middle.X, 1e-9, c.name)
		require.InDelta(t, c.tilt, p.X.Tilt, 1e-9, c.name)
		require.Zero(t, p.Y.Tilt, "the centreline is level")
	}
}

// From above, and for both sides of a tie at once: fittings and ties, from either edge, the centreline and the datum, ahead of it
// and behind.
func TestTiltsFromAboveAndOfTies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := bare()
		job.Datum.Left, job.Datum.Right = Some(890), Some(885)
		hang(t, &job)
		whole := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
		pair := func() Pair {
			x := whole("x", 400, 2900)
			if rapid.Bool().Draw(t, "behind") {
				x = -x
			}
			start := rapid.SampledFrom([]string{"", "-", "L ", "R "}).Draw(t, "start")
			return Pair{survey.FromNumber(x, true), mustSay(fmt.Sprint(start, whole("y", 250, 700)), survey.Y)}
		}
		job.Ties = []Tie{{Name: "bolt", Use: false, Below: pair(), Above: pair()}}
		first := pair()
		job.Fittings = []Fitting{
			{Name: "box", Rise: Span{0, 50, true}, Place: Place{
				X: Pair{first[0], mustSay("+40", survey.X)}, Y: Pair{first[1], mustSay("+30", survey.Y)},
			}},
			{Name: "post", Rise: Span{0, 50, true}, Place: Place{Shape: Disc, Centre: pair(), Across: Some(60)}},
			{Name: "beside it", Rise: Span{0, 50, true}, Place: Place{Shape: Disc, Centre: Pair{mustSay("+70", survey.X), mustSay("+80", survey.Y)}, Across: Some(60)}},
		}
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		tie := func(p *Plan) []float64 {
			return []float64{p.Ties[0].Below.X, p.Ties[0].Below.Y, p.Ties[0].Above.X, p.Ties[0].Above.Y}
		}
		zeros := []func(*Datum) *Number{hookBelow, sideBelow, hookAbove, sideAbove}
		for k, zero := range zeros {
			want := make([]float64, 4)
			want[k] = plan.Ties[0].Tilt[k]
			require.InDeltaSlice(t, want, byZero(t, job, zero, tie), 1e-6, "each zero moves the one coordinate that is taped from it")
		}
		for i := range plan.Fittings {
			edges := func(p *Plan) []float64 { return slice(corners(p.Fittings[i])) }
			byHook, bySide := byZero(t, job, hookAbove, edges), byZero(t, job, sideAbove, edges)
			p := &plan.Fittings[i]
			if job.Fittings[i].Shape == Box {
				require.InDeltaSlice(t, []float64{byHook[0], byHook[1], bySide[2], bySide[3]}, tilts(p), 1e-6)
				continue
			}
			require.InDeltaSlice(t, []float64{byHook[0], bySide[2]}, []float64{p.X.Tilt, p.Y.Tilt}, 1e-6)
		}
	})
}

// Openings are taped level, whatever the zeros, and so is what rests on no reading at all.
func TestWhatIsTapedLevelDoesNotLean(t *testing.T) {
	job := bare()
	job.Datum.HookBelow, job.Datum.SideBelow = Some(150), Some(60)
	job.Openings = []Opening{{Name: "door", Kind: "door", Place: Place{Shape: Piped, Path: []Pair{said(t, "900", "L 0"), said(t, "1900", "L 0")}}, Drop: Span{-900, 0, true}}}
	job.Obstructions = List[Obstruction]{edges(t, "nobody knows how high", "500", "600", "L 300", "R 300")}
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	require.Zero(t, plan.Openings[0].X.Tilt)
	require.Zero(t, plan.Openings[0].Y.Tilt)
	require.Equal(t, []float64{0, 0, 0, 0}, tilts(&plan.Obstructions[0]))
	require.True(t, plan.Obstructions[0].Loose)
	require.Zero(t, Taped{U: 1, Tilt: 3}.Own(1), "never less than nothing")
	require.Equal(t, geometry.Point{X: 900, Y: 890}, plan.Openings[0].Prism.Footprint.Path[0])
}
