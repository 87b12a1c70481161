package canvas

import (
	"fmt"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
)

// hue is a colour on a dark and on a light background: of true colour 0xRRGGBB and of the sixteen an index.
type hue struct {
	dark, light     int
	dark16, light16 int
}

// The hues. A state's hue goes before a role's; words and broken lines carry the same meaning without any. Each says one thing:
// orange is the heater's exhaust alone, green room to spare, red what is foul.
var (
	grey   = hue{0x8a939c, 0x6b7279, 8, 8}
	dim    = hue{0x4a535c, 0xb4bac1, 8, 7}
	iron   = hue{0xd3dde6, 0x33424f, 15, 0}
	steel  = hue{0xa9b8c6, 0x4a5b6b, 7, 0}
	sheet  = hue{0x66747f, 0x8b98a4, 8, 8}
	cyan   = hue{0x4fc4cf, 0x00727f, 6, 6}
	brown  = hue{0xc08d74, 0x7c4a33, 8, 8}
	ash    = hue{0xa6a8ab, 0x55585c, 7, 8}
	tan    = hue{0x9a8560, 0x8a6420, 7, 8}
	violet = hue{0xb996d6, 0x7d3fa0, 5, 5}
	lilac  = hue{0xec6bff, 0xd800ee, 13, 5}
	flame  = hue{0xff9e3d, 0xc25700, 3, 13}
	indigo = hue{0x8593ff, 0x3340c4, 12, 12}
	pink   = hue{0xff8fc2, 0xb01c68, 13, 5}
	white  = hue{0xffffff, 0x000000, 15, 0}
	good   = hue{0x6fd672, 0x1c7a1f, 10, 2}
	warn   = hue{0xffd23f, 0x946a00, 11, 3}
	bad    = hue{0xff5a52, 0xc8102e, 9, 1}
	accent = hue{0x9fd3ff, 0x0b4f8a, 14, 4}
)

// hues are what this screen adds to each role's pen.
var hues = [scene.Roles]hue{
	scene.Floor: grey, scene.Steel: steel, scene.Lines: cyan, scene.Hot: brown, scene.Pressed: sheet, scene.Movable: ash,
	scene.Fitting: tan, scene.Opening: violet, scene.Plate: white, scene.Body: grey, scene.Space: dim,
	scene.Cut: white, scene.Hole: white, scene.CutCentre: white, scene.Pilot: white, scene.Exhaust: flame, scene.Intake: indigo,
	scene.Fuel: pink, scene.Outlet: flame, scene.Mouth: indigo, scene.Muffler: flame, scene.Tie: lilac,
	scene.Dimension: white, scene.Mark: white, scene.Wheel: dim, scene.Wish: good,
	scene.Rail: iron, scene.Rib: sheet, scene.Bumper: grey, scene.Nose: grey, scene.Conflict: bad,
}

func hueOf(k Ink) hue {
	switch {
	case k.Face.Set:
		tint, _ := tintOf(k.Face)
		return tint
	case k.Grade != scene.Unknown:
		return shades[k.Grade]
	case k.State == scene.Foul:
		return bad
	case k.State == scene.Doubtful:
		return warn
	case k.Role == scene.Dimension && k.State == scene.Clear:
		return good
	case k.Selected:
		return accent
	case k.Role == scene.Floor && k.Tone == Faint:
		return dim
	}
	return hues[k.Role]
}

// tints are the faces of what is solid, in true colour: the heavier it is the nearer to the ink of its lines.
var tints = [scene.Roles]hue{
	scene.Floor:    {dark: 0x1c2229, light: 0xeceff2},
	scene.Steel:    {dark: 0x465463, light: 0xb9c5d0},
	scene.Rail:     {dark: 0x74859a, light: 0x8899aa},
	scene.Lines:    {dark: 0x1c5965, light: 0xaedbe0},
	scene.Hot:      {dark: 0x4a342b, light: 0xe0c9bd},
	scene.Movable:  {dark: 0x33363b, light: 0xd2d5d8},
	scene.Nose:     {dark: 0x2a3139, light: 0xdde2e6},
	scene.Bumper:   {dark: 0x5d656e, light: 0xa4abb2},
	scene.Exhaust:  {dark: 0xff9e3d, light: 0xe07a1a},
	scene.Muffler:  {dark: 0xd07f2c, light: 0xc46a12},
	scene.Intake:   {dark: 0x4c58bb, light: 0xaab3f6},
	scene.Fuel:     {dark: 0xb8608a, light: 0xe9a3c6},
	scene.Conflict: {dark: 0xd8342c, light: 0xe0463c},
}

// picked is the face of what is picked out.
var picked = hue{dark: 0x6fb4ea, light: 0x6ea8dc}

// shades are the inks of shaded floor, and grounds what lies behind it in true colour: only where the cut may be, and
// lighter the more room there is.
var (
	shades = [scene.Grades]hue{
		scene.DoubtfulRoom: {0xd9a520, 0x946a00, 3, 3},
		scene.LittleRoom:   {0x4f7a55, 0x7aa57c, 2, 2},
		scene.FairRoom:     {0x4f8a58, 0x6a9a6c, 2, 2},
		scene.MuchRoom:     {0x4f9a5c, 0x5a8f5d, 2, 2},
	}
	grounds = [scene.Grades]hue{
		scene.LittleRoom: {dark: 0x1d4429, light: 0xd3ecd2},
		scene.FairRoom:   {dark: 0x24603a, light: 0xb4deb2},
		scene.MuchRoom:   {dark: 0x2c8049, light: 0x8fcb8f},
	}
)

// tintOf is what lies behind a cell in true colour. What was not measured is half as strong as what was.
func tintOf(g Ground) (tint hue, ok bool) {
	switch {
	case !g.Set:
		return tint, false
	case g.Grade != scene.Unknown:
		return grounds[g.Grade], grounds[g.Grade] != hue{}
	case g.Selected:
		return picked, true
	}
	tint = tints[g.Role]
	if floor := tints[scene.Floor]; g.Unsure {
		tint.dark, tint.light = between(tint.dark, floor.dark), between(tint.light, floor.light)
	}
	return tint, tint != hue{}
}

// between is the colour midway between two.
func between(a, b int) int { return a&0xFEFEFE>>1 + b&0xFEFEFE>>1 }

// sgr returns the escape sequence that puts a dress on from nothing, without its end: "\x1b[0" and parameters.
func sgr(d dress, colour desk.Colour, light bool) string {
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
		s += sixteen(hueOf(c.Ink), light)
	case desk.TrueColour:
		ink, ground := colours(c, light)
		s += rgb(38, ink)
		if _, ok := tintOf(c.Ground); ok && c.Ink.Tone != Inverse {
			s += rgb(48, ground)
		}
	}
	return s
}

func (h hue) on(light bool) int {
	if light {
		return h.light
	}
	return h.dark
}

func sixteen(h hue, light bool) string {
	n := h.dark16
	if light {
		n = h.light16
	}
	if n < 8 {
		return fmt.Sprintf(";%d", 30+n)
	}
	return fmt.Sprintf(";%d", 90+n-8)
}

// rgb returns the parameters of a true colour.
func rgb(plane, colour int) string {
	return fmt.Sprintf(";%d;2;%d;%d;%d", plane, colour>>16&255, colour>>8&255, colour&255)
}
