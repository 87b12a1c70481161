package sizing

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// A floor is typed layer by layer with a letter and figures.
func TestALayeredFloorIsTyped(t *testing.T) {
	job := vehicles.Demo()
	job.Stack, job.Mount = nil, vehicles.Mount{}
	r := screentest.New(t, New(), job, 100, 27)
	goTo(r, sizing.Floor, "thickest")
	r.Type("<enter>l3<enter>p9<enter>i10<enter>s1<enter>w8<enter>")
	assert.Equal(t, vehicles.List[vehicles.Layer]{
		{Kind: vehicles.Lining, Thick: 3}, {Kind: vehicles.Ply, Thick: 9}, {Kind: vehicles.Insulation, Thick: 10}, {Kind: vehicles.SheetMetal, Thick: 1}, {Kind: vehicles.SwageLayer, Thick: 8},
	}, r.State.Job.Stack)
	r.Type("<esc>")
	assert.Contains(t, r.View(100, 27), "at the thickest: 31 mm")
	r.Type("<enter><wipe>")
	assert.Len(t, r.State.Job.Stack, 5, "an emptied field is no layer less")
	r.Type("-")
	assert.Len(t, r.State.Job.Stack, 4)
	r.Undo()
	assert.Len(t, r.State.Job.Stack, 5)
}

func TestLayersAsTheyAreTyped(t *testing.T) {
	for text, want := range map[string]vehicles.Layer{
		"ply 12": {Kind: vehicles.Ply, Thick: 12}, "P12,birch": {Kind: vehicles.Ply, Thick: 12, Name: "birch"}, "sh 0.8": {Kind: vehicles.SheetMetal, Thick: 0.8},
		"s1": {Kind: vehicles.SheetMetal, Thick: 1}, "swage 8": {Kind: vehicles.SwageLayer, Thick: 8}, `ins 3/4"`: {Kind: vehicles.Insulation, Thick: 19.05},
	} {
		got, err := layerOf(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, got, text)
		again, err := layerOf(layerText(got))
		require.NoError(t, err)
		assert.Equal(t, want, again)
	}
	for text, why := range map[string]string{"12": "which layer?", "felt 3": "which layer?", "ply": "and how thick?", "ply 0": "more than 0", "ply -3": "", "": "and how thick?"} {
		_, err := layerOf(text)
		assert.ErrorContains(t, err, why, text)
	}
}

// A surface is begun with its name, is there once it has an area, and goes with a "-".
func TestASurfaceIsBegunAndTakenOut(t *testing.T) {
	job := vehicles.Demo()
	job.Surfaces = nil
	r := screentest.New(t, New(), job, 100, 27)
	r.Type("<home>")
	for range records(r.State) {
		if strings.Contains(r.View(100, 27), "▸ "+anotherText) {
			break
		}
		r.Type("<down>")
	}
	r.Type("<enter>walls<enter>")
	assert.Empty(t, r.State.Job.Surfaces, "no area yet")
	r.Type("14.2<enter>w")
	require.Len(t, r.State.Job.Surfaces, 1)
	assert.Empty(t, r.State.Job.Refused())
	r.Type("plywood 4, wool 40 at 0.037, air gap R 0.18, steel 1")
	assert.Equal(t, vehicles.Surface{Name: "walls", Area: 14.2, Lies: vehicles.WallSurface, Layers: []vehicles.Slab{
		{Of: "plywood", Thick: vehicles.Some(4)}, {Of: "wool", Thick: vehicles.Some(40), Lambda: vehicles.Some(0.037)},
		{Of: "air gap", R: vehicles.Some(0.18)}, {Of: "steel", Thick: vehicles.Some(1)},
	}}, r.State.Job.Surfaces[0])
	assert.Empty(t, r.State.Job.Refused())
	r.Type("<esc>")
	goTo(r, sizing.Heat, "surface walls")
	r.Type("<enter><wipe>")
	assert.Len(t, r.State.Job.Surfaces, 1)
	r.Type("-")
	assert.Empty(t, r.State.Job.Surfaces)
}

// An area that is too large is told as such.
func TestAnAreaIsWhatAJobFileTakes(t *testing.T) {
	for text, why := range map[string]string{"2e6": "must be more than 0 and at most 1000000", "0": "must be more than 0 and at most 1000000", "wide": `"wide" is no number`, "": "how large is it?"} {
		_, err := surface{}.read(map[string]string{"name": "walls", "area": text, "lies": vehicles.WallSurface}, nil)
		assert.ErrorContains(t, err, why, text)
	}
	for text, why := range map[string]string{"0 100, 2e6 50": "must be from 0 to 1000000", "0 100, 50 -1": "must be from 0 to 1000000", "0 x": `"x" is no number`} {
		_, err := fanOf(text)
		assert.ErrorContains(t, err, why, text)
	}
}

// What a layer of a surface is, is read back as it was, whatever it is called, unless that ends in the word its conductivity stands behind:
// such a text is refused, as wool at 0.04 is, which wants its thickness.
func TestSlabsAreReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var slabs []vehicles.Slab
		for range rapid.IntRange(1, 4).Draw(t, "slabs") {
			s := vehicles.Slab{Of: rapid.StringMatching(`[a-z]{1,6}( [a-z0-9]{1,4})?`).Filter(func(of string) bool { return !strings.HasSuffix(of, " at") }).Draw(t, "of"), Thick: vehicles.Some(rapid.Float64Range(0.1, 200).Draw(t, "thick"))}
			if rapid.Bool().Draw(t, "declared") {
				s.Lambda = vehicles.Some(rapid.Float64Range(0.01, 400).Draw(t, "lambda"))
			}
			slabs = append(slabs, s)
		}
		again, err := slabsOf(slabsText(slabs))
		require.NoError(t, err)
		require.Equal(t, slabs, again)
	})
	for text, why := range map[string]string{"wool": "how many mm", "40": "what is it of", "wool 0": "more than 0", "wool 4 at x": "no number", "wool at 0.04": "how many mm", "a 3,": "what is it of"} {
		_, err := slabsOf(text)
		assert.ErrorContains(t, err, why, text)
	}
}

// The tank's figures begin a tank where the line begins; the job before keeps its own.
func TestATankIsBegunWhereTheLineBegins(t *testing.T) {
	job := vehicles.Demo()
	run := *job.Fuel
	run.Supply.Tank = nil
	job = job.WithRun(vehicles.FuelRun, &run)
	before := string(job.Format())
	r := screentest.New(t, New(), job, 100, 27)
	goTo(r, sizing.Fuel, "endurance")
	r.Type("<enter>10<enter>o<esc>")
	tank := r.State.Job.Fuel.Supply.Tank
	require.NotNil(t, tank)
	assert.Equal(t, vehicles.Tank{At: [2]float64{2170, 600}, Litres: vehicles.Some(10), Filler: vehicles.TankOutside}, *tank)
	goTo(r, sizing.Fuel, "strokes")
	r.Type("<enter><wipe>30")
	assert.Equal(t, vehicles.Some(30), r.State.Job.Fuel.Pump.MlPer1000)
	assert.Equal(t, before, string(job.Format()))
}

func TestADuctIsTyped(t *testing.T) {
	r := onTopic(t, sizing.Duct, 100, 27)
	r.Type("<enter>1.5m<enter>90 45<enter>60<enter>0 140, 60 90, 100 0<esc>")
	assert.Equal(t, vehicles.Ductwork{Length: vehicles.Some(1500), Flow: vehicles.Some(60), Bends: []float64{90, 45}, Fan: vehicles.List[vehicles.FanPoint]{{Flow: 0, Pressure: 140}, {Flow: 60, Pressure: 90}, {Flow: 100, Pressure: 0}}}, r.State.Job.Ductwork)
	goTo(r, sizing.Duct, "loss")
	r.Type("<enter><down><wipe>0")
	assert.Equal(t, []float64{}, r.State.Job.Ductwork.Bends)
	r.Type("<wipe>90 181")
	assert.Contains(t, r.View(100, 27), "181")
	assert.NotContains(t, r.State.Job.Ductwork.Bends, 181.)
	for _, text := range []string{"0 100", "0 100, 50 120", "50 100, 40 80", "0, 5 3", "a b, c d", "0 100, 50 -1"} {
		_, err := fanOf(text)
		assert.Error(t, err, text)
	}
}

// What has no form here leads to where its figures are.
func TestWhatHasNoFormLeadsThere(t *testing.T) {
	r := onTopic(t, sizing.Saw, 100, 27)
	record, ok := at(r.Screen.(Screen).entry, r.State)
	require.True(t, ok)
	to, is := goes(record, r.State)
	assert.True(t, is)
	assert.Equal(t, "Place", to.Goto)
	job := vehicles.Demo()
	job.Fuel = nil
	r = screentest.New(t, New(), job, 100, 27)
	goTo(r, sizing.Fuel, "")
	record, _ = at(r.Screen.(Screen).entry, r.State)
	to, is = goes(record, r.State)
	assert.True(t, is)
	assert.Equal(t, "Runs", to.Goto)
}

// Two surfaces that somebody called alike have a form each: a result knows which surface it is of.
func TestEachOfTwoSurfacesOfOneNameOpensItsOwnForm(t *testing.T) {
	job := vehicles.Demo()
	job.Surfaces = vehicles.List[vehicles.Surface]{{Name: "walls", Area: 8}, {Name: "walls", Area: 3}}
	r := screentest.New(t, New(), job, 100, 27)
	var opened []form.Record
	for _, record := range records(r.State) {
		if to, _ := opens(record, r.State); to != nil {
			if of, is := to.(surface); is {
				opened = append(opened, of)
			}
		}
	}
	assert.Equal(t, []form.Record{surface{0}, surface{1}, surface{2}}, opened, "and one more that is begun")
}
