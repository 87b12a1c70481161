package sizing

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// extreme draws a figure that a file may hold, mostly one that nobody means.
func extreme(t *rapid.T, f vehicles.Figure) {
	v := rapid.SampledFrom([]float64{0, 1e-300, 1e-9, 0.5, 1, 12, 24, 90, 1e3, 2e4, 1e6, -90}).Draw(t, f.Key)
	if f.Takes(v) == nil && rapid.Bool().Draw(t, "set") {
		*f.At = vehicles.Some(v)
	}
}

// Whatever figures a job holds, each result is a figure that can be written, or words, or says what it lacks; and why it is so.
func TestEveryResultSaysSomething(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := judged(t, func(j *vehicles.Job) {
			figures := append(append(append(j.Electrics.Figures(), j.Body.Figures()...), j.Ductwork.Figures()...), j.Mount.Figures()...)
			for _, f := range figures {
				extreme(t, f)
			}
			j.Ductwork.Bends = []float64{180}
			j.Ductwork.Fan = vehicles.List[vehicles.FanPoint]{{Flow: 0, Pressure: 1e6}, {Flow: 1e6, Pressure: 0}}
			if rapid.Bool().Draw(t, "surface") {
				j.Surfaces = vehicles.List[vehicles.Surface]{{Name: "a", Area: 1e6, Layers: []vehicles.Slab{{Of: "steel", Thick: vehicles.Some(1e-9)}}}}
			}
			if rapid.Bool().Draw(t, "stack") {
				j.Stack, j.Mount.On = layered, vehicles.OnLining
			}
			if rapid.Bool().Draw(t, "bare") {
				j.Heater, j.Cut, j.Fuel = nil, nil, nil
			}
		})
		all := Of(r)
		data, err := JSON(all)
		require.NoError(t, err)
		require.True(t, json.Valid(data))
		for _, s := range all {
			seen := map[ID]bool{}
			for _, row := range s.Rows {
				require.False(t, seen[row.ID], "%s %s is there twice", s.Topic, row.ID)
				seen[row.ID] = true
				require.NotEmpty(t, row.Said(), "%s %s", s.Topic, row.ID)
				require.NotEmpty(t, row.Label)
				require.False(t, row.Value.Set && len(row.Lacks) > 0)
				require.True(t, len(row.Lacks) > 0 || row.Why != "" || row.Amiss != "", "%s %s", s.Topic, row.ID)
				require.Contains(t, places, row.Unit)
			}
		}
	})
}

// What comes out as no number, or beyond all, is said to be beyond reckoning.
func TestWhatIsNoNumberIsBeyondReckoning(t *testing.T) {
	var m maker
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 3} {
		m.put(Row{Value: vehicles.Some(v)}, basis{})
	}
	for _, row := range m.rows[:3] {
		assert.Equal(t, Row{Text: "beyond reckoning"}, row)
	}
	assert.Equal(t, Row{Value: vehicles.Some(3)}, m.rows[3])
}

func TestAResultAsJSON(t *testing.T) {
	r := judged(t, func(j *vehicles.Job) { j.Electrics.Fuse = vehicles.Some(15) })
	subject, _ := About(Of(r), Electrics)
	data, err := JSON([]Subject{subject})
	require.NoError(t, err)
	var out struct {
		Subjects []struct {
			Topic, Title string
			Rows         []struct {
				ID, Label, Unit, Why string
				Value                *float64
				Lacks                []string
			}
		}
	}
	require.NoError(t, json.Unmarshal(data, &out))
	require.Len(t, out.Subjects, 1)
	assert.Equal(t, "electrics", out.Subjects[0].Topic)
	fuse := out.Subjects[0].Rows[0]
	assert.Equal(t, "fuse", fuse.ID)
	assert.InDelta(t, 15, *fuse.Value, 1e-12)
	assert.Nil(t, out.Subjects[0].Rows[1].Value)
	assert.Equal(t, []string{"the cable's length from battery to heater"}, out.Subjects[0].Rows[1].Lacks)
}

func TestSizesAreRead(t *testing.T) {
	assert.NotPanics(t, func() { readSizes(sizesText) })
	assert.PanicsWithError(t, "sizes.toml: saw.speeds is not known", func() { readSizes("[saw]\nspeeds = 3") })
	for _, f := range Usual().Floor.Collars {
		assert.Positive(t, f)
	}
	for _, list := range [][]float64{Usual().Floor.Collars, Usual().Floor.Bolts, Usual().Floor.Screws, Usual().Fuses.Amperes} {
		for i := 1; i < len(list); i++ {
			assert.Greater(t, list[i], list[i-1])
		}
	}
}

func TestFiguresAsPeopleWriteThem(t *testing.T) {
	for want, row := range map[string]Row{
		"12.5 mm": {Value: vehicles.Some(12.49), Unit: MM}, "30 W": {Value: vehicles.Some(30.2), Unit: Watt}, "0 h": {Value: vehicles.Some(-0.001), Unit: Hour},
		"2": {Value: vehicles.Some(2)}, "not known": {Lacks: []string{"a"}}, "none": {Text: "none"}, "5 mm, across": {Value: vehicles.Some(5), Unit: MM, Text: "across"},
	} {
		assert.Equal(t, want, row.Said())
	}
	assert.False(t, strings.Contains(survey.FigureTo(100, 0), "."))
	assert.Equal(t, "100", survey.FigureTo(100, 0))
}

// A van of the library is nobody's: what is reckoned of its floor and body says so till the floor is measured.
func TestALibraryVanIsNotMeasured(t *testing.T) {
	job, ok := vehicles.FromLibrary("crew-van")
	require.True(t, ok)
	const begun = "the van as the job was begun with: its floor is not measured yet"
	for _, measured := range []bool{false, true} {
		if measured {
			for _, key := range job.Guesses {
				job = job.WithoutGuess(key)
			}
		}
		r, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		assert.Equal(t, !measured, slices.Contains(rowOf(t, &r, Floor, "collar").Taken, begun))
		assert.Equal(t, !measured, slices.Contains(rowOf(t, &r, Heat, "loss").Taken, begun))
		assert.Empty(t, rowOf(t, &r, Floor, "thickest").Amiss, "its layers are as thick as its floor")
		assert.True(t, rowOf(t, &r, Duct, "flow").Value.Set)
	}
}

// The sample van has all that is wanted: everything shows.
func TestTheSampleVanLacksNothing(t *testing.T) {
	r, faults := rules.Judge(vehicles.Demo(), rules.Builtin())
	require.Empty(t, faults)
	for _, s := range Of(&r) {
		for _, row := range s.Rows {
			assert.Empty(t, row.Lacks, "%s %s", s.Topic, row.ID)
			assert.Empty(t, row.Amiss, "%s %s", s.Topic, row.ID)
		}
	}
}

// Before any job was judged there is no book, and a workshop's own may lack a rule: what rests on it says so.
func TestWithoutABookWhatRestsOnItIsMissing(t *testing.T) {
	for _, s := range Of(&rules.Result{}) {
		assert.NotEmpty(t, s.Rows, s.Topic)
	}
	r := *judged(t, standing(vehicles.OnLining, nothingElse))
	for _, book := range []*rules.Book{nil, {}} {
		r.Book = book
		assert.Equal(t, []string{"what the rule stack.turret asks"}, rowOf(t, &r, Floor, "collar").Lacks)
		assert.Equal(t, []string{"what the rule stub.timber asks"}, rowOf(t, &r, Floor, "cut-back").Lacks)
	}
}
