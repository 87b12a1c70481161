package sizing

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// From memory: guides to bolts print a length as what is clamped, washers, nut and some threads, up to the next that is sold: layers of 10, 10, 8 and 6
// with 21 for nut and thread are 55; 38 clamped with two washers of 2, a nut of 10 and two threads of 1.75 are 55.5, so one of 60.
func TestALengthThroughLayersAsPublished(t *testing.T) {
	f := Usual().Floor
	var layers vehicles.List[vehicles.Layer]
	for _, thick := range []float64{10, 10, 8, 6} {
		layers = append(layers, vehicles.Layer{Kind: vehicles.SheetMetal, Thick: thick})
	}
	thick, thin := StackOf(layers, true)
	assert.InDelta(t, thick, thin, 1e-12, "no swage")
	size, ok := leastOf(f.Bolts, thick+20+1)
	require.True(t, ok)
	assert.InDelta(t, 55, size, 1e-12)
	size, _ = leastOf(f.Bolts, 38+2*2+10+2*1.75)
	assert.InDelta(t, 60, size, 1e-12)
	// the same by the job: 34 of sheet, a plate of 12 and 9 for washer, nut and threads are 55
	r := judged(t, standing(vehicles.OnSteel, func(j *vehicles.Job) { j.Stack, j.Mount.Plate = layers, vehicles.Some(12) }))
	assert.Equal(t, "55 mm", rowOf(t, r, Floor, "bolt").Said())
	assert.Equal(t, "34 mm", rowOf(t, r, Floor, "thickest").Said())
}

// The lengths of tapping screws in inches, ANSI B18.6.4, from memory: each of ours is one of them to a millimetre.
func TestScrewsAsPublished(t *testing.T) {
	inches := []float64{1. / 4, 3. / 8, 1. / 2, 5. / 8, 3. / 4, 7. / 8, 1, 1.25, 1.5, 1.75, 2}
	ours := Usual().Floor.Screws
	require.Len(t, ours, len(inches))
	for i, screw := range ours {
		assert.InDelta(t, inches[i]*25.4, screw, 1, "%v in", inches[i])
	}
}

// Blade fuses are 3, 4, 5, 7.5, 10, 15, 20, 25 and 30 A (ISO 8820-3, from memory); guides, from memory, too, print 1.25 times the current and
// then the next that is sold: 10 A take 12.5, so one of 15; the worked example of 80 A takes 100.
func TestFusesAsPublished(t *testing.T) {
	printed := []float64{3, 4, 5, 7.5, 10, 15, 20, 25, 30}
	for _, a := range Usual().Fuses.Amperes {
		if a <= 30 {
			assert.Contains(t, printed, a)
		}
	}
	r := judged(t, func(j *vehicles.Job) { j.Electrics.Glow = vehicles.Some(10) })
	assert.Equal(t, "15 A", rowOf(t, r, Electrics, "fuse").Said())
	assert.InDelta(t, 100, Usual().Supply.Spare*80, 1e-12)
}

// From memory: calculators of batteries print 100 Ah of which 80 % may be used at 5 A: 16 hours; of a lead battery they print 50 %.
func TestABatteryAsPublished(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) {
		j.Electrics = vehicles.Electrics{Battery: vehicles.Some(100), Usable: vehicles.Some(80), Running: vehicles.Some(5)}
	})
	assert.Equal(t, "16 h", rowOf(t, r, Electrics, "battery").Said())
	assert.InDelta(t, 50, Usual().Supply.Usable, 1e-12)
}

// CIBSE Guide A, on ventilation, has 0.33 W for each m3, change an hour and degree, from memory: 300 m3 changed twice at 15 degrees, 2970 W; 0.333 is
// 1.2 kJ/(m3 K).
// Ours counts the air as warm as it is inside: within 2 %.
func TestAirThatIsChangedAsPublished(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) {
		warmVan(j)
		j.Body.Volume, j.Body.Changes, j.Body.Outside = vehicles.Some(300), vehicles.Some(2), vehicles.Some(5)
	})
	assert.InEpsilon(t, 0.33*2*300*15, rowOf(t, r, Heat, "air").Value.Value, 0.02)
}

// Printed of what warms or cools with one time constant: after one of them 63.2 % of the way is gone. A textbook's building ("Fundamentals of
// Differential Equations", 9th edition, chapter 3) cools from 9 degrees above the outside to 4 in 3 ln(9/4) hours, at a time constant of 3; one that
// is warmed toward 9 takes as long for 5 of them.
func TestWarmingAsPublished(t *testing.T) {
	const perDegree, hour = 40.0, 3600.0
	toWarm := perDegree * 3 * hour // a time constant of 3 hours
	seconds, ok := WarmUp(perDegree*10, 6.32, perDegree, toWarm)
	require.True(t, ok)
	assert.InEpsilon(t, 3*hour, seconds, 0.001)
	seconds, ok = WarmUp(perDegree*9, 5, perDegree, toWarm)
	require.True(t, ok)
	assert.InDelta(t, 3*math.Log(9.0/4)*hour, seconds, 1e-6)
}

// A sheet of duct sizes after the ASHRAE Handbook, Fundamentals, chapter "Duct Design", its title from memory: 7.14 m/s in 254.5 mm, roughness 0.09, a factor of 0.0191 and 31 Pa of velocity pressure
// take 2.3 Pa/m. The velocity-pressure tables of "Industrial Ventilation", from memory, have a bend of 60 degrees take 2/3, 45 half and 30 a third of what 90 take.
func TestADuctAsPublished(t *testing.T) {
	assert.InDelta(t, 0.0191, Friction(120727, 0.09/254.5), 0.0001)
	w := way{length: 1000, across: 254.5, rough: 0.09}
	flow := 7.14 * math.Pi / 4 * 0.2545 * 0.2545 * 3600
	assert.InDelta(t, 7.14, w.speed(flow), 1e-9)
	assert.InDelta(t, 2.3, w.loss(flow, ductSizes{Density: 1.2, Viscosity: 1.2 * 7.14 * 0.2545 / 120727}), 0.05)

	loss := func(bends ...float64) float64 {
		return rowOf(t, judged(t, ducted(func(d *vehicles.Ductwork) { d.Bends = bends })), Duct, "loss").Value.Value
	}
	none := loss([]float64{}...)
	for angle, share := range map[float64]float64{60: 2. / 3, 45: 1. / 2, 30: 1. / 3} {
		assert.InDelta(t, share, (loss(angle)-none)/(loss(90)-none), 1e-9, strconv.Itoa(int(angle)))
	}
}

// From memory: periodicals for builders and boaters print what is done where a saw's pilot bit has nothing to bore into: a board over the place, bored first, leads
// it. No figure is printed: from 12 mm on is common practice. Nowhere that the bit has nothing to hold on is it left to itself.
func TestAPilotBitThatHoldsNothingIsNeverLeftToItself(t *testing.T) {
	for by := float64(rules.PilotOnMark); by < 100; by += 0.25 {
		beside := rules.BesidePilot(&vehicles.Cut{Across: 127}, by)
		if by < 6 { // its own hole and the old one meet
			assert.True(t, beside.Board(), "%v mm: %s", by, beside.Takes())
		}
	}
}
