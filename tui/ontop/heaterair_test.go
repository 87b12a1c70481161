package ontop

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

const toHeater = "<down><down><down><down><enter>"

// at opens the heater's form at a field.
func at(t *testing.T, job vehicles.Job, key string) *screentest.Driver {
	r := screentest.New(t, New(), job, 100, 47)
	r.Type(toHeater)
	for _, f := range cards[heaterCard].Fields(r.State, nil) {
		if f.Key == key {
			return r
		}
		r.Type("<down>")
	}
	require.Fail(t, "no field "+key)
	return r
}

func TestWhereTheHeatersAirGoesAndComesFrom(t *testing.T) {
	r := at(t, screentest.Van(t), "duct")
	r.Type("b75<down>90.5<down>k")
	h := r.State.Job.Heater
	assert.Equal(t, vehicles.Ends{Front: true, Rear: true}, h.Duct)
	assert.Equal(t, 75.0, h.DuctAcross)
	assert.Equal(t, vehicles.Some(90.5), h.ReturnArea)
	assert.Equal(t, vehicles.Locker, h.Air)
	r.Type("gg<down>80 60, 80 -60,-80 60<down>8<down>y")
	h = r.State.Job.Heater
	assert.Equal(t, vehicles.Stored{Gas: true, Lead: true}, h.Stored, "the letter again: the next that begins with it")
	assert.Equal(t, vehicles.List[[2]float64]{{80, 60}, {80, -60}, {-80, 60}}, h.Bolts)
	assert.Equal(t, 8.0, h.Bolt)
	assert.True(t, h.Packed)
	file := string(r.State.Job.Format())
	for _, line := range []string{
		`duct = ["front", "rear"]`, "duct_across = 75", "return_area = 90.5", `air = "locker"`, `stored = ["gas bottles", "lead batteries"]`,
		"bolts = [[80, 60], [80, -60], [-80, 60]]", "bolt = 8", "packed = true",
	} {
		assert.Contains(t, file, line+"\n")
	}
}

func TestWhatIsSaidOfTheHeatersAirIsTakenBack(t *testing.T) {
	job := screentest.Van(t)
	plain, _ := vehicles.HeaterClass("2 kW")
	h := plain
	h.Duct, h.DuctAcross, h.ReturnArea, h.Air, h.Stored = vehicles.Ends{Rear: true}, 80, vehicles.Some(9), vehicles.Outside, vehicles.Stored{Petrol: true}
	h.Bolts, h.Bolt, h.Packed = vehicles.List[[2]float64]{{1, 2}}, 9, true
	h.Given |= vehicles.HasDuct | vehicles.HasDuctAcross | vehicles.HasReturnArea | vehicles.HasAir | vehicles.HasStored |
		vehicles.HasBolts | vehicles.HasBolt | vehicles.HasPacked
	r := at(t, job.WithHeater(h), "duct")
	r.Type("-<wipe><down><wipe><down>--<wipe><down><wipe><down>-")
	assert.Equal(t, plain, *r.State.Job.Heater)
}

func TestADuctShowsInTheSpaceThatIsKept(t *testing.T) {
	r := at(t, screentest.Van(t), "duct")
	r.Type("f")
	assert.Equal(t, 60.0, r.State.Job.Heater.Kept().Front)
	view := r.View(100, 47)
	assert.Regexp(t, `free in front +60, with a duct`, view)
	assert.Regexp(t, `free behind +150, its class`, view)
}

func TestABoltIsTwoNumbers(t *testing.T) {
	r := at(t, screentest.Van(t), "bolts")
	r.Type("80")
	assert.Empty(t, r.State.Job.Heater.Bolts)
	assert.Contains(t, r.View(100, 47), "is no bolt")
	r.Type(" x")
	assert.Contains(t, r.View(100, 47), `"x" is no number`)
	r.Type("<back>60")
	assert.Len(t, r.State.Job.Heater.Bolts, 1)
	r.Type("<wipe>none")
	assert.Empty(t, r.State.Job.Heater.Bolts)
	assert.NotZero(t, r.State.Job.Heater.Given&vehicles.HasBolts, "said: it has none")
	assert.Contains(t, string(r.State.Job.Format()), "bolts = []\n")
}

func TestAnAreaIsANumberAboveNothing(t *testing.T) {
	slot := returnSlot()
	job := screentest.Van(t)
	for text, want := range map[string]float64{"90": 90, "90,5": 90.5} {
		j, err := slot.Set(job, text)
		require.NoError(t, err)
		assert.Equal(t, vehicles.Some(want), j.Heater.ReturnArea)
	}
	for text, why := range map[string]string{"0": "more than 0", "-3": "more than 0", "x": "is no number", "nan": "is no number", "1e7": "at most 1000000"} {
		_, err := slot.Set(job, text)
		assert.ErrorContains(t, err, why)
	}
}
