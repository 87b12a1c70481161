package sizing

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// layered is the floor of a usual van: 3 of lining, 9 of ply, 10 of insulation, 1 of sheet with swages 8 deep: 31 thick, 23 thin.
var layered = vehicles.List[vehicles.Layer]{
	{Kind: vehicles.Lining, Thick: 3}, {Kind: vehicles.Ply, Thick: 9}, {Kind: vehicles.Insulation, Thick: 10}, {Kind: vehicles.SheetMetal, Thick: 1}, {Kind: vehicles.SwageLayer, Thick: 8},
}

// standing is the sample van with that floor and a heater on it.
func standing(on string, edit func(j *vehicles.Job)) func(j *vehicles.Job) {
	return func(j *vehicles.Job) {
		j.Stack, j.Mount = layered, vehicles.Mount{On: on, Plate: vehicles.Some(1.5), Bead: vehicles.Some(6)}
		edit(j)
	}
}

func nothingElse(*vehicles.Job) {}

// On the lining: 31 + 5 below is 36, the collar of 45 does. A screw through plate and 23 is at most 22.5 long: 22. A bolt takes
// 1.5 + 31 + 9: 45.
func TestAFloorByHand(t *testing.T) {
	r := judged(t, standing(vehicles.OnLining, nothingElse))
	for id, want := range map[string]string{
		"thickest": "31 mm", "thinnest": "23 mm", "collar": "36 mm", "collar-has": "45 mm, enough", "screw": "22 mm", "bolt": "45 mm", "soft": "10 mm",
	} {
		assert.Equal(t, want, rowOf(t, r, Floor, id).Said(), id)
	}
	assert.Empty(t, rowOf(t, r, Floor, "thickest").Amiss, "as thick as it was measured")
	assert.NotEmpty(t, rowOf(t, r, Floor, "soft").Amiss)
	assert.Empty(t, rowOf(t, r, Floor, "bolt").Taken)
}

// On the steel 9 of sheet and swage are left: 14 do, no screw is short enough for 1 of sheet, a bolt takes 1.5 + 9 + 9: 20.
func TestAHeaterOnTheSteelByHand(t *testing.T) {
	r := judged(t, standing(vehicles.OnSteel, nothingElse))
	for id, want := range map[string]string{"collar": "14 mm", "collar-has": "45 mm, enough", "screw": "none: bolt it", "bolt": "20 mm"} {
		assert.Equal(t, want, rowOf(t, r, Floor, id).Said(), id)
	}
	subject, _ := About(Of(r), Floor)
	for _, row := range subject.Rows {
		assert.NotEqual(t, Gives, row.ID, "it is cut away")
	}
}

func TestACollarThatIsTooShort(t *testing.T) {
	short := func(j *vehicles.Job) {
		h := *j.Heater
		h.Turret, h.Given = vehicles.Some(30), h.Given|vehicles.HasTurret
		*j = j.WithHeater(h)
	}
	row := rowOf(t, judged(t, standing(vehicles.OnLining, short)), Floor, "collar-has")
	assert.Equal(t, "30 mm, too short", row.Said())
	assert.Equal(t, "it is 6 mm too short", row.Amiss)
	assert.Contains(t, row.Why, "Order one of 45 mm")
	assert.Contains(t, row.Why, "cut lining, ply and insulation back under the whole plate, all 22 mm")
	row = rowOf(t, judged(t, standing(vehicles.OnSteel, short)), Floor, "collar-has")
	assert.Empty(t, row.Amiss, "14 are asked for")
	row = rowOf(t, judged(t, standing(vehicles.OnLining, func(j *vehicles.Job) {
		short(j)
		j.Stack = append(j.Stack[:len(j.Stack):len(j.Stack)], vehicles.Layer{Kind: vehicles.Ply, Thick: 70})
	})), Floor, "collar-has")
	assert.Contains(t, row.Why, "No usual collar is so deep: have one of 106 mm made")
}

func TestLayersThatAreNotTheThicknessMeasured(t *testing.T) {
	r := judged(t, standing(vehicles.OnLining, func(j *vehicles.Job) { j.Stack = j.Stack[1:] }))
	assert.Contains(t, rowOf(t, r, Floor, "thickest").Amiss, "31 mm thick")
}

// Plate 190 by 150 has an edge of 680, the hole of 127 one of 398.98: 1079 mm of a bead of 6 are 30.5 ml.
func TestSealantByHand(t *testing.T) {
	r := judged(t, nothingElse)
	row := rowOf(t, r, Floor, "sealant")
	assert.Equal(t, "30.5 ml", row.Said())
	assert.InDelta(t, math.Pi*9*(680+math.Pi*127)/1000, row.Value.Value, 1e-9)
	assert.Equal(t, []string{"a bead of 6 mm"}, row.Taken)
	assert.Equal(t, "1", rowOf(t, r, Floor, "cartridges").Said())
	r = judged(t, func(j *vehicles.Job) { j.Mount.Bead = vehicles.Some(20) })
	assert.Equal(t, "2", rowOf(t, r, Floor, "cartridges").Said(), "339 ml")
}

// The stub lies 35 and 25 off the centre, 43.01; half of a pipe of 26 and 30 more are 86.01, twice that 172.02: cut back to 173.
func TestHowFarWoodIsCutBackByHand(t *testing.T) {
	r := judged(t, standing(vehicles.OnSteel, nothingElse))
	row := rowOf(t, r, Floor, "cut-back")
	assert.Equal(t, "173 mm, across", row.Said())
	assert.Empty(t, row.Amiss)
	r = judged(t, standing(vehicles.OnSteel, func(j *vehicles.Job) {
		cut := *j.Cut
		cut.Relieved = vehicles.Some(170)
		j.Cut = &cut
	}))
	assert.Equal(t, "Place has it cut back to 170 mm", rowOf(t, r, Floor, "cut-back").Amiss)
	r = judged(t, standing(vehicles.OnSteel, func(j *vehicles.Job) {
		cut := *j.Cut
		cut.Relieved = vehicles.Some(173)
		j.Cut, j.Floor.Layers = &cut, vehicles.Wood
	}))
	assert.Empty(t, rowOf(t, r, Floor, "cut-back").Amiss)
	i := slices.IndexFunc(r.Findings, func(f rules.Finding) bool { return f.ID() == "stub.timber" })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, rules.Clear, r.Findings[i].Verdict, "whoever cuts as far back as is said is clear")
}

// A layer more is never less to reach through; a screw never comes out, and a bolt always takes its nut.
func TestScrewsStayInsideAndBoltsReach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var layers vehicles.List[vehicles.Layer]
		for range rapid.IntRange(1, 5).Draw(t, "layers") {
			layers = append(layers, vehicles.Layer{Kind: rapid.SampledFrom(vehicles.LayerKinds).Draw(t, "kind"), Thick: rapid.Float64Range(0.5, 20).Draw(t, "thick")})
		}
		for _, metal := range []bool{false, true} {
			thick, thin := StackOf(layers, metal)
			less, _ := StackOf(layers[1:], metal)
			require.GreaterOrEqual(t, thick, less)
			require.GreaterOrEqual(t, thick, thin)
		}
		on := rapid.SampledFrom(vehicles.MountsOn).Draw(t, "on")
		r := judged(t, func(j *vehicles.Job) { j.Stack, j.Mount.On = layers, on })
		thick, thin := StackOf(layers, on == vehicles.OnSteel)
		if screw := rowOf(t, r, Floor, "screw"); screw.Value.Set {
			assert.Equal(t, "longest tapping screw, no nut", screw.Label, "the heater's own bolts are longer, and have one")
			require.LessOrEqual(t, screw.Value.Value, thin+Usual().Floor.Plate-Usual().Floor.Spare)
		}
		if bolt := rowOf(t, r, Floor, "bolt"); bolt.Value.Set {
			require.GreaterOrEqual(t, bolt.Value.Value, thick+Usual().Floor.Plate+Usual().Floor.Nut)
		}
	})
}

// A timber deck has no sheet to stand on: nothing is reckoned as if it were no thicker than nothing.
func TestAHeaterOnSteelThatIsNotThere(t *testing.T) {
	r := judged(t, standing(vehicles.OnSteel, func(j *vehicles.Job) { j.Stack = j.Stack[:3] }))
	for _, id := range []string{"collar", "collar-has", "screw", "bolt"} {
		assert.Equal(t, []string{"the steel that it stands on: no layer is of sheet"}, rowOf(t, r, Floor, id).Lacks, id)
	}
	assert.Equal(t, "22 mm", rowOf(t, r, Floor, "thickest").Said())
}

// What the layers say of the floor nobody has to say again: a sheet makes a deck of steel, here and for the saw; ply in them burns, and what
// is then still open is how wide it is cut back. Layers of metal alone leave nothing open.
func TestTheLayersAnswerForTheFloor(t *testing.T) {
	open := func(layers ...vehicles.Layer) (unanswered []string, saw Row) {
		job := vehicles.Demo()
		job.Stack = layers
		r, faults := rules.Judge(job, rules.Builtin())
		require.Empty(t, faults)
		row, ok := Find(&r, SawTurns)
		require.True(t, ok)
		return r.Unanswered, row
	}
	sheet, ply := vehicles.Layer{Kind: vehicles.SheetMetal, Thick: 1}, vehicles.Layer{Kind: vehicles.Ply, Thick: 9}
	const deck, burns, back = "deck: steel or timber", "wood, foam or lining on the deck", "how wide wood is cut back at the hole"
	for name, c := range map[string]struct {
		layers []vehicles.Layer
		asked  []string
		taken  bool
	}{
		"nothing said":  {nil, []string{deck, burns}, true},
		"ply on sheet":  {[]vehicles.Layer{ply, sheet}, []string{back}, false},
		"sheet alone":   {[]vehicles.Layer{sheet}, nil, false},
		"ply by itself": {[]vehicles.Layer{ply}, []string{deck, back}, true},
	} {
		unanswered, saw := open(c.layers...)
		for _, item := range []string{deck, burns, back} {
			assert.Equal(t, slices.Contains(c.asked, item), slices.Contains(unanswered, item), "%s: %s", name, item)
		}
		assert.Equal(t, c.taken, len(saw.Taken) > 0, name)
	}
}
