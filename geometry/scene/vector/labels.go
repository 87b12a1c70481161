package vector

import (
	"cmp"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
)

// words writes names and figures, those of the highest rank first, each where it stands on no other.
func (d *drawing) words() {
	named := make([]*part, 0, len(d.parts))
	for i := range d.parts {
		if p := &d.parts[i]; p.ink.Words.A > 0 && d.textOf(p, p.Label) != "" {
			named = append(named, p)
		}
	}
	slices.SortStableFunc(named, func(p, q *part) int {
		return cmp.Or(cmp.Compare(q.Item.Rank(), p.Item.Rank()), cmp.Compare(q.Item.Before(), p.Item.Before()))
	})
	for _, p := range named {
		if !d.name(p, p.Label) && p.Code != "" && p.Measure == nil {
			d.name(p, p.Code)
		}
	}
}

// textOf is what is written at a part: its name with its warning, or with its figure.
func (d *drawing) textOf(p *part, name string) string {
	switch {
	case p.Measure != nil && name == "":
		return d.look.Length(*p.Measure)
	case p.Measure != nil:
		return d.look.Name(name) + " " + d.look.Length(*p.Measure)
	case name == "":
		return ""
	}
	return d.look.Name(name) + p.Warning()
}

// bare is how far the bare ground of a text reaches round it, mm.
const bare = 0.4

// onBlack tells whether a box lies on something that is filled, a bar or a pipe: a name there would part it.
func (d *drawing) onBlack(box Box) bool {
	for i := range d.parts {
		p := &d.parts[i]
		if !p.filled() || p.ink.Fill.A == 0 {
			continue
		}
		for _, at := range box.sampled() {
			if p.Area.Contains(d.frame.Plane(at)) {
				return true
			}
		}
	}
	return false
}

// filled tells whether a part is an area that is filled whole.
func (p *part) filled() bool { return p.Primitive == scene.Area && p.Role.Pen().Fill == scene.Filled }

// name writes a part's text at the first of its seats that is free, and says whether there was one.
func (d *drawing) name(p *part, name string) bool {
	t := Text{
		Words: d.textOf(p, name), Size: d.look.Letters, Bold: p.Measure != nil || p.Stressed(),
		Align: ByMiddle, Colour: p.ink.Words, Rim: d.look.Paper,
	}
	for _, at := range d.seats(p, WidthOf(t)) {
		at.Y += (ascent - descent) / 2 * t.Size // at is the middle of the letters
		box := BoxOf(at.X, at.Y, t)
		ground := box.grown(bare)
		if !d.frame.holds(box) || slices.ContainsFunc(d.taken, ground.meets) || d.onBlack(ground) {
			continue
		}
		d.board.Face(ground.outline(), d.look.Paper) // on a pattern or a line letters are not read
		d.board.Write(at, t)
		d.taken = append(d.taken, box)
		return true
	}
	return false
}

// shares of a path's or an area's length at which a name is tried.
var shares = []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.1, 0.9}

// seats are the places where the middle of a part's text of a width may stand, the best first.
func (d *drawing) seats(p *part, width float64) (all []geometry.Point) {
	beside := func(at geometry.Point) {
		high := 1.1 * d.look.Letters
		for _, off := range []geometry.Point{
			{X: width/2 + signSize + 0.8}, {X: -width/2 - signSize - 0.8}, {Y: -high - signSize}, {Y: high + signSize},
			{X: width/2 + signSize, Y: -high}, {X: -width/2 - signSize, Y: -high}, {X: width/2 + signSize, Y: high}, {X: -width/2 - signSize, Y: high},
			{Y: -2.2 * high}, {Y: 2.2 * high},
		} {
			all = append(all, at.Add(off))
		}
	}
	switch {
	case p.Primitive == scene.Spot:
		beside(d.frame.Place(p.Line[0]))
	case p.Line != nil:
		for _, share := range shares {
			beside(d.frame.Place(geometry.Along(p.Line, share)))
		}
	case p.Area.Shape == geometry.Line:
		for _, share := range shares {
			at := d.frame.Place(geometry.Along(p.Area.Path, share))
			if all = append(all, at); p.filled() {
				reach := 1.5 * p.Area.Radius / d.frame.Scale // aslant, too
				for _, off := range []geometry.Point{{Y: -reach}, {Y: reach}, {X: reach}, {X: -reach}} {
					beside(at.Add(off))
				}
			}
		}
	default:
		all = append(all, d.inside(&p.Area)...)
		beside(d.frame.Place(p.Area.Middle))
		if p.filled() {
			low, high := p.Area.Bounds()
			beside(d.frame.Place(geometry.Point{X: low.X, Y: p.Area.Middle.Y}))
			beside(d.frame.Place(geometry.Point{X: high.X, Y: p.Area.Middle.Y}))
		}
	}
	return all
}

// inside are places along the longer middle line of a rectangle or round, as far as it is seen.
func (d *drawing) inside(f *geometry.Footprint) (all []geometry.Point) {
	low, high := f.Bounds()
	a, b := d.frame.Plane(geometry.Point{X: d.frame.Left, Y: d.frame.Top}), d.frame.Plane(geometry.Point{X: d.frame.right(), Y: d.frame.bottom()})
	low = geometry.Point{X: max(low.X, min(a.X, b.X)), Y: max(low.Y, min(a.Y, b.Y))}
	high = geometry.Point{X: min(high.X, max(a.X, b.X)), Y: min(high.Y, max(a.Y, b.Y))}
	size := high.Sub(low)
	for _, share := range shares {
		at := low.Add(size.Scale(0.5))
		if size.X >= size.Y {
			at.X = low.X + share*size.X
		} else {
			at.Y = low.Y + share*size.Y
		}
		if f.Contains(at) {
			all = append(all, d.frame.Place(at))
		}
	}
	return all
}
