package rules_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// The proof surveys a van that is known exactly, by tapes that err, and asks how often the product was wrong. Of the
// product it uses what a fitter uses: a job goes in, readings for the marks and verdicts come out. All that happens
// under the van is worked out here from first principles: straight tapes between points in space, true outlines. A place
// in plan is a complex number, x + iy, so that a turn is a product.

// proofSeed makes every run of the proof the same.
const proofSeed = 1210240

// hand is a fitter's hand: it tapes, marks and measures heights, each with errors spread evenly within their bounds.
type hand struct {
	draw                           *rand.Rand // nil: a hand that never errs
	class                          [3]float64 // a, b, c of the tape
	read, mark, height, turn, away float64    // +/-; away: how far the frames differ
}

// The permissible errors of tapes: 2014/32/EU annex X, MI-008 chapter I, table 1.
var (
	classII  = [3]float64{0.3, 0.2, 0.2}
	classIII = [3]float64{0.6, 0.4, 0.3}
)

func newHand(draw *rand.Rand, class [3]float64) *hand {
	return &hand{draw: draw, class: class, read: 1, mark: 1, height: 2, turn: 1, away: 2}
}

// off is an error spread evenly over +/- half.
func (h *hand) off(half float64) float64 {
	if h.draw == nil {
		return 0
	}
	return half * (2*h.draw.Float64() - 1)
}

// permitted is what the tape may be wrong by at a length: so much, and so much more for every metre begun.
func (h *hand) permitted(length float64, hooked bool) float64 {
	most := h.class[0]
	for begun := 0.0; begun < math.Abs(length); begun += 1000 {
		most += h.class[1]
	}
	if hooked {
		most += h.class[2]
	}
	return most
}

// tape is what the tape says of a true straight distance, or, when a mark is put, where along it the tape leads.
func (h *hand) tape(distance float64, hooked bool) float64 {
	return distance + h.off(h.permitted(distance, hooked)) + h.off(h.read)
}

// van is a van as it is, to be surveyed from below and from above.
type van struct {
	hookBelow, sideBelow, hookAbove float64    // how far the tapes' zeros hang below what is measured
	left, right, aboveLeft          float64    // the side edges; above, both are as far from the centreline
	zeroAbove                       float64    // the bumper's zero above lies this far forward
	turn, shift                     complex128 // from the frame below to the frame above
	cut                             complex128 // where the fitter wants it, and its radius
	radius                          float64
	things                          []truth
	ties                            []complex128
}

// truth is a thing under the van as it is: its plan distance from a place outside it, and how a fitter tapes it.
type truth struct {
	name, kind          string
	top, bottom, tapeAt float64 // drops
	gap                 func(p complex128) float64
	tape                func(v *visit, drop float64) vehicles.Place
}

// visit is one survey of a van. drop is the true drop of the point taped.
type visit struct {
	*van
	hand *hand
}

// x tapes from the bumper to a place below the floor, y from the left or right side edge; the tapes slope.
func (v *visit) x(x, drop float64) survey.Reading {
	return plainReading(v.hand.tape(math.Hypot(x, v.hookBelow-drop), true))
}

func (v *visit) fromLeft(y, drop float64) survey.Reading {
	return started(survey.FromLeft, v.hand.tape(math.Hypot(v.left-y, v.sideBelow-drop), true))
}

func (v *visit) fromRight(y, drop float64) survey.Reading {
	return started(survey.FromRight, v.hand.tape(math.Hypot(y+v.right, v.sideBelow-drop), true))
}

// fromCentre tapes from the centreline, on runs the tape on from the reading before.
func (v *visit) fromCentre(y float64) survey.Reading    { return plainReading(v.hand.tape(y, true)) }
func (v *visit) fromMiddle(y, _ float64) survey.Reading { return v.fromCentre(y) }
func (v *visit) on(length float64) survey.Reading {
	return started(survey.On, v.hand.tape(length, false))
}

func plainReading(length float64) survey.Reading { return started(survey.Datum, length) }

func started(start survey.Start, length float64) survey.Reading {
	return survey.Reading{Start: start, Length: length}
}

// below tapes a place on the floor's underside, which is as level as heights are measured.
func (v *visit) below(p complex128) vehicles.Pair {
	drop := v.hand.off(v.hand.height)
	return vehicles.Pair{v.x(real(p), drop), v.fromLeft(imag(p), drop)}
}

// above tapes a place of the frame above, on the finished floor.
func (v *visit) above(p complex128) vehicles.Pair {
	return vehicles.Pair{
		plainReading(v.hand.tape(math.Hypot(real(p)-v.zeroAbove, v.hookAbove), true)),
		started(survey.FromLeft, v.hand.tape(v.aboveLeft-imag(p), true)),
	}
}

// up carries a true place from below to above, down back.
func (v *visit) up(p complex128) complex128   { return p*v.turn + v.shift }
func (v *visit) down(p complex128) complex128 { return (p - v.shift) / v.turn }

// survey is the job file the fitter comes back with.
func (v *visit) survey(tape vehicles.Tape) vehicles.Job {
	h := v.hand
	job := vehicles.Job{
		Floor: vehicles.Floor{From: 40, Length: 6000, Width: 1780, Thickness: 31, Ground: 460}, Tape: tape,
		Datum: vehicles.Datum{
			HookBelow: vehicles.Some(v.hookBelow + h.off(h.height)), SideBelow: vehicles.Some(v.sideBelow + h.off(h.height)),
			HookAbove: vehicles.Some(v.hookAbove + h.off(h.height)), ShiftAbove: vehicles.Some(v.zeroAbove),
			Left: vehicles.Some(v.left), Right: vehicles.Some(v.right),
			AboveLeft: vehicles.Some(v.aboveLeft), AboveRight: vehicles.Some(v.aboveLeft),
		},
		Cut: &vehicles.Cut{At: [2]float64{real(v.cut), imag(v.cut)}, Across: 2 * v.radius},
	}
	for _, t := range v.things {
		job.Obstructions = append(job.Obstructions, vehicles.Obstruction{
			Name: t.name, Kind: t.kind, Measured: true, Place: t.tape(v, t.tapeAt),
			TapedAt: vehicles.Some(t.tapeAt + h.off(h.height)),
			Drop:    vehicles.Span{From: t.top + h.off(h.height), To: t.bottom + h.off(h.height), Set: true},
		})
	}
	for _, p := range v.ties {
		job.Ties = append(job.Ties, vehicles.Tie{Use: true, Below: v.below(p), Above: v.above(v.up(p))})
	}
	return job
}

// land puts the mark from above where the tape is told to read, and returns where below the floor it comes out.
// Without ties nobody knows how the frames differ, but they differ by no more than the job says.
func (v *visit) land(told *rules.AboveReadings) complex128 {
	h := v.hand
	slope := h.tape(told.Bumper, true)
	x := v.zeroAbove + math.Sqrt(slope*slope-v.hookAbove*v.hookAbove) + h.off(h.mark)
	y := v.aboveLeft - h.tape(told.Left, true)
	if told.Right < told.Left {
		y = h.tape(told.Right, true) - v.aboveLeft
	}
	p := complex(x, y+h.off(h.mark))
	if len(v.ties) < 2 {
		return p + complex(h.off(h.away), h.off(h.away))
	}
	return v.down(p)
}

// True distances from a place outside.

func fromBox(near, far, right, left float64) func(complex128) float64 {
	return func(p complex128) float64 {
		beyond := func(low, v, high float64) float64 { return math.Max(0, math.Max(low-v, v-high)) }
		return math.Hypot(beyond(near, real(p), far), beyond(right, imag(p), left))
	}
}

func fromTurned(middle, half, turn complex128) func(complex128) float64 {
	own := fromBox(-real(half), real(half), -imag(half), imag(half))
	return func(p complex128) float64 { return own((p - middle) / turn) }
}

func fromRound(middle complex128, radius float64) func(complex128) float64 {
	return func(p complex128) float64 { return cmplx.Abs(p-middle) - radius }
}

func fromLine(radius float64, path ...complex128) func(complex128) float64 {
	return func(p complex128) float64 {
		least := math.Inf(1)
		for i := 1; i < len(path); i++ {
			leg := path[i] - path[i-1]
			t := real((p-path[i-1])*cmplx.Conj(leg)) / real(leg*cmplx.Conj(leg))
			foot := path[i-1] + leg*complex(math.Min(1, math.Max(0, t)), 0)
			least = math.Min(least, cmplx.Abs(p-foot))
		}
		return least - radius
	}
}
