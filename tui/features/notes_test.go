package features

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// begun are the notes of an obstruction of which these texts are known.
func begun(t *testing.T, known map[string]string) map[string]string {
	s := screentest.Judged(desk.State{}, screentest.Van(t))
	job, record, err := New(Obstructions, s.Job).Set(s, known)
	require.NoError(t, err)
	s = screentest.Judged(desk.State{}, job)
	require.Len(t, job.Unfinished.Obstructions, 1, "not whole yet")
	return record.(Record).Notes(s)
}

// What is drawn for the eye of a thing that is half entered is no reading: a field without a text comes to nothing, and so does
// one that runs on from it.
func TestWhatIsNotReadComesToNothing(t *testing.T) {
	for name, c := range map[string]struct {
		known map[string]string
		says  []string // the keys of places that come to something
	}{
		"the near edge":                     {map[string]string{"kind": "crossmember", "x0": "900"}, []string{"x0"}},
		"both edges":                        {map[string]string{"kind": "crossmember", "x0": "900", "x1": "+84"}, []string{"x0", "x1"}},
		"the far edge":                      {map[string]string{"kind": "crossmember", "x1": "984"}, []string{"x1"}},
		"a far edge that runs on from none": {map[string]string{"kind": "crossmember", "x1": "+84"}, nil},
		"one side":                          {map[string]string{"kind": "crossmember", "x0": "900", "x1": "+84", "y0": "L 40"}, []string{"x0", "x1", "y0"}},
		"the other side":                    {map[string]string{"kind": "crossmember", "x0": "900", "y1": "R 40"}, []string{"x0", "y1"}},
		"a side that runs on from none":     {map[string]string{"kind": "crossmember", "x0": "900", "y1": "+40"}, []string{"x0"}},
		"a round's middle, along":           {map[string]string{"kind": "spare wheel", "cx": "900"}, []string{"cx"}},
		"a round's middle":                  {map[string]string{"kind": "spare wheel", "cx": "900", "cy": "30"}, []string{"cx", "cy"}},
	} {
		t.Run(name, func(t *testing.T) {
			notes := begun(t, c.known)
			var says []string
			for _, key := range []string{"x0", "x1", "y0", "y1", "cx", "cy"} {
				if notes[key] != "" {
					says = append(says, key)
				}
			}
			assert.Equal(t, c.says, says)
		})
	}
}

// What a half entered thing's readings come to is what they come to once it is whole, where its height has no part in it.
func TestNotesOfAHalfEnteredThingAreThoseOfTheWhole(t *testing.T) {
	s := screentest.Judged(desk.State{}, screentest.Van(t))
	record := Record{Obstructions, 0, false}
	whole := record.Notes(s)
	known := record.texts(s.Job)
	known["name"] = "another"
	delete(known, "y1")
	half := begun(t, known)
	for _, key := range []string{"x0", "x1", "y0"} {
		assert.Equal(t, whole[key], half[key], key)
	}
}

// A list's own side: a fitting's readings come to places above the floor, an opening's to places below it.
func TestSpotIsTakenAsThoseOfItsList(t *testing.T) {
	job := screentest.Van(t)
	below, err := Obstructions.Spot(job, pairOf(t, "652", "L 240"), 0)
	require.NoError(t, err)
	above, err := Fittings.Spot(job, pairOf(t, "652", "L 240"), 0)
	require.NoError(t, err)
	assert.InDelta(t, 634.51, below.Prism.Footprint.Middle.X, 0.005, "sqrt(652^2 - 150^2)")
	assert.InDelta(t, 649.23, above.Prism.Footprint.Middle.X, 0.005, "sqrt(652^2 - 60^2)")
	assert.Equal(t, 650., below.Prism.Footprint.Middle.Y)
	_, err = Obstructions.Spot(job, pairOf(t, "140", "0"), 0)
	assert.ErrorContains(t, err, "150 mm apart in height")
	_, err = Obstructions.Spot(job, pairOf(t, "+40", "0"), 0)
	assert.Error(t, err, "there is nothing to run on from")
}

func pairOf(t *testing.T, x, y string) vehicles.Pair {
	p, ok := readPair(x, y)
	require.True(t, ok)
	return p
}
