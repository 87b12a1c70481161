package sparing

import (
	"cmp"
	"slices"

	"github.com/charmbracelet/x/ansi"
)

// change are cells of a row side by side that are written in one look.
type change struct {
	x, y  int
	look  int32
	blank bool // nothing but blanks, which show no more than a ground
	bare  int  // from which column on nothing stands in the row, on no ground
	cells []cell
}

// changes notes what is not as it was in a row, and returns the row. What a shorter one leaves out is blank.
func (t *Terminal) changes(y int, old, now []cell) []cell {
	for len(now) < len(old) {
		now = append(now, cell{rune: ' '})
	}
	first, bare := len(t.changed), bareFrom(now)
	for x, c := range now {
		if x < len(old) && old[x] == c || x >= len(old) && c == (cell{rune: ' '}) {
			continue
		}
		if len(t.changed) > first && t.goesOn(&t.changed[len(t.changed)-1], x, now) {
			continue
		}
		t.changed = append(t.changed, change{x, y, c.look, t.blankAt(c), bare, now[x : x+1]})
	}
	return now
}

// bareFrom is from which column on nothing stands in a row, on no ground.
func bareFrom(row []cell) int {
	for x := len(row); x > 0; x-- {
		if row[x-1] != (cell{rune: ' '}) {
			return x
		}
	}
	return 0
}

// blankAt tells whether a cell shows no more than a ground.
func (t *Terminal) blankAt(c cell) bool { return c.rune == ' ' && t.looks.worn[c.look].ofBlank() }

// nearBy is how many cells that stay are written again at the most, so that a change goes on: to move the cursor takes as many bytes.
const nearBy = 4

// goesOn takes the cell of a column into a change before it in its row, if what is between and the cell itself can be written in its look.
func (t *Terminal) goesOn(c *change, x int, row []cell) bool {
	end := c.x + len(c.cells)
	if x-end > nearBy {
		return false
	}
	look, blank, bytes := c.look, c.blank, 0
	for i, next := range row[end : x+1] {
		if end+i < x {
			if bytes += len(next.text(nil)); bytes > nearBy {
				return false
			}
		}
		switch is := t.blankAt(next); {
		case next.look == look && (!blank || is):
		case is && t.looks.worn[look].ofBlank() && t.looks.blank[look] == next.look:
		case blank && t.looks.blank[next.look] == look:
			look, blank = next.look, false
		default:
			return false
		}
	}
	c.look, c.blank, c.cells = look, blank, row[c.x:x+1]
	return true
}

// flush writes what changed: all of a look one after the other, as to move the cursor takes a third of what another colour takes.
func (t *Terminal) flush() {
	slices.SortFunc(t.changed, func(a, b change) int {
		return cmp.Or(t.looks.compare(a.look, b.look), cmp.Compare(a.y, b.y), cmp.Compare(a.x, b.x))
	})
	x, y, known := 0, 0, false // where the cursor stands
	for i := range t.changed {
		c := &t.changed[i]
		if known {
			t.out = onwards(t.out, x, y, c.x, c.y)
		} else {
			t.out = to(t.out, c.x, c.y)
		}
		t.wear(c)
		x, y = c.x+t.write(c), c.y
		known = x < t.on.width // behind the last column some terminals stand in it
	}
	t.changed = t.changed[:0]
	t.out = wear(t.out, &t.worn, &t.looks.worn[0], plain)
}

// write writes a change in the look that is worn, and returns how many columns on the cursor stands then: before blanks at the end of the row that are
// erased at once, which no ground may be worn for.
func (t *Terminal) write(c *change) int {
	for i, of := range c.cells {
		if c.x+i >= c.bare && len(c.cells)-i > len(ansi.EraseLineRight) && t.worn.ground == "" && t.worn.ofBlank() {
			t.out = append(t.out, ansi.EraseLineRight...)
			return i
		}
		t.out = of.text(t.out)
	}
	return len(c.cells)
}

// onwards moves the cursor from a cell to another, the shortest way.
func onwards(out []byte, x, y, toX, toY int) []byte {
	way, by := "", toX-x
	switch {
	case toY > y:
		way = ansi.CursorDown(toY - y)
	case toY < y:
		way = ansi.CursorUp(y - toY)
	}
	switch {
	case by > 0:
		way += ansi.CursorForward(by)
	case by < 0 && by >= -3:
		way += "\b\b\b"[:-by]
	case by < 0:
		way += ansi.CursorBackward(-by)
	}
	at := len(out)
	if out = to(out, toX, toY); len(out)-at >= len(way) {
		out = append(out[:at], way...)
	}
	return out
}

// wear has the terminal wear the look of a change. Blanks need its ground alone.
func (t *Terminal) wear(c *change) {
	want := t.looks.worn[c.look]
	if only := t.worn; c.blank && only.ofBlank() && (only.manyColours() || want.manyColours()) {
		if only.ground = want.ground; only != t.worn {
			t.out = append(parts(append(t.out, "\x1b["...), &t.worn, &only), 'm')
		}
		t.worn = only
		return
	}
	t.out = wear(t.out, &t.worn, &want, t.looks.text[c.look])
	t.worn = want
}

// compare orders looks so that few parts differ from one to the next.
func (l *looks) compare(a, b int32) int {
	one, other := &l.worn[a], &l.worn[b]
	return cmp.Or(cmp.Compare(one.ground, other.ground), cmp.Compare(one.on, other.on), cmp.Compare(one.ink, other.ink), cmp.Compare(a, b))
}
