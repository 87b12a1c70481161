package vehicles

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
)

func said(t *testing.T, x, y string) Pair {
	t.Helper()
	return Pair{saidOf(t, x, survey.X), saidOf(t, y, survey.Y)}
}

func saidOf(t *testing.T, text string, axis survey.Axis) survey.Reading {
	t.Helper()
	r, err := survey.Parse(text, axis)
	require.NoError(t, err)
	return r
}

func edges(t *testing.T, name, near, far, one, two string, drop ...float64) Obstruction {
	o := Obstruction{Name: name, Kind: "other", Measured: true, Place: Place{
		X: Pair{saidOf(t, near, survey.X), saidOf(t, far, survey.X)},
		Y: Pair{saidOf(t, one, survey.Y), saidOf(t, two, survey.Y)},
	}}
	if len(drop) == 2 {
		o.Drop = Span{From: drop[0], To: drop[1], Set: true}
	}
	return o
}

func bare(obstructions ...Obstruction) Job {
	return Job{Floor: Floor{From: 40, Length: 3200, Width: 1780, Thickness: 31, Ground: 460}, Obstructions: obstructions}
}

func corners(p Placed) [4]float64 {
	low, high := p.Prism.Footprint.Bounds()
	return [4]float64{low.X, high.X, low.Y, high.Y}
}

// A chain in y runs to the van's right after an L reading and to its left after an R or plain one: job file format.
func TestChainsRunOnThroughTheTable(t *testing.T) {
	disc := Obstruction{Name: "disc", Measured: true, Place: Place{Shape: Disc, Centre: said(t, "+10", "+20"), Across: Some(8)}}
	line := Obstruction{Name: "line", Measured: true, Place: Place{
		Shape: Piped, Across: Some(8), Path: []Pair{said(t, "+1", "R 100"), said(t, "+2", "+3")},
	}}
	plan, faults := Reduce(bare(
		edges(t, "first", "100", "+50", "L 200", "+30"), // y 690 then 660
		edges(t, "second", "+5", "+15", "+10", "+40"),   // still to the right: 650, 610
		disc, // 180, 590
		line, // 181 -> 183, -790 -> -787
		edges(t, "last", "+1", "300", "+4", "100"), // from the line's last point, to the left
	))
	require.Empty(t, faults)
	assert.Equal(t, [4]float64{100, 150, 660, 690}, corners(plan.Obstructions[0]))
	assert.Equal(t, [4]float64{155, 170, 610, 650}, corners(plan.Obstructions[1]))
	assert.Equal(t, geometry.Point{X: 180, Y: 590}, plan.Obstructions[2].Prism.Footprint.Middle)
	assert.Equal(t, []geometry.Point{{X: 181, Y: -790}, {X: 183, Y: -787}}, plan.Obstructions[3].Prism.Footprint.Path)
	assert.Equal(t, [4]float64{184, 300, -783, 100}, corners(plan.Obstructions[4]))
}

// u^2 = (mpe^2 + read^2) / 3 with mpe = a + b ceil(L / 1000) + c, class II 0.3, 0.2, 0.2 (2014/32/EU annex X), and a
// chain adds its variance without c.
func TestAChainAddsItsVariance(t *testing.T) {
	plan, faults := Reduce(bare(edges(t, "a", "1100", "+84", "0", "50")))
	require.Empty(t, faults)
	first := (0.9*0.9 + 1) / 3
	on := (0.5*0.5 + 1) / 3
	p := plan.Obstructions[0]
	assert.InDelta(t, math.Sqrt(first), p.Edges[0].U, 1e-12)
	assert.InDelta(t, math.Sqrt(first+on), p.Edges[1].U, 1e-12)
	assert.Equal(t, p.Edges[1].U, p.X.U)
	ux, _ := edgeU(&p, geometry.Point{X: 1184, Y: 20})
	assert.Equal(t, p.Edges[1].U, ux)
}

func TestWhichSideWasReadFirstIsKnown(t *testing.T) {
	plan, faults := Reduce(bare(
		edges(t, "from the left", "0", "10", "L 200", "+30"), edges(t, "from the right", "0", "10", "R 200", "+30"),
		edges(t, "left first", "0", "10", "300", "-300"), edges(t, "right first", "0", "10", "-300", "300"),
	))
	require.Empty(t, faults)
	for i, left := range []bool{true, false, true, false} {
		assert.Equal(t, left, plan.Obstructions[i].LeftOne, i)
	}
}

func TestSlopeIsTakenOutOnlyWhereItIsKnown(t *testing.T) {
	taped := edges(t, "taped", "500", "+10", "L 500", "R 500", 0, 50)
	taped.TapedAt = Some(0)
	job := bare(
		taped, // 3-4-5: hook 300, so 400
		edges(t, "low end", "500", "600", "0", "10", 0, 300), // taped at the hook's own height
		edges(t, "unknown", "700", "800", "0", "10"),
		edges(t, "on it", "+50", "900", "0", "10", 0, 300),
		edges(t, "free", "1000", "1100", "0", "10", 0, 300),
	)
	job.Datum.HookBelow = Some(300)
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	low, _ := plan.Obstructions[0].Prism.Footprint.Bounds()
	assert.InDelta(t, 400, low.X, 1e-9)
	low, _ = plan.Obstructions[1].Prism.Footprint.Bounds()
	assert.InDelta(t, 500, low.X, 1e-9)
	for i, loose := range []bool{false, false, true, true, false} {
		assert.Equal(t, loose, plan.Obstructions[i].Loose, job.Obstructions[i].Name)
	}
	assert.True(t, plan.Obstructions[2].Assumed)
	assert.Equal(t, geometry.Prism{Low: -460}.Low, plan.Obstructions[2].Prism.Low)
	assert.Zero(t, plan.Obstructions[2].UTop)
}

func TestTheSideTapeMaySlopeToo(t *testing.T) {
	job := bare(edges(t, "a", "500", "600", "L 500", "100", 0, 0))
	job.Datum.SideBelow = Some(300)
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	assert.InDelta(t, 890-400, corners(plan.Obstructions[0])[3], 1e-9)
	assert.InDelta(t, 100, corners(plan.Obstructions[0])[2], 1e-9)
}

func TestFittingsComeDownThroughTheTies(t *testing.T) {
	job := bare()
	for _, tie := range [][2]Pair{ // above is below, a quarter turn on, 5 further forward
		{said(t, "100", "0"), said(t, "5", "100")}, {said(t, "300", "0"), said(t, "5", "300")},
	} {
		job.Ties = append(job.Ties, Tie{Use: true, Below: tie[0], Above: tie[1]})
	}
	box := edges(t, "", "15", "25", "200", "240")
	job.Fittings = []Fitting{{Name: "box", Place: box.Place, Rise: Span{From: 10, To: 50, Set: true}}}
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	assert.InDelta(t, 90, plan.Fit.Theta, 1e-9)
	assert.InDeltaSlice(t, []float64{200, 240, -20, -10}, slice(corners(plan.Fittings[0])), 1e-9)
	assert.Equal(t, 41.0, plan.Fittings[0].Prism.Low)
	assert.Equal(t, 81.0, plan.Fittings[0].Prism.High)
}

func slice(v [4]float64) []float64 { return v[:] }

func TestFaultsSayWhereAndWhat(t *testing.T) {
	cut := &Cut{At: [2]float64{1210, 240}, Across: 127}
	heater, _ := HeaterClass("2 kW")
	exhaust := Run{Across: 26, Path: []RunPoint{{1245, 265, 110}, {900, 620, 160}}}
	with := func(change func(*Run)) Job {
		run := exhaust
		change(&run)
		return Job{Floor: bare().Floor, Cut: cut, Heater: &heater, Exhaust: &run}
	}
	pump := func(p Pump) Job {
		return Job{Floor: bare().Floor, Fuel: &Run{Path: []RunPoint{{0, 0, 40}, {100, 0, 40}}, Hanging: Hanging{Pump: &p}}}
	}
	steep := bare(edges(t, "a", "100", "200", "0", "10", 0, 0))
	steep.Datum.HookBelow = Some(150)
	tied := bare()
	tied.Ties = []Tie{{Name: "bolt", Use: true, Below: said(t, "+3", "4"), Above: said(t, "3", "4")}}
	for _, c := range []struct {
		job       Job
		key, says string
	}{
		{bare(edges(t, "a", "300", "200", "0", "10")), "obstruction[0].x", "nearest to the bumper first"},
		{bare(edges(t, "a", "300", "300", "0", "10")), "obstruction[0].x", "nearest to the bumper first"},
		{bare(edges(t, "a", "+300", "400", "0", "10")), "obstruction[0].x[0]", "nothing stands before it"},
		{bare(edges(t, "a", "19990", "+40", "0", "10")), "obstruction[0].x[1]", "20030 mm"},
		{steep, "obstruction[0].x[0]", "150 mm apart in height"},
		{tied, "tie[0].below[0]", "nothing stands before it"},
		{Job{Cut: &Cut{Drilled: &Pair{saidOf(t, "10", survey.X), saidOf(t, "+5", survey.Y)}}}, "cut.drilled[1]", "nothing stands before it"},
		{with(func(r *Run) { r.Muffler = &Muffler{Leg: 3, Length: 50, Across: 60} }), "exhaust.muffler.leg", "legs 1 to 2"},
		{with(func(r *Run) { r.Muffler = &Muffler{Leg: 1, Length: 90, Across: 60} }), "exhaust.muffler.start", "65 mm long"},
		{with(func(r *Run) { r.Clips = []float64{100, 900} }), "exhaust.clips[1]", "clip 2 is 900 mm"},
		{pump(Pump{Leg: 2}), "fuel.pump.leg", "legs 1 to 1"},
		{pump(Pump{Leg: 1, Start: 101}), "fuel.pump.start", "100 mm long"},
	} {
		_, faults := Reduce(c.job)
		require.NotEmpty(t, faults, c.key)
		assert.Equal(t, c.key, faults[0].Key)
		assert.Contains(t, faults[0].Text, c.says)
		assert.Len(t, faults, 1, "one fault is said once: %v", faults)
	}
}

// edgeU are the standard uncertainties in x and y of a thing at a point of its outline.
func edgeU(p *Placed, q geometry.Point) (ux, uy float64) {
	x, y := p.EdgeAt(q)
	return x.U, y.U
}
