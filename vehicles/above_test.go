package vehicles

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

// above reads one reading taken from above as the model says: from a zero that lies shift_above forward of the datum and
// hook_above below the finished floor, from a side edge that lies side_above below it, level from the centreline.
func above(job Job, axis survey.Axis, r survey.Reading, y float64) (at, variance float64) {
	d, tape := job.Datum, job.Tape
	hook := d.HookAbove.Value
	if axis == survey.Y {
		if hook = d.SideAbove.Value; r.Start == survey.Datum {
			hook = 0
		}
	}
	own := (mpe(r.Length, 0.2)*mpe(r.Length, 0.2) + tape.Read.Value*tape.Read.Value) / 3
	plan := math.Sqrt(r.Length*r.Length - hook*hook)
	variance = (r.Length*r.Length*own + hook*hook*tape.Height.Value*tape.Height.Value/3) / (plan * plan)
	switch {
	case axis == survey.X:
		twin := reckoner{job: job}
		return plan + d.ShiftAbove.Value + twin.bow(y), variance
	case r.Start == survey.FromLeft:
		return d.AboveLeft.Value - plan, variance
	case r.Start == survey.FromRight:
		return plan - d.AboveRight.Value, variance
	}
	return math.Copysign(plan, r.Length), variance
}

func TestReadingsFromAboveAreAsTheModelSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := surveyed(t)
		whole := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
		job.Datum.HookAbove, job.Datum.ShiftAbove = Some(whole("hook", 0, 120)), Some(whole("shift", -60, 60))
		job.Datum.AboveLeft, job.Datum.AboveRight = Some(whole("above left", 830, 880)), Some(whole("above right", 830, 880))
		if rapid.Bool().Draw(t, "sloped") {
			job.Datum.SideAbove = Some(whole("side above", 0, 80))
		}
		var want []geometry.Point
		var variances [][2]float64
		for i := range rapid.IntRange(1, 4).Draw(t, "ties") {
			start := rapid.SampledFrom([]string{"", "-", "L ", "R "}).Draw(t, "start")
			x := survey.FromNumber(whole("x", 300, 2900), true)
			y := mustSay(fmt.Sprintf("%s%v", start, whole("y", 150, 800)), survey.Y)
			atY, vy := above(job, survey.Y, y, 0)
			atX, vx := above(job, survey.X, x, atY)
			want, variances = append(want, geometry.Point{X: atX, Y: atY}), append(variances, [2]float64{vx, vy})
			job.Ties = append(job.Ties, Tie{Name: fmt.Sprint(i), Above: Pair{x, y}, Below: Pair{survey.FromNumber(1000, true), survey.FromNumber(0, true)}})
		}
		plan, faults := Reduce(job)
		require.Empty(t, faults)
		b := reckoner{job: job}
		for i, tie := range plan.Ties {
			require.InDelta(t, 0, tie.Above.Sub(want[i]).Norm(), 1e-9)
			by := b.along(survey.Y, job.Ties[i].Below[1], reckoned{}, Some(0), 0)
			bx := b.along(survey.X, job.Ties[i].Below[0], reckoned{}, Some(0), by.at)
			require.InDelta(t, 0, tie.Below.Sub(geometry.Point{X: bx.at, Y: by.at}).Norm(), 1e-9)
			require.InDelta(t, (variances[i][0]+variances[i][1]+bx.variance+by.variance)/2, tie.Variance(), 1e-9)
		}
		// A fitting with the same readings lies there too, untied: its corner from the last tie's reading on.
		first := job.Ties[0].Above
		job.Ties = nil
		job.Fittings = []Fitting{{Name: "box", Rise: Span{From: 10, To: 60, Set: true}, Place: Place{
			X: Pair{first[0], mustSay("+40", survey.X)}, Y: Pair{first[1], mustSay("+30", survey.Y)},
		}}}
		plan, faults = Reduce(job)
		require.Empty(t, faults)
		side := 30.
		if first[1].Start == survey.FromLeft {
			side = -30
		}
		near, _ := above(job, survey.X, first[0], want[0].Y+side/2)
		low, high := plan.Fittings[0].Prism.Footprint.Bounds()
		require.InDeltaSlice(t, []float64{near, near + 40, min(want[0].Y, want[0].Y+side), max(want[0].Y, want[0].Y+side)},
			[]float64{low.X, high.X, low.Y, high.Y}, 1e-9)
		require.Equal(t, [2]float64{job.Floor.Thickness + 10, job.Floor.Thickness + 60}, [2]float64{plan.Fittings[0].Prism.Low, plan.Fittings[0].Prism.High})
		require.InDelta(t, job.Tape.Height.Value/math.Sqrt(3), plan.Fittings[0].UTop, 1e-12)
	})
}

// A mark is as sure as the tape that lands it: from the bumper's zero, and from the nearer side edge.
func TestAMarkIsAsSureAsItsTapes(t *testing.T) {
	job := bare()
	job.Tape = Tape{Class: "II", Read: Some(1), Mark: Some(1)}
	job.Datum.HookAbove, job.Datum.ShiftAbove = Some(60), Some(20)
	for _, c := range []struct{ x, y, edge float64 }{{1210, 240, 650}, {1210, -240, 650}, {500, 850, 40}, {500, -850, 40}, {900, 0, 890}} {
		u := job.AboveMarkU(geometry.Point{X: c.x, Y: c.y})
		plan := c.x - 20
		length := math.Hypot(plan, 60)
		own := (mpe(length, 0.2)*mpe(length, 0.2) + 1) / 3
		height := 2. * 2. / 3 // the format's default
		want := (length*length*own+3600*height)/(plan*plan) + 1./3
		assert.InDelta(t, math.Sqrt(want), u[0], 1e-9, "%+v", c)
		assert.InDelta(t, math.Sqrt((mpe(c.edge, 0.2)*mpe(c.edge, 0.2)+1+1)/3), u[1], 1e-9, "%+v", c)
	}
	job = job.WithCut(Cut{At: [2]float64{1210, 240}, Across: 127})
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	assert.Equal(t, job.AboveMarkU(geometry.Point{X: 1210, Y: 240}), plan.Cut.UMark)
	assert.Equal(t, plan.Cut.UMark, [2]float64{plan.Cut.UX, plan.Cut.UY})
	assert.False(t, plan.Cut.Drilled)
	drilled := Pair{survey.FromNumber(1222, true), mustSay("L 652", survey.Y)}
	plan, faults = Reduce(job.WithDrilled(&drilled))
	require.Empty(t, faults)
	assert.True(t, plan.Cut.Drilled)
	assert.Equal(t, geometry.Point{X: 1222, Y: 238}, plan.Cut.At)
	assert.Equal(t, geometry.Point{X: 1210, Y: 240}, plan.Cut.Intended)
	assert.InDelta(t, math.Sqrt((mpe(1222, 0.2)*mpe(1222, 0.2)+1)/3), plan.Cut.UX, 1e-12)
	assert.Nil(t, bare().WithDrilled(&drilled).Cut, "no hole without a cut")
}
