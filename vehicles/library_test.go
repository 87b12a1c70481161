package vehicles

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheLibraryIsHonest(t *testing.T) {
	require.GreaterOrEqual(t, len(Library()), 7)
	for _, sample := range Library() {
		job, ok := FromLibrary(sample.Name)
		require.True(t, ok)
		assert.Equal(t, sample.Title, job.Vehicle)
		assert.Contains(t, job.Notes, "Invented", sample.Name)
		assert.GreaterOrEqual(t, len(job.Obstructions), 18, sample.Name)
		for _, o := range job.Obstructions {
			assert.False(t, o.Measured, "%s: %s", sample.Name, o.Name)
			assert.True(t, o.Drop.Set, "%s: %s", sample.Name, o.Name)
		}
		for _, o := range job.Openings {
			assert.True(t, o.Unconfirmed, "%s: %s", sample.Name, o.Name)
		}
		assert.Empty(t, job.Ties)
		for _, f := range job.Fittings {
			assert.True(t, f.Unconfirmed, "%s: %s", sample.Name, f.Name)
		}
		assert.Empty(t, job.Looked, "looked for is looked for under this van")
		assert.Nil(t, job.Cut)
		_, faults := Reduce(job)
		require.Empty(t, faults, sample.Name)
	}
	_, ok := FromLibrary("demo")
	assert.False(t, ok, "the sample is no van of the library")
	_, ok = FromLibrary("../demo")
	assert.False(t, ok)
}

// What stands in the library lies where a van is: under its floor or within what overhangs it.
func TestTheLibraryLiesUnderItsFloors(t *testing.T) {
	const overhang = 400 // mm, in front of the floor, where rails and pipes go on under the cab
	for _, sample := range Library() {
		job, _ := FromLibrary(sample.Name)
		plan, _ := Reduce(job)
		for i, o := range plan.Obstructions {
			low, high := o.Prism.Footprint.Bounds()
			name := sample.Name + ": " + job.Obstructions[i].Name
			assert.GreaterOrEqual(t, low.X, 0., name)
			assert.LessOrEqual(t, high.X, plan.FloorMax.X+overhang, name)
			assert.GreaterOrEqual(t, low.Y, plan.FloorMin.Y, name)
			assert.LessOrEqual(t, high.Y, plan.FloorMax.Y, name)
			assert.GreaterOrEqual(t, o.Prism.Low, -job.Floor.Ground, name)
		}
	}
}

func TestAVanCarriedOverIsUnconfirmed(t *testing.T) {
	old := Demo()
	before := string(old.Format())
	job := CarryOver(old, "TL-08")
	assert.Equal(t, before, string(old.Format()), "the earlier job stays as it was")
	assert.Equal(t, "TL-08", job.Ref)
	assert.Equal(t, old.Vehicle, job.Vehicle)
	assert.Contains(t, job.Notes, "TL-07")
	assert.Equal(t, old.Floor, job.Floor)
	assert.Equal(t, old.Datum, job.Datum)
	assert.Equal(t, old.Wheels, job.Wheels)
	assert.NotEmpty(t, old.Wheels)
	assert.Equal(t, old.Tape, job.Tape)
	require.Len(t, job.Obstructions, len(old.Obstructions))
	for i, o := range job.Obstructions {
		assert.False(t, o.Measured)
		o.Measured = old.Obstructions[i].Measured
		assert.Equal(t, old.Obstructions[i], o, "the readings are as they were")
	}
	require.Len(t, job.Openings, len(old.Openings))
	for _, o := range job.Openings {
		assert.True(t, o.Unconfirmed)
	}
	assert.Nil(t, job.Cut)
	assert.Nil(t, job.Exhaust)
	assert.Nil(t, job.Intake)
	assert.Nil(t, job.Fuel)
	assert.Empty(t, job.Fittings)
	assert.Empty(t, job.Ties)
	assert.Empty(t, job.Looked)
	assert.Empty(t, job.Rules)
	assert.Empty(t, job.Extra)
	assert.Equal(t, NewJob("").Guesses, job.Guesses, "only that the floor is a guess")
	again, err := ParseJob(job.Format(), "TL-08.toml")
	require.NoError(t, err)
	assert.Equal(t, string(job.Format()), string(again.Format()))
}
