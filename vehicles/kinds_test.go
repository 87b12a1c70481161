package vehicles

import (
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
)

// Each kind is told from the others of its table by name and, under the floor, by its letters on the plan. What is met most
// has a key to itself, no key stands for more than two.
func TestEveryKindHasANameAKeyAndLettersOfItsOwn(t *testing.T) {
	for _, table := range [][]Kind{obstructionKinds, openingKinds} {
		names, keys, codes := map[string]bool{}, map[rune]int{}, map[string]bool{"": true}
		for _, k := range table {
			assert.NotEmpty(t, k.Name)
			assert.False(t, names[k.Name], "%s is there twice", k.Name)
			assert.NotZero(t, k.Letter, k.Name)
			keys[k.Letter]++
			assert.LessOrEqual(t, keys[k.Letter], 2, k.Name)
			names[k.Name] = true
		}
		assert.Equal(t, "other", table[len(table)-1].Name, "what is unknown is taken for the last")
		if table[0].Code == "" {
			continue // openings have no letters on the plan
		}
		for _, k := range table {
			assert.False(t, codes[k.Code], "%s has the letters of another kind, or none", k.Name)
			assert.LessOrEqual(t, utf8.RuneCountInString(k.Code), 2, k.Name)
			assert.Contains(t, []scene.Role{scene.Steel, scene.Rail, scene.Rib, scene.Lines, scene.Hot, scene.Pressed, scene.Movable}, k.Role, k.Name)
			codes[k.Code] = true
		}
	}
	for _, name := range []string{
		"crossmember", "chassis rail", "floor rib", "swage", "brake line", "fuel line", "fuel tank", "wiring", "vehicle exhaust", "spare wheel",
	} {
		for _, k := range obstructionKinds {
			assert.False(t, k.Name != name && k.Letter == KindOf(name).Letter, "%s has the key of %s", k.Name, name)
		}
	}
	assert.Equal(t, "other", KindOf("a thing nobody knows").Name)
	assert.Equal(t, "door", OpeningKindOf("door").Name)
}

func TestNoNameStandsForKindsOfTwoForms(t *testing.T) {
	for _, k := range openingKinds {
		if o := KindOf(k.Name); o.Name == k.Name {
			assert.Equal(t, o.Shape, k.Shape, k.Name)
		}
		assert.Equal(t, k.Shape, UsualShape(k.Name))
	}
	assert.Equal(t, Disc, UsualShape("spare wheel"))
	assert.Equal(t, Box, UsualShape(""))
}

// How to look for a kind fits a line of the narrowest screen, in two where the list is beside the plan.
func TestEveryKindSaysHowToLookForIt(t *testing.T) {
	for _, table := range [][]Kind{obstructionKinds, openingKinds} {
		for _, k := range table {
			assert.NotEmpty(t, k.Asks, k.Name)
			assert.LessOrEqual(t, len([]rune(k.Asks)), 60, k.Name)
		}
	}
}

// What may kill, as the contract lists it, and the wire without which the brakes fail.
func TestWhatMayKill(t *testing.T) {
	perils := map[string]Peril{
		"brake line": Deadly, "fuel line": Deadly, "fuel tank": Deadly, "gas tank": Deadly, "gas pipe": Deadly, "air line": Deadly,
		"wheel-sensor wire": Deadly, "high-voltage cable": HighVoltage, "traction battery": HighVoltage,
	}
	for i, name := range Kinds {
		assert.Equal(t, perils[name], PerilOf(name), name)
		assert.Equal(t, i, KindIndex(name))
	}
	assert.Equal(t, Usual, PerilOf("a thing nobody knows"))
	assert.Equal(t, len(Kinds), KindIndex("a thing nobody knows"), "behind all of them")
}

// People find their way by what carries the van and by what is hot, and must know of whatever may kill; of nothing else.
func TestWhatPeopleFindTheirWayBy(t *testing.T) {
	var landmarks []string
	for _, k := range obstructionKinds {
		if k.Landmark() {
			landmarks = append(landmarks, k.Name)
		}
	}
	assert.ElementsMatch(t, []string{
		"crossmember", "chassis rail", "vehicle exhaust", "brake line", "fuel line", "fuel tank", "gas tank", "gas pipe", "air line", "wheel-sensor wire",
		"high-voltage cable", "traction battery",
	}, landmarks)
}
