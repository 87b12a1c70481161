package plan

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// step is how much nearer a press brings the floor.
const step = 1.25

// closeUp is the scale in mm a dot from which on a whole floor is too small to see what is near the cut: the pane then
// looks at that alone, until the whole floor is asked for.
const closeUp = 45

// closeUpScale is how near such a pane looks at the cut at the farthest, mm a dot: at 20 mm a column the circle has its own size, and what
// is nearest to it is told apart.
const closeUpScale = 10

// closeUpRows is how few rows such a pane has.
const closeUpRows = 7

// ringMargin is how many rows more than the cut is across a picture has that is sure to have all of the ring: it lies by half a cell beside its place at the
// most, and the ring is drawn a dot wider.
const ringMargin = 1.5

// lay returns how the pane shows the floor now.
func (p Pane) lay(s desk.State, opts Options) canvas.Map {
	shown := scene.Scene{Projection: s.Camera.View.Projection()} // enough for a picture with a scale of its own
	if s.Camera.Scale == 0 {
		shown = p.draw(s, opts)
	}
	w, h := p.drawn()
	return canvas.NewMap(shown, w, h, p.camera(shown, s, opts), s.Settings.Units)
}

func (p Pane) size() (w, h int) { return max(p.w, canvas.MinWidth), max(p.h, canvas.MinHeight) }

// drawn is the size of the drawing; that of the pane where the legend stands in its place.
func (p Pane) drawn() (w, h int) {
	w, h = p.size()
	if in := p.parted(w, h); in.w > 0 {
		return in.w, in.h
	}
	return w, h
}

// hidden tells whether the legend stands in the drawing's place.
func (p Pane) hidden() bool {
	w, h := p.size()
	return p.parted(w, h).w == 0
}

// camera is the one the pane looks through at a plan: that of the desk, or on a small pane one at what matters, which has the ring whole.
func (p Pane) camera(shown scene.Scene, s desk.State, opts Options) desk.Camera {
	c := p.aimed(shown, s, opts)
	if s.Camera.Scale > 0 || s.Job.Cut == nil {
		return c
	}
	w, h := p.drawn()
	m := canvas.NewMap(shown, w, h, c, s.Settings.Units)
	if middle := wholeIn(m, shown.Projection.Point(s.Result.Plan.Cut.At.At(0)), s.Job.Cut.Across/2); middle != m.Middle() {
		return desk.Camera{View: s.Camera.View, Middle: middle, Scale: m.Scale}
	}
	return c
}

// wholeIn is the middle of a picture, moved by as little as has all of the ring round a cut that it sees, where it has room for that.
func wholeIn(m canvas.Map, cut geometry.Point, radius float64) geometry.Point {
	middle, reach := m.Middle(), canvas.RingReach(radius, m.Scale)
	if _, _, seen := m.Cell(cut); !seen || !m.HasRing(radius) {
		return middle
	}
	wide, high := m.CellSize()
	shift := func(off, size, cell float64) float64 {
		room := size/2 - reach
		if room < 0 {
			return 0
		}
		room = max(room-cell, 0) // the picture lies by half a cell beside its place at the most, and the ring by another
		return off - min(max(off, -room), room)
	}
	off := cut.Sub(middle)
	return middle.Add(geometry.Point{X: shift(off.X, wide*float64(m.Cols), wide), Y: shift(off.Y, high*float64(m.Rows), high)})
}

// aimed is that camera before the ring is seen to.
func (p Pane) aimed(shown scene.Scene, s desk.State, opts Options) desk.Camera {
	w, h := p.drawn()
	if s.Camera.Scale > 0 || s.Camera.Whole || canvas.NewMap(shown, w, h, s.Camera, s.Settings.Units).Scale < closeUp {
		return s.Camera
	}
	if opts.Follow && s.Selected >= 0 && s.Selected < len(s.Result.Plan.Obstructions) {
		low, high := s.Result.Plan.Obstructions[s.Selected].Prism.Footprint.Bounds()
		middle := low.Add(high).Scale(0.5).At(0)
		return canvas.Fit(s.Camera.View, []geometry.Point3{middle}, vehicles.LookRound, w, h, s.Settings.Units)
	}
	if s.Job.Cut == nil || opts.LeftOver != nil {
		return s.Camera
	}
	near := p.atCut(s)
	m := canvas.NewMap(shown, w, h, near, s.Settings.Units)
	if m.Rows <= closeUpRows {
		_, high := m.CellSize()
		high /= m.Scale
		const spare = 1.1                                                           // scales that are even are that far apart
		whole := spare * s.Job.Cut.Across / ((float64(m.Rows) - ringMargin) * high) // so that all of the ring is seen
		near.Scale = canvas.Even(min(near.Scale, max(closeUpScale, whole)), s.Settings.Units)
		near.Middle = s.Camera.View.Projection().Point(s.Result.Plan.Cut.At.At(0)) // not by a cell of the scale before
	}
	if opts.Here == nil {
		return near
	}
	return turnedTo(near, shown.Projection.Point(*opts.Here), canvas.NewMap(shown, w, h, near, s.Settings.Units))
}

// turnedTo is a camera moved by half pictures until it sees a place: one that is moved by little then leaves the picture where it is.
func turnedTo(c desk.Camera, at geometry.Point, m canvas.Map) desk.Camera {
	if _, _, seen := m.Cell(at); seen {
		return c
	}
	wide, high := m.CellSize()
	off := at.Sub(c.Middle)
	halfX, halfY := wide*float64(m.Cols)/2, high*float64(m.Rows)/2
	c.Middle = c.Middle.Add(geometry.Point{X: math.Round(off.X/halfX) * halfX, Y: math.Round(off.Y/halfY) * halfY})
	return c
}

// Cell returns the cell of the pane where a place is seen, and whether it lies in the picture.
func (p Pane) Cell(at geometry.Point3, s desk.State, opts Options) (col, row int, seen bool) {
	return p.Cells(s, opts)(at)
}

// Cells is Cell for many places of one picture.
func (p Pane) Cells(s desk.State, opts Options) func(at geometry.Point3) (col, row int, seen bool) {
	lay, hidden := p.lay(s, opts), p.hidden()
	return func(at geometry.Point3) (col, row int, seen bool) {
		col, row, seen = lay.CellOf(at)
		return col, row, seen && !hidden
	}
}

// Plane returns the place of the picture's plane in a cell of the pane, and whether it lies in the picture.
func (p Pane) Plane(col, row int, s desk.State, opts Options) (at geometry.Point, ok bool) {
	return p.lay(s, opts).Point(col, row)
}

// turnedOver looks at the same place in the next view.
func turnedOver(c desk.Camera) desk.Camera {
	c = SeenFrom(c, c.View.Next())
	c.Whole = false
	return c
}

// SeenFrom is a camera that looks at the same place in another view.
func SeenFrom(c desk.Camera, view scene.View) desk.Camera {
	from, to := c.View.Projection(), view.Projection()
	c.View, c.Middle = view, to.Point(from.Unproject(c.Middle))
	return c
}

// zoomedHere changes the scale by a factor about the place in hand, which stays in the picture; about the picture's middle where none is seen.
func (p Pane) zoomedHere(s desk.State, opts Options, factor float64) desk.Camera {
	m := p.lay(s, opts)
	if opts.Here == nil {
		return p.zoomed(s, opts, factor, m.Middle())
	}
	if _, _, seen := m.CellOf(*opts.Here); !seen {
		return p.zoomed(s, opts, factor, m.Middle())
	}
	here := s.Camera.View.Projection().Point(*opts.Here)
	s.Camera = p.zoomed(s, opts, factor, here)
	if _, _, seen := p.lay(s, opts).CellOf(*opts.Here); !seen { // at the edge, by the part of a cell that pictures are laid on
		s.Camera.Middle = here
	}
	return s.Camera
}

// zoomed changes the scale by a factor and leaves one place where it is on the screen.
func (p Pane) zoomed(s desk.State, opts Options, factor float64, still geometry.Point) desk.Camera {
	m := p.lay(s, opts)
	scale := canvas.Even(min(max(m.Scale*factor, canvas.MinScale), canvas.MaxScale), s.Settings.Units)
	middle := still.Add(m.Middle().Sub(still).Scale(scale / m.Scale))
	return desk.Camera{View: s.Camera.View, Middle: middle, Scale: scale}
}

// panned moves the camera the way of the arrow as seen, by an eighth of the picture in whole cells.
func (p Pane) panned(s desk.State, opts Options, arrow string) desk.Camera {
	m := p.lay(s, opts)
	wide, high := m.CellSize()
	across, up := float64(max(m.Cols/8, 1))*wide, float64(max(m.Rows/8, 1))*high
	way := map[string][2]float64{
		"shift+left": {-across, 0}, "shift+right": {across, 0}, "shift+up": {0, up}, "shift+down": {0, -up},
	}[arrow]
	seen := s.Camera.View.Projection()
	return desk.Camera{View: s.Camera.View, Middle: m.Middle().Add(seen.InPlane(way[0], way[1])), Scale: m.Scale}
}

// onward goes over the floor with one finger: along the van by three quarters of the picture, from its end back to the other in the
// next row, and from the last to the first.
func (p Pane) onward(s desk.State, opts Options) desk.Camera {
	m := p.lay(s, opts)
	low, high := m.Corners()
	least, most := floorIn(s)
	wide, tall := m.CellSize()
	edge := geometry.Point{X: wide, Y: tall} // pictures begin with whole cells
	least, most = least.Sub(edge), most.Add(edge)
	middle, next := m.Middle(), desk.Camera{View: s.Camera.View, Scale: m.Scale}
	x, anew := along(middle.X, high.X-low.X, least.X, most.X, wide)
	if middle.X = x; anew {
		middle.Y, _ = along(middle.Y, high.Y-low.Y, least.Y, most.Y, tall)
	}
	next.Middle = middle
	return next
}

// along is the middle of the next of so many mm from a least to a most, and whether it begins anew.
func along(middle, size, least, most, cell float64) (next float64, anew bool) {
	const share = 0.75
	if last := most - size/2; middle < last-cell {
		return min(middle+share*size, last), false
	}
	return min(least+size/2, (least+most)/2), true
}

// floorIn are the corners of the floor in the plane of the view.
func floorIn(s desk.State) (least, most geometry.Point) {
	seen, f := s.Camera.View.Projection(), s.Job.Floor
	least = seen.Point(geometry.Point{X: f.From, Y: -f.Width / 2}.At(0))
	most = least
	for _, corner := range []geometry.Point3{{X: f.From + f.Length, Y: f.Width / 2}, {X: f.From, Y: f.Width / 2, Z: -vehicles.LookRound}} {
		at := seen.Point(corner)
		least = geometry.Point{X: min(least.X, at.X), Y: min(least.Y, at.Y)}
		most = geometry.Point{X: max(most.X, at.X), Y: max(most.Y, at.Y)}
	}
	return least, most
}

// atCut shows the cut and what is near enough to it to matter: as far as one looks for obstructions.
func (p Pane) atCut(s desk.State) desk.Camera {
	w, h := p.drawn()
	return canvas.Fit(s.Camera.View, []geometry.Point3{s.Result.Plan.Cut.At.At(0)}, vehicles.LookRound, w, h, s.Settings.Units)
}
