package looks

import "sync"

// The sixteen colours of a terminal as xterm has them when nobody has set others (XTerm-col.ad, from memory). Everybody sets them as they like: what is
// read on a face is reckoned with these, and patterns, signs and words tell the rest.
var sixteen = [16]int{
	0x000000, 0xcd0000, 0x00cd00, 0xcdcd00, 0x0000ee, 0xcd00cd, 0x00cdcd, 0xe5e5e5,
	0x7f7f7f, 0xff0000, 0x00ff00, 0xffff00, 0x5c5cff, 0xff00ff, 0x00ffff, 0xffffff,
}

// FacesOfSixteen tells whether a look has faces where there are sixteen colours. Night has none: its four inks are too few.
func (l Look) FacesOfSixteen() bool { return l != Night }

// NearestOfSixteen is the number of the one of sixteen colours that is nearest to another, 0xRRGGBB, to the eye (CIEDE2000).
func NearestOfSixteen(rgb int) uint8 {
	if n, ok := knownOfSixteen.Load(rgb); ok {
		return n.(uint8)
	}
	want, nearest, least := colourOf(rgb), 0, 2.0
	for i, c := range sixteen {
		if d := colourOf(c).DistanceCIEDE2000(want); d < least {
			nearest, least = i, d
		}
	}
	knownOfSixteen.Store(rgb, uint8(nearest))
	return uint8(nearest)
}

// knownOfSixteen are the numbers that were asked for before.
var knownOfSixteen sync.Map

// OfSixteen is the colour, 0xRRGGBB, of a number up to 15.
func OfSixteen(n uint8) int { return sixteen[n&15] }

// InSixteen is the look as a terminal of sixteen colours shows it: a table of colours that it has.
func (l Look) InSixteen() *Table { return inSixteens()[l] }

var inSixteens = sync.OnceValue(func() (all [Count]*Table) {
	for l, of := range tables {
		t := *of
		for m := range t.Marks {
			t.Marks[m].RGB = OfSixteen(t.Marks[m].Of)
		}
		for f := NoFace + 1; int(f) < Faces; f++ {
			t.Faces[f] = OfSixteen(t.Sixteen[f])
		}
		for g := range t.Rooms {
			t.Rooms[g].RGB = OfSixteen(t.Rooms[g].Of)
		}
		t.Paper.RGB, t.Ink.RGB, t.Last = OfSixteen(t.Paper.Of), OfSixteen(t.Ink.Of), [2]int{OfSixteen(0), OfSixteen(15)}
		all[l] = &t
	}
	return all
})
