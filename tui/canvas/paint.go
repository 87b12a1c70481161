package canvas

import (
	"math"

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
	case fill == scene.Hatched && !it.Selected:
		p.hatch(&p.mask, Ink{Role: it.Role, Tone: Faint})
	}
}

// hatch lays the texture of an area on those cells that it covers whole: on its edges it would hide where they are.
func (p *painter) hatch(mask *bitmap, ink Ink) {
	for row := (mask.top + dotsDown - 1) / dotsDown; (row+1)*dotsDown <= mask.bottom; row++ {
		mask.covered(row, func(col int) {
			if mask.octet(col, row) == 0xFF {
				p.dots.stamp(col, row, &p.fills[scene.Hatched])
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

// thin tells whether an area is a line that is thinner than two dots.
func (p *painter) thin(it *part) bool {
	return it.Primitive == scene.Area && it.Area.Shape == geometry.Line && it.Area.Radius < thin*p.Scale
}

// trace draws an item's lines.
func (p *painter) trace(it *part) {
	switch {
	case it.Primitive == scene.Spot, it.Role == scene.Cut && p.circle.shown, p.tiny(it):
	case it.Line != nil:
		p.along(it, it.Line)
	case p.thin(it):
		p.along(it, it.Area.Path)
	case it.Primitive == scene.Area && p.look.Faces && faced(it.Role) && !it.Unsure:
	case p.upright(it):
		p.along(it, corners(&it.Area))
	default:
		p.outlined(it)
	}
}

// upright tells whether an outline is a rectangle along the rows and columns that is drawn with lines.
func (p *painter) upright(it *part) bool {
	lined := it.Primitive == scene.Outline || it.Role.Pen().Fill == scene.Unfilled
	return lined && it.Area.Shape == geometry.Rectangle && math.Mod(it.Area.Turn, 90) == 0
}

// corners are those of a rectangle, the first again at the end.
func corners(f *geometry.Footprint) []geometry.Point {
	c := f.Corners()
	return []geometry.Point{c[0], c[1], c[2], c[3], c[0]}
}

// along draws an item's line through places.
func (p *painter) along(it *part, path []geometry.Point) {
	like := stroke{style: styleOf(p.projection.LineOf(it.Item), it.Weight()), front: it.Role.Pen().Front, ink: lineInk(it.Item)}
	p.mask.reset()
	p.stroke(path, like, &p.mask)
	if it.Role == scene.Dimension {
		p.witness(path, like)
	}
	p.draw(&p.mask, it)
}

// outlined draws an item's outline by dots.
func (p *painter) outlined(it *part) {
	line := &p.edge
	p.mask.reset()
	p.mask.footprint(&it.Area, &p.Map)
	p.mask.outline(&p.edge)
	if it.Role.Pen().Fill == scene.Filled {
		line = &p.mask
	}
	p.draw(line, it)
}

// draw lays the dots of an item's line.
func (p *painter) draw(line *bitmap, it *part) {
	if line.top >= line.bottom {
		return
	}
	if pen := it.Role.Pen(); !p.look.Faces && (pen.Rim || it.Selected) {
		line.grow(&p.halo)
		p.dots.erase(&p.halo)
	}
	if it.Weight() == scene.Heavy {
		line.grow(&p.halo)
		line = &p.halo
	}
	p.lay(line, &p.lines[p.projection.LineOf(it.Item)], lineInk(it.Item), it.Role.Pen().Front)
}

// lineInk is the ink of an item's lines.
func lineInk(it *scene.Item) Ink {
	ink := Ink{Role: it.Role, Selected: it.Selected}
	if !it.Role.Pen().Steady {
		ink.State = it.State
	}
	if it.Layer != scene.Through && it.Role.Pen().Front <= 4 && it.Role == scene.Fitting {
		ink.Tone = Faint
	}
	return ink
}

// inTheWay shows in the colour of what is foul the part of a thing that stands in the way of the cut.
func (p *painter) inTheWay() {
	if !p.circle.shown {
		return
	}
	foul := Ground{Role: scene.Conflict, Set: true}
	for i := range p.parts {
		it := &p.parts[i]
		if it.State != scene.Foul || it.Primitive != scene.Area || it.Code == "" {
			continue
		}
		p.mask.reset()
		p.mask.footprint(&it.Area, &p.Map)
		if p.thin(it) {
			p.cellsOf(it)
		}
		p.edge.reset()
		p.edge.disc(p.circle.middle, p.circle.radius)
		p.mask.meet(&p.edge)
		p.faces.lay(&p.mask, foul)
	}
}

// cellsOf sets the mask to the whole cells that a thin line is drawn in.
func (p *painter) cellsOf(it *part) {
	for row := range p.Rows {
		for col := range p.Cols {
			s := &p.strokes.cells[(p.flip(row)+p.Top)*p.canvas.Width+p.Left+col]
			if s.arms == 0 || s.ink != lineInk(it.Item) {
				continue
			}
			for y := range dotsDown {
				p.mask.span(row*dotsDown+y, col*dotsAcross, (col+1)*dotsAcross-1)
			}
		}
	}
}

// far is the scale in mm a dot from which the parts of a heater are left out: only the cut and the runs are seen.
const far = 25

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

// gridScale is up to which scale a grid helps: the rulers are far from what is looked at then.
const gridScale = 8

// grid puts a faint dot where two lines of the grid cross on bare floor.
func (p *painter) grid() {
	if !(p.spacing > 0) || p.Scale > gridScale {
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

// develop turns faces, lines and dots into characters on the canvas, the right way up for whoever looks.
func (p *painter) develop() {
	for i := range p.canvas.Cells {
		p.canvas.Cells[i].Rune = ' '
	}
	braille := &upright
	if p.over {
		braille = &mirrored
	}
	for row := range p.Rows {
		first := (p.flip(row)+p.Top)*p.canvas.Width + p.Left
		line, strokes := p.canvas.Cells[first:], p.strokes.cells[first:]
		for col := range p.Cols {
			cell := &line[col]
			most, other, edge := p.faces.cell(col, row)
			cell.Ground = most
			dots := p.dots.octet(col, row)
			switch s := &strokes[col]; {
			case s.arms != 0 && (dots == 0 || s.front >= p.fronts[row*p.Cols+col]):
				cell.Rune, cell.Ink = s.char(), s.ink
				p.fronts[row*p.Cols+col] = s.front
			case dots != 0:
				cell.Rune, cell.Ink = braille[dots], p.inks[row*p.Cols+col]
			case edge != 0 && p.look.Faces:
				cell.edge(edge, most, other, p.over)
			}
		}
	}
}

// edge shows where one face ends and another begins. What has none can't be ink.
func (c *Cell) edge(dots uint8, most, other Ground, over bool) {
	if over {
		dots = turnedOver(dots)
	}
	b := blocks[dots]
	switch {
	case !other.Set:
		b, most, other = plainBlocks[^dots], other, most
	case !most.Set:
		b = plainBlocks[dots]
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
	out := Canvas{Map: c.Map, Width: max(w, 0), Height: max(h, 0), faces: c.faces}
	for row := range out.Height {
		out.Cells = append(out.Cells, c.Cells[row*c.Width:row*c.Width+out.Width]...)
	}
	return out
}
