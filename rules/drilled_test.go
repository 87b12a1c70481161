package rules

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// Five rounds about a pilot hole that the readings do not explain, 600 mm from it: ahead, 29 and 31 degrees from there, square to
// it, and right behind. Each is taped or not, and its tape agrees or is 30 mm off: all 243 ways by hand. Two that agree and lie 30
// degrees or more across one another fix the hole; till then nothing that rests on it is clear, and what a tape denies is not
// either way.
func TestEveryWayOfTapingFromAHoleThatNothingExplains(t *testing.T) {
	degrees := []float64{0, 29, 31, 90, 180}
	across := map[[2]int]bool{ // by hand; in the order of the list
		{0, 2}: true, {0, 3}: true, {1, 3}: true, {2, 3}: true, {3, 4}: true, // 31, 90, 61, 59, 90
		{2, 4}: true, // 149: 31 short of straight on; the 29 of {1, 4} are too few, as the 29 of {0, 1} and the 2 of {1, 2}
	}
	var things []vehicles.Obstruction
	for i, d := range degrees {
		p := geometry.Point{X: 600}.Turn(d).Add(geometry.Point{X: 1000})
		things = append(things, vehicles.Obstruction{
			Name: string(rune('A' + i)), Kind: "brake line", Measured: true, Drop: vehicles.Span{To: 60, Set: true},
			Place: vehicles.Place{Shape: vehicles.Disc, Centre: vehicles.Pair{at(p.X), at(p.Y)}, Across: vehicles.Some(40)},
		})
	}
	job := offHole(things...)
	const ways = 3 * 3 * 3 * 3 * 3
	for way := range ways {
		taped := job
		var agree, differ []int
		for i, rest := 0, way; i < len(things); i, rest = i+1, rest/3 {
			switch rest % 3 {
			case 1:
				taped = withTape(taped, things[i].Name, 580)
				agree = append(agree, i)
			case 2:
				taped = withTape(taped, things[i].Name, 610)
				differ = append(differ, i)
			}
		}
		fixed := false
		for i, one := range agree {
			for _, other := range agree[i+1:] {
				fixed = fixed || across[[2]int{one, other}]
			}
		}
		result, faults := Judge(taped, Builtin())
		require.Empty(t, faults)
		require.Equal(t, !fixed, result.Hole.Held, "agree %v, differ %v", agree, differ)
		require.Len(t, result.Hole.Tapes, len(agree)+len(differ))
		denied := map[int]bool{}
		for _, i := range differ {
			denied[i] = true
		}
		for _, tape := range result.Hole.Tapes {
			require.Equal(t, !denied[tape.To], tape.Verdict == Clear)
			require.InDelta(t, 580, tape.Is, 1e-9)
			require.InDelta(t, 0, tape.Way.Sub(geometry.Point{X: 1}.Turn(degrees[tape.To])).Norm(), 1e-9)
		}
		for i := range result.Findings {
			f := &result.Findings[i]
			switch {
			case f.ID() == "pilot.place":
				assert.NotEqual(t, Clear, f.Verdict, "the readings explain it no better for that")
			case f.ID() == "cut.clearance":
				require.Equal(t, fixed && !denied[int(f.Against.Index)], f.Verdict == Clear, "%s: agree %v, differ %v", f.Against, agree, differ)
			}
		}
	}
}

// A tape to what the hole lies in has no way, and fixes nothing with another.
func TestATapeOfNoLengthHasNoWay(t *testing.T) {
	pan := vehicles.Obstruction{
		Name: "pan", Kind: "plastic part", Measured: true, Drop: vehicles.Span{To: 60, Set: true},
		Place: vehicles.Place{Shape: vehicles.Disc, Centre: vehicles.Pair{at(1000), at(0)}, Across: vehicles.Some(40)},
	}
	rail := pan
	rail.Name, rail.Kind, rail.Centre = "rail", "chassis rail", vehicles.Pair{at(1000), at(600)}
	job := withTape(withTape(offHole(pan, rail), "pan", 0), "rail", 580)
	result, faults := Judge(job, Builtin())
	require.Empty(t, faults)
	assert.True(t, result.Hole.Held)
	require.Len(t, result.Hole.Tapes, 2)
	assert.Zero(t, result.Hole.Tapes[0].Is)
	assert.Equal(t, geometry.Point{}, result.Hole.Tapes[0].Way)
	assert.Equal(t, Clear, result.Hole.Tapes[0].Verdict, "it reads what it should")
}
