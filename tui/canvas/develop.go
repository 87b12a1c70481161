package canvas

import "bench.example/undermark/geometry/scene"

// develop turns faces, lines and dots into characters on the canvas, the right way up for whoever looks.
func (p *painter) develop() {
	braille := &upright
	if p.over {
		braille = &mirrored
	}
	for row := range p.Rows {
		first := (p.flip(row)+p.Top)*p.canvas.Width + p.Left
		line, strokes := p.canvas.Cells[first:][:p.Cols], p.strokes.cells[first:][:p.Cols]
		fronts, inks := p.fronts[row*p.Cols:][:p.Cols], p.inks[row*p.Cols:][:p.Cols]
		faces, next := p.faces.of[row*p.Cols:][:p.Cols], p.dots.octets(row)
		for col := range line {
			cell, s, dots := &line[col], &strokes[col], next.octet(col)
			one := faces[col] == faces[col]&0xFF*everyDot
			if cell.Ground = p.faces.table[uint8(faces[col])]; one && dots == 0 && s.arms == 0 {
				continue
			}
			var edge uint8
			var other Ground
			if !one {
				cell.Ground, other, edge = p.faces.mixed(faces[col])
			}
			if p.look.Faces && (cell.Ground.Role.Pen().Unparted || edge != 0 && other.Role.Pen().Unparted) { // neither a line behind it nor a texture parts the heater's exhaust
				if s.front <= scene.Exhaust.Pen().Front || s.foul {
					s = &stroke{}
				}
				if inks[col].Tone == Faint || inks[col].Role.Pen().Front <= scene.Exhaust.Pen().Front {
					dots = 0
				}
			}
			if p.look.Faces && (cell.Ground.Role == scene.Hot || edge != 0 && other.Role == scene.Hot) && s.ink.Role.Pen().Bent {
				s = &stroke{} // the van's exhaust passes below what is bent from sheet
			}
			switch {
			case s.arms != 0 && (dots == 0 || s.front >= fronts[col]):
				cell.Rune, cell.Ink = s.char(), s.ink
				if p.look.Faces && s.ink.State == scene.Foul && cell.Ground.Role != scene.Conflict && (cell.Ground.Foul || !told(*cell)) {
					cell.Ground = Ground{Role: scene.Floor, Set: true} // red on red is not seen, and what is foul stays red
				}
				fronts[col] = s.front
			case dots != 0:
				cell.Rune, cell.Ink = braille[dots], inks[col]
			case edge != 0 && p.look.Faces:
				cell.edge(edge, cell.Ground, other, p.over)
			}
		}
	}
}

// edge shows where one face ends and another begins. What has none can't be ink.
func (c *Cell) edge(dots uint8, most, other Ground, over bool) {
	if over {
		dots = turnedOver(dots)
	}
	table := blockTable()
	b := table.all[dots]
	switch {
	case !other.Set:
		b, most, other = table.plain[^dots], other, most
	case !most.Set:
		b = table.plain[dots]
	}
	if b.turned {
		most, other = other, most
	}
	if b.char != ' ' {
		c.Rune, c.Ink = b.char, Ink{Face: other}
	}
	c.Ground = most
}

// The braille characters of the eight dots of a cell as octet gives them; mirrored has its rows upside down.
var upright, mirrored = func() (up, down [256]rune) {
	places := [dotsDown][dotsAcross]rune{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}
	for dots := range up {
		up[dots], down[dots] = 0x2800, 0x2800
		for bit := range 8 {
			if dots>>bit&1 == 1 {
				up[dots] |= places[bit/dotsAcross][bit%dotsAcross]
				down[dots] |= places[dotsDown-1-bit/dotsAcross][bit%dotsAcross]
			}
		}
	}
	return up, down
}()

func (c Canvas) cropped(w, h int) Canvas {
	if c.Width == w && c.Height == h {
		return c
	}
	out := Canvas{Map: c.Map, Width: max(w, 0), Height: max(h, 0), Texts: c.Texts, faces: c.faces, few: c.few, ring: c.ring, known: c.known}
	for row := range out.Height {
		out.Cells = append(out.Cells, c.Cells[row*c.Width:row*c.Width+out.Width]...)
	}
	return out
}
