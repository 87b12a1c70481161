package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// variances of what is put in place, along x, y and z, mm^2.
type variances [3]float64

// putting is what is put in place: how well, and from which side of the floor.
type putting struct {
	mark  variances
	above bool           // by marks from above; else it was measured, or is put up, from below
	at    geometry.Point // where, in the frame below
}

// theCut is where the cut is, and plate, body and bolts with it: by the mark from above, or where the hole was
// measured from below.
func (j *judge) theCut() putting {
	c := &j.plan.Cut
	return putting{variances{c.UX * c.UX, c.UY * c.UY, 0}, !c.Below, c.At}
}

// markedAbove is what is put at a place by a mark from above of its own.
func (j *judge) markedAbove(at geometry.Point) putting {
	u := j.job.AboveMarkU(j.plan.Fit.Up(at))
	return putting{variances{u[0] * u[0], u[1] * u[1], 0}, true, at}
}

// runMark are the variances of a run put up from below at its point p.
func (j *judge) runMark(p geometry.Point3) variances {
	edge := math.Min(math.Abs(j.sides[0]-p.Y), math.Abs(p.Y+j.sides[1]))
	height := j.tape.HeightU()
	return variances{j.gauge.MarkVariance(j.job.BelowBumper(p.Plan())), j.gauge.MarkVariance(edge), height * height}
}

// along is the part of the variances that shows along the unit direction n, without its height.
func (v variances) along(n geometry.Point3) float64 { return n.X*n.X*v[0] + n.Y*n.Y*v[1] }

// taped is a direction along the axes that a side is taped along: through ties those above are turned.
func (j *judge) taped(n geometry.Point3, above bool) geometry.Point3 {
	if !above || j.turned[1] == 0 {
		return n
	}
	cos, sin := j.turned[0], j.turned[1]
	return geometry.Point3{X: cos*n.X - sin*n.Y, Y: sin*n.X + cos*n.Y, Z: n.Z}
}

// spread works out the spread of a distance along the unit direction n from what is put in place to the point q of a thing
// measured from below or above, nil for the floor, whose edges are exact. It returns what holds the finding back.
func (j *judge) spread(f *Finding, put putting, thing *vehicles.Placed, above bool, q geometry.Point, n geometry.Point3) (why reasons) {
	f.N = n
	f.Spread.Mark = put.mark.along(j.taped(n, put.above))
	var x, y vehicles.Taped
	m := j.taped(n, above)
	if thing != nil {
		x, y = thing.EdgeAt(q)
		f.Spread.Survey = variances{x.U * x.U, y.U * y.U}.along(m)
		f.Spread.Height = n.Z * n.Z * (thing.UTop*thing.UTop + put.mark[2])
		if thing.UTurn != 0 {
			turn := thing.TurnTerm(q, n.Plan())
			f.Spread.Turn = turn * turn
		}
		why = rests(thing)
	}
	if put.above == above {
		return why
	}
	return why | j.across(f, put, above, m, x, y)
}

// across adds what the two frames add to a distance between what is put in place from one side and what was measured from the
// other, along n, or along m as that side was taped: the ties, or how far the frames may differ. The height of the zero that
// x and y of the thing were taped from is one error with that of the ties.
func (j *judge) across(f *Finding, put putting, above bool, m geometry.Point3, x, y vehicles.Taped) reasons {
	fit, n := &j.plan.Fit, f.N.Plan()
	if !fit.Tied() {
		frames := j.job.Frames()
		f.Spread.Frames = frames * frames / 3 * n.Dot(n)
		return 0
	}
	height := j.tape.HeightU()
	f.Spread.Survey = variances{x.Own(height), y.Own(height)}.along(m)
	var edge survey.Zeros
	sign := 1.0
	if above {
		edge[survey.BumperAbove], edge[survey.SideAbove], sign = m.X*x.Tilt, m.Y*y.Tilt, -1
	} else {
		edge[survey.BumperBelow], edge[survey.SideBelow] = m.X*x.Tilt, m.Y*y.Tilt
	}
	f.Spread.Frames = fit.Carried(n, put.at, edge, sign)
	if f.Spread.Frames > 0 && j.tiesApart {
		return tiesApart
	}
	return 0
}

// rests returns what a thing's own measuring holds back.
func rests(thing *vehicles.Placed) (why reasons) {
	if !thing.Measured {
		why |= unmeasured
	}
	if thing.Loose {
		why |= loose
	}
	if thing.Unclosed {
		why |= unclosed
	}
	return why
}
