package sizing

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// At 24 V the same heater draws half: a glow current of 4.5 A takes 5.6 A of fuse, the first size of that is 7.5 A (ISO 8820-3); 0.6 A while it runs
// out of half of 100 Ah last 83.3 hours. At 12 V it is 9 A, 15 A, 1.2 A and 41.7 hours.
func TestTheSupplyByItsVoltage(t *testing.T) {
	for volts, want := range map[float64]struct{ fuse, lasts, glow, running string }{
		12: {"15 A", "41.7 h", "glow current 9 A", "running current 1.2 A"}, 24: {"7.5 A", "83.3 h", "glow current 4.5 A", "running current 0.6 A"},
	} {
		r := judged(t, func(j *vehicles.Job) {
			j.Electrics = vehicles.Electrics{Volts: vehicles.Some(volts), Battery: vehicles.Some(100)}
		})
		fuse, battery := rowOf(t, r, Electrics, "fuse"), rowOf(t, r, Electrics, "battery")
		assert.Equal(t, want.fuse, fuse.Said(), "%g V", volts)
		assert.Equal(t, []string{want.glow}, fuse.Taken)
		assert.Equal(t, want.lasts, battery.Said(), "%g V", volts)
		assert.Contains(t, battery.Taken, want.running)
		assert.Contains(t, battery.Taken, "of the battery may be used 50 %")
	}
}

// Whoever says what would be taken gets the same result, and nothing is said to be taken for it any more: what is usual is nothing but a value that was said.
func TestWhatIsSaidAsIsUsualChangesNothing(t *testing.T) {
	bare := judged(t, func(j *vehicles.Job) {
		j.Electrics, j.Stack = vehicles.Electrics{Cable: vehicles.Some(4200), Battery: vehicles.Some(100)}, layered
		j.Mount.On, j.Ductwork = vehicles.OnLining, vehicles.Ductwork{Length: vehicles.Some(2000), Bends: []float64{90}}
	})
	job := bare.Job
	job.Electrics.Volts, job.Electrics.Drop, job.Electrics.Usable = vehicles.Some(12), vehicles.Some(0.5), vehicles.Some(50)
	job.Electrics.Glow, job.Electrics.Running = vehicles.Some(9), vehicles.Some(1.2)
	job.Mount.Plate, job.Mount.Bead = vehicles.Some(Usual().Floor.Plate), vehicles.Some(Usual().Floor.Bead)
	job.Ductwork.Rough, job.Ductwork.Flow = vehicles.Some(Usual().Duct.Rough), vehicles.Some(80)
	said := judged(t, func(j *vehicles.Job) { *j = job })
	less := 0
	for _, subject := range Of(bare) {
		for _, row := range subject.Rows {
			same, there := Find(said, row.ID)
			require.True(t, there, row.Label)
			assert.Equal(t, row.Said(), same.Said(), row.Label)
			assert.InDelta(t, row.Value.Value, same.Value.Value, 1e-9, row.Label)
			assert.Subset(t, append(row.Taken, ""), same.Taken, "%s: nothing more is taken", row.Label)
			if len(same.Taken) < len(row.Taken) {
				less++
			}
		}
	}
	assert.GreaterOrEqual(t, less, 9, "fuse, both areas, area, drop, battery, screw, bolt, sealant, duct")
}

// The reasons beside what is fastened, by hand: a plate of 1.5 on 23 at the thinnest and on 31 at the thickest; and what is too short by how much.
func TestTheReasonsOfTheFloorByHand(t *testing.T) {
	r := judged(t, standing(vehicles.OnLining, nothingElse))
	assert.Contains(t, rowOf(t, r, Floor, "screw").Why, "Plate and floor at the thinnest are 24.5 mm, and it stays 2 mm short of coming out below")
	assert.Contains(t, rowOf(t, r, Floor, "bolt").Why, "Plate and floor at the thickest are 32.5 mm; washer, nut and two threads take 9 mm.")
	assert.Equal(t, "It reaches 14 mm below the thickest place.", rowOf(t, r, Floor, "collar-has").Why)
	assert.Contains(t, rowOf(t, r, Floor, "sealant").Why, "680 mm along the plate's edge and 399 mm round the hole.")
	deep := func(thick float64) Row {
		r := judged(t, standing(vehicles.OnLining, func(j *vehicles.Job) { j.Stack = plies(thick) }))
		row, there := Find(r, CollarToOrder)
		require.True(t, there)
		return row
	}
	assert.Equal(t, "60 mm, may be cut to 50 mm", deep(45).Said())
	assert.Equal(t, "60 mm", deep(55).Said(), "it is as deep as it must be")
	assert.Equal(t, "205 mm, made of steel", deep(200).Said(), "none so deep is sold")
}

// A second duct is spoken of where there is one: what is wanted and lost is one duct's.
func TestASecondDuctIsSpokenOf(t *testing.T) {
	for ends, want := range map[vehicles.Ends]bool{{Front: true}: false, {Front: true, Rear: true}: true} {
		r := judged(t, func(j *vehicles.Job) {
			h := *j.Heater
			h.Duct, h.DuctAcross = ends, 60
			*j = j.WithHeater(h)
			j.Ductwork = vehicles.Ductwork{Length: vehicles.Some(2000), Bends: []float64{}, Flow: vehicles.Some(60)}
		})
		air := rowOf(t, r, Duct, "speed")
		if want {
			assert.Contains(t, air.Why, "a second one takes air of its own")
		} else {
			assert.NotContains(t, air.Why, "a second one")
		}
		assert.InDelta(t, 5.895, air.Value.Value, 0.001, "60 m3/h through 60 mm: 1/60 m3/s by 0.0028274 m2")
	}
}

// Each result has an id that no other of its topic has, and is found by it: what is found is what is listed.
func TestResultsAreFoundAsTheyAreListed(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) { *j = vehicles.Demo() })
	listed := 0
	for _, subject := range Of(r) {
		seen := map[string]bool{}
		for _, row := range subject.Rows {
			assert.False(t, seen[row.ID.String()], "%s %s", subject.Topic, row.ID)
			seen[row.ID.String()] = true
			found, there := Find(r, row.ID)
			assert.True(t, there)
			assert.Equal(t, row, found)
			listed++
		}
	}
	assert.GreaterOrEqual(t, listed, 40)
	_, there := Find(r, OldPilotBeside)
	assert.False(t, there, "nobody has moved it")
}
