package sizing

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// supplied is the sample van with what the test says of its fuel.
func supplied(edit func(run *vehicles.Run, tank *vehicles.Tank)) func(j *vehicles.Job) {
	return func(j *vehicles.Job) {
		run, tank := *j.Fuel, vehicles.Tank{At: [2]float64{2500, 660}}
		edit(&run, &tank)
		run.Supply.Tank = &tank
		*j = j.WithRun(vehicles.FuelRun, &run)
	}
}

// IPCC 2006: 43.0 MJ/kg, at 0.832 kg/l 35.776 MJ/l; the AFDC's figure for low-sulphur diesel, 128 488 Btu/gal, is 35.8117 MJ/l and
// agrees within 0.1 %. 2 kW at 80 % then burn 0.25157 l/h.
func TestTheHeatOfDieselAsPublished(t *testing.T) {
	diesel := Usual().fuel(vehicles.Diesel)
	assert.InDelta(t, 35.776, diesel.PerLitre()*3.6, 1e-9)
	const britishThermalUnit, gallon = 1055.05585262, 3.785411784
	assert.InEpsilon(t, 128488*britishThermalUnit/1e6/gallon, diesel.PerLitre()*3.6, 0.001)
	assert.InDelta(t, 0.25157, LitresAnHour(2000, diesel.PerLitre(), 0.8), 5e-6)
}

// 10 l at 0.25157 an hour are 39.75 hours.
func TestATankByHand(t *testing.T) {
	r := judged(t, supplied(func(_ *vehicles.Run, tank *vehicles.Tank) { tank.Litres = vehicles.Some(10) }))
	row := rowOf(t, r, Fuel, "endurance")
	assert.InDelta(t, 10/0.25157, row.Value.Value, 0.01)
	assert.Equal(t, "39.8 h", row.Said())
	assert.Contains(t, row.Taken, "of the fuel's heat is used 80 %")
	r = judged(t, supplied(func(*vehicles.Run, *vehicles.Tank) {}))
	assert.Equal(t, []string{"how much the tank holds, litres"}, rowOf(t, r, Fuel, "endurance").Lacks)
}

// A bore of 2 mm holds 3.1416 ml a metre. The sample's line is 1202.4 mm long: 100 short of the heater that is 3.463 ml, at 22 ml in
// 1000 strokes 157 whole ones.
func TestPrimingByHand(t *testing.T) {
	assert.InDelta(t, 3.14159, LineVolume(2, 1000), 1e-5)
	r := judged(t, nothingElse)
	length := r.Plan.Fuel.Line.Length()
	assert.InDelta(t, 3.14159*(length-100)/1000, rowOf(t, r, Fuel, "volume").Value.Value, 1e-4)
	assert.Contains(t, rowOf(t, r, Fuel, "volume").Why, fmt.Sprintf("2 mm inside, %.0f mm long, which ends 100 mm short", length-100))
	assert.Equal(t, "157 strokes", rowOf(t, r, Fuel, "strokes").Said())
	assert.Equal(t, "157 s", rowOf(t, r, Fuel, "seconds").Said())
	r = judged(t, supplied(func(run *vehicles.Run, _ *vehicles.Tank) {
		pump := *run.Pump
		pump.Hz = vehicles.Some(4)
		run.Pump, run.Supply.Bore = &pump, vehicles.Number{}
	}))
	assert.Equal(t, []string{"the fuel line's bore"}, rowOf(t, r, Fuel, "seconds").Lacks)
	r = judged(t, supplied(func(run *vehicles.Run, _ *vehicles.Tank) { run.Pump = nil }))
	assert.Equal(t, []string{"the pump's dose, ml in 1000 strokes", "the pump's strokes a second while it primes"}, rowOf(t, r, Fuel, "seconds").Lacks)
}

// What is pumped never comes nearer to the heater than a hand's breadth, and one stroke more would.
func TestPrimingNeverFloods(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bore, dose := rapid.Float64Range(1, 4).Draw(t, "bore"), rapid.Float64Range(5, 60).Draw(t, "dose")
		r := judged(t, supplied(func(run *vehicles.Run, _ *vehicles.Tank) {
			pump := *run.Pump
			pump.MlPer1000 = vehicles.Some(dose)
			run.Pump, run.Supply.Bore = &pump, vehicles.Some(bore)
		}))
		strokes, line := rowOf(t, r, Fuel, "strokes").Value.Value, LineVolume(bore, r.Plan.Fuel.Line.Length()-100)
		require.LessOrEqual(t, strokes*dose/1000, line+1e-9)
		require.Greater(t, (strokes+1)*dose/1000, line)
	})
}

func TestATankWithThePeople(t *testing.T) {
	inside := supplied(func(run *vehicles.Run, tank *vehicles.Tank) {
		run.Supply.From, tank.Rise = "", vehicles.Span{From: 0, To: 300, Set: true}
		tank.Filler, tank.Breather = vehicles.TankInside, vehicles.TankOutside
	})
	r := judged(t, inside)
	assert.True(t, TankIndoors(&r.Job))
	assert.Contains(t, rowOf(t, r, Fuel, "filler").Amiss, "lead it out")
	assert.Contains(t, rowOf(t, r, Fuel, "filler").Source.String(), "UN Regulation No. 122")
	assert.Empty(t, rowOf(t, r, Fuel, "breather").Amiss)
	r = judged(t, supplied(func(run *vehicles.Run, tank *vehicles.Tank) {
		run.Supply.From, tank.Rise = "", vehicles.Span{To: 300, Set: true}
	}))
	assert.Equal(t, []string{"where the tank's filler ends"}, rowOf(t, r, Fuel, "filler").Lacks)
	for _, other := range []func(run *vehicles.Run, tank *vehicles.Tank){
		func(*vehicles.Run, *vehicles.Tank) {}, // the van's own
		func(run *vehicles.Run, tank *vehicles.Tank) {
			run.Supply.From, tank.Drop = "", vehicles.Span{From: 60, To: 300, Set: true}
		},
		func(run *vehicles.Run, _ *vehicles.Tank) { run.Supply.From = "" }, // it begins below
	} {
		assert.False(t, TankIndoors(&judged(t, supplied(other)).Job))
	}
}

// Lengths and heights are those of Checks.
func TestTheLinesLengthsAreAsJudged(t *testing.T) {
	r := judged(t, nothingElse)
	for _, f := range r.Findings {
		for _, of := range judgedOfFuel {
			if f.Of(of.rule) {
				assert.InDelta(t, f.Value, rowOf(t, r, Fuel, of.id.String()).Value.Value, 1e-9)
			}
		}
	}
	assert.Equal(t, "520 mm", rowOf(t, r, Fuel, "suction").Said())
	for most, amiss := range map[float64]string{400: "it is more than is asked for: see Checks", 700: ""} {
		limited := judged(t, func(j *vehicles.Job) { *j = j.WithRule("fuel.suction", most) })
		assert.Equal(t, amiss, rowOf(t, limited, Fuel, "suction").Amiss, "%g", most)
	}
	deep := judged(t, supplied(func(run *vehicles.Run, _ *vehicles.Tank) { run.Supply.From = "" }))
	assert.Equal(t, []string{"how deep the tank reaches"}, rowOf(t, deep, Fuel, "lift").Lacks, "the line begins higher than its pump")
	r = judged(t, func(j *vehicles.Job) { j.Fuel = nil })
	subject, _ := About(Of(r), Fuel)
	require.Len(t, subject.Rows, 1)
	assert.Equal(t, []string{"the fuel line: lay it on Runs"}, subject.Rows[0].Lacks)
}
