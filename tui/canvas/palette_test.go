package canvas

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/looks"
)

// With sixteen colours, too, what is foul, doubtful, good, picked out or the heater's exhaust has a colour of its own; at night,
// where there are no more than four inks, the verdicts have.
func TestTheVerdictsHaveColoursOfTheirOwnAmongSixteen(t *testing.T) {
	own := map[looks.Mark]string{looks.Foul: "foul", looks.Doubtful: "doubtful", looks.Room: "good", looks.Picked: "picked out", looks.Exhaust: "heater's exhaust"}
	for l := range looks.Count {
		table := looks.Look(l).Table().Marks
		for m, name := range own {
			for i, o := range marks {
				if _, mine := own[o]; !mine && looks.Look(l) != looks.Night {
					assert.NotEqual(t, table[m].Of, table[o].Of, "%s: %s and role %d", looks.Look(l), name, i)
				}
			}
			for o, other := range own {
				verdicts := m <= looks.Room && o <= looks.Room
				if o != m && (verdicts || looks.Look(l) != looks.Night) {
					assert.NotEqual(t, table[m].Of, table[o].Of, "%s: %s and %s", looks.Look(l), name, other)
				}
			}
		}
	}
}

// Nothing on a plan is told by its colour alone: a role's pattern, line, sign or name says it too, in the legend as on the plan, and how it stands is a
// sign behind its name.
func TestNoRoleIsToldByColourAlone(t *testing.T) {
	for i := range scene.Roles {
		role := scene.Role(i)
		pen := role.Pen()
		assert.NotZero(t, pen.Told, "role %d", role)
		if pen.Told == scene.ByFill && pen.Fill != scene.Filled {
			assert.NotNil(t, fills[pen.Fill], "role %d: no pattern", role)
			c := Canvas{Width: 3, Height: 1, Cells: make([]Cell, 3), faces: true}
			c.Patch(0, 0, 3, role)
			assert.NotEqual(t, "   ", c.lines()[0], "role %d: a face has its pattern too", role)
		}
	}
	for state, want := range map[scene.State]string{scene.Foul: "!", scene.Doubtful: "?"} {
		it := scene.Item{State: state}
		assert.Equal(t, want, it.Warning())
	}
}

// What is half one thing and half another has, with 256 colours, the one nearest to what true colour mixes: two of the 256 mixed would be of a hue that
// says neither.
func TestMixedFacesOf256AreThoseOfTrueColour(t *testing.T) {
	for l := range looks.Count {
		look := looks.Look(l)
		for _, role := range []scene.Role{scene.Steel, scene.Rail, scene.Lines, scene.Hot, scene.Movable} {
			for _, g := range []Ground{{Role: role, Set: true, Foul: true}, {Role: role, Set: true, Unsure: true}} {
				want, _ := tintIn(g, look.Table())
				got, _ := tintIn(g, look.InCube())
				assert.Equal(t, looks.Nearest(want), looks.Nearest(got), "%s: %+v", look, g)
			}
		}
	}
}

// A name keeps the colour of what it names, deeper where it could not be read otherwise: it never has the cut's, which is the brightest there is.
func TestNoNameHasTheColourOfTheCut(t *testing.T) {
	for l := range looks.Look(looks.Count) {
		for _, table := range []*looks.Table{l.Table(), l.InCube()} {
			cut, ground := colours(Cell{Ink: Ink{Role: scene.Cut, Tone: Bold}, Ground: Ground{Role: scene.Floor, Set: true}}, table)
			for _, role := range []scene.Role{scene.Exhaust, scene.Outlet, scene.Intake, scene.Mouth, scene.Hot, scene.Lines, scene.Opening, scene.Movable} {
				ink, _ := colours(Cell{Ink: Ink{Role: role, Tone: Bold}, Ground: Ground{Role: scene.Floor, Set: true}}, table)
				assert.NotEqual(t, looks.Nearest(cut), looks.Nearest(ink), "%s: role %d", l, role)
				assert.GreaterOrEqual(t, looks.Contrast(ink, ground), float64(looks.Readable), "%s: role %d", l, role)
			}
		}
	}
}
