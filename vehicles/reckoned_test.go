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

// A slow twin of the reduction of what lies below the floor, written from the words of the job file's model alone: every
// reading goes to a coordinate, its variance and whether its slope is unknown.

// reckoned is where a reading ended.
type reckoned struct {
	at, variance float64
	rightward    bool
	loose        bool
}

// reckoner reads a job as its model says.
type reckoner struct {
	job  Job
	x, y reckoned // where the next thing may run on from
}

// mpe is the permissible error of a class II tape, 2014/32/EU annex X: the length in metres rounded up.
func mpe(length, hook float64) float64 { return 0.3 + 0.2*math.Ceil(math.Abs(length)/1000) + hook }

func (r *reckoner) read(length, zero float64, sloped bool, drop Number) reckoned {
	own := (mpe(length, 0.2)*mpe(length, 0.2) + r.job.Tape.Read.Value*r.job.Tape.Read.Value) / 3
	if !sloped || !drop.Set {
		return reckoned{at: length, variance: own, loose: sloped}
	}
	rise := zero - drop.Value
	plan := math.Copysign(math.Sqrt(length*length-rise*rise), length) // behind the datum as far
	heights := 2 * r.job.Tape.Height.Value * r.job.Tape.Height.Value / 3
	return reckoned{at: plan, variance: (length*length*own + rise*rise*heights) / (plan * plan)}
}

func (r *reckoner) on(before reckoned, length float64) reckoned {
	if before.rightward {
		length = -length
	}
	before.at += length
	before.variance += (mpe(length, 0)*mpe(length, 0) + r.job.Tape.Read.Value*r.job.Tape.Read.Value) / 3
	return before
}

func (r *reckoner) along(axis survey.Axis, reading survey.Reading, before reckoned, drop Number, y float64) reckoned {
	d := r.job.Datum
	if reading.Start == survey.On {
		return r.on(before, reading.Length)
	}
	if axis == survey.X {
		e := r.read(reading.Length, d.HookBelow.Value, d.HookBelow.Set, drop)
		e.at += r.bow(y)
		return e
	}
	switch reading.Start {
	case survey.FromLeft:
		e := r.read(reading.Length, d.SideBelow.Value, d.SideBelow.Set, drop)
		e.at, e.rightward = d.Left.Value-e.at, true
		return e
	case survey.FromRight:
		e := r.read(reading.Length, d.SideBelow.Value, d.SideBelow.Set, drop)
		e.at -= d.Right.Value
		return e
	}
	return r.read(reading.Length, 0, false, drop)
}

// bow runs straight between two points and level beyond them; they are sorted by y in these jobs.
func (r *reckoner) bow(y float64) float64 {
	points := r.job.Bow
	if len(points) == 0 {
		return 0
	}
	for i := 1; i < len(points); i++ {
		if a, b := points[i-1], points[i]; y >= a.Y && y <= b.Y {
			return a.Offset + (b.Offset-a.Offset)*(y-a.Y)/(b.Y-a.Y)
		}
	}
	if y < points[0].Y {
		return points[0].Offset
	}
	return points[len(points)-1].Offset
}

// thing returns a thing's outline and the variances of its edges: x near, x far, y right, y left.
func (r *reckoner) thing(o Obstruction) (f geometry.Footprint, edges [4]reckoned) {
	drop := o.TapedAt
	if !drop.Set && o.Drop.Set {
		drop = Some(o.Drop.To)
	}
	if o.Shape == Box {
		one := r.along(survey.Y, o.Y[0], r.y, drop, 0)
		two := r.along(survey.Y, o.Y[1], one, drop, 0)
		middle := (one.at + two.at) / 2
		near := r.along(survey.X, o.X[0], r.x, drop, middle)
		far := r.along(survey.X, o.X[1], near, drop, middle)
		r.x, r.y = far, two
		if two.at < one.at {
			one, two = two, one
		}
		return geometry.NewRectangle(geometry.Point{X: near.at, Y: one.at}, geometry.Point{X: far.at, Y: two.at}, o.Turn),
			[4]reckoned{near, far, one, two}
	}
	points := o.Path
	if o.Shape == Disc {
		points = []Pair{o.Centre}
	}
	var path []geometry.Point
	for _, p := range points {
		r.y = r.along(survey.Y, p[1], r.y, drop, 0)
		r.x = r.along(survey.X, p[0], r.x, drop, r.y.at)
		path = append(path, geometry.Point{X: r.x.at, Y: r.y.at})
		for i, e := range []reckoned{r.x, r.x, r.y, r.y} {
			if e.variance > edges[i].variance {
				edges[i].variance = e.variance
			}
			edges[i].loose = edges[i].loose || e.loose
		}
	}
	if o.Shape == Disc {
		return geometry.NewRound(path[0], o.Across.Value/2), edges
	}
	return geometry.NewLine(path, o.Across.Value/2), edges
}

// surveyed draws a job whose readings make sense: rectangles, pipes and rounds, each from a zero or on from the last.
func surveyed(t *rapid.T) Job {
	whole := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
	job := bare()
	job.Tape = Tape{Class: "II", Read: Some(whole("read", 1, 3)), Height: Some(whole("height", 1, 4))}
	job.Datum.Left, job.Datum.Right = Some(whole("left", 850, 900)), Some(whole("right", 850, 900))
	if rapid.Bool().Draw(t, "hook") {
		job.Datum.HookBelow = Some(whole("hook below", 0, 150))
	}
	if rapid.Bool().Draw(t, "side") {
		job.Datum.SideBelow = Some(whole("side below", 0, 60))
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "bow") {
		job.Bow = append(job.Bow, BowPoint{Y: float64(400*i - 500), Offset: whole("offset", -20, 20)})
	}
	reading := func(axis survey.Axis, on bool) survey.Reading {
		if on && rapid.Bool().Draw(t, "on") {
			return mustSay(fmt.Sprintf("+%v", whole("on", 10, 90)), axis)
		}
		if axis == survey.X {
			x := whole("x", 500, 2900)
			if rapid.Bool().Draw(t, "behind the datum") {
				x = -x
			}
			return survey.FromNumber(x, true)
		}
		start := rapid.SampledFrom([]string{"", "-", "L ", "R "}).Draw(t, "start")
		return mustSay(fmt.Sprintf("%s%v", start, whole("y", 250, 800)), axis)
	}
	point := func(on bool) Pair { return Pair{reading(survey.X, on), reading(survey.Y, on)} }
	for i := range rapid.IntRange(1, 6).Draw(t, "things") {
		o := Obstruction{Name: fmt.Sprint(i), Kind: "other", Measured: true}
		switch rapid.IntRange(0, 2).Draw(t, "form") {
		case 0:
			x, y := reading(survey.X, i > 0), reading(survey.Y, i > 0)
			o.X = Pair{x, mustSay(fmt.Sprintf("+%v", whole("long", 20, 200)), survey.X)}
			o.Y = Pair{y, reading(survey.Y, true)}
			o.Turn = float64(rapid.SampledFrom([]int{0, 0, 30}).Draw(t, "turn"))
		case 1:
			o.Shape, o.Path, o.Across = Piped, []Pair{point(i > 0), point(true), point(true)}, Some(8)
		default:
			o.Shape, o.Centre, o.Across = Disc, point(i > 0), Some(60)
		}
		if rapid.Bool().Draw(t, "drop") {
			o.Drop = Span{From: 0, To: whole("low", 10, 200), Set: true}
		}
		if rapid.Bool().Draw(t, "taped") {
			o.TapedAt = Some(whole("taped at", 0, 100))
		}
		job.Obstructions = append(job.Obstructions, o)
	}
	return job
}

func mustSay(text string, axis survey.Axis) survey.Reading {
	r, err := survey.Parse(text, axis)
	if err != nil {
		panic(err) // the texts above are of the grammar
	}
	return r
}

func TestReducingIsAsTheModelSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		r := reckoner{job: job}
		loose := false
		for i, o := range job.Obstructions {
			f, edges := r.thing(o)
			got := plan.Obstructions[i]
			low, high := f.Bounds()
			isLow, isHigh := got.Prism.Footprint.Bounds()
			require.InDelta(t, 0, isLow.Sub(low).Norm()+isHigh.Sub(high).Norm(), 1e-8, o.Name)
			require.InDelta(t, math.Sqrt(max(edges[0].variance, edges[1].variance)), got.X.U, 1e-9)
			require.InDelta(t, math.Sqrt(max(edges[2].variance, edges[3].variance)), got.Y.U, 1e-9)
			if o.Shape == Box {
				for k, e := range edges {
					require.InDelta(t, math.Sqrt(e.variance), got.Edges[k].U, 1e-9)
				}
			}
			first := [2]survey.Reading{o.X[0], o.Y[0]}
			if o.Shape == Disc {
				first = o.Centre
			} else if o.Shape == Piped {
				first = o.Path[0]
			}
			own := edges[0].loose || edges[1].loose || edges[2].loose || edges[3].loose
			loose = own || loose && (first[0].Start == survey.On || first[1].Start == survey.On)
			require.Equal(t, loose, got.Loose, o.Name)
			require.Equal(t, o.Shape == Box && o.Turn == 0, got.Axis)
		}
	})
}

// What the uncertainty of an edge is said to be made of adds up to it, at every corner of every thing.
func TestWhatAnUncertaintyIsMadeOfAddsUpToIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		plan, _ := Reduce(job)
		for i := range plan.Obstructions {
			placed := &plan.Obstructions[i]
			for _, q := range placed.Prism.Footprint.Corners() {
				x, y := job.MadeAt(Obstructions, i, placed, q, ClosureLimit())
				ux, uy := edgeU(placed, q)
				require.InDelta(t, ux*ux, x.Sum(), 1e-9)
				require.InDelta(t, uy*uy, y.Sum(), 1e-9)
				require.GreaterOrEqual(t, min(x.Tape, x.Read, x.Slope, x.Height, x.Chain, x.Hook), 0.)
			}
		}
	})
}

// A mark, a drilled hole, a fitting and an opening too.
func TestWhatMarksAndHolesAreMadeOf(t *testing.T) {
	job := Demo()
	pair := Pair{mustSay("1394.1", survey.X), mustSay("L 652", survey.Y)}
	job = job.WithDrilled(&pair)
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	x, y := job.DrilledMade()
	require.InDelta(t, plan.Cut.UX*plan.Cut.UX, x.Sum(), 1e-9)
	require.InDelta(t, plan.Cut.UY*plan.Cut.UY, y.Sum(), 1e-9)
	tape := job.SurveyTape()
	for _, hook := range []float64{0, 60} {
		m := MarkMade(tape, 1210, hook)
		require.InDelta(t, math.Pow(tape.MarkU(1210, hook), 2), m.Sum(), 1e-12)
		require.InDelta(t, tape.Variance(1210, true)-tape.Variance(1210, false), m.Hook, 1e-3)
		require.Positive(t, m.Mark)
	}
	for i := range plan.Fittings {
		f := &plan.Fittings[i]
		x, y := job.MadeAt(Fittings, i, f, f.Prism.Footprint.Corners()[0], ClosureLimit())
		require.InDelta(t, max(f.Edges[0].U, f.Edges[1].U), math.Sqrt(x.Sum()), 0.2)
		require.Positive(t, y.Sum())
	}
	for i := range plan.Openings {
		o := &plan.Openings[i].Placed
		x, y := job.MadeAt(Openings, i, o, o.Prism.Footprint.Middle, ClosureLimit())
		require.InDelta(t, o.X.U*o.X.U, x.Sum(), 1e-9)
		require.InDelta(t, o.Y.U*o.Y.U, y.Sum(), 1e-9)
	}
	x, y = job.MadeAt(Openings, 99, &Placed{}, geometry.Point{}, 0)
	require.Zero(t, x.Sum()+y.Sum(), "no such thing")
}
