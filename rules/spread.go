package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// variances of what is put in place, along x, y and z, mm^2.
type variances [3]float64

// cutMark are those of the cut, plate and body: of the mark from above, or of the readings of the drilled hole.
func (j *judge) cutMark() variances {
	c := &j.plan.Cut
	return variances{c.UX * c.UX, c.UY * c.UY, 0}
}

// runMark are those of a run put up from below at its point p.
func (j *judge) runMark(p geometry.Point3) variances {
	edge := math.Min(math.Abs(j.sides[0]-p.Y), math.Abs(p.Y+j.sides[1]))
	height := j.tape.HeightU()
	return variances{j.gauge.MarkVariance(j.job.BelowBumper(p.Plan())), j.gauge.MarkVariance(edge), height * height}
}

// along is the part of the variances that shows along the unit direction n, without its height.
func (v variances) along(n geometry.Point3) float64 { return n.X*n.X*v[0] + n.Y*n.Y*v[1] }

// spread is that of a distance along the unit direction n from what is put in place to a thing's point q.
func spread(thing *vehicles.Placed, q geometry.Point, n geometry.Point3, mark variances) Spread {
	ux, uy := thing.EdgeU(q)
	turn := 0.0
	if thing.UTurn != 0 {
		turn = thing.TurnTerm(q, n.Plan())
	}
	return Spread{
		Survey: variances{ux * ux, uy * uy}.along(n),
		Mark:   mark.along(n),
		Height: n.Z * n.Z * (thing.UTop*thing.UTop + mark[2]),
		Turn:   turn * turn,
	}
}

// frames is the variance, mm^2, that the two frames add along the unit direction n at the cut.
func (j *judge) frames(n geometry.Point3) float64 {
	plan := n.Plan()
	level := plan.Norm()
	if level == 0 {
		return 0
	}
	if !j.plan.Fit.Tied() {
		frames := j.job.Frames()
		return frames * frames / 3 * level * level
	}
	u := j.plan.Fit.U(plan.Scale(1/level), j.plan.Cut.At) * level
	return u * u
}

// across adds what the frames add to a distance between what is put from above and what was measured from below, or
// from above once the hole is drilled and so measured from below. It returns what that holds back.
func (j *judge) across(f *Finding, n geometry.Point3) reasons {
	f.Spread.Frames = j.frames(n)
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
