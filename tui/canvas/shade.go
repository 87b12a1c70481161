package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Shade is how the floor is shaded under everything else, worked out for one layout of the picture.
type Shade struct {
	m     Map
	masks [scene.Rooms]bitmap
	cells []scene.Room // the least room in each cell, as the plane has it
}

// NewShade shades every dot of a picture by the room at its middle.
func NewShade(m Map, room func(geometry.Point) scene.Room) *Shade {
	s := &Shade{m: m, cells: make([]scene.Room, m.Cols*m.Rows)}
	for i := range s.masks {
		s.masks[i] = newBitmap(m.wide, m.tall)
		s.masks[i].reset()
	}
	for y := range m.tall {
		from, last := 0, scene.Unknown
		for x := range m.wide {
			here := room(geometry.Point{X: m.west + (float64(x)+0.5)*m.Scale, Y: m.north - (float64(y)+0.5)*m.Scale})
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

// Of tells whether a shade was worked out for a layout.
func (s *Shade) Of(m Map) bool { return s != nil && s.m == m }

// shade lays the shade of the floor. It weighs nothing: names and lines go over it as over bare floor.
func (p *painter) shade(s *Shade) {
	if !s.Of(p.Map) {
		return
	}
	for room := scene.MuchRoom; room > scene.Unknown; room-- { // in a cell with several the least gives the colour
		if t, ok := shading(room); ok {
			woven := weave(t, p.shiftX, p.shift)
			p.lay(&s.masks[room], &woven, Ink{Role: scene.Floor, Tone: Faint, Room: room}, 0)
		}
	}
	for i, room := range s.cells {
		if room != scene.Unknown {
			p.grounds[i] = Ground{Role: scene.Floor, Set: true, Room: room}
		}
	}
}

// shading is the texture of a room, so that it shows without colour: what is foul stays bare, as nothing is to be put
// there, and the more room the more dots. The boundary between foul and clear is a line as thick as the doubt.
func shading(room scene.Room) (t texture, ok bool) {
	switch room {
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
func (c *Canvas) Shades(col, row, w int, room scene.Room) {
	for i := range w {
		if x := col + i; x >= 0 && x < c.Width && row >= 0 && row < c.Height {
			*c.At(x, row) = Cell{Rune: patchOf(room, i), Ink: Ink{Role: scene.Floor, Tone: Faint, Room: room}, Ground: Ground{Role: scene.Floor, Set: true, Room: room}}
		}
	}
}

// patchOf is the character of a cell of floor with so much room.
func patchOf(room scene.Room, col int) rune {
	t, ok := shading(room)
	if !ok {
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
