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
	p.grid()
	p.develop()
	p.frame()
	p.spots()
	p.labels()
	p.figure()
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
	dots             bitmap  // what will be seen
	mask, edge, halo bitmap  // one item at a time
	inks             []Ink
	fronts           []uint8 // what of it is in front in each cell: it gives the colour, and a label would hide it
	grounds          []Ground
	canvas           Canvas
	taken            []bool // cells of the canvas that hold words or must stay in sight
	seats            []seat // used again and again
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
	m := NewMap(s, w, h, look.Camera)
	cells, parts := m.Cols*m.Rows, partsOf(&s, m.Scale)
	return &painter{
		Map: m, fabric: newFabric(&m), projection: s.Projection, look: look, parts: parts, spacing: s.Grid,
		dots: newBitmap(m.wide, m.tall), mask: newBitmap(m.wide, m.tall),
		edge: newBitmap(m.wide, m.tall), halo: newBitmap(m.wide, m.tall),
		inks: make([]Ink, cells), fronts: make([]uint8, cells), grounds: make([]Ground, cells),
		canvas: Canvas{Map: m, Width: w, Height: h, Cells: make([]Cell, w*h)},
		taken:  make([]bool, w*h),
	}
}

// fill lays an area's texture and ground.
func (p *painter) fill(it *part) {
	p.mask.reset()
	p.mask.footprint(&it.Area, &p.Map)
	p.dots.erase(&p.mask)
	if fill := it.Role.Pen().Fill; fills[fill] != nil {
		p.lay(&p.mask, &p.fills[fill], Ink{Role: it.Role, Tone: Faint}, 1)
	}
	if it.Area.Shape == geometry.Line && it.Area.Radius < 2*p.Scale {
		return // the ground of a thin line would be a row of blots
	}
	ground := Ground{Role: it.Role, Set: true}
	for row := p.mask.top / dotsDown; row*dotsDown < p.mask.bottom; row++ {
		p.mask.covered(row, func(col int) { p.grounds[row*p.Cols+col] = ground })
	}
}

// trace draws an item's lines.
func (p *painter) trace(it *part) {
	line, pen := &p.edge, it.Role.Pen()
	p.mask.reset()
	switch {
	case it.Primitive == scene.Spot, p.tiny(it):
		return
	case it.Line != nil:
		p.mask.path(p.Map.dots(it.Line), 0)
		line = &p.mask
	default:
		p.mask.footprint(&it.Area, &p.Map)
		p.mask.outline(&p.edge)
		if pen.Fill == scene.Filled {
			line = &p.mask
		}
	}
	if pen.Rim || it.Selected {
		line.grow(&p.halo)
		p.dots.erase(&p.halo)
	}
	if it.Weight() == scene.Heavy {
		line.grow(&p.halo)
		line = &p.halo
	}
	ink := Ink{Role: it.Role, Selected: it.Selected}
	front := pen.Front
	if !pen.Steady {
		ink.State = it.State
		if it.State == scene.Foul {
			front++
		}
	}
	p.lay(line, &p.lines[p.projection.LineOf(it.Item)], ink, front)
}

// far is the scale in mm a dot from which the parts of a heater are left out: only the cut and the runs are seen.
const far = 25

// tiny says whether an item would only be a blot at this scale.
func (p *painter) tiny(it *part) bool {
	const least = 5 // dots
	switch it.Role {
	case scene.Cut, scene.Hole, scene.Wish:
		return it.Primitive == scene.Outline && p.small(&it.Area)
	case scene.Space:
		return p.Scale > far
	case scene.Plate, scene.Body:
		return p.Scale > far || it.Primitive == scene.Outline && 2*min(it.Area.Half.X, it.Area.Half.Y) < least*p.Scale
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

// grid puts a faint dot where two lines of the grid cross on bare floor.
func (p *painter) grid() {
	if !(p.spacing > 0) {
		return
	}
	step := p.spacing * round(6*p.Scale/p.spacing)
	for i := range p.parts {
		if it := &p.parts[i]; it.Role == scene.Floor && it.Primitive == scene.Area {
			low, high := it.Area.Bounds()
			p.gridOn(low, high, step)
		}
	}
}

func (p *painter) gridOn(low, high geometry.Point, step float64) {
	for x := first(low.X, step); x <= high.X; x += step {
		for y := first(low.Y, step); y <= high.Y; y += step {
			d := p.dot(geometry.Point{X: x, Y: y})
			col, row := floor(d.x/dotsAcross), floor(d.y/dotsDown)
			if col < 0 || col >= p.Cols || row < 0 || row >= p.Rows || p.dots.octet(col, row) != 0 {
				continue
			}
			p.dots.set(floor(d.x), floor(d.y))
			p.inks[row*p.Cols+col] = Ink{Role: scene.Floor, Tone: Faint}
		}
	}
}

// develop turns dots into braille characters on the canvas, the right way up for whoever looks.
func (p *painter) develop() {
	for i := range p.canvas.Cells {
		p.canvas.Cells[i].Rune = ' '
	}
	braille := &upright
	if p.over {
		braille = &mirrored
	}
	for row := range p.Rows {
		line := p.canvas.Cells[(p.flip(row)+p.Top)*p.canvas.Width+p.Left:]
		for col := range p.Cols {
			i := row*p.Cols + col
			line[col].Ground = p.grounds[i]
			if dots := p.dots.octet(col, row); dots != 0 {
				line[col].Rune, line[col].Ink = braille[dots], p.inks[i]
			}
		}
	}
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
	out := Canvas{Map: c.Map, Width: max(w, 0), Height: max(h, 0)}
	for row := range out.Height {
		out.Cells = append(out.Cells, c.Cells[row*c.Width:row*c.Width+out.Width]...)
	}
	return out
}
