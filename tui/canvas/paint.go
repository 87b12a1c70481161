package canvas

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Paint paints a scene on w columns and h rows, rulers and words included. Smaller than MinWidth by MinHeight it is cut
// off. It keeps nothing: the same scene, size and look give the same canvas.
func Paint(s scene.Scene, w, h int, look Look) Canvas {
	p := newPainter(s, max(w, MinWidth), max(h, MinHeight), look)
	shaded := look.Shade == nil
	for i := range p.parts {
		if it := &p.parts[i]; it.Primitive == scene.Area {
			p.fill(it)
			if !shaded && it.Role == scene.Floor { // behind everything but the floor itself
				p.shade(look.Shade)
				shaded = true
			}
		}
	}
	for i := range p.parts {
		p.trace(&p.parts[i])
	}
	p.inTheWay()
	p.grid()
	p.develop()
	p.frame()
	p.ring()
	p.ends()
	p.spots()
	p.labels()
	return p.canvas.cropped(w, h)
}

// painter is a picture in the making. Bitmaps and cells are as the plane has them until develop.
type painter struct {
	Map
	fabric
	projection       scene.Projection
	look             Look
	parts            []part
	spacing          float64 // of the grid, mm
	circle           ring
	dots             bitmap  // what will be seen
	mask, edge, halo bitmap  // one item at a time
	faces            faces   // what is solid, where there is colour
	strokes          strokes // thin lines
	inks             []Ink
	fronts           []uint8 // what of it is in front in each cell: it gives the colour, and a label would hide it
	canvas           Canvas
	taken            []bool  // cells of the canvas that hold words or must stay in sight
	leave            exit    // of the heater's exhaust
	seats            []seat  // used again and again
	costs            []uint8 // of each cell of the canvas: what a character there would hide
}

// part is an item with what is seen of it.
type part struct {
	*scene.Item
	scene.Seen
}

// finer is how many times finer than a dot the lines are that bends are painted by.
const finer = 64

// partsOf returns what is seen of a scene's items.
func partsOf(s *scene.Scene, scale float64) []part {
	parts := make([]part, 0, len(s.Items))
	for i := range s.Items {
		if f, ok := s.Projection.Seen(&s.Items[i], scale/finer); ok {
			parts = append(parts, part{&s.Items[i], f})
		}
	}
	return parts
}

func newPainter(s scene.Scene, w, h int, look Look) *painter {
	m := NewMap(s, w, h, look.Camera, look.Units)
	cells, parts := m.Cols*m.Rows, partsOf(&s, m.Scale)
	p := &painter{
		Map: m, fabric: newFabric(&m), projection: s.Projection, look: look, parts: parts, spacing: s.Grid,
		dots: newBitmap(m.wide, m.tall), mask: newBitmap(m.wide, m.tall),
		edge: newBitmap(m.wide, m.tall), halo: newBitmap(m.wide, m.tall), faces: newFaces(&m),
		inks: make([]Ink, cells), fronts: make([]uint8, cells),
		canvas: Canvas{Map: m, Width: w, Height: h, Cells: make([]Cell, w*h), faces: look.Faces},
		taken:  make([]bool, w*h), costs: make([]uint8, w*h),
	}
	p.strokes.cells = make([]stroke, w*h)
	p.circle = p.ringOf()
	return p
}

// fill lays an area's face, and its texture where that shows what it is.
func (p *painter) fill(it *part) {
	if p.thin(it) || it.Role.Pen().Fill == scene.Unfilled && !faced(it.Role) || p.tiny(it) {
		return
	}
	p.mask.reset()
	p.mask.footprint(&it.Area, &p.Map)
	p.dots.erase(&p.mask)
	if faced(it.Role) {
		p.faces.lay(&p.mask, groundOf(it.Item))
	}
	p.weigh(&p.mask, 1)
	switch fill := it.Role.Pen().Fill; {
	case fills[fill] == nil:
	case !p.look.Faces:
		p.lay(&p.mask, &p.fills[fill], Ink{Role: it.Role, Tone: Faint}, 1)
	case !it.Selected:
		p.weave(&p.mask, fill, Ink{Role: it.Role, Tone: Faint})
	}
}

// weave lays the texture of an area on those cells that it covers whole: on its edges it would hide where they are.
func (p *painter) weave(mask *bitmap, fill scene.Fill, ink Ink) {
	for row := (mask.top + dotsDown - 1) / dotsDown; (row+1)*dotsDown <= mask.bottom; row++ {
		mask.covered(row, func(col int) {
			if mask.octet(col, row) == 0xFF {
				p.dots.stamp(col, row, &p.fills[fill])
				p.inks[row*p.Cols+col] = ink
			}
		})
	}
}

// weigh notes that something stands in the cells of a mask.
func (p *painter) weigh(mask *bitmap, front uint8) {
	for row := mask.top / dotsDown; row*dotsDown < mask.bottom; row++ {
		mask.cells(row, func(col int) {
			i := row*p.Cols + col
			p.fronts[i] = max(p.fronts[i], front)
		})
	}
}

// near is the scale up to which the heater's own parts and what stands on the other side of the floor are seen.
const near = 12

// tiny says whether an item would only be a blot at this scale.
func (p *painter) tiny(it *part) bool {
	const least = 5 // dots
	switch it.Role {
	case scene.Hole:
		return p.Scale > near || p.small(&it.Area)
	case scene.Wish:
		return it.Primitive == scene.Outline && p.small(&it.Area)
	case scene.Space, scene.Wheel:
		return p.Scale > near
	case scene.Fitting:
		return p.Scale > near && p.projection.Hidden(it.Item) && it.State < scene.Doubtful
	case scene.Plate, scene.Body:
		return p.Scale > near || it.Primitive == scene.Outline && 2*min(it.Area.Half.X, it.Area.Half.Y) < least*p.Scale
	}
	return false
}

// small says whether a hole is too small on the screen to be told from a blot: then one character stands for it. Seen
// edge on a round hole is a rectangle.
func (p *painter) small(f *geometry.Footprint) bool {
	return max(f.Radius, f.Half.X, f.Half.Y) < 3*p.Scale
}

// lay inks the dots of a mask and gives their cells its colour where nothing in front of it has been.
func (p *painter) lay(mask *bitmap, woven *ink, ink Ink, front uint8) {
	if mask.top >= mask.bottom {
		return
	}
	p.dots.paint(mask, woven)
	for row := mask.top / dotsDown; row <= (mask.bottom-1)/dotsDown; row++ {
		mask.cells(row, func(col int) {
			if i := row*p.Cols + col; front >= p.fronts[i] {
				p.inks[i], p.fronts[i] = ink, front
			}
		})
	}
}
