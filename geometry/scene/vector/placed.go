package vector

import (
	"image/color"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Word is a text whose place is given.
type Word struct {
	Box    Box    // it stands in this, and is written smaller where it would not fit
	Name   string // with Tail behind it
	Tail   string
	Align  Align
	Down   bool // its letters stand one under the other, evenly in the box
	Bold   bool
	Colour color.NRGBA
	Ends   color.NRGBA      // the colour of Tail
	Rim    color.NRGBA      // round the letters
	Back   color.NRGBA      // behind the whole text; no colour for none
	Leader []geometry.Point // from the text to what it is of, where that stands off; it ends at the text
}

// led is the colour of a word's leader: that of what stands for it.
func (w *Word) led() color.NRGBA {
	if w.Back.A > 0 {
		return w.Back
	}
	return w.Colour
}

// leaders draws, dotted as no other line is, those of the words whose places are given, before all that none may run over: the ring, signs and words.
func (d *drawing) leaders() {
	if d.look.Screen == nil {
		return
	}
	width := d.look.Widths[scene.Fine]
	for i := range d.look.Screen.Words {
		if w := &d.look.Screen.Words[i]; len(w.Leader) > 0 {
			d.board.Line(w.Leader, Stroke{Width: 3 * width, Colour: d.look.Paper})
			d.board.Line(w.Leader, Stroke{Width: width, Colour: w.led(), Dashes: []float64{width, 2 * width}})
		}
	}
}

// placed writes the words whose places are given.
func (d *drawing) placed() {
	for i := range d.look.Screen.Words {
		d.write(&d.look.Screen.Words[i])
	}
}

// write writes one word.
func (d *drawing) write(w *Word) {
	if !w.Down {
		d.inBox(w)
		return
	}
	letters := []rune(w.Name)
	high := w.Box.Height / float64(len(letters))
	for i, r := range letters {
		one := *w
		one.Name = string(r)
		one.Box.Top, one.Box.Height = w.Box.Top+float64(i)*high, high
		d.inBox(&one)
	}
}

// inBox writes a word, or one letter of a column, in its box; a letter may be wider.
func (d *drawing) inBox(w *Word) {
	name := Text{Words: w.Name, Size: d.look.Letters, Bold: w.Bold, Colour: w.Colour, Rim: w.Rim}
	tail := name
	tail.Words, tail.Colour = w.Tail, w.Ends
	wide := WidthOf(name) + WidthOf(tail)
	if w.Back.A > 0 {
		name.Rim.A, tail.Rim.A = 0, 0
	}
	if wide > w.Box.Width && !w.Down {
		name.Size *= w.Box.Width / wide
		tail.Size, wide = name.Size, w.Box.Width
	}
	at := geometry.Point{X: w.Box.Left, Y: w.Box.middle().Y + (ascent-descent)/2*name.Size}
	switch w.Align {
	case ByMiddle:
		at.X += (w.Box.Width - wide) / 2
	case ByEnd:
		at.X += w.Box.Width - wide
	}
	if w.Back.A > 0 {
		pad := 0.15 * name.Size
		d.board.Face(Box{at.X - pad, w.Box.Top, wide + 2*pad, w.Box.Height}.outline(), w.Back)
	}
	d.board.Write(at, name)
	if w.Tail != "" {
		at.X += WidthOf(name)
		d.board.Write(at, tail)
	}
}
