package canvas

import (
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/looks"
)

// lineContrast is what a line on a face must differ from it by at least, as a ratio of luminances: that there is something is told by
// the face, the line says more of it. Words are to be readable anywhere.
const lineContrast = 1.6

// colours are the ink and the ground of a cell in true colour. Words and lines that could not be told from their ground
// have the look's darkest or lightest ink instead.
func colours(c Cell, t *looks.Table) (ink, ground int) {
	ground, ok := tintIn(c.Ground, t)
	if !ok || c.Ink.Tone == Inverse {
		ground = t.Paper.RGB
	}
	ink = inkIn(c.Ink, t).RGB
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
		least = looks.Readable
	case c.Ink.Tone == Pale:
		if pale := between(ink, ground); looks.Contrast(pale, ground) >= lineContrast {
			return pale, ground
		}
	}
	if looks.Contrast(ink, ground) >= least {
		return ink, ground
	}
	last := t.Farther(ground)
	if bare := !c.Ground.Set || c.Ground.Role == scene.Floor; bare && c.Ink.Role != scene.Cut {
		return deepened(ink, last, ground, least), ground
	}
	return last, ground
}

// deepened is an ink as near to its own colour as can be told from what lies behind it, on the way to the look's last one, which is the cut's.
func deepened(ink, last, ground int, least float64) int {
	quarter := between(ink, between(ink, last))
	for _, ink := range [3]int{quarter, between(ink, last), between(last, between(ink, last))} {
		if looks.Contrast(ink, ground) >= least {
			return ink
		}
	}
	return last
}

// told tells whether a line has its own colour on what lies behind it, in every look.
func told(c Cell) bool {
	for l := range looks.Count {
		t := looks.Look(l).Table()
		if ink, _ := colours(c, t); ink != inkIn(c.Ink, t).RGB {
			return false
		}
	}
	return true
}

// legible tells whether a word in an ink can be read on a face, in every look.
func legible(ink Ink, on Ground) bool {
	for l := range looks.Count {
		t := looks.Look(l).Table()
		tint, ok := tintIn(on, t)
		if !ok {
			tint = t.Paper.RGB
		}
		if looks.Contrast(inkIn(ink, t).RGB, tint) < looks.Readable {
			return false
		}
	}
	return true
}
