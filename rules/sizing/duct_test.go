package sizing

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// Colebrook's factor at Re 1e5 and a roughness of 1e-4, as the documentation and tests of a general fluids library print it; the others
// worked out with its solver. Laminar, 64/Re.
func TestFrictionAsPublished(t *testing.T) {
	assert.InDelta(t, 0.018513866077471648, Friction(1e5, 1e-4), 1e-11)
	for _, c := range [][3]float64{{1e5, 2e-4, 0.0190054}, {1e4, 0, 0.0308830}, {5e4, 1e-3, 0.0240208}, {1e6, 1e-3, 0.0199435}, {1e4, 1e-2, 0.0431266}} {
		assert.InDelta(t, c[2], Friction(c[0], c[1]), 5e-8)
	}
	assert.InDelta(t, 0.5, Friction(128, 0.1), 1e-12)
}

// It solves its own equation.
func TestFrictionSolvesItsEquation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		re, rough := rapid.Float64Range(laminar, 1e7).Draw(t, "re"), rapid.Float64Range(0, 0.05).Draw(t, "rough")
		f := Friction(re, rough)
		require.InDelta(t, 1/math.Sqrt(f), -2*math.Log10(rough/3.7+2.51/(re*math.Sqrt(f))), 1e-9)
		require.GreaterOrEqual(t, Friction(re, rough+0.001), f)
	})
}

func ducted(edit func(d *vehicles.Ductwork)) func(j *vehicles.Job) {
	return func(j *vehicles.Job) {
		d := vehicles.Ductwork{Length: vehicles.Some(2000), Rough: vehicles.Some(1), Flow: vehicles.Some(60), Bends: []float64{90, 45}}
		edit(&d)
		j.Ductwork = d
	}
}

// 60 m3/h through 60 mm are 5.895 m/s and a dynamic pressure of 18.98 Pa. Re 19813, roughness 1/60: f 0.04809 by Colebrook, over
// 2 m 1.603 dynamic pressures; 135 degrees take 0.6, the end 1: 3.203 in all, 60.8 Pa.
func TestADuctByHand(t *testing.T) {
	r := judged(t, ducted(func(*vehicles.Ductwork) {}))
	assert.Equal(t, "5.9 m/s", rowOf(t, r, Duct, "speed").Said())
	v := 60.0 / 3600 / (math.Pi / 4 * 0.06 * 0.06)
	dynamic := 1.09233 * v * v / 2
	assert.InDelta(t, 18.98, dynamic, 0.01)
	f := Friction(1.09233*v*0.06/1.95e-5, 1.0/60)
	assert.InDelta(t, (f*2/0.06+0.6+1)*dynamic, rowOf(t, r, Duct, "loss").Value.Value, 1e-9)
	assert.Equal(t, []string{"the fan's curve: see the heater's instructions"}, rowOf(t, r, Duct, "flow").Lacks)
}

// The least flow takes something already, and more takes more.
func TestEveryFlowTakesPressure(t *testing.T) {
	w, before := way{2000, 60, 1, 1.6}, 0.0
	assert.Zero(t, w.loss(0, Usual().Duct))
	for _, flow := range []float64{0.01, 0.1, 0.5, 0.9, 1, 1.1, 2, 10, 100} {
		takes := w.loss(flow, Usual().Duct)
		assert.Greater(t, takes, before, "%v m3/h", flow)
		before = takes
	}
}

func TestWhatComesOutOfADuct(t *testing.T) {
	fan := vehicles.List[vehicles.FanPoint]{{Flow: 0, Pressure: 150}, {Flow: 60, Pressure: 100}, {Flow: 100, Pressure: 0}}
	r := judged(t, ducted(func(d *vehicles.Ductwork) { d.Fan = fan }))
	flow := rowOf(t, r, Duct, "flow")
	assert.Greater(t, flow.Value.Value, 60.0, "at 60 the fan makes 100 Pa and the duct takes 61")
	assert.Empty(t, flow.Amiss)
	w := way{2000, 60, 1, 1.6}
	assert.InDelta(t, FanPressure(fan, flow.Value.Value), w.loss(flow.Value.Value, Usual().Duct), 0.01)
	r = judged(t, ducted(func(d *vehicles.Ductwork) { d.Fan, d.Flow = fan, vehicles.Some(90) }))
	assert.Contains(t, rowOf(t, r, Duct, "flow").Amiss, "90 m³/h are wanted")
	assert.InDelta(t, 125, FanPressure(fan, 30), 1e-9)
	assert.Zero(t, FanPressure(fan, 101))
	assert.InDelta(t, 150, FanPressure(fan, 0), 1e-9)
}

// A longer duct, a bend more or a rougher wall never lets more air out.
func TestALongerDuctNeverLetsMoreOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := way{
			rapid.Float64Range(100, 8000).Draw(t, "length"), rapid.Float64Range(40, 120).Draw(t, "across"), rapid.Float64Range(0, 2).Draw(t, "rough"),
			rapid.Float64Range(1, 4).Draw(t, "shaped"),
		}
		fan := []vehicles.FanPoint{{Flow: 0, Pressure: rapid.Float64Range(50, 400).Draw(t, "pressure")}, {Flow: rapid.Float64Range(50, 300).Draw(t, "flow"), Pressure: 0}}
		flow := w.comesOut(fan, Usual().Duct)
		require.InDelta(t, FanPressure(fan, flow), w.loss(flow, Usual().Duct), 0.1)
		worse := way{w.length * 1.3, w.across, w.rough + 0.2, w.shaped + 0.4}
		require.Less(t, worse.comesOut(fan, Usual().Duct), flow)
	})
}

func TestAJobWithoutDucts(t *testing.T) {
	subject, _ := About(Of(judged(t, nothingElse)), Duct)
	require.Len(t, subject.Rows, 1)
	assert.Equal(t, "none", subject.Rows[0].Said())
	r := judged(t, func(j *vehicles.Job) {
		h := *j.Heater
		h.Duct.Front, h.Given = true, h.Given|vehicles.HasDuct
		*j = j.WithHeater(h)
	})
	assert.Equal(t, []string{"how long the duct is", "the duct's bends, or that it has none"}, rowOf(t, r, Duct, "loss").Lacks)
	assert.Equal(t, []string{"roughness inside 1 mm", "air wanted 80 m³/h"}, rowOf(t, r, Duct, "loss").Taken)
}

func TestADuctThatTheHeaterSaysNothingOf(t *testing.T) {
	r := judged(t, ducted(func(*vehicles.Ductwork) {}))
	assert.Contains(t, rowOf(t, r, Duct, "loss").Taken, "one duct of 60 mm, as On top has none")
}

// Of ducts without a heater nothing is said that goes by its outlet's width; it is said that the heater is missing.
func TestADuctWithoutAHeaterIsNotReckoned(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) {
		ducted(func(d *vehicles.Ductwork) {
			d.Fan = vehicles.List[vehicles.FanPoint]{{Flow: 0, Pressure: 150}, {Flow: 100, Pressure: 0}}
		})(j)
		j.Heater, j.Exhaust, j.Intake, j.Fuel = nil, nil, nil, nil
	})
	for _, id := range []string{"speed", "loss", "flow"} {
		row := rowOf(t, r, Duct, id)
		assert.False(t, row.Value.Set, id)
		assert.Equal(t, []string{"which heater it is"}, row.Lacks, id)
	}
}
