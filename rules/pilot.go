package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// PilotReport says where the pilot hole came out, whether the tapes explain it, and how far the cut may still go.
type PilotReport struct {
	Meant geometry.Point // cut.at
	Is    geometry.Point // as measured from below
	Off   geometry.Point // Is less Meant
	Away  float64        // length of Off, mm

	Sigma     float64 // standard uncertainty of Away along Off, mm: of the mark, the frames and the readings of the hole
	Statistic float64 // Off against its whole covariance
	Limit     float64 // the largest that the tapes explain
	Explained bool
	Slips     []Slip // when not explained: the single slips that would explain it, the likeliest first

	MayMove float64 // the radius round Is within which the centre may go with the pilot swallowed by the cut
	Move    Move    // the best place there
}

// pilotLimit is the 95 % point of chi-squared with two degrees of freedom: of the square of an offset in plan over its
// covariance. Source: closed form, -2 ln 0.05 = 5.991 (NIST/SEMATECH handbook, 1.3.6.7.4, from memory).
var pilotLimit = -2 * math.Log(0.05)

// PilotCheck holds a drilled pilot hole against where it was meant; ok is false when none has been drilled and measured.
func PilotCheck(r Result) (report PilotReport, ok bool) {
	cut := &r.Plan.Cut
	if r.Job.Cut == nil || !cut.Drilled || r.Book == nil {
		return report, false
	}
	report = offset(&r.Job, &r.Plan)
	report.MayMove = pilot(r.Job.Cut, cut).MayMove
	if !report.Explained {
		report.Slips = slips(&r)
	}
	report.Move = bestMove(&r, report.MayMove)
	return report, true
}

// offset works out how far the hole is off and whether the tapes explain it.
func offset(job *vehicles.Job, plan *vehicles.Plan) PilotReport {
	cut := &plan.Cut
	p := PilotReport{Meant: cut.Intended, Is: cut.At, Off: cut.At.Sub(cut.Intended), Limit: pilotLimit}
	p.Away = p.Off.Norm()
	c := offsetSpread(job, plan)
	if p.Away > 0 {
		p.Sigma = math.Sqrt(c.along(p.Off.Scale(1 / p.Away)))
		p.Statistic = c.square(p.Off)
	}
	p.Explained = p.Statistic <= p.Limit
	return p
}

// covariance of a place in plan, mm^2.
type covariance struct{ xx, xy, yy float64 }

func (c covariance) along(n geometry.Point) float64 {
	return n.X*n.X*c.xx + 2*n.X*n.Y*c.xy + n.Y*n.Y*c.yy
}

// square is v times the inverse of the covariance times v; huge where nothing is uncertain.
func (c covariance) square(v geometry.Point) float64 {
	det := c.xx*c.yy - c.xy*c.xy
	if !(det > 0) {
		return math.MaxFloat64
	}
	return (v.X*v.X*c.yy - 2*v.X*v.Y*c.xy + v.Y*v.Y*c.xx) / det
}

// offsetSpread is the covariance of the offset: of the mark from above, of the readings of the hole from below, and of
// what lies between the two frames, along x, along y and across.
func offsetSpread(job *vehicles.Job, plan *vehicles.Plan) covariance {
	cut, fit := &plan.Cut, &plan.Fit
	c := covariance{
		xx: cut.UMark[0]*cut.UMark[0] + cut.UX*cut.UX,
		yy: cut.UMark[1]*cut.UMark[1] + cut.UY*cut.UY,
	}
	if !fit.Tied() {
		frames := job.Frames()
		c.xx += frames * frames / 3
		c.yy += frames * frames / 3
		return c
	}
	shift, arm := fit.UT2/float64(fit.N), cut.Intended.Sub(fit.Centroid)
	c.xx += shift + fit.UT2*arm.Y*arm.Y/fit.SumR2
	c.yy += shift + fit.UT2*arm.X*arm.X/fit.SumR2
	c.xy -= fit.UT2 * arm.X * arm.Y / fit.SumR2
	return c
}
