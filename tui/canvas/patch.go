package canvas

import (
	"slices"

	"bench.example/undermark/geometry/scene"
)

// Bare returns a canvas with nothing on it.
func Bare(w, h int, faces bool) Canvas {
	c := Canvas{Width: max(w, 0), Height: max(h, 0), faces: faces, known: wardrobe{}}
	c.Cells = blank(nil, c.Width*c.Height)
	return c
}

// Draws tells whether lines or signs of a role are seen in the picture.
func (c *Canvas) Draws(role scene.Role) bool {
	for row := c.Top; row < min(c.Top+c.Rows, c.Height); row++ {
		for col := c.Left; col < min(c.Left+c.Cols, c.Width); col++ {
			if cell := c.At(col, row); cell.Ink.Role == role && cell.Rune != ' ' && cell.Ink.Tone != Word && cell.Ink.Tone != Bold {
				return true
			}
		}
	}
	return false
}

// Blank empties a box of cells.
func (c *Canvas) Blank(col, row, w, h int) {
	for y := max(row, 0); y < min(row+h, c.Height); y++ {
		for x := max(col, 0); x < min(col+w, c.Width); x++ {
			*c.At(x, y) = Cell{Rune: ' '}
		}
	}
}

// Patch paints w cells with the pattern of an area, or with the kind of line, that a role is drawn in.
func (c *Canvas) Patch(col, row, w int, role scene.Role) {
	if c.faces && faced(role) {
		c.face(col, row, w, role)
		return
	}
	b, mask := newBitmap(w*dotsAcross, dotsDown), newBitmap(w*dotsAcross, dotsDown)
	pen := role.Pen()
	t := fills[pen.Fill]
	area := t != nil
	if !area {
		t = lines[pen.Line]
		mask.span(1, 0, mask.w-1)
		if pen.Fill == scene.Filled {
			mask.span(2, 0, mask.w-1)
		}
	} else {
		for y := range dotsDown {
			mask.span(y, 0, mask.w-1)
		}
	}
	woven := weave(t, 0, 0)
	mask.top, mask.bottom = 0, dotsDown
	b.paint(&mask, &woven)
	for i := range w {
		if x := col + i; x >= 0 && x < c.Width && row >= 0 && row < c.Height {
			*c.At(x, row) = Cell{Rune: upright[b.octet(i, 0)], Ink: Ink{Role: role}, Ground: Ground{Role: role, Set: area}}
		}
	}
}

// PatchAsDrawn is Patch without the pattern where the picture of the canvas has none on the faces of the role, as they are too narrow.
func (c *Canvas) PatchAsDrawn(col, row, w int, role scene.Role) {
	woven := slices.ContainsFunc(c.Cells, func(cell Cell) bool { return cell.Ground.Role == role && cell.Ink == textureInk(role) })
	c.Patch(col, row, w, role)
	if woven || !c.faces || !faced(role) {
		return
	}
	for x := max(col, 0); x < min(col+w, c.Width) && row >= 0 && row < c.Height; x++ {
		cell := c.At(x, row)
		cell.Rune, cell.Ink = ' ', Ink{}
	}
}

// face paints w cells with the face of a role.
func (c *Canvas) face(col, row, w int, role scene.Role) {
	texture := fills[role.Pen().Fill]
	var woven ink
	if texture != nil {
		woven = weave(texture, 0, 0)
	}
	for i := range w {
		x := col + i
		if x < 0 || x >= c.Width || row < 0 || row >= c.Height {
			continue
		}
		cell := Cell{Rune: ' ', Ground: Ground{Role: role, Set: true}}
		if texture != nil {
			b := newBitmap(dotsAcross, dotsDown)
			b.stamp(0, 0, &woven)
			cell.Rune, cell.Ink = upright[b.octet(0, 0)], textureInk(role)
		}
		*c.At(x, row) = cell
	}
}
