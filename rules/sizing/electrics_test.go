package sizing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// judged is the sample van without what sizes are reckoned from, and then with what the test says of it.
func judged(t require.TestingT, edit func(j *vehicles.Job)) *rules.Result {
	j := vehicles.Demo()
	j.Stack, j.Mount, j.Electrics, j.Ductwork, j.Body, j.Surfaces = nil, vehicles.Mount{}, vehicles.Electrics{}, vehicles.Ductwork{}, vehicles.Body{}, nil
	edit(&j)
	r, faults := rules.Judge(j, rules.Builtin())
	require.Empty(t, faults)
	return &r
}

// rowOf is a result of a job.
func rowOf(t require.TestingT, r *rules.Result, topic Topic, id string) Row {
	subject, ok := About(Of(r), topic)
	require.True(t, ok)
	for _, row := range subject.Rows {
		if row.ID.String() == id {
			return row
		}
	}
	require.Fail(t, "no such result", "%s %s", topic, id)
	return Row{}
}

// Worked from IEC 60228's maximum resistances at 20 degrees: 10 A over 3 m there and 3 m back.
func TestVoltsLostByHand(t *testing.T) {
	for area, want := range map[float64]float64{1.5: 0.798, 2.5: 0.4788, 4: 0.297} {
		for _, c := range Usual().Cable {
			if c.Area == area {
				assert.InDelta(t, want, Lost(c.Ohm, 6, 10), 1e-9)
			}
		}
	}
}

// A published table of 12 V wiring: 10 A over a loop of 21 ft takes 10 AWG (5.26 mm2) at 3 %, 16 AWG (1.31 mm2) at 10 %; its formula,
// CM = 10.75 I L / E (from memory), asks for 3.18 and 0.95 mm2. The cable that is chosen is the first of our sizes above that.
func TestACableAsPublished(t *testing.T) {
	m := maker{sizes: Usual()}
	for share, want := range map[float64]struct{ formula, area float64 }{0.03: {3.18, 4}, 0.10: {0.95, 1.5}} {
		c, ok := m.byDrop(21*0.3048, 10, share*12)
		require.True(t, ok)
		assert.InDelta(t, want.area, c.Area, 1e-9)
		const circularMil = 5.067e-4 // mm2
		assert.InDelta(t, want.formula, 10.75*10*21/(share*12)*circularMil, 0.01)
		assert.Greater(t, c.Area, want.formula)
	}
}

func TestTheCableIsTheLargerOfTwo(t *testing.T) {
	supply := vehicles.Electrics{Cable: vehicles.Some(1000), Glow: vehicles.Some(10), Drop: vehicles.Some(0.5), Fuse: vehicles.Some(30), Volts: vehicles.Some(12)}
	r := judged(t, func(j *vehicles.Job) { j.Electrics = supply })
	assert.Equal(t, "1 mm²", rowOf(t, r, Electrics, "area-drop").Said(), "26 ohm/km over 2 m at 10 A lose 0.52 V, 19.5 lose 0.39")
	assert.Equal(t, "4 mm²", rowOf(t, r, Electrics, "area-fuse").Said())
	area := rowOf(t, r, Electrics, "area")
	assert.Equal(t, "4 mm²", area.Said())
	assert.Empty(t, area.Taken, "all is said")
	assert.Equal(t, "0.1 V", rowOf(t, r, Electrics, "drop").Said(), "4.95 ohm/km over 2 m at 10 A: 0.099")

	supply.Cable = vehicles.Some(20000)
	r = judged(t, func(j *vehicles.Job) { j.Electrics = supply })
	assert.Equal(t, "16 mm²", rowOf(t, r, Electrics, "area").Said(), "40 m at 10 A: 1.21 ohm/km lose 0.484, 1.91 lose 0.764")
	supply.Drop = vehicles.Some(0.1)
	r = judged(t, func(j *vehicles.Job) { j.Electrics = supply })
	assert.Contains(t, rowOf(t, r, Electrics, "area-drop").Amiss, "nearer together")
}

func TestWhatNobodyHasSaidIsNamed(t *testing.T) {
	r := judged(t, func(*vehicles.Job) {})
	area := rowOf(t, r, Electrics, "area")
	assert.Equal(t, "not known", area.Said())
	assert.Equal(t, []string{"the cable's length from battery to heater"}, area.Lacks)
	assert.Equal(t, []string{"battery 12 V", "glow current 9 A", "volts that may be lost 0.5 V"}, area.Taken)
	assert.True(t, area.Instructions)
	fuse := rowOf(t, r, Electrics, "fuse")
	assert.Equal(t, "15 A", fuse.Said(), "1.25 times 9 is 11.25")
	assert.Equal(t, []string{"the battery's capacity, Ah"}, rowOf(t, r, Electrics, "battery").Lacks)
	r = judged(t, func(j *vehicles.Job) { j.Heater = nil })
	assert.Equal(t, []string{"which heater it is"}, rowOf(t, r, Electrics, "fuse").Lacks)
}

func TestAFuseThatBlowsAtTheFirstStart(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) { j.Electrics.Fuse = vehicles.Some(7.5) })
	assert.Contains(t, rowOf(t, r, Electrics, "fuse").Amiss, "blows at the first start")
	r = judged(t, func(j *vehicles.Job) { j.Electrics.Fuse = vehicles.Some(10) })
	assert.Empty(t, rowOf(t, r, Electrics, "fuse").Amiss)
}

// Half of 100 Ah over 1.25 A is 40 hours, five nights of eight.
func TestABatteryByHand(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) {
		j.Electrics = vehicles.Electrics{Battery: vehicles.Some(100), Usable: vehicles.Some(50), Running: vehicles.Some(1.25)}
		j.Body.Hours = vehicles.Some(8)
	})
	assert.Equal(t, "40 h", rowOf(t, r, Electrics, "battery").Said())
	assert.Equal(t, "5 nights", rowOf(t, r, Electrics, "nights").Said())
}

// The cable that is chosen loses no more than is allowed, the next thinner one more; a longer loop or a larger current never takes a
// thinner one.
func TestTheThinnestCableThatDoes(t *testing.T) {
	m := maker{sizes: Usual()}
	rapid.Check(t, func(t *rapid.T) {
		loop, amperes := rapid.Float64Range(0.1, 30).Draw(t, "loop"), rapid.Float64Range(0.1, 40).Draw(t, "amperes")
		allowed := rapid.Float64Range(0.05, 2).Draw(t, "allowed")
		c, ok := m.byDrop(loop, amperes, allowed)
		for _, other := range Usual().Cable {
			if other.Area < c.Area || !ok {
				require.Greater(t, Lost(other.Ohm, loop, amperes), allowed)
			}
		}
		if ok {
			require.LessOrEqual(t, Lost(c.Ohm, loop, amperes), allowed)
		}
		longer, still := m.byDrop(loop*1.5, amperes*1.2, allowed)
		require.True(t, !still || longer.Area >= c.Area)
	})
}

// The tables are as their formulas need them: rising, each cable with less resistance than copper's own would allow at most, and a
// larger fuse.
func TestTheTablesAreSound(t *testing.T) {
	cables := Usual().Cable
	for i, c := range cables {
		const copper = 1000.0 / 58 // ohm mm2/km: IEC 60028, from memory
		assert.Greater(t, c.Ohm, copper/c.Area, "no cable is better than copper")
		assert.Less(t, c.Ohm, 1.2*copper/c.Area)
		if i > 0 {
			assert.Greater(t, c.Area, cables[i-1].Area)
			assert.Greater(t, c.Fuse, cables[i-1].Fuse)
		}
	}
	for _, class := range vehicles.HeaterClasses() {
		_, ok := Usual().class(class)
		assert.True(t, ok, class)
	}
}

// A heater whose class nobody has said is taken to be of the usual one, and that is named.
func TestAHeaterOfNoClassIsNamedAsTaken(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) {
		h := *j.Heater
		h.Given &^= vehicles.HasClass
		*j = j.WithHeater(h)
	})
	assert.Contains(t, rowOf(t, r, Electrics, "fuse").Taken, "heater of 2 kW")
	assert.NotContains(t, rowOf(t, judged(t, nothingElse), Electrics, "fuse").Taken, "heater of 2 kW")
}
