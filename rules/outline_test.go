package rules

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"bench.example/undermark/vehicles"
)

// Outlines of the plan as dots, their corners among them: what plate, body and cut keep from things is the least distance
// of a dot of one from the other. A place is a complex number, x + iy.

// outlined is a rectangle by its middle and half sides, turned about a place.
type outlined struct {
	middle, half, turn complex128
}

func rect(low, high complex128, degrees float64, about complex128) outlined {
	return outlined{turned(degrees)*((low+high)/2-about) + about, (high - low) / 2, turned(degrees)}
}

// turned is a turn of so many degrees anticlockwise.
func turned(degrees float64) complex128 {
	return complex(math.Cos(degrees*math.Pi/180), math.Sin(degrees*math.Pi/180))
}

func (r outlined) dots() (list []complex128) {
	w, h := real(r.half), imag(r.half)
	side := func(from, to complex128) {
		n := max(1, math.Ceil(abs(to-from)/5)) // dots 5 mm apart or less
		for i := 0.; i <= n; i++ {
			list = append(list, r.middle+r.turn*(from+(to-from)*complex(i/n, 0)))
		}
	}
	side(complex(w, h), complex(-w, h))
	side(complex(-w, h), complex(-w, -h))
	side(complex(-w, -h), complex(w, -h))
	side(complex(w, -h), complex(w, h))
	return list
}

// from is how far a place is from the rectangle, 0 in it.
func (r outlined) from(p complex128) float64 {
	q := (p - r.middle) / r.turn
	return math.Hypot(max(0, math.Abs(real(q))-real(r.half)), max(0, math.Abs(imag(q))-imag(r.half)))
}

func abs(p complex128) float64 { return math.Hypot(real(p), imag(p)) }

// apart is how far two rectangles are apart, 0 when they overlap.
func (r outlined) apart(q outlined) float64 {
	gap := math.Inf(1)
	for _, p := range r.dots() {
		gap = min(gap, q.from(p))
	}
	for _, p := range q.dots() {
		gap = min(gap, r.from(p))
	}
	return gap
}

func TestWhatTheHeaterKeepsIsWhatDotsOfItsOutlinesKeep(t *testing.T) {
	apart, overlaps := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		whole := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
		x, y, long, wide := whole("x", 800, 1600), whole("y", -100, 500), whole("long", 20, 200), whole("wide", 20, 200)
		turn, yaw, rise := whole("turn", 0, 89), whole("yaw", -180, 180), whole("rise", 0, 250)
		job := tidy()
		job.Ties, job.Exhaust, job.Intake, job.Fuel = nil, nil, nil, nil
		job.Heater.Yaw = yaw
		job.Fittings = []vehicles.Fitting{{
			Name: "box", Rise: vehicles.Span{From: rise, To: rise + 50, Set: true},
			Place: vehicles.Place{X: vehicles.Pair{at(x), at(x + long)}, Y: vehicles.Pair{at(y), at(y + wide)}, Turn: turn},
		}}
		values := map[string]float64{}
		for _, f := range judged(t, job).Findings {
			if f.Against.Sort == AFitting || f.Subject.Sort == ThePlate {
				values[f.ID()] = f.Value
			}
		}
		cut := complex(1210, 240)
		fitting := rect(complex(x, y), complex(x+long, y+wide), turn, complex(x+long/2, y+wide/2))
		// The 2 kW heater: a flange of 190 x 150; a body of 320 x 125 x 125 with 200 free before, 150 behind, 50 beside, 50 above.
		plate := rect(cut-complex(95, 75), cut+complex(95, 75), yaw, cut)
		space := rect(cut-complex(160+150, 62.5+50), cut+complex(160+200, 62.5+50), yaw, cut)

		if gap := plate.apart(fitting); rise > 0 {
			assert.NotContains(t, values, "plate.fitting", "it does not stand on the floor")
		} else if gap == 0 {
			assert.LessOrEqual(t, values["plate.fitting"], 1e-6)
		} else {
			assert.InDelta(t, gap, values["plate.fitting"], 1e-6)
		}
		gap, above := space.apart(fitting), rise-175
		if gap == 0 && above < 0 {
			overlaps++
			assert.LessOrEqual(t, values["body.space"], 1e-6)
		} else if gap == 0 {
			assert.InDelta(t, above, values["body.space"], 1e-6)
		} else {
			apart++
			assert.InDelta(t, math.Hypot(gap, max(0, above)), values["body.space"], 1e-6)
		}
		edge := math.Inf(1)
		for _, p := range plate.dots() {
			edge = min(edge, real(p)-40, 3240-real(p), imag(p)+890, 890-imag(p))
		}
		assert.InDelta(t, edge, values["plate.on-floor"], 1e-6)
	})
	if !testing.Short() { // a short run may draw none
		assert.Positive(t, apart)
		assert.Positive(t, overlaps)
	}
}

// By each reason alone and all together, the one said first is the one to be put right first.
func TestWhatIsSaidOfWhatHoldsAFindingBack(t *testing.T) {
	said := func(why reasons) string {
		f := Finding{Limit: &Limit{Rule: rulesByID()["cut.clearance"]}, Required: vehicles.Some(20), Verdict: Doubtful}
		return f.because(why)
	}
	for _, c := range []struct {
		why  reasons
		says string
	}{
		{loose, "tape sloped by an unknown amount"}, {unmeasured, "not measured on this van"},
		{unclosed, "its chain of readings misses"}, {tiesApart, "the matching points don't agree"}, {0, "too close to call"},
		{loose | unmeasured | unclosed | tiesApart, "tape sloped by an unknown amount"},
		{unmeasured | unclosed | tiesApart, "not measured on this van"}, {unclosed | tiesApart, "its chain of readings misses"},
	} {
		assert.Contains(t, said(c.why), c.says)
	}
	unset := Finding{Limit: &Limit{Rule: rulesByID()["fuel.suction"]}}
	assert.Equal(t, "needs your heater's figure", unset.because(loose), "nothing else matters before that")
	for id, says := range map[string]string{
		"cut.clearance": "12.5 mm too close", "exhaust.length": "12.5 mm too much", "exhaust.bends": "12.5 degrees too many",
		"intake.facing": "points 12.5° too far forward", "exhaust.up": "points 12.5° too far up", "exhaust.fall": "falls 12.5 mm per m too little", "exhaust.edge": "ends 12.5 mm too far under the van",
		"stub.in-cut": "12.5 mm too near the rim", "stack.turret": "collar 12.5 mm too short",
	} {
		f := Finding{Limit: &Limit{Rule: rulesByID()[id]}, Required: vehicles.Some(1), Margin: vehicles.Some(-12.5), Verdict: Foul}
		assert.Equal(t, says, f.because(0), id)
	}
	little := Finding{Limit: &Limit{Rule: rulesByID()["intake.facing"]}, Required: vehicles.Some(90), Margin: vehicles.Some(-0.004), Verdict: Foul}
	assert.Equal(t, "points 0.004° too far forward", little.because(0), "a break is not by 0")
}
