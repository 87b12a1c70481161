package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Shade is how the floor is shaded under everything else, worked out for one layout of the picture.
type Shade struct {
	m     Map
	dots  []scene.Grade                    // of each dot, as the plane has it
	finer func(geometry.Point) scene.Grade // between the dots' middles; nil where nobody asks
	masks [scene.Grades]bitmap
	cells []scene.Grade // the least room in each cell, as the plane has it
}

// NewShade shades every dot of a picture by the room at its middle.
func NewShade(m Map, grade func(geometry.Point) scene.Grade) *Shade {
	s := &Shade{m: m, cells: make([]scene.Grade, m.Cols*m.Rows), dots: make([]scene.Grade, m.wide*m.tall)}
	for i := range s.masks {
		s.masks[i] = newBitmap(m.wide, m.tall)
		s.masks[i].reset()
	}
	for y := range m.tall {
		from, last := 0, scene.Unknown
		for x := range m.wide {
			here := grade(geometry.Point{X: m.west + (float64(x)+0.5)*m.Scale, Y: m.north - (float64(y)+0.5)*m.Scale})
			s.dots[y*m.wide+x] = here
			if cell := &s.cells[y/dotsDown*m.Cols+x/dotsAcross]; *cell == scene.Unknown || here != scene.Unknown && here < *cell {
				*cell = here
			}
			if here != last {
				s.masks[last].span(y, from, x-1)
				from, last = x, here
			}
		}
		s.masks[last].span(y, from, m.wide-1)
	}
	return s
}

// Finer returns the shade with what says how much room there is between the middles of its dots, for whoever paints smaller ones.
func (s *Shade) Finer(grade func(geometry.Point) scene.Grade) *Shade {
	s.finer = grade
	return s
}

// Of tells whether a shade was worked out for a layout.
func (s *Shade) Of(m Map) bool { return s != nil && s.m == m }

// shade lays the shade of the floor. It weighs nothing: names and lines go over it as over bare floor.
func (p *painter) shade(s *Shade) {
	if !s.Of(p.Map) {
		return
	}
	for grade := scene.MuchRoom; grade > scene.Unknown; grade-- { // in a cell with several the least gives the colour
		dotted := !p.look.Faces || p.look.Few && grade == scene.LittleRoom
		if faceOfRoom(grade) && !(p.look.Few && dotted) {
			p.faces.lay(&s.masks[grade], Ground{Role: scene.Floor, Set: true, Grade: grade})
		}
		if t, ok := shading(grade); ok && dotted {
			woven := weave(t, p.shiftX, p.shift)
			p.lay(&s.masks[grade], &woven, Ink{Role: scene.Floor, Tone: Faint, Grade: grade}, 0)
		}
	}
}

// faceOfRoom tells whether a place with so much room has a colour of its own: only where the cut may be.
func faceOfRoom(grade scene.Grade) bool { return grade >= scene.LittleRoom }

// shading is the texture of a room, so that it shows without colour: what is foul stays bare, as nothing is to be put
// there, and the more room the more dots. The boundary between foul and clear is a line as thick as the doubt.
func shading(grade scene.Grade) (t texture, ok bool) {
	switch grade {
	case scene.DoubtfulRoom:
		return chequered, true
	case scene.LittleRoom:
		return sparse, true
	case scene.FairRoom:
		return fair, true
	case scene.MuchRoom:
		return dense, true
	}
	return nil, false
}

func sparse(x, y int) bool { return x&3 == 1 && y&3 == 2 }
func fair(x, y int) bool   { return x&3 == 1 && y&1 == 0 }
func dense(x, y int) bool  { return x&1 == 1 && y&1 == 0 }

// Shades paints w cells as floor with so much room is shaded.
func (c *Canvas) Shades(col, row, w int, grade scene.Grade) {
	for i := range w {
		if x := col + i; x >= 0 && x < c.Width && row >= 0 && row < c.Height {
			*c.At(x, row) = Cell{Rune: c.patchOf(grade, i), Ink: Ink{Role: scene.Floor, Tone: Faint, Grade: grade}, Ground: Ground{Role: scene.Floor, Set: true, Grade: grade}}
			if c.few && grade == scene.LittleRoom {
				c.At(x, row).Ground.Grade = scene.Unknown
			}
		}
	}
}

// patchOf is the character of a cell of floor with so much room; a face shows it without.
func (c *Canvas) patchOf(grade scene.Grade, col int) rune {
	t, ok := shading(grade)
	if !ok || c.faces && !(c.few && grade == scene.LittleRoom) {
		return ' '
	}
	dots := 0
	for y := range dotsDown {
		for x := range dotsAcross {
			if t(col*dotsAcross+x, y) {
				dots |= 1 << (y*dotsAcross + x)
			}
		}
	}
	return upright[dots]
}

// Corners returns the lowest and the highest x and y that the picture shows, mm.
func (m Map) Corners() (low, high geometry.Point) {
	low = geometry.Point{X: m.west, Y: m.north - float64(m.tall)*m.Scale}
	return low, geometry.Point{X: m.west + float64(m.wide)*m.Scale, Y: m.north}
}
