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

// The hues. A state's hue goes before a role's; words and broken lines carry the same meaning without any.
var (
	grey   = hue{0x8a939c, 0x6b7279, 8, 8}
	dim    = hue{0x3d454d, 0xc3c8cd, 8, 7}
	steel  = hue{0xa9b8c6, 0x4a5b6b, 7, 0}
	cyan   = hue{0x4fc4cf, 0x00727f, 6, 6}
	rust   = hue{0xe0814f, 0xb0481a, 3, 3}
	green  = hue{0x7fb069, 0x3c7a24, 2, 2}
	tan    = hue{0xc9a66b, 0x8a6420, 3, 3}
	violet = hue{0xc58fe0, 0x7d3fa0, 5, 5}
	flame  = hue{0xff9e3d, 0xc25700, 11, 3}
	sky    = hue{0x6db3ff, 0x0b5cc2, 12, 4}
	pink   = hue{0xff8fc2, 0xb01c68, 13, 5}
	white  = hue{0xffffff, 0x000000, 15, 0}
	good   = hue{0x6fd672, 0x1c7a1f, 10, 2}
	warn   = hue{0xffd23f, 0x946a00, 11, 3}
	bad    = hue{0xff5a52, 0xc8102e, 9, 1}
)

// hues are what this screen adds to each role's pen.
var hues = [scene.Roles]hue{
	scene.Floor: grey, scene.Steel: steel, scene.Lines: cyan, scene.Hot: rust, scene.Pressed: grey, scene.Movable: green,
	scene.Fitting: tan, scene.Opening: violet, scene.Plate: white, scene.Body: grey, scene.Space: grey,
	scene.Cut: white, scene.Hole: white, scene.CutCentre: white, scene.Pilot: pink, scene.Exhaust: flame, scene.Intake: sky,
	scene.Fuel: pink, scene.Outlet: flame, scene.Mouth: sky, scene.Muffler: flame, scene.Tie: violet,
	scene.Dimension: white, scene.Mark: white, scene.Wheel: grey, scene.Wish: pink,
}

func hueOf(k Ink) hue {
	switch {
	case k.Grade != scene.Unknown:
		return shades[k.Grade]
	case k.State == scene.Foul:
		return bad
	case k.State == scene.Doubtful:
		return warn
	case k.Role == scene.Dimension && k.State == scene.Clear:
		return good
	case k.Role == scene.Floor && k.Tone == Faint:
		return dim
	}
	return hues[k.Role]
}

// tints lie behind areas in true colour: a shade of what they are.
var tints = map[scene.Role]hue{
	scene.Floor:   {dark: 0x171b20, light: 0xf1f3f5},
	scene.Steel:   {dark: 0x2a323a, light: 0xdbe2e9},
	scene.Lines:   {dark: 0x15323a, light: 0xd0ecef},
	scene.Hot:     {dark: 0x3d2218, light: 0xf8dccd},
	scene.Movable: {dark: 0x1f3320, light: 0xdcefd6},
}

// shades are the inks of shaded floor, and grounds what lies behind it in true colour: from red over amber to green, and
// lighter the more room there is, for eyes that don't part red from green.
var (
	shades = [scene.Grades]hue{
		scene.DoubtfulRoom: {0xd9a520, 0x946a00, 3, 3},
		scene.LittleRoom:   {0x4f7a55, 0x7aa57c, 2, 2},
		scene.FairRoom:     {0x4f8a58, 0x6a9a6c, 2, 2},
		scene.MuchRoom:     {0x4f9a5c, 0x5a8f5d, 2, 2},
	}
	grounds = [scene.Grades]hue{
		scene.NoRoom:       {dark: 0x2a1416, light: 0xf3d9d6},
		scene.DoubtfulRoom: {dark: 0x3a2f10, light: 0xf3e4bd},
		scene.LittleRoom:   {dark: 0x15241a, light: 0xe3efe0},
		scene.FairRoom:     {dark: 0x183522, light: 0xd2ebce},
		scene.MuchRoom:     {dark: 0x1c4a2c, light: 0xbfe6bb},
	}
)

// tintOf is what lies behind a cell in true colour.
func tintOf(g Ground) (tint hue, ok bool) {
	if !g.Set {
		return tint, false
	}
	if g.Grade != scene.Unknown {
		return grounds[g.Grade], true
	}
	tint, ok = tints[g.Role]
	return tint, ok
}

// sgr returns the escape sequence that sets a cell's colours from nothing, without its end: "\x1b[0" and parameters.
func sgr(c Cell, colour desk.Colour, light bool) string {
	s := "\x1b[0"
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
		s += rgb(38, hueOf(c.Ink).on(light), c.Ink.Tone == Faint && c.Ink.Role != scene.Floor)
		if tint, ok := tintOf(c.Ground); ok && c.Ink.Tone != Inverse {
			s += rgb(48, tint.on(light), false)
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

// rgb returns the parameters of a true colour; a soft one is drawn back to two thirds towards the middle grey.
func rgb(plane, colour int, soft bool) string {
	r, g, b := colour>>16&255, colour>>8&255, colour&255
	if soft {
		const middle = 0x60
		r, g, b = (2*r+middle)/3, (2*g+middle)/3, (2*b+middle)/3
	}
	return fmt.Sprintf(";%d;2;%d;%d;%d", plane, r, g, b)
}
