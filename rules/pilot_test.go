package rules

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// sloping is the tidy job measured with tapes that hang, hooked apart below and above, and four ties.
func sloping() vehicles.Job {
	job := tidy()
	job.Obstructions = []vehicles.Obstruction{box("bracket", "other", 2000, 2100, -700, -600, 0, 60)}
	job.Datum = vehicles.Datum{
		HookBelow: vehicles.Some(350), HookAbove: vehicles.Some(60), ShiftAbove: vehicles.Some(25),
		SideBelow: vehicles.Some(130), AboveLeft: vehicles.Some(885), AboveRight: vehicles.Some(885),
	}
	job.Ties = nil
	for _, p := range []geometry.Point{{X: 400, Y: -500}, {X: 2800, Y: 600}, {X: 900, Y: 700}, {X: 2200, Y: -600}} {
		job.Ties = append(job.Ties, vehicles.Tie{
			Name: "bolt at " + survey.Figure(p.X), Use: true,
			Below: vehicles.Pair{at(math.Hypot(p.X, 350)), at(p.Y)},
			Above: vehicles.Pair{at(math.Hypot(p.X-25, 60)), at(p.Y)},
		})
	}
	return job
}

func drilled(job vehicles.Job, x, y survey.Reading) vehicles.Job {
	return job.WithDrilled(&vehicles.Pair{x, y})
}

func checked(t *testing.T, job vehicles.Job) PilotReport {
	t.Helper()
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults[:min(2, len(faults))])
	report, ok := PilotCheck(result)
	require.True(t, ok)
	return report
}

func TestAPilotHoleWithinWhatTheTapesExplain(t *testing.T) {
	job := sloping()
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	_, ok := PilotCheck(result)
	assert.False(t, ok, "nothing drilled yet")
	report := checked(t, drilled(job, at(math.Hypot(1212, 350)), at(239)))
	assert.InDelta(t, 2, report.Off.X, 1e-9)
	assert.InDelta(t, -1, report.Off.Y, 1e-9)
	assert.True(t, report.Explained)
	assert.Empty(t, report.Slips)
	assert.Equal(t, 56.5, report.MayMove)
}

// By hand: without ties and slopes the covariance of the offset is u_mark^2 + u_drilled^2 + frames^2/3 along x and y:
// class II of 2014/32/EU annex X at 1210 mm and 240 mm from the centreline, 650 mm from the nearer side.
func TestTheOffsetsCovarianceByHand(t *testing.T) {
	job := tidy()
	job.Ties = nil
	job.Obstructions[0].Total = vehicles.Totals{}
	report := checked(t, drilled(job, at(1213), at(244)))
	long, short := 0.3+0.2*2+0.2, 0.3+0.2+0.2
	xx := (long*long+1+1)/3 + (long*long+1)/3 + 4./3
	yy := (short*short+1+1)/3 + (short*short+1)/3 + 4./3
	assert.InDelta(t, 9/xx+16/yy, report.Statistic, 1e-9)
	assert.InDelta(t, math.Sqrt(0.36*xx+0.64*yy), report.Sigma, 1e-9)
	assert.InDelta(t, 9.21, report.Limit, 5e-4) // 99 %: NIST/SEMATECH handbook, 1.3.6.7.4, two degrees of freedom (from memory)
}

// The mean and covariance of what the fit carries, by moving each tie a little (JCGM 100:2008, 5.1.2).
func TestTheOffsetsCovarianceAlongAnyDirectionIsThatOfTheFit(t *testing.T) {
	job := drilled(sloping(), at(math.Hypot(1216, 350)), at(241))
	plan, faults := vehicles.Reduce(job)
	require.Empty(t, faults)
	for deg := 0.0; deg < 180; deg += 15 {
		n := geometry.Point{X: 1}.Turn(deg)
		cut := &plan.Cut
		u := plan.Fit.U(n, cut.Intended)
		want := n.X*n.X*(cut.UMark[0]*cut.UMark[0]+cut.UX*cut.UX) + n.Y*n.Y*(cut.UMark[1]*cut.UMark[1]+cut.UY*cut.UY) + u*u // above is not turned
		assert.InDelta(t, want, offsetVariance(&job, &plan, n), 1e-6)
	}
}

func TestEverySlipIsFoundAndPutRight(t *testing.T) {
	right := math.Hypot(1210, 350)
	left := math.Hypot(650, 130)
	l := func(v float64) survey.Reading { return starting(survey.FromLeft, v) }
	for _, c := range []struct {
		name, says string
		x, y       survey.Reading
	}{
		{"a centimetre below", "from below: the reading from the bumper was read as", at(right + 10), l(left)},
		{"a decimetre below", "a misreading by 100 mm", at(right - 100), l(left)},
		{"a decimetre across below", "from below: the reading across was read as", at(right), l(left + 100)},
		{"the wrong side", "was taken from the right side edge, not from the left side edge", at(right), l(math.Hypot(890+240, 130))},
		{"held level below", "held level", at(1210), l(left)},
		{"from the zero used above", "zero used above, 25 mm further forward", at(math.Hypot(1185, 350)), l(left)},
		{"a decimetre above", "from above: the mark was put at", at(math.Hypot(1310, 350)), l(left)},
		{"from the zero used below", "from above: the mark was put from the zero used below", at(right - 25*1210/right), l(left)},
		{"swapped above", "left and right were swapped", at(right), l(math.Hypot(890+240, 130))},
		{"across the centreline", "is on the other side of the centreline", at(right), at(-240)},
		{"not from the edge", "was taken from the centreline, not from the left side edge", at(right), l(240)},
		{"side tape level", "from the side edge was held level", at(right), l(650)},
	} {
		job := drilled(sloping(), c.x, c.y)
		report := checked(t, job)
		require.False(t, report.Explained, c.name)
		found := false
		for i, slip := range report.Slips {
			mended := checked(t, slip.Apply(job))
			assert.True(t, mended.Explained, "%s: %s", c.name, slip.Text)
			assert.InDelta(t, mended.Statistic, slip.Statistic, 1e-9)
			if i > 0 {
				assert.LessOrEqual(t, report.Slips[i-1].Statistic, slip.Statistic)
			}
			found = found || strings.Contains(slip.Text, c.says)
		}
		assert.True(t, found, "%s: %v", c.name, report.Slips)
		assert.Equal(t, job.Cut.Drilled, &vehicles.Pair{c.x, c.y}, "the job stays as it was")
	}
}

func TestAWrongTieExplainsWhereTheHoleCameOut(t *testing.T) {
	job := sloping()
	job.Ties[2].Above[1] = at(740) // 40 mm off: the mark was put through a fit that it bent
	plan, faults := vehicles.Reduce(job)
	require.Empty(t, faults)
	ties := append([]survey.Tie(nil), plan.Ties...)
	ties[2].Use = false
	others, err := survey.FitTies(ties, 0)
	require.NoError(t, err)
	is := others.Down(plan.Fit.Up(geometry.Point{X: 1210, Y: 240}))
	job = drilled(job, at(math.Hypot(is.X, 350)), at(is.Y))
	report := checked(t, job)
	require.False(t, report.Explained)
	require.NotEmpty(t, report.Slips)
	assert.Contains(t, report.Slips[0].Text, `matching point "bolt at 900" is wrong`)
	mended := report.Slips[0].Apply(job)
	assert.False(t, mended.Ties[2].Use)
	assert.True(t, checked(t, mended).Explained)
}

// A rail beside a hole that came out 6 mm off: the way is straight away from it, until the floor or the rim of the disc.
func TestTheBestMoveLeadsAwayFromTheRail(t *testing.T) {
	job := sloping()
	job.Obstructions = []vehicles.Obstruction{box("rail", "chassis rail", 900, 1500, 100, 160, 0, 90)}
	job = drilled(job, at(math.Hypot(1210, 350)), at(234))
	report := checked(t, job)
	m := report.Move
	assert.Equal(t, "rail", m.Against)
	assert.InDelta(t, 234-160-63.5-15, m.Before, 1e-6)
	assert.InDelta(t, m.Before+56.5, m.Margin, 0.02)
	assert.LessOrEqual(t, m.By.Norm(), report.MayMove+1e-9)
	assert.InDelta(t, 56.5, m.By.Y, 1)
	data, err := json.Marshal(report)
	require.NoError(t, err)
	assert.Contains(t, string(data), `"MayMove":56.5`)
}

// Against a slow search on a grid of half millimetres over the disc.
func TestTheBestMoveIsTheBestOfAGrid(t *testing.T) {
	job := drilled(sloping(), at(math.Hypot(1204, 350)), at(236))
	job.Obstructions = append(job.Obstructions,
		box("rail", "chassis rail", 900, 1500, 40, 100, 0, 90), box("pipe", "brake line", 1330, 1340, -800, 800, 10, 20),
		box("bracket", "other", 1080, 1130, 330, 380, 0, 60))
	job.Obstructions[len(job.Obstructions)-1].Turn = 30
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	report, _ := PilotCheck(result)
	// No margin grows faster than the way: of all places in the disc each is so near to one of the grid.
	const step = 0.5 * math.Sqrt2 / 2
	list, best, around := result.keeps(), math.Inf(-1), math.Inf(-1)
	for x := -60.0; x <= 60; x += 0.5 {
		for y := -60.0; y <= 60; y += 0.5 {
			d := geometry.Point{X: x, Y: y}
			m, _ := worst(list, report.Is.Add(d))
			if d.Norm() <= report.MayMove-0.01 {
				best = math.Max(best, m)
			}
			if d.Norm() <= report.MayMove+step {
				around = math.Max(around, m)
			}
		}
	}
	assert.GreaterOrEqual(t, report.Move.Margin, best-0.01)
	assert.LessOrEqual(t, report.Move.Margin, around+step)
	at, _ := worst(list, report.Move.To)
	assert.Equal(t, at, report.Move.Margin)
	// The same margins as the findings have, where both look.
	for _, f := range result.Findings {
		if f.ID() == "cut.clearance" && f.Against.Name == "rail" {
			for _, k := range list {
				if k.name == "rail" {
					assert.InDelta(t, f.Margin.Value, k.Margin(report.Is), 1e-9)
				}
			}
		}
	}
}

// The best move of many jobs with a heater and fittings about, against the margins one by one at many places.
func TestTheBestMoveIsThatOfThousandsOfPlaces(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	for seed := range uint64(12) {
		job := furnished(furnishings[int(seed)%len(furnishings)], 40, seed)
		p := geometry.Point{X: 300 + 2600*r.Float64(), Y: 1200*r.Float64() - 600}
		job = job.WithCut(vehicles.Cut{At: [2]float64{p.X, p.Y}, Across: vehicles.UsualAcross})
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		const reach = 55
		list, best := result.keeps(), math.Inf(-1)
		now := result.Plan.Cut.At
		for range 3000 {
			m, _ := worst(list, now.Add(geometry.Point{X: reach * math.Sqrt(r.Float64())}.Turn(360*r.Float64())))
			best = max(best, m)
		}
		move := bestMove(&result, reach)
		before, _ := worst(list, now)
		assert.InDelta(t, before, move.Before, 1e-6)
		at, which := worst(list, move.To)
		assert.InDelta(t, at, move.Margin, 1e-6)
		assert.Equal(t, list[which].name, move.Against)
		assert.GreaterOrEqual(t, move.Margin, max(before, best-0.01))
		assert.LessOrEqual(t, move.By.Norm(), reach+1e-9)
	}
}

// The best move is worked out with every key press once the pilot hole is measured.
func BenchmarkBestMove(b *testing.B) {
	job := furnished(furnishings[0], 60, 1).WithCut(vehicles.Cut{At: [2]float64{1210, 240}, Across: vehicles.UsualAcross})
	result, faults := Judge(job, Builtin())
	require.Empty(b, faults)
	for b.Loop() {
		bestMove(&result, 60)
	}
}

// As far off as the tapes explain, along the way it is off: a hole there is at the limit itself.
func TestAHoleAsFarOffAsIsExplainedIsAtTheLimit(t *testing.T) {
	for _, hole := range [][2]float64{{1213, 244}, {1211, 239}} {
		p := checked(t, drilled(tidy(), at(hole[0]), at(hole[1])))
		share := p.MostAway() / p.Away
		assert.InDelta(t, p.Limit, p.Statistic*share*share, 1e-9)
		assert.Equal(t, p.Explained, p.Away <= p.MostAway())
	}
}
