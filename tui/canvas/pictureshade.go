package canvas

import (
	"image"
	"image/color"
	"image/draw"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// shaded lays the shade of the floor: whole dots where their neighbours have as much room, and pixel by pixel where one of them
// has another.
func (p *pictured) shaded() {
	if !p.shade.Of(p.Map) {
		return
	}
	for y := range p.tall {
		for x := 0; x < p.wide; {
			grade, from := p.shade.dots[y*p.wide+x], x
			if p.shade.finer != nil && p.edge(x, y) {
				p.shadeFinely(x, y)
				x++
				continue
			}
			for x < p.wide && p.shade.dots[y*p.wide+x] == grade && (p.shade.finer == nil || !p.edge(x, y)) {
				x++
			}
			if ink, ok := p.room(grade); ok {
				draw.Draw(p.board.Picture, p.dots(from, y, x-from), image.NewUniform(ink), image.Point{}, draw.Src)
			}
		}
	}
}

// room is the colour of floor with so much room; ok is false where the floor stays bare.
func (p *pictured) room(grade scene.Grade) (ink color.RGBA, ok bool) {
	if !faceOfRoom(grade) {
		return ink, false
	}
	return color.RGBA(solid(p.table.Faces[grounds[grade]])), true
}

// edge tells whether a dot beside this one has another grade.
func (p *pictured) edge(x, y int) bool {
	here := p.shade.dots[y*p.wide+x]
	for v := max(y-1, 0); v <= min(y+1, p.tall-1); v++ {
		for u := max(x-1, 0); u <= min(x+1, p.wide-1); u++ {
			if p.shade.dots[v*p.wide+u] != here {
				return true
			}
		}
	}
	return false
}

// dots is where some dots of a row, counted as the plane has them, lie in the picture.
func (p *pictured) dots(x, y, n int) image.Rectangle {
	if p.over {
		y = p.tall - 1 - y
	}
	size := p.board.Picture.Rect
	at := func(dot, dots, pixels int) int { return (dot*pixels + dots/2) / dots }
	return image.Rect(at(x, p.wide, size.Dx()), at(y, p.tall, size.Dy()), at(x+n, p.wide, size.Dx()), at(y+1, p.tall, size.Dy()))
}

// shadeFinely shades the pixels of a dot one by one.
func (p *pictured) shadeFinely(x, y int) {
	box, size := p.dots(x, y, 1), p.board.Picture.Rect
	for row := box.Min.Y; row < box.Max.Y; row++ {
		down := (float64(row) + 0.5) / float64(size.Dy()) * float64(p.tall)
		if p.over {
			down = float64(p.tall) - down
		}
		for col := box.Min.X; col < box.Max.X; col++ {
			across := (float64(col) + 0.5) / float64(size.Dx()) * float64(p.wide)
			if ink, ok := p.room(p.shade.finer(geometry.Point{X: p.west + across*p.Scale, Y: p.north - down*p.Scale})); ok {
				p.board.Picture.SetRGBA(col, row, ink)
			}
		}
	}
}
