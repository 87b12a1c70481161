package survey

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Source: Directive 2014/32/EU annex X (MI-008) chapter I, table 1, read as the UK's SI 2016/1153 schedule 1I, by
// its rule that the length counts in metres rounded up: m, then class II and III without and with the hook's c.
var permissible = []struct{ metres, ii, iiHook, iii, iiiHook float64 }{
	{0.4, 0.5, 0.7, 1.0, 1.3},
	{1, 0.5, 0.7, 1.0, 1.3},
	{1.2, 0.7, 0.9, 1.4, 1.7},
	{2, 0.7, 0.9, 1.4, 1.7},
	{3, 0.9, 1.1, 1.8, 2.1},
	{4.35, 1.3, 1.5, 2.6, 2.9},
	{5, 1.3, 1.5, 2.6, 2.9},
	{10, 2.3, 2.5, 4.6, 4.9},
}

// gauge is a tape made ready.
func gauge(t Tape) *Gauge {
	g := t.Gauge()
	return &g
}

func TestMPE(t *testing.T) {
	two, three := Tape{Class: "II"}, Tape{Class: "III"}
	for _, c := range permissible {
		for _, mm := range []float64{1000 * c.metres, -1000 * c.metres} {
			assert.InDelta(t, c.ii, gauge(two).mpe(mm, false), 1e-12)
			assert.InDelta(t, c.iiHook, gauge(two).mpe(mm, true), 1e-12)
			assert.InDelta(t, c.iii, gauge(three).mpe(mm, false), 1e-12)
			assert.InDelta(t, c.iiiHook, gauge(three).mpe(mm, true), 1e-12)
		}
	}
	assert.InDelta(t, 0.1+0.1*3+0.1, gauge(Tape{Class: "I"}).mpe(2500, true), 1e-12, "class I of the same table")
}

func TestMPEAtTheWholeMetre(t *testing.T) {
	tape := Tape{Class: "II"}
	assert.InDelta(t, 0.5, gauge(tape).mpe(1000, false), 1e-12, "a metre is one metre")
	assert.InDelta(t, 0.5, gauge(tape).mpe(1000.0000000001, false), 1e-12, "rounding noise is no millimetre")
	assert.InDelta(t, 0.7, gauge(tape).mpe(1000.001, false), 1e-12, "a thousandth more is the next metre")
	assert.InDelta(t, 0.3, gauge(tape).mpe(0, false), 1e-12, "no length is no metre")
	assert.InDelta(t, 0.3, gauge(tape).mpe(1e-9, false), 1e-12)
	assert.InDelta(t, 0.5, gauge(tape).mpe(0.001, false), 1e-12)
}

func TestUnknownClassCountsAsTheCoarsest(t *testing.T) {
	a, b, c, ok := Class("IV").Limits()
	assert.False(t, ok)
	assert.Equal(t, []float64{0.6, 0.4, 0.3}, []float64{a, b, c})
	for _, class := range []Class{"I", "II", "III"} {
		_, _, _, ok = class.Limits()
		assert.True(t, ok, class)
	}
}

// Half width over root three (JCGM 100:2008, 4.3.7) of the table's class III limits with the hook.
func TestVarianceIsOfAUniformSpread(t *testing.T) {
	tape := Tape{Class: "III"}
	for metres, u := range map[float64]float64{1: 0.7506, 2: 0.9815, 3: 1.2124, 5: 1.6743, 10: 2.8290} {
		assert.InDelta(t, u, math.Sqrt(tape.Variance(1000*metres, true)), 5e-5)
	}
	tape = Tape{Class: "II", Read: 1, Mark: 2, Height: 2, Turn: 1}
	assert.InDelta(t, (0.49+1)/3, tape.Variance(650, true), 1e-12)
	assert.InDelta(t, (0.25+1)/3, tape.Variance(650, false), 1e-12)
	assert.InDelta(t, (0.49+1+4)/3, gauge(tape).MarkVariance(650), 1e-12)
	assert.InDelta(t, 1.154701, tape.HeightU(), 1e-6)
	assert.InDelta(t, 0.01007666, tape.TurnU(), 1e-8) // pi/180/sqrt(3)
}

func TestRunOnAddsVariancesAndKeepsLoose(t *testing.T) {
	tape := Tape{Class: "II", Read: 1}
	from := Coord{Value: 652, U: math.Sqrt(tape.Variance(652, true)), Loose: true}
	to := gauge(tape).RunOn(from, -84)
	assert.InDelta(t, 568, to.Value, 1e-12)
	assert.InDelta(t, math.Sqrt((0.49+1)/3+(0.25+1)/3), to.U, 1e-12)
	assert.True(t, to.Loose)
}

// A budget has no remainder: its terms are all the variance there is.
func TestTermsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tape := drawTape(t)
		plan, hook := rapid.Float64Range(1, 5000).Draw(t, "plan"), rapid.Float64Range(-300, 300).Draw(t, "hook")
		length := AboveReading(plan, hook)
		_, u, err := tape.ReduceAbove(length, hook)
		assert.NoError(t, err)
		terms := tape.ReadingTerms(length, plan, hook, 1)
		assert.InEpsilon(t, u, terms.U(), 1e-6)
		terms.Mark = tape.Mark * tape.Mark / 3
		assert.InEpsilon(t, tape.MarkU(plan, hook), terms.U(), 1e-6)
	})
}

func drawTape(t *rapid.T) Tape {
	half := rapid.Float64Range(0.1, 4)
	return Tape{
		Class:  rapid.SampledFrom([]Class{"I", "II", "III"}).Draw(t, "class"),
		Read:   half.Draw(t, "read"),
		Mark:   half.Draw(t, "mark"),
		Height: half.Draw(t, "height"),
		Turn:   half.Draw(t, "turn"),
	}
}
