package rules

import (
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// SetOffHole says of marks that are told beside a hole which came out off its mark where they are set off from.
const SetOffHole = "All else here is set off the hole."

// PilotReport says where the pilot hole came out, whether the tapes explain it, and how far the cut may still go.
type PilotReport struct {
	Meant geometry.Point // cut.at
	Is    geometry.Point // as measured from below
	Off   geometry.Point // Is less Meant
	Away  float64        // length of Off, mm

	Sigma     float64 // standard uncertainty of Away along Off, mm: of the mark, the frames and the readings of the hole
	Statistic float64 // Off against its variances, x and y together
	Limit     float64 // the largest that the tapes explain
	Explained bool
	Slips     []Slip // when not explained: the single slips that would explain it, the likeliest first

	Held  bool       // what rests on where the hole is is held back: the tapes do not explain it, and no direct tapes confirm it
	Tapes []HoleTape // the direct tapes, those taken and those to take

	MayMove float64 // the radius round Is within which the centre may go and the pilot hole comes out with the disc
	Move    Move    // the best place there
}

// MostAway is how far off along Off the tapes would explain a hole, mm: as far as both axes together allow, so it is no ± of
// one; NaN for a hole that is where it was meant to be: there is no way.
func (p *PilotReport) MostAway() float64 { return p.Away * math.Sqrt(p.Limit/p.Statistic) }

// pilotLimit is the most that pilot.place may come to, by the book.
func (b *Book) pilotLimit() float64 { return b.of(pilotPlaceRule).Value.Value }

// PilotCheck holds a drilled pilot hole against where it was meant; ok is false when none has been drilled and measured.
func PilotCheck(r Result) (report PilotReport, ok bool) {
	cut := &r.Plan.Cut
	if r.Job.Cut == nil || !cut.Drilled || r.Book == nil {
		return report, false
	}
	report = offset(&r.Job, &r.Plan, r.Book.pilotLimit())
	report.MayMove = MostBeside(r.Job.Cut)
	if !report.Explained {
		report.Slips = slips(&r)
	}
	report.Held, report.Tapes = r.Hole.Held, HoleTapes(&r)
	report.Move = bestMove(&r, report.MayMove-toldTo)
	return report, true
}

// offset works out how far the hole is off and whether the tapes explain it: the finding pilot.place, with what it rests on.
func offset(job *vehicles.Job, plan *vehicles.Plan, limit float64) PilotReport {
	cut := &plan.Cut
	p := PilotReport{
		Meant: cut.Intended, Is: cut.At, Off: cut.At.Sub(cut.Intended), Limit: limit, Statistic: offsetSquare(job, plan),
	}
	if p.Away = p.Off.Norm(); p.Away > 0 {
		p.Sigma = math.Sqrt(offsetVariance(job, plan, p.Off.Scale(1/p.Away)))
	}
	p.Explained = p.Statistic <= p.Limit
	return p
}
