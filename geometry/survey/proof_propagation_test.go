package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
)

// model is what readings come to: any number of outputs of any number of inputs.
type model func(in []float64) []float64

// propagate is the law of propagation of uncertainty in full (JCGM 100:2008, 5.2.2; JCGM 102:2011, 6.2): the covariance
// of a model's outputs, its derivatives taken numerically. It is the proof's own, checked below against example H.2.
func propagate(f model, at []float64, covariance [][]float64, step float64) [][]float64 {
	slopes := make([][]float64, len(at)) // by input, of each output
	for i := range at {
		in := append([]float64(nil), at...)
		in[i] = at[i] + step
		slopes[i] = append([]float64(nil), f(in)...)
		in[i] = at[i] - step
		for k, low := range f(in) {
			slopes[i][k] = (slopes[i][k] - low) / (2 * step)
		}
	}
	out := make([][]float64, len(slopes[0]))
	for k := range out {
		out[k] = make([]float64, len(out))
		for l := range out {
			for i := range at {
				for j := range at {
					out[k][l] += slopes[i][k] * covariance[i][j] * slopes[j][l]
				}
			}
		}
	}
	return out
}

// independent is the covariance of inputs that have nothing to do with each other.
func independent(u ...float64) [][]float64 {
	c := make([][]float64, len(u))
	for i := range u {
		c[i] = make([]float64, len(u))
		c[i][i] = u[i] * u[i]
	}
	return c
}

// Source: JCGM 100:2008, H.2, resistance, reactance and impedance from correlated readings. From its rounded inputs
// recomputed; it prints 0.071, 0.295, 0.236 and -0.588, -0.485, 0.993 from unrounded ones (printed values from memory).
func TestPropagationOfGUMExampleH2(t *testing.T) {
	circuit := func(in []float64) []float64 {
		z := in[0] / in[1]
		return []float64{z * math.Cos(in[2]), z * math.Sin(in[2]), z}
	}
	at, u := []float64{4.9990, 19.6610e-3, 1.04446}, []float64{0.0032, 0.0095e-3, 0.00075}
	r := [][]float64{{1, -0.36, 0.86}, {-0.36, 1, -0.65}, {0.86, -0.65, 1}}
	c := make([][]float64, 3)
	for i := range c {
		c[i] = make([]float64, 3)
		for j := range c[i] {
			c[i][j] = r[i][j] * u[i] * u[j]
		}
	}
	for i, value := range []float64{127.73217, 219.84651, 254.25970} {
		assert.InDelta(t, value, circuit(at)[i], 5e-6)
	}
	out := propagate(circuit, at, c, 1e-7)
	for i, want := range []struct{ u, printed float64 }{{0.0699787, 0.071}, {0.2957168, 0.295}, {0.2366030, 0.236}} {
		assert.InDelta(t, want.u, math.Sqrt(out[i][i]), 1e-6)
		assert.InDelta(t, want.printed, math.Sqrt(out[i][i]), 0.002)
	}
	for _, want := range []struct {
		i, j       int
		r, printed float64
	}{{0, 1, -0.5914846, -0.588}, {0, 2, -0.4906239, -0.485}, {1, 2, 0.9927975, 0.993}} {
		got := out[want.i][want.j] / math.Sqrt(out[want.i][want.i]*out[want.j][want.j])
		assert.InDelta(t, want.r, got, 1e-5)
		assert.InDelta(t, want.printed, got, 0.006)
	}
}

// Source: JCGM 100:2008, H.1, an end gauge: six components in nm and their combined standard uncertainty, printed 32.
func TestTermsAddUpAsGUMExampleH1(t *testing.T) {
	terms := Terms{Tape: 25 * 25, Read: 5.8 * 5.8, Mark: 3.9 * 3.9, Slope: 6.7 * 6.7, Height: 2.88679 * 2.88679, Chain: 16.599 * 16.599}
	assert.InDelta(t, 31.6639, terms.U(), 5e-4)
	assert.InDelta(t, 32, terms.U(), 0.5)
}

// A thing taped near edge first and its far edge run on, both ends of the slope of unsure height: the covariance of
// near edge, far edge and width. The far edge carries all of the near one's error, the width none.
func TestPropagationOfARunOnReading(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape := drawTape(t)
		length, on := rapid.Float64Range(400, 4000).Draw(t, "length"), rapid.Float64Range(5, 900).Draw(t, "on")
		h, p := rapid.Float64Range(0, 300).Draw(t, "h"), rapid.Float64Range(0, 300).Draw(t, "p")
		thing := func(in []float64) []float64 {
			near := math.Sqrt(in[0]*in[0] - (in[1]-in[2])*(in[1]-in[2]))
			return []float64{near, near + in[3], in[3]}
		}
		uNear, uOn := math.Sqrt(tape.Variance(length, true)), math.Sqrt(tape.Variance(on, false))
		c := propagate(thing, []float64{length, h, p, on}, independent(uNear, tape.HeightU(), tape.HeightU(), uOn), 1e-3)

		plan, u, _, err := tape.Reduce(length, Slope{Hook: h, Set: true}, p, true)
		require.NoError(t, err)
		far := gauge(tape).RunOn(Coord{Value: plan, U: u}, on)
		assert.InEpsilon(t, math.Sqrt(c[0][0]), u, 1e-6)
		assert.InEpsilon(t, math.Sqrt(c[1][1]), far.U, 1e-6)
		assert.InEpsilon(t, c[0][1], u*u, 1e-6)
		assert.InEpsilon(t, c[2][2], far.U*far.U-u*u, 1e-5)
	})
}

// A mark put by a slope from a zero of unsure height.
func TestPropagationOfAMark(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape := drawTape(t)
		plan, hook := rapid.Float64Range(200, 5000).Draw(t, "plan"), rapid.Float64Range(0, 150).Draw(t, "hook")
		mark := func(in []float64) []float64 { return []float64{math.Sqrt(in[0]*in[0]-in[1]*in[1]) + in[2]} }
		length := math.Sqrt(plan*plan + hook*hook)
		u := independent(math.Sqrt(tape.Variance(length, true)), tape.HeightU(), tape.Mark/math.Sqrt(3))
		c := propagate(mark, []float64{length, hook, 0}, u, 1e-3)
		assert.InEpsilon(t, math.Sqrt(c[0][0]), tape.MarkU(plan, hook), 1e-6)
	})
}

// carried is where the rigid fit of ties carries a place, as a model of their coordinates above.
func carried(ties []Tie, place geometry.Point) model {
	return func(in []float64) []float64 {
		moved := append([]Tie(nil), ties...)
		for i := range moved {
			moved[i].Above = geometry.Point{X: in[2*i], Y: in[2*i+1]}
		}
		m, _, _ := rigid(moved, false)
		p := m.apply(place)
		return []float64{p.X, p.Y}
	}
}

// The fit's uncertainty along any direction, from the whole covariance of the place it carries, every coordinate of every tie
// being as uncertain as it likes.
func TestPropagationThroughTies(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ties := drawTies(t, 2, 0)
		fitted(t, ties)
		place := geometry.Point{X: rapid.Float64Range(0, 4000).Draw(t, "x"), Y: rapid.Float64Range(-900, 900).Draw(t, "y")}
		var at, u []float64
		for i := range ties {
			ux, uy := rapid.Float64Range(0.5, 2).Draw(t, "ux"), rapid.Float64Range(0.5, 2).Draw(t, "uy")
			at, u = append(at, ties[i].Above.X, ties[i].Above.Y), append(u, ux, uy)
			ties[i].U = [4]float64{0, 0, ux, uy}
		}
		fit, err := FitTies(ties, 0)
		require.NoError(t, err)
		c := propagate(carried(ties, place), at, independent(u...), 1e-3)
		n := geometry.Point{X: 1}.Turn(rapid.Float64Range(-180, 180).Draw(t, "n"))
		up := n.Turn(fit.Theta)
		along := up.X*up.X*c[0][0] + 2*up.X*up.Y*c[0][1] + up.Y*up.Y*c[1][1]
		assert.InEpsilon(t, math.Sqrt(along), fit.U(n, place), 1e-4)
	})
}
