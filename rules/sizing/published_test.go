package sizing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// What others have printed, and where nobody has printed a figure a second way of reckoning. Where no title stands with a figure it is from memory:
// it was read in print, mostly in what makers give away, and the title was not kept or is a maker's.

// From memory: guides to sealant print that a joint's section in mm2 is what it takes in ml a metre, that a cartridge of 10 fluid ounces holds 18.3 cubic
// inches, and that it fills 24 to 27 ft of a joint of 1/4 in by 1/4 in. A string as thick as that section is round as ours is.
func TestSealantAsPublished(t *testing.T) {
	const inch, foot = 25.4, 304.8
	section := inch / 4 * inch / 4 // mm2
	thick := 2 * math.Sqrt(section/math.Pi)
	assert.InDelta(t, section, BeadVolume(thick, 1000), 1e-9, "ml a metre")
	feet := 18.3 * inch * inch * inch / 1000 / BeadVolume(thick, foot)
	assert.Greater(t, feet, 24.0)
	assert.Less(t, feet, 27.0)
}

// A cylinder of 0.5 mm radius and 50 mm length holds 39.27 mm3 (Euclid, Elements, XII; the figure is printed of capillaries, from memory): the fuel
// line's volume is reckoned so.
func TestALinesVolumeAsPublished(t *testing.T) {
	assert.InDelta(t, 39.27e-3, LineVolume(1, 50), 5e-6)
}

// All from memory: M6 has a pitch of 1 (ISO 261) and a nut 5 thick (ISO 4032, rounded down), washers are 1.6 (ISO 7089), and bolts are 20, 25, ... 80, 90, 100
// long, screws from 10 on (ISO 888). A washer, the nut and two threads must go into what is taken for them, and no more than a thread may be left over.
func TestBoltsAsPublished(t *testing.T) {
	f := Usual().Floor
	const washer, nut, pitch = 1.6, 5.0, 1.0
	assert.GreaterOrEqual(t, f.Nut, washer+nut+2*pitch)
	assert.LessOrEqual(t, f.Nut, washer+nut+3*pitch)
	sold := []float64{10, 12, 16, 18, 20, 22, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 90, 100, 110, 120, 130, 140, 150}
	for _, long := range f.Bolts {
		assert.Contains(t, sold, long)
	}
	assert.True(t, slices.IsSorted(f.Bolts))
}

// Nobody prints a figure for the depth of a floor: added up here layer by layer in another way, from the underside upward, with the swages
// first as all of them and then as none.
func TestAFloorIsTheSumOfItsLayers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kinds := rapid.SliceOfN(rapid.SampledFrom([]string{vehicles.Lining, vehicles.Ply, vehicles.Insulation, vehicles.SwageLayer}), 0, 6).Draw(t, "kinds")
		layers := vehicles.List[vehicles.Layer]{}
		high := map[bool]int{} // tenths of mm over the ground of the stack, with swages and without: whole numbers add up exactly
		for _, kind := range append(kinds, vehicles.SheetMetal) {
			tenths := rapid.IntRange(5, 200).Draw(t, kind)
			layers = append(layers, vehicles.Layer{Kind: kind, Thick: float64(tenths) / 10})
			high[true] += tenths
			if kind != vehicles.SwageLayer {
				high[false] += tenths
			}
		}
		r := judged(t, standing(vehicles.OnLining, func(j *vehicles.Job) { j.Stack = layers }))
		require.InDelta(t, float64(high[true])/10, rowOf(t, r, Floor, "thickest").Value.Value, 1e-9)
		require.InDelta(t, float64(high[false])/10, rowOf(t, r, Floor, "thinnest").Value.Value, 1e-9)
		require.InDelta(t, float64(high[true])/10+5, rowOf(t, r, Floor, "collar").Value.Value, 1e-9, "5 mm below the thickest")
	})
}

// From memory: periodicals for builders print that a saw without a pilot wanders, and that a board clamped over the old hole, sawn through first, leads it. What is
// left of an old pilot hole is told here from points of it: all in the disc, some under the teeth, or all in the floor that stays.
func TestAMovedHoleByItsPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		across, pilot := rapid.Float64Range(60, 200).Draw(t, "across"), rapid.Float64Range(3, 10).Draw(t, "pilot")
		by := rapid.Float64Range(rules.GuideWithin, 150).Draw(t, "by")
		inDisc, inFloor := true, true
		const around = 720
		for i := range around {
			a := 2 * math.Pi * float64(i) / around
			from := math.Hypot(by+pilot/2*math.Cos(a), pilot/2*math.Sin(a))
			inDisc, inFloor = inDisc && from < across/2-rules.SawKerf, inFloor && from > across/2
		}
		want := "new pilot, guide board"
		switch {
		case inDisc:
			want = "new pilot"
		case inFloor:
			want = "new pilot, close the old"
		}
		cut := &vehicles.Cut{Across: across, Pilot: vehicles.Some(pilot)}
		require.Equal(t, want, rules.BesidePilot(cut, by).Takes())
	})
}

// What the regulation asks of the fan is paraphrased, and says that it is from memory; a caution of every job leaves it to the text.
func TestTheAfterRunSaysWhereItIsFrom(t *testing.T) {
	r := judged(t, nothingElse)
	row := rowOf(t, r, Electrics, "after-run")
	assert.Contains(t, row.Source.String(), "UN Regulation No. 122, annex 7, 5, from memory")
	assert.True(t, row.Instructions)
	assert.Contains(t, row.Why, "Leave its supply on until the fan stands still")
	deferred := false
	for _, c := range rules.CautionsFor(rules.FittingHeater, r) {
		deferred = deferred || c.About == "Refuelling"
		if c.About == "Refuelling" {
			assert.Contains(t, c.Say, "UN Regulation No. 122 has it: its own text decides")
		}
	}
	assert.True(t, deferred)
}

// Whoever names the regulation from memory says so, and whoever says its number does not give it a distance of its own.
func TestTheRegulationIsMarkedAsFromMemory(t *testing.T) {
	r := judged(t, nothingElse)
	for _, subject := range Of(r) {
		for _, row := range subject.Rows {
			if containsAny(row.Source.String(), "UN Regulation", "R122") {
				assert.True(t, containsAny(row.Source.String(), "from memory"), "%s: %s", row.ID, row.Source)
			}
		}
	}
	for _, limit := range allLimits(r.Book) {
		if containsAny(limit.Source, "UN Regulation", "R122") {
			assert.True(t, containsAny(limit.Source, "from memory"), "%s: %s", limit.Rule.ID, limit.Source)
			assert.True(t, containsAny(limit.Source, "no source", "without a distance"), "%s: %s", limit.Rule.ID, limit.Source)
		}
	}
}

func containsAny(text string, of ...string) bool {
	return slices.ContainsFunc(of, func(s string) bool { return strings.Contains(text, s) })
}

// allLimits are all limits of a book.
func allLimits(b *rules.Book) (all []rules.Limit) {
	for i := range rules.Groups {
		all = append(all, rules.Groups[i].Limits(b)...)
	}
	return all
}
