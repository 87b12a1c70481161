package canvas

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
)

// Margins of the picture, in cells: the ruler on the left and the head line.
const (
	gutter   = 6
	headRows = 1
)

// scant is how many rows a canvas has at least that has a foot line: with fewer its head says what that would.
const scant = 12

// footRows are the rows below a picture of h rows in all: the ruler, and where there is room for them the foot line and one
// for a key of the shades.
func footRows(h int) int {
	switch {
	case h < scant:
		return 1
	case h < 20:
		return 2
	}
	return 3
}

// A cell is two dots wide and four high. Cells are taken to be twice as high as wide, so dots are square.
const (
	dotsAcross = 2
	dotsDown   = 4
)

// Map carries places to cells of a painted canvas and back.
type Map struct {
	plane         scene.Plane
	over          bool    // the plane is seen from its back
	Scale         float64 // mm a dot
	Left, Top     int     // cells beside and above the picture
	Cols, Rows    int     // the picture, in cells
	west, north   float64 // mm: the top left corner of the picture as its plane has it
	wide, tall    int     // the picture, in dots
	shiftX, shift int     // where textures start
}

// NewMap returns how Paint lays a scene out on w columns and h rows (at least MinWidth and MinHeight) under a camera.
// A camera without scale fits the whole scene. The scale is always one at which the numbers of a ruler stand evenly, and the picture lies so that what
// they count stands in the middle of a cell: it is moved by half a cell at the most.
func NewMap(s scene.Scene, w, h int, camera desk.Camera, units survey.Units) Map {
	m := Map{
		plane: s.Projection.Plane, over: s.Projection.Over,
		Left: gutter, Top: headRows, Cols: max(w-gutter, 1), Rows: max(h-headRows-footRows(h), 1),
	}
	if hasBelow(h, &s.Projection, camera) {
		m.Rows--
	}
	m.wide, m.tall = m.Cols*dotsAcross, m.Rows*dotsDown
	half := geometry.Point{X: float64(m.wide), Y: float64(m.tall)}.Scale(0.5)
	low, high := camera.Middle, camera.Middle
	if camera.Scale > 0 {
		m.Scale = Even(camera.Scale, units)
		low, high = low.Sub(half.Scale(m.Scale)), high.Add(half.Scale(m.Scale))
	} else {
		low, high = s.Min, s.Max
		m.Scale = m.fit(low, high, units)
	}
	cols, rows := m.CellSize()
	m.west, _ = inCells(low.X, high.X, float64(m.Cols), cols)
	south, _ := inCells(low.Y, high.Y, float64(m.Rows), rows)
	m.north = south + float64(m.tall)*m.Scale
	m.shiftX = int(math.Mod(math.Round(m.west/m.Scale), 8)) + 8
	m.shift = int(math.Mod(math.Round(-m.north/m.Scale), 8)) + 8
	return m
}

// Fit returns the camera that shows places, of which there is at least one, and so many mm round them on w columns and
// h rows.
func Fit(view scene.View, places []geometry.Point3, around float64, w, h int, units survey.Units) desk.Camera {
	s := scene.Scene{Projection: view.Projection()}
	s.Min = s.Projection.Point(places[0])
	s.Max = s.Min
	for _, place := range places {
		p := s.Projection.Point(place)
		s.Min = geometry.Point{X: min(s.Min.X, p.X), Y: min(s.Min.Y, p.Y)}
		s.Max = geometry.Point{X: max(s.Max.X, p.X), Y: max(s.Max.Y, p.Y)}
	}
	margin := geometry.Point{X: around, Y: around}
	s.Min, s.Max = s.Min.Sub(margin), s.Max.Add(margin)
	m := NewMap(s, w, h, desk.Camera{}, units)
	return desk.Camera{View: view, Middle: m.Middle(), Scale: m.Scale}
}

// fit returns the scale that shows the box from low to high, whole.
func (m *Map) fit(low, high geometry.Point, units survey.Units) float64 {
	size := high.Sub(low)
	scale := evenFrom(max(size.X/float64(m.wide), size.Y/float64(m.tall), MinScale), units)
	for range mostScales {
		_, across := inCells(low.X, high.X, float64(m.Cols), scale*dotsAcross)
		_, down := inCells(low.Y, high.Y, float64(m.Rows), scale*dotsDown)
		if across && down {
			break
		}
		const finer = 1e-9
		scale = evenFrom(scale*(1+finer), units)
	}
	return scale
}

// mostScales is how many scales are tried: with two cells to spare any would do, and each is at most a ninth coarser than the one before.
const mostScales = 20

// inCells is where so many cells of a size begin that show what lies from low to high in their middle, with 0 and so all that a ruler counts in the
// middle of a cell; whole tells whether they show all of it.
func inCells(low, high, cells, size float64) (begin float64, whole bool) {
	const hair = 1e-6 // of a cell
	from := func(at float64) float64 { return at/size + 0.5 }
	wanted := math.Round(from((low + high - cells*size) / 2))
	least, most := math.Ceil(from(high-cells*size)-hair), math.Floor(from(low)+hair)
	if whole = least <= most; whole {
		wanted = min(max(wanted, least), most)
	}
	return (wanted - 0.5) * size, whole
}

// Middle returns the place of the plane in the middle of the picture, mm.
func (m Map) Middle() geometry.Point {
	return geometry.Point{X: m.west + float64(m.wide)/2*m.Scale, Y: m.north - float64(m.tall)/2*m.Scale}
}

// CellSize returns how many mm a cell is wide and high.
func (m Map) CellSize() (wide, high float64) { return m.Scale * dotsAcross, m.Scale * dotsDown }

// CellOf returns the cell where a place is seen, counted from the canvas's top left, and whether it lies in the picture.
func (m Map) CellOf(p geometry.Point3) (col, row int, ok bool) { return m.Cell(m.plane.Point(p)) }

// Cell returns the cell that a place of the plane lies in, and whether it lies in the picture.
func (m Map) Cell(p geometry.Point) (col, row int, ok bool) { return m.cell(p) }

// cell is Cell, and point Point, for what asks thousands of times a picture: a map is large.
func (m *Map) cell(p geometry.Point) (col, row int, ok bool) {
	d := m.dot(p)
	col, row = floor(d.x/dotsAcross), m.flip(floor(d.y/dotsDown))
	return col + m.Left, row + m.Top, col >= 0 && col < m.Cols && row >= 0 && row < m.Rows
}

// Point returns the place of the plane in the middle of a cell, and whether the cell belongs to the picture.
func (m Map) Point(col, row int) (p geometry.Point, ok bool) { return m.point(col, row) }

func (m *Map) point(col, row int) (p geometry.Point, ok bool) {
	col, row = col-m.Left, row-m.Top
	ok = col >= 0 && col < m.Cols && row >= 0 && row < m.Rows
	row = m.flip(row)
	return geometry.Point{
		X: m.west + (float64(col)+0.5)*dotsAcross*m.Scale,
		Y: m.north - (float64(row)+0.5)*dotsDown*m.Scale,
	}, ok
}

// flip turns a row of cells as the plane has it into the one on the screen, and back.
func (m *Map) flip(row int) int {
	if m.over {
		return m.Rows - 1 - row
	}
	return row
}

func (m *Map) dot(p geometry.Point) vec {
	return vec{(p.X - m.west) / m.Scale, (m.north - p.Y) / m.Scale}
}

func (m *Map) dots(points []geometry.Point) []vec {
	dots := make([]vec, len(points))
	for i, p := range points {
		dots[i] = m.dot(p)
	}
	return dots
}
