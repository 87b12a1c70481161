package canvas

import (
	"strings"
	"testing"

	"github.com/charmbracelet/x/vt"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

// With sixteen colours what is solid is a face, on the terminal's own ground; whatever is written there can be read as xterm shows them.
func TestSixteenColoursHaveFaces(t *testing.T) {
	c := Paint(van(scene.Below), 100, 27, facesLook)
	term := vt.NewEmulator(100, 27)
	_, err := term.WriteString(strings.ReplaceAll(c.Encode(desk.Colours16, looks.Dark), "\n", "\r\n"))
	require.NoError(t, err)
	solid, bare := 0, 0
	for row := range c.Rows {
		for col := range c.Cols {
			cell, shown := c.At(c.Left+col, c.Top+row), term.CellAt(c.Left+col, c.Top+row)
			switch {
			case cell.Ground.Role == scene.Floor && cell.Rune == ' ':
				bare++
				assert.Nil(t, shown.Style.Bg)
			case cell.Ground.Set && cell.Ground.Role != scene.Floor && cell.Ink.Tone == Faint:
				solid++
				assert.NotNil(t, shown.Style.Bg, "%v", cell.Ground)
			}
		}
	}
	assert.Greater(t, solid, 50)
	assert.Greater(t, bare, 50)
}

func TestWordsCanBeReadOnSixteenColours(t *testing.T) {
	for l := range looks.Look(looks.Count) {
		if !l.FacesOfSixteen() {
			continue
		}
		table := l.InSixteen()
		for role := range scene.Roles {
			if !faced(scene.Role(role)) || scene.Role(role) == scene.Floor {
				continue
			}
			for _, ground := range []Ground{{}, {Unsure: true}, {Selected: true}, {Foul: true}} {
				ground.Role, ground.Set = scene.Role(role), true
				for of := range scene.Roles {
					for _, state := range []scene.State{scene.Plain, scene.Foul, scene.Doubtful} {
						ink, under := ofSixteen(Cell{Ink: Ink{Role: scene.Role(of), State: state, Tone: Word}, Ground: ground}, table)
						if under != table.Paper.Of {
							assert.GreaterOrEqual(t, looks.Contrast(looks.OfSixteen(ink), looks.OfSixteen(under)), looks.Readable, "%s: %v on %v", l, of, ground)
						}
					}
				}
			}
		}
	}
}

// Sixteen colours have two greens and three degrees of room: each looks like no other, on the plan and in what explains it.
func TestRoomIsToldApartWithSixteenColours(t *testing.T) {
	for l := range looks.Look(looks.Count) {
		c := Bare(6, 1, desk.Colours16.Faces(l))
		c.few = true
		seen := map[string]scene.Grade{}
		for _, grade := range []scene.Grade{scene.Unknown, scene.LittleRoom, scene.FairRoom, scene.MuchRoom} {
			c.Shades(0, 0, 2, grade)
			shown := ""
			for i := range 2 {
				cell := c.At(i, 0)
				shown += string(cell.Rune) + sgr(dressOf(cell, c.faces), desk.Colours16, l.InSixteen())
			}
			other, there := seen[shown]
			assert.False(t, there, "%s: %d looks like %d", l, grade, other)
			seen[shown] = grade
		}
	}
}
