package canvas

import (
	"fmt"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

// marks are what the ink of each role says. A state's mark goes before a role's; words and broken lines carry the same meaning
// without any.
var marks = [scene.Roles]looks.Mark{
	scene.Floor: looks.Frame, scene.Steel: looks.Steel, scene.Lines: looks.Lines, scene.Hot: looks.Hot, scene.Pressed: looks.SheetMetal, scene.Movable: looks.Moves,
	scene.Fitting: looks.Fitting, scene.Opening: looks.Opening, scene.Plate: looks.Cut, scene.Body: looks.Frame, scene.Space: looks.Wheels,
	scene.Cut: looks.Cut, scene.Hole: looks.Cut, scene.CutCentre: looks.Cut, scene.Pilot: looks.Cut, scene.Exhaust: looks.Exhaust, scene.Intake: looks.Intake,
	scene.Fuel: looks.Fuel, scene.Outlet: looks.Exhaust, scene.Mouth: looks.Intake, scene.Muffler: looks.Exhaust, scene.Tie: looks.Tie,
	scene.Dimension: looks.Cut, scene.Mark: looks.Cut, scene.Wheel: looks.Wheels, scene.Wish: looks.Room,
	scene.Rail: looks.Rail, scene.Rib: looks.SheetMetal, scene.Bumper: looks.Frame, scene.Nose: looks.Frame, scene.Conflict: looks.Foul,
}

// inkIn is an ink's colour in a look.
func inkIn(k Ink, t *looks.Table) looks.Colour {
	switch {
	case k.Face.Set:
		tint, _ := tintIn(k.Face, t)
		return looks.Colour{RGB: tint}
	case k.Grade != scene.Unknown:
		return t.Rooms[k.Grade]
	}
	return t.Marks[markOf(k)]
}

func markOf(k Ink) looks.Mark {
	switch {
	case k.State == scene.Foul:
		return looks.Foul
	case k.State == scene.Doubtful:
		return looks.Doubtful
	case k.Role == scene.Dimension && k.State == scene.Clear:
		return looks.Room
	case k.Selected:
		return looks.Picked
	case k.Role == scene.Floor && k.Tone == Faint:
		return looks.Grid
	}
	return marks[k.Role]
}

// tints are the faces of what is solid, in true colour.
var tints = [scene.Roles]looks.Face{
	scene.Floor: looks.FloorFace, scene.Steel: looks.SteelFace, scene.Rail: looks.RailFace, scene.Lines: looks.LinesFace, scene.Hot: looks.HotFace,
	scene.Movable: looks.MovesFace, scene.Nose: looks.NoseFace, scene.Bumper: looks.BumperFace, scene.Exhaust: looks.ExhaustFace,
	scene.Muffler: looks.MufflerFace, scene.Intake: looks.IntakeFace, scene.Fuel: looks.FuelFace, scene.Conflict: looks.FoulFace,
}

// grounds are the faces of shaded floor: only where the cut may be, and farther from the bare floor the more room there is.
var grounds = [scene.Grades]looks.Face{
	scene.LittleRoom: looks.LittleRoomFace, scene.FairRoom: looks.FairRoomFace, scene.MuchRoom: looks.MuchRoomFace,
}

// tintIn is what lies behind a cell in true colour. What was not measured is half as strong as what was.
func tintIn(g Ground, t *looks.Table) (tint int, ok bool) {
	switch {
	case !g.Set:
		return 0, false
	case g.Grade != scene.Unknown:
		face := grounds[g.Grade]
		return t.Faces[face], face != looks.NoFace
	case g.Selected:
		return t.Faces[looks.PickedFace], true
	}
	face, faces := tints[g.Role], &t.Faces
	if t.Mixed != nil && (g.Unsure || g.Foul) {
		faces = t.Mixed
	}
	if tint = faces[face]; g.Unsure {
		tint = between(tint, faces[looks.FloorFace])
	}
	if g.Foul {
		tint = between(tint, faces[looks.FoulFace])
	}
	return tint, face != looks.NoFace
}

// between is the colour midway between two.
func between(a, b int) int { return a&0xFEFEFE>>1 + b&0xFEFEFE>>1 }

// tableOf is the table of a look for the terminal's colours.
func tableOf(l looks.Look, colour desk.Colour) *looks.Table {
	switch colour {
	case desk.Colours256:
		return l.InCube()
	case desk.Colours16:
		return l.InSixteen()
	}
	return l.Table()
}

// sgr returns the escape sequence that puts a dress on from nothing, without its end: "\x1b[0" and parameters.
func sgr(d dress, colour desk.Colour, t *looks.Table) string {
	s, c := "\x1b[0", Cell{Ink: d.ink, Ground: d.ground}
	if c.Ink.Tone == Bold || c.Ink.Tone == Inverse {
		s += ";1"
	}
	if c.Ink.Tone == Inverse {
		s += ";7"
	}
	if c.Ink.Selected && c.Ink.Tone != Normal {
		s += ";4"
	}
	switch colour {
	case desk.Colours16:
		s += inSixteen(c, t)
	case desk.Colours256:
		ink, ground := colours(c, t)
		s += ";" + desk.OfCube(looks.Nearest(ink), desk.Fore)
		if _, ok := tintIn(c.Ground, t); ok && c.Ink.Tone != Inverse {
			s += ";" + desk.OfCube(looks.Nearest(ground), desk.Back)
		}
	case desk.TrueColour:
		ink, ground := colours(c, t)
		s += rgb(38, ink)
		if _, ok := tintIn(c.Ground, t); ok && c.Ink.Tone != Inverse {
			s += rgb(48, ground)
		}
	}
	return s
}

// inSixteen returns the parameters of a cell among sixteen colours. The floor's is the terminal's own ground, in front of a face too.
func inSixteen(c Cell, t *looks.Table) string {
	ink, ground := ofSixteen(c, t)
	fore, back := desk.Sixteen(looks.Colour{Of: ink}, desk.Fore), desk.Sixteen(looks.Colour{Of: ground}, desk.Back)
	switch {
	case ground == t.Paper.Of:
		return ";" + fore
	case c.Ink.Face.Set && ink == t.Paper.Of:
		return ";7;" + desk.Sixteen(looks.Colour{Of: ground}, desk.Fore)
	}
	return ";" + fore + ";" + back
}

// ofSixteen are the ink and the ground of a cell among sixteen colours. What is between two of them is neither: ink that would not be seen on its ground is
// the one of black and white that is.
func ofSixteen(c Cell, t *looks.Table) (ink, ground uint8) {
	over, under := colours(c, t)
	ground = looks.NearestOfSixteen(under)
	if under = looks.OfSixteen(ground); under == t.Paper.RGB {
		return ofPaper(c, t), t.Paper.Of
	}
	least := lineContrast
	if c.Ink.Tone == Bold || c.Ink.Tone == Word {
		least = looks.Readable
	}
	if ink = looks.NearestOfSixteen(over); !c.Ink.Face.Set && (c.Ink.Role != scene.Cut || c.Ink.Tone == Word) && looks.Contrast(looks.OfSixteen(ink), under) < least {
		ink = looks.NearestOfSixteen(t.Farther(under))
	}
	return ink, ground
}

// ofPaper is a cell's ink on the paper: the table's own number, whatever the terminal's colours are.
func ofPaper(c Cell, t *looks.Table) uint8 {
	if c.Ink.Face.Set {
		tint, _ := tintIn(c.Ink.Face, t)
		return looks.NearestOfSixteen(tint)
	}
	of := inkIn(c.Ink, t).Of
	if word := c.Ink.Tone == Bold || c.Ink.Tone == Word; word && looks.Contrast(looks.OfSixteen(of), looks.OfSixteen(t.Paper.Of)) < looks.Visible {
		return t.Ink.Of // no word is told by its colour alone
	}
	return of
}

// rgb returns the parameters of a true colour.
func rgb(plane, colour int) string {
	return fmt.Sprintf(";%d;2;%d;%d;%d", plane, colour>>16&255, colour>>8&255, colour&255)
}
