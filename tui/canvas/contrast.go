package canvas

import (
	"math"

	"bench.example/undermark/geometry/scene"
)

// What ink must differ from its ground by, as a ratio of luminances. WCAG 2.1 asks 4.5 of text, 3 of large text and of lines that
// mean something; the quiet textures of a face are to be quiet.
const (
	wordContrast = 4.5
	lineContrast = 1.6
)

// paper is what a picture stands on where nothing else does: near enough to the terminal's own.
var paper = hue{dark: 0x101216, light: 0xfafafa}

// colours are the ink and the ground of a cell in true colour. Words and lines that could not be told from their ground
// are black or white instead.
func colours(c Cell, light bool) (ink, ground int) {
	tint, ok := tintOf(c.Ground)
	if !ok || c.Ink.Tone == Inverse {
		tint = paper
	}
	ink, ground = hueOf(c.Ink).on(light), tint.on(light)
	least := lineContrast
	switch {
	case c.Ink.Face.Set, c.Ink.Grade != scene.Unknown, c.Ink.Role == scene.Cut && c.Ink.Tone != Word:
		return ink, ground // the ring is the brightest there is, whatever it lies on
	case c.Ink.Tone == Faint:
		if c.Ink.Role != scene.Floor {
			ink = between(ink, ground)
		}
		return ink, ground
	case c.Ink.Tone == Bold, c.Ink.Tone == Word:
		least = wordContrast
	}
	if contrast(ink, ground) >= least {
		return ink, ground
	}
	if contrast(0, ground) > contrast(0xFFFFFF, ground) {
		return 0, ground
	}
	return 0xFFFFFF, ground
}

// contrast is the ratio of two colours' luminances, at least 1. WCAG 2.1, "contrast ratio".
func contrast(a, b int) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// luminance is how light a colour is, 0 to 1. WCAG 2.1, "relative luminance".
func luminance(colour int) float64 {
	return 0.2126*linear[colour>>16&255] + 0.7152*linear[colour>>8&255] + 0.0722*linear[colour&255]
}

// linear is the light of each value of a channel, 0 to 1.
var linear = func() (table [256]float64) {
	for i := range table {
		v := float64(i) / 255
		if table[i] = math.Pow((v+0.055)/1.055, 2.4); v <= 0.03928 {
			table[i] = v / 12.92
		}
	}
	return table
}()

// legible tells whether a word in an ink can be read on a face, on dark terminals and on light ones.
func legible(ink Ink, on Ground) bool {
	tint, ok := tintOf(on)
	if !ok {
		tint = paper
	}
	hue := hueOf(ink)
	return contrast(hue.dark, tint.dark) >= wordContrast && contrast(hue.light, tint.light) >= wordContrast
}
