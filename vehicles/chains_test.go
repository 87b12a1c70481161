package vehicles

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
)

// chained is a job with three rectangles that run on from each other in x, the last ending at 1340, and what an overall
// reading of it says.
func chained(t *testing.T, total string) Job {
	job := bare(
		edges(t, "first", "1000", "+100", "L 200", "+30", 0, 50),
		edges(t, "second", "+40", "+60", "R 300", "350", 0, 50),
		edges(t, "third", "+90", "+50", "R 300", "350", 0, 50),
		edges(t, "behind", "+10", "+20", "R 300", "350", 0, 50),
		edges(t, "apart", "2000", "2100", "R 300", "350", 0, 50),
	)
	if total != "" {
		job.Obstructions[2].Total[survey.X] = saidOf(t, total, survey.X)
	}
	return job
}

// ends are the x edges and their variances of the first three things, in their order.
func ends(plan Plan) (x, v []float64) {
	for i := range 3 {
		p := plan.Obstructions[i]
		low, high := p.Prism.Footprint.Bounds()
		x, v = append(x, low.X, high.X), append(v, p.Edges[0].U*p.Edges[0].U, p.Edges[1].U*p.Edges[1].U)
	}
	return x, v
}

// leastSquares solves the chain as a general adjustment does: unknown ends, observed are each reading (the difference
// from the end before) and the overall one, weighted by their variances; the normal matrix is inverted by elimination.
// It returns the ends and their variances. Source: the method of least squares by observation equations, as any
// textbook of surveying has it (from memory).
func leastSquares(readings, variances []float64, total, totalVariance float64) (x, v []float64) {
	n := len(readings)
	m := make([][]float64, n) // the normal matrix, the right side and the unit matrix
	for i := range m {
		m[i] = make([]float64, 2*n+1)
		m[i][n+1+i] = 1
	}
	observe := func(i, before int, value, variance float64) {
		m[i][i] += 1 / variance
		m[i][n] += value / variance
		if before >= 0 {
			m[before][before] += 1 / variance
			m[i][before] -= 1 / variance
			m[before][i] -= 1 / variance
			m[before][n] -= value / variance
		}
	}
	for i := range readings {
		observe(i, i-1, readings[i], variances[i])
	}
	observe(n-1, -1, total, totalVariance)
	for i := range m {
		for k := 2 * n; k >= i; k-- {
			m[i][k] /= m[i][i]
		}
		for row := range m {
			if factor := m[row][i]; row != i {
				for k := i; k <= 2*n; k++ {
					m[row][k] -= factor * m[i][k]
				}
			}
		}
	}
	for i := range m {
		x, v = append(x, m[i][n]), append(v, m[i][n+1+i])
	}
	return x, v
}

func TestAMisclosureIsSpreadAsLeastSquaresDoes(t *testing.T) {
	plan, faults := Reduce(chained(t, "1342.5"))
	require.Empty(t, faults)
	tape := new(Job).SurveyTape()
	readings, variances := []float64{1000, 100, 40, 60, 90, 50}, []float64{}
	for i, r := range readings {
		variances = append(variances, tape.Variance(r, i == 0))
	}
	wantX, wantV := leastSquares(readings, variances, 1342.5, tape.Variance(1342.5, true))
	x, v := ends(plan)
	assert.InDeltaSlice(t, wantX, x, 1e-9)
	assert.InDeltaSlice(t, wantV, v, 1e-9)
	require.Len(t, plan.Closures, 1)
	c := plan.Closures[0]
	assert.InDelta(t, -2.5, c.Misclosure, 1e-9)
	assert.Equal(t, 2, c.Index)
	assert.True(t, c.Closes)
	// What runs on from the end starts there; what does not is as it was.
	low, _ := plan.Obstructions[3].Prism.Footprint.Bounds()
	assert.InDelta(t, wantX[5]+10, low.X, 1e-9)
	assert.InDelta(t, wantV[5]+tape.Variance(10, false), plan.Obstructions[3].Edges[0].U*plan.Obstructions[3].Edges[0].U, 1e-9)
	without, _ := Reduce(chained(t, ""))
	assert.Equal(t, without.Obstructions[4], plan.Obstructions[4])
	assert.Equal(t, without.Obstructions[0].Edges[2:], plan.Obstructions[0].Edges[2:], "y is another chain")
}

func TestAMisclosureTheTapesDoNotExplainIsRefused(t *testing.T) {
	plan, faults := Reduce(chained(t, "1360"))
	require.Empty(t, faults)
	without, _ := Reduce(chained(t, ""))
	require.Len(t, plan.Closures, 1)
	assert.False(t, plan.Closures[0].Closes)
	assert.Greater(t, plan.Closures[0].Statistic, ClosureLimit())
	for i, unclosed := range []bool{true, true, true, true, false} {
		assert.Equal(t, unclosed, plan.Obstructions[i].Unclosed, i)
		p := plan.Obstructions[i]
		p.Unclosed = false
		assert.Equal(t, without.Obstructions[i], p, "every place stays as it was read")
	}
	plan, _ = ReduceClosing(chained(t, "1360"), 1000)
	assert.True(t, plan.Closures[0].Closes)
}

// In y, to the right from a left edge; with a line and a round one in the chain; a second overall reading on the same
// chain starts from the first one's end.
func TestOverallReadingsInYAndOneAfterTheOther(t *testing.T) {
	job := bare(
		edges(t, "first", "1000", "1100", "L 200", "+30"),
		Obstruction{Name: "disc", Measured: true, Place: Place{Shape: Disc, Centre: said(t, "1500", "+100"), Across: Some(8)},
			Total: Totals{survey.Y: saidOf(t, "L 331", survey.Y)}},
		Obstruction{Name: "line", Measured: true, Place: Place{
			Shape: Piped, Across: Some(8), Path: []Pair{said(t, "1600", "+50"), said(t, "1700", "+50")},
		}, Total: Totals{survey.Y: saidOf(t, "460", survey.Y)}},
	)
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	require.Len(t, plan.Closures, 2)
	assert.InDelta(t, 1, plan.Closures[0].Misclosure, 1e-9, "890 - 330 less 890 - 331")
	tape := new(Job).SurveyTape()
	// Weighted means by hand: of 560 and 559 at the disc, then on to 100 further right, and that with 460.
	v := tape.Variance(200, true) + tape.Variance(30, false) + tape.Variance(100, false)
	w := tape.Variance(331, true)
	disc := (560/v + 559/w) / (1/v + 1/w)
	v = 1/(1/v+1/w) + 2*tape.Variance(50, false)
	w = tape.Variance(460, true)
	end := ((disc-100)/v + 460/w) / (1/v + 1/w)
	path := plan.Obstructions[2].Prism.Footprint.Path
	assert.InDelta(t, end, path[1].Y, 1e-9)
	assert.InDelta(t, disc-100-460, plan.Closures[1].Misclosure, 1e-9)
	assert.Equal(t, []string{"disc", "line"}, []string{job.Obstructions[plan.Closures[0].Index].Name, job.Obstructions[plan.Closures[1].Index].Name})
}

// An overall reading that agrees moves nothing, and nothing gets less sure.
func TestAnAgreeingOverallReadingMovesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var list []Obstruction
		at := float64(rapid.IntRange(100, 3000).Draw(t, "from"))
		for i := range rapid.IntRange(1, 6).Draw(t, "things") {
			near, far := float64(rapid.IntRange(1, 90).Draw(t, "near")), float64(rapid.IntRange(1, 90).Draw(t, "far"))
			on := func(v float64) survey.Reading {
				return survey.Reading{Text: fmt.Sprint("+", v), Start: survey.On, Length: v}
			}
			o := Obstruction{Name: fmt.Sprint(i), Measured: true, Place: Place{
				X: Pair{on(near), on(far)}, Y: Pair{survey.FromNumber(0, true), survey.FromNumber(9, true)},
			}}
			if i == 0 {
				o.X[0], near = survey.FromNumber(at, true), 0
			}
			at += near + far
			list = append(list, o)
		}
		without, faults := Reduce(bare(list...))
		require.Empty(t, faults)
		list[len(list)-1].Total[survey.X] = survey.FromNumber(at, true)
		with, faults := Reduce(bare(list...))
		require.Empty(t, faults)
		for i := range list {
			p, q := without.Obstructions[i], with.Obstructions[i]
			assert.InDelta(t, p.Prism.Footprint.Middle.X, q.Prism.Footprint.Middle.X, 1e-9)
			for k := range p.Edges {
				assert.LessOrEqual(t, q.Edges[k].U, p.Edges[k].U)
			}
			assert.False(t, q.Unclosed)
		}
	})
}

func TestAnOverallReadingNeedsAChain(t *testing.T) {
	for _, c := range []struct{ x, total, says string }{
		{"1100", "1100", "of where a chain of + readings ends"},
		{"+100", "+1100", "of where a chain of + readings ends"},
	} {
		job := bare(edges(t, "a", "1000", c.x, "0", "50"))
		job.Obstructions[0].Total[survey.X] = saidOf(t, c.total, survey.X)
		_, faults := Reduce(job)
		require.Len(t, faults, 1)
		assert.Equal(t, "obstruction[0].total.x", faults[0].Key)
		assert.Contains(t, faults[0].Text, c.says)
	}
}

func TestOverallReadingsAndBowInTheFile(t *testing.T) {
	text := head + `
[[datum.bow]]
y = -800
offset = -14

[[datum.bow]]
y = 0
offset = 3.5

[[obstruction]]
name = "a"
kind = "other"
x = [1000, "+84"]
y = ["L 200", "+30"]
total = { x = 1084, y = "L 230" }

[[fitting]]
name = "b"
x = [100, "+84"]
y = [0, 10]
rise = [0, 10]
total = { x = "18.4cm" }
`
	job, err := ParseJob([]byte(text), "a.toml")
	require.NoError(t, err)
	assert.Equal(t, []BowPoint{{-800, -14}, {0, 3.5}}, job.Bow)
	assert.Equal(t, "L 230", job.Obstructions[0].Total[survey.Y].Text)
	assert.Equal(t, 184.0, job.Fittings[0].Total[survey.X].Length)
	again, err := ParseJob(job.Format(), "b.toml")
	require.NoError(t, err)
	assert.Equal(t, job, again)
	for broken, says := range map[string]string{
		"[[datum.bow]]\ny = 1\n": "offset", "[[datum.bow]]\ny = 1\noffset = 2\n[[datum.bow]]\ny = 1\noffset = 3\n": "a second time",
		"[[obstruction]]\nname = \"a\"\nkind = \"other\"\nx = [1, \"+2\"]\ny = [1, 2]\ntotal = {}\n":        "is empty",
		"[[obstruction]]\nname = \"a\"\nkind = \"other\"\nx = [1, \"+2\"]\ny = [1, 2]\ntotal = { z = 1 }\n": "unknown key",
		"[[obstruction]]\nname = \"a\"\nkind = \"other\"\nx = [1, 2]\ny = [1, 2]\ntotal = { x = 2 }\n":      "ends: measure it so",
	} {
		_, err := ParseJob([]byte(head+broken), "a.toml")
		assert.ErrorContains(t, err, says)
	}
}

func TestABumperThatBows(t *testing.T) {
	job := bare(
		edges(t, "at the right", "1000", "1100", "-810", "-790"), // offset -14 at y -800
		edges(t, "between", "1000", "+84", "-410", "-390"),       // half way: -5.25
		Obstruction{Name: "line", Measured: true, Place: Place{
			Shape: Piped, Across: Some(8), Path: []Pair{said(t, "1600", "0"), said(t, "1700", "300"), said(t, "1700", "R 20")},
		}},
	)
	job.Bow = []BowPoint{{0, 3.5}, {-800, -14}} // in any order
	job.Fittings = []Fitting{{Name: "f", Place: Place{Shape: Disc, Centre: said(t, "500", "900"), Across: Some(8)}, Rise: Span{0, 10, true}}}
	drilled := said(t, "1200", "-400")
	job.Cut = &Cut{At: [2]float64{1200, 0}, Across: 127, Drilled: &drilled}
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	assert.Equal(t, []float64{986, 1086}, slice(corners(plan.Obstructions[0]))[:2])
	assert.Equal(t, []float64{994.75, 1078.75}, slice(corners(plan.Obstructions[1]))[:2])
	path := plan.Obstructions[2].Prism.Footprint.Path
	assert.Equal(t, []float64{1603.5, 1703.5, 1686}, []float64{path[0].X, path[1].X, path[2].X}, "flat beyond the ends")
	assert.Equal(t, 503.5, plan.Fittings[0].Prism.Footprint.Middle.X, "alike above")
	assert.Equal(t, 1194.75, plan.Cut.At.X)
	assert.Equal(t, 1200.0, plan.Cut.Intended.X, "a place is no reading")
	straight := job
	straight.Bow = nil
	before, _ := Reduce(straight)
	for i := range plan.Obstructions {
		assert.Equal(t, before.Obstructions[i].Edges, plan.Obstructions[i].Edges)
	}
}

func TestTheVarianceOfAPlaceIsMadeOfItsParts(t *testing.T) {
	job := chained(t, "1342.5")
	job.Datum.HookBelow = Some(150)
	job.Obstructions[2].Total[survey.X] = survey.FromNumber(1337, true)
	plan, faults := Reduce(job)
	require.Empty(t, faults)
	for i := range plan.Obstructions {
		p := &plan.Obstructions[i]
		for _, q := range p.Prism.Footprint.Corners() {
			x, y := job.MadeAt(Obstructions, i, p, q, ClosureLimit())
			ux, uy := edgeU(p, q)
			assert.InDelta(t, ux*ux, x.Sum(), 1e-12)
			assert.InDelta(t, uy*uy, y.Sum(), 1e-12)
			runsOn := i > 0 && i < 4 || i == 0 && q.X > p.Prism.Footprint.Middle.X
			assert.Equal(t, runsOn, x.Chain > 0, "%d at %v", i, q)
		}
	}
}
