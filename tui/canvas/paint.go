package canvas

import (
	"math"
	"reflect"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// Paint paints a scene on w columns and h rows, rulers and words included. Smaller than MinWidth by MinHeight it is cut
// off. It keeps nothing: the same scene, size and look give the same canvas.
func Paint(s scene.Scene, w, h int, look Look) Canvas { return new(Painter).Paint(s, w, h, look) }

// Painter paints one picture after the other in the same memory, half a megabyte: taking that anew for each would be a
// good part of what a picture costs. Its zero value is ready. One picture leaves nothing for the next, but, where that is to be calm, where its
// names stand; and one that is wanted again is there.
type Painter struct {
	painter
	shown *wanted // what the canvas is of; nil before the first
	lent  []Cell  // the canvas's cells, for whoever asked to write on
}

// wanted is all that a picture rests on.
type wanted struct {
	w, h  int
	look  Look
	scene scene.Scene
}

// Paint is Paint for a canvas that lasts until the painter paints the next.
func (p *Painter) Paint(s scene.Scene, w, h int, look Look) Canvas {
	if now := (&wanted{w, h, look, s}); !reflect.DeepEqual(now, p.shown) {
		p.paint(s, max(w, MinWidth), max(h, MinHeight), look)
		p.shown = now
	}
	c := p.canvas.cropped(w, h)
	p.lent = append(p.lent[:0], c.Cells...)
	c.Cells, c.Texts = p.lent, slices.Clip(c.Texts)
	return c
}

// paint paints a picture.
func (p *painter) paint(s scene.Scene, w, h int, look Look) {
	p.begin(s, w, h, look)
	p.areas()
	for i := range p.parts {
		p.trace(&p.parts[i])
	}
	p.inTheWay()
	p.grid()
	p.develop()
	p.frame()
	p.ring()
	p.pastRing()
	p.breakOff()
	p.ends()
	p.spots()
	p.labels()
	if p.circle.shown {
		p.canvas.ring = (p.circle.radius + ringHalf) * p.Scale
	}
}

// areas lays what is solid, and the shade of the floor behind everything but the floor itself.
func (p *painter) areas() {
	shaded := p.look.Shade == nil
	for i := range p.parts {
		if it := &p.parts[i]; it.Primitive == scene.Area {
			p.fill(it)
			if !shaded && it.Role == scene.Floor {
				p.shade(p.look.Shade)
				shaded = true
			}
		}
	}
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
	taken            cellset    // cells of the canvas that hold words or must stay in sight
	exits            []exit     // of runs
	below            []*part    // what the line below says of that lies out of view
	rearNamed        bool       // the bumper\'s name stands on it
	farBumper        scene.Item // the bumper, beside the picture where it lies beyond that
	barOff           float64    // by how much, mm; 0 where it is where it is drawn
	seats            []seat     // used again and again
	costs            []uint16   // of each cell of the canvas: what a character there would hide
	sums             []int32    // of the costs of all cells before each
	ways             ways       // of leaders to come
	before, after    writing    // of names
	rivals           rivals     // what names may be mistaken for
	stood            stood      // where names stood in the picture before
}

// part is an item with what is seen of it.
type part struct {
	*scene.Item
	scene.Seen
	stroke  uint16   // which line it is drawn by; 0 for none
	kind    int      // which of the picture's kinds it is of, where it has a code
	anchors []anchor // that a leader may go to, once somebody has asked
}

// finer is how many times finer than a dot the lines are that bends are painted by.
const finer = 64

// begin lays out a picture in which nothing is painted yet.
func (p *painter) begin(s scene.Scene, w, h int, look Look) {
	m := NewMap(s, w, h, look.Camera, look.Units)
	cells := m.Cols * m.Rows
	p.Map, p.fabric, p.projection, p.look, p.spacing = m, newFabric(&m), s.Projection, look, s.Grid
	p.see(&s)
	for _, b := range []*bitmap{&p.dots, &p.mask, &p.edge, &p.halo} {
		b.begin(m.wide, m.tall)
	}
	p.faces.begin(&m)
	p.strokes.cells, p.strokes.of = emptied(p.strokes.cells, w*h), 0
	p.inks, p.fronts = emptied(p.inks, cells), emptied(p.fronts, cells)
	p.canvas = Canvas{Map: m, Width: w, Height: h, Cells: blank(p.canvas.Cells, w*h), faces: look.Faces, few: look.Few, known: p.wardrobe()}
	p.taken.begin(w * h)
	p.costs, p.sums = emptied(p.costs, w*h), emptied(p.sums, w*h+1)
	p.exits, p.rearNamed, p.below = p.exits[:0], false, p.below[:0]
	p.circle = p.ringOf()
}

// leastBand is the least radius of a band in a picture, in dots. Where slopes are looked at it is as thick as it is.
const leastBand = 1

// see finds what is seen of a scene's items.
func (p *painter) see(s *scene.Scene) {
	clear(p.parts) // what they hold on to may be a job that is long gone
	p.parts = p.parts[:0]
	p.barOff = 0
	for i := range s.Items {
		it := &s.Items[i]
		if it.Role == scene.Bumper {
			p.farBumper, p.barOff = p.barAtEdge(it, &s.Projection)
			it = &p.farBumper
		}
		if f, ok := s.Projection.Seen(it, p.Scale/finer); ok {
			if it.Role.Pen().Band && f.Area.Shape == geometry.Line && f.Area.Radius < leastBand*p.Scale && !s.Projection.Slopes {
				f.Area.Radius = leastBand * p.Scale
				if it.Role == scene.Exhaust {
					f.Area.Path = p.endInCell(f.Area.Path)
				}
			}
			p.parts = append(p.parts, part{Item: it, Seen: f})
		}
	}
}

// endInCell is a path moved by less than a cell, so that its end lies in the middle of its cell: the sign of the end, which fills
// one, stands on the band.
func (p *painter) endInCell(path []geometry.Point) []geometry.Point {
	end := p.dot(path[len(path)-1])
	by := geometry.Point{
		X: ((math.Floor(end.x/dotsAcross)+0.5)*dotsAcross - end.x) * p.Scale, Y: -((math.Floor(end.y/dotsDown)+0.5)*dotsDown - end.y) * p.Scale,
	}
	moved := make([]geometry.Point, len(path))
	for i := range path {
		moved[i] = path[i].Add(by)
	}
	return moved
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
		if it.Role == scene.Exhaust && p.look.Faces {
			p.partRuns()
		}
		p.faces.lay(&p.mask, groundOf(it.Item))
	}
	p.weigh(&p.mask, 1)
	switch fill := it.Role.Pen().Fill; {
	case fills[fill] == nil:
	case !p.look.Faces:
		p.lay(&p.mask, &p.fills[fill], Ink{Role: it.Role, Tone: Faint}, 1)
	case !it.Selected:
		p.weave(&p.mask, fill, textureInk(it.Role))
	}
}

// partRuns bares a rim round the exhaust in the mask where the heater's other runs pass it: bands that touch would be one pipe.
func (p *painter) partRuns() {
	p.mask.grow(&p.halo)
	p.halo.grow(&p.edge)
	for _, role := range [2]scene.Role{scene.Intake, scene.Fuel} {
		p.faces.recast(&p.edge, Ground{Role: role, Set: true}, Ground{Role: scene.Floor, Set: true})
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
func (m *Map) tiny(seen *scene.Projection, it *part) bool {
	const least = 5 // dots
	if m.Rows < fewRows && it.Role.Pen().Yields && it.State != scene.Foul || m.Scale > near && far(seen, it) {
		return true
	}
	switch it.Role {
	case scene.Hole:
		return m.small(&it.Area)
	case scene.Wish:
		return it.Primitive == scene.Outline && m.small(&it.Area)
	case scene.Plate, scene.Body:
		return it.Primitive == scene.Outline && 2*min(it.Area.Half.X, it.Area.Half.Y) < least*m.Scale
	}
	return false
}

// far says whether an item is not drawn in a picture from farther off.
func far(seen *scene.Projection, it *part) bool {
	switch it.Role.Pen().Range {
	case scene.Near:
		return true
	case scene.UnhiddenOrNear:
		return seen.Hidden(it.Item) && it.State < scene.Doubtful
	}
	return false
}

// tiny says whether an item is left out, as it would only be a blot, or lies beyond the edge where the van is broken off.
func (p *painter) tiny(it *part) bool {
	return it.Role == scene.Bumper && p.barOff > 0 || p.Map.tiny(&p.projection, it)
}

// small says whether a hole is too small on the screen to be told from a blot: then one character stands for it. Seen
// edge on a round hole is a rectangle.
func (m *Map) small(f *geometry.Footprint) bool {
	return max(f.Radius, f.Half.X, f.Half.Y) < 3*m.Scale
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
