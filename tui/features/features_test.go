package features

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// notesOf are the notes of a job's obstruction.
func notesOf(job vehicles.Job, row int) map[string]string {
	return Record{Obstructions, row, false}.Notes(screentest.Judged(desk.State{}, job))
}

// The numbers are the job file's sample, worked out by hand with the formulas of its description: the slope takes
// 652 - sqrt(652^2 - (150-95)^2) = 2.32; class II within a metre 0.3 + 0.2 + 0.2 = 0.7, read 1, height 2:
// 1.96 sqrt(1.00717 (0.7^2 + 1) / 3 + 0.00717 * 2 * 2^2 / 3) = 1.41; runs on with (0.5^2 + 1) / 3 more: 1.90.
func TestWhatReadingsComeTo(t *testing.T) {
	job := screentest.Van(t)
	rear := notesOf(job, 0)
	assert.Equal(t, "= 649.7 mm from bumper ± 1.4, tape sloped 2.3", rear["x0"])
	assert.Equal(t, "= 733.7 mm from bumper ± 1.9", rear["x1"], "runs on: 649.68 + 84")
	assert.Equal(t, "= 850 mm right ± 1.4", rear["y0"])
	assert.Equal(t, "= 850 mm left ± 1.4", rear["y1"])
	pipe := notesOf(job, 1)
	assert.Equal(t, "= 480 mm right ± 1.4", pipe["p0y"], "410 in from the right edge at 890")
	assert.Equal(t, "= 275 mm from bumper ± 2.1, tape sloped 25", pipe["p0x"], "sqrt(300^2 - 120^2) = 274.955; ± that of point 1, the largest")
}

func TestSidesInEitherOrder(t *testing.T) {
	job := screentest.Van(t)
	o := job.Obstructions[0]
	o.Y[0], o.Y[1] = o.Y[1], o.Y[0]
	job.Obstructions = job.Obstructions.With(0, o)
	notes := notesOf(job, 0)
	assert.Equal(t, "= 850 mm left ± 1.4", notes["y0"])
	assert.Equal(t, "= 850 mm right ± 1.4", notes["y1"])
}

// A fitting's readings come to where they were taken, above the floor, and not to where ties carry it below.
func TestTiesDoNotMoveWhatAFittingsReadingsComeTo(t *testing.T) {
	document, err := vehicles.Load("../../testdata/cases/24-everything.toml")
	require.NoError(t, err)
	tied := screentest.Judged(desk.State{}, document.Job)
	require.True(t, tied.Plan.Fit.Tied())
	job := document.Job
	job.Ties = nil
	apart := screentest.Judged(desk.State{}, job)
	for row := range job.Fittings {
		h := Record{Fittings, row, false}
		assert.Equal(t, h.Notes(apart), h.Notes(tied))
		assert.NotEqual(t, apart.Plan.Fittings[row].Prism.Footprint.Middle, tied.Plan.Fittings[row].Prism.Footprint.Middle)
	}
}

func TestAnUnknownSlopeIsSaid(t *testing.T) {
	job := screentest.Van(t)
	o := job.Obstructions[0]
	o.Drop, o.TapedAt = vehicles.Span{}, vehicles.Number{}
	job.Obstructions = job.Obstructions.With(0, o)
	notes := notesOf(job, 0)
	assert.Contains(t, notes["x0"], "unknown amount: give the drop")
	assert.Contains(t, notes["low"], "taken to reach the ground")
}

func TestTextsThatAreNotTouchedStayAsTheFileHasThem(t *testing.T) {
	job := screentest.Van(t)
	before := job.Obstructions[0]
	after, _, err := Record{Obstructions, 0, false}.Set(desk.State{Job: job}, map[string]string{"low": "96"})
	require.NoError(t, err)
	now := after.Obstructions[0]
	assert.Equal(t, before.Place, now.Place)
	assert.Equal(t, 96.0, now.Drop.To)
}

func TestWhatIsRefused(t *testing.T) {
	s := desk.State{Job: screentest.Van(t)}
	for name, c := range map[string]struct {
		row       int
		key, text string
		says      string
	}{
		"a needed reading left blank": {0, "x0", "", "needed: near edge"},
		"edges the wrong way round":   {0, "x1", "600", "nearest to the bumper first"},
		"a side in a bumper reading":  {0, "x0", "L 240", "L and R"},
		"a tape that cannot be":       {0, "x0", "40", "apart in height"},
		"another's name":              {0, "name", "spare wheel", "another"},
		"no name":                     {0, "name", " ", "a name is needed"},
		"half a drop":                 {0, "top", "", "needed: top"},
		"a drop upside down":          {0, "low", "-5", "first comes first"},
		"no thickness":                {1, "across", "0", "more than 0"},
		"one point is no line":        {1, "p1x", "", "needed"},
		"nothing to run on from":      {0, "x0", "+10", "runs on"},
	} {
		t.Run(name, func(t *testing.T) {
			job, _, err := Record{Obstructions, c.row, false}.Set(s, map[string]string{c.key: c.text})
			require.ErrorContains(t, err, c.says)
			assert.Equal(t, s.Job, job)
		})
	}
}

// A field stands under its thing's name, so what is wrong with it says neither again, whatever the thing is called.
func TestAFieldsFaultSaysNotWhereItIs(t *testing.T) {
	for _, name := range []string{"brake line", `obstruction "a": x: `} {
		s := desk.State{Job: screentest.Van(t)}
		named := s.Job.Obstructions[0]
		named.Name = name
		s.Job.Obstructions = s.Job.Obstructions.With(0, named)
		for text, says := range map[string]string{"x0 40": "40: ", "x1 600": "x runs from "} {
			key, text, _ := strings.Cut(text, " ")
			_, _, err := Record{Obstructions, 0, false}.Set(s, map[string]string{key: text})
			require.Error(t, err)
			assert.Equal(t, says, err.Error()[:len(says)])
			assert.NotContains(t, err.Error(), name)
		}
	}
}

// What others said of a thing that was begun goes where the job keeps what is theirs, once the thing is whole.
func TestAFinishedThingLosesNothing(t *testing.T) {
	job := screentest.Van(t)
	job.Unfinished.Fittings = vehicles.List[vehicles.Begun]{{
		Texts:  map[string]string{"name": "bench", "form": "rectangle", "x0": "700", "x1": "+20", "y0": "L 100", "y1": "R 100", "top": "0"},
		Others: map[string]any{"colour": "red", "low": int64(8)},
	}}
	row := Fittings.Len(job)
	job, record, err := Record{Fittings, row, false}.Set(desk.State{Job: job}, map[string]string{"name": "bunk"})
	require.NoError(t, err)
	require.Equal(t, map[string]any{"colour": "red", "low": int64(8)}, job.Unfinished.Fittings[0].Others, "not whole yet")
	job, _, err = record.Set(desk.State{Job: job}, map[string]string{"low": "9"})
	require.NoError(t, err)
	assert.Empty(t, job.Unfinished.Fittings)
	assert.Equal(t, "bunk", job.Fittings[row].Name)
	assert.Equal(t, map[string]any{"fitting bunk": map[string]any{"colour": "red", "low": int64(8)}}, job.Extra)
}

// A matching point that nobody names is called by its number, once it has a reading; a name that is typed stays.
func TestAThingWithoutAKindIsNumbered(t *testing.T) {
	for list, want := range map[List]string{Ties: "point 1", Fittings: "fitting 1"} {
		s := screentest.State(t)
		s.Job.Ties, s.Job.Fittings = nil, nil
		s = screentest.Judged(s, s.Job)
		key := map[List]string{Ties: "bx", Fittings: "x0"}[list]
		job, record, err := New(list, s.Job).Set(s, map[string]string{key: "1500"})
		require.NoError(t, err)
		name, _ := record.(Record).Name(job)
		assert.Equal(t, want, name)
		s.Job = job
		job, record, err = New(list, s.Job).Set(s, map[string]string{key: "1600"})
		require.NoError(t, err)
		name, _ = record.(Record).Name(job)
		assert.Equal(t, strings.Replace(want, "1", "2", 1), name)
	}
}

// Where several kinds share a letter it is said how the next of them is taken.
func TestHowTheNextKindOfALetterIsTakenIsSaid(t *testing.T) {
	assert.Equal(t, "letter; again: the next", pressLetter(Obstructions.kindChoices()))
	assert.Equal(t, "press its letter", pressLetter([]form.Choice{{Letter: 'a', Name: "air line"}, {Letter: 'b', Name: "brake line"}}))
}

// Of two kinds on one letter the one that can kill comes first.
func TestTheDangerousKindOfALetterComesFirst(t *testing.T) {
	for _, list := range []List{Obstructions, Openings} {
		first := map[rune]vehicles.Peril{}
		for _, c := range list.kindChoices() {
			peril := list.kind(c.Name).Peril
			if before, seen := first[c.Letter]; seen {
				assert.LessOrEqual(t, peril, before, c.Name)
			} else {
				first[c.Letter] = peril
			}
		}
		assert.Len(t, list.kindChoices(), len(list.Kinds()))
	}
	choices := Obstructions.kindChoices()
	i := slices.IndexFunc(choices, func(c form.Choice) bool { return c.Letter == 't' })
	assert.Equal(t, "traction battery", choices[i].Name)
}
