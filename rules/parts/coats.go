package parts

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// What keeps the floor sound round the holes: paint or varnish, wax, packing. How much of it is reckoned from the holes; coats, films and tins are
// common practice, no source.
const (
	band      = 25.0  // mm: bare or scratched round a hole, on either face
	spreading = 10.0  // m2 that a litre of paint covers, a coat
	tin       = 250.0 // ml: the smallest tin of paint
	nearWax   = 300.0 // mm: a box section no farther from a hole gets swarf and heat
	waxLong   = 1.0   // m of a box section that is waxed
	waxRound  = 0.4   // m: a box section's walls inside, round: 100 by 100 mm
	waxFilm   = 0.2   // mm
	waxCan    = 500.0 // ml
)

// inTins is what paint is bought in.
var inTins = "tins of " + survey.Exact(tin) + " ml or less"

// hole is where something is cut or drilled through the floor, and how wide.
type hole struct {
	at     geometry.Point
	across float64
}

// holes are all that the job has cut or drilled; the pilot's is the cut's.
func (m *maker) holes() []hole {
	job, plan := &m.r.Job, &m.r.Plan
	all := []hole{{plan.Cut.At, job.Cut.Across}}
	for _, at := range rules.Bolts(job, plan) {
		all = append(all, hole{at, job.Heater.Bolt})
	}
	for _, at := range rules.FuelHoles(job, plan) {
		all = append(all, hole{at, job.Fuel.Supply.HoleAcross()})
	}
	clips, pump := rules.ClipHoles(job, plan)
	for _, at := range append(clips, pump...) {
		all = append(all, hole{at, rules.ClipHole})
	}
	return all
}

// coat is what is painted of all holes: their edges, and a band round each on either face, m2.
func (m *maker) coat() (area float64) {
	for _, h := range m.holes() {
		edge, round := math.Pi*h.across*m.r.Job.Floor.Thickness, math.Pi*(h.across+band)*band
		area += (edge + 2*round) / 1e6
	}
	return area
}

// coated is how much a number of coats takes, and in how many tins; said is how that is reckoned.
func (m *maker) coated(coats float64) (tins float64, said string) {
	area := m.coat()
	ml := area / spreading * 1000 * coats
	return math.Ceil(ml / tin), fmt.Sprintf("for every cut edge: %s with a band of %s round each, either face, %s cm² a coat: %s ml", survey.Counted(len(m.holes()), "hole"), survey.InMM(band), survey.Exact(math.Round(area*1e4)), wholeML(ml))
}

func (m *maker) paint() {
	tins, said := m.coated(1)
	m.add(Row{For: forFloor, Of: "primer and top coat", Size: inTins, Count: vehicles.Some(2 * tins), Unit: "tins", Note: said + " of either", Source: practice})
}

func (m *maker) varnish() {
	const coats = 3
	tins, said := m.coated(coats)
	m.add(Row{For: forFloor, Of: "varnish for cut timber", Size: inTins, Count: vehicles.Some(tins), Unit: "tins", Note: said + " in three coats", Source: practice})
}

// wax is for the box sections beside the holes, a metre of each.
func (m *maker) wax() {
	sections := 0
	for i := range m.r.Plan.Obstructions {
		o := &m.r.Plan.Obstructions[i]
		if !m.r.Job.Obstructions[i].Is(vehicles.Hollow) {
			continue
		}
		for _, h := range m.holes() {
			if o.Prism.Footprint.GapOnly(h.at)-h.across/2 <= nearWax {
				sections++
				break
			}
		}
	}
	if sections == 0 {
		return
	}
	ml := float64(sections) * waxLong * waxRound * waxFilm * 1000
	row := Row{For: forFloor, Of: "cavity wax", Size: "cans of " + survey.Exact(waxCan) + " ml", Count: vehicles.Some(math.Ceil(ml / waxCan)), Unit: "cans", Source: practice}
	row.Note = fmt.Sprintf("for the box sections beside the holes: %d within %s, a metre of each at %s: %s ml", sections, survey.InMM(nearWax), survey.InMM(waxFilm), wholeML(ml))
	m.add(row)
}

// wholeML is a volume up to the next whole ml, rounding of what was added up aside.
func wholeML(ml float64) string { return survey.Exact(math.Ceil(ml - 1e-9)) }

// packing is what fills the swages under the plate: as deep as the layers say.
func (m *maker) packing() {
	h, deep := m.r.Job.Heater, 0.0
	for _, l := range m.r.Job.Stack {
		if l.Kind == vehicles.SwageLayer {
			deep += l.Thick
		}
	}
	if h == nil || !h.Packed && deep == 0 {
		return
	}
	thick := "as thick as the swages are deep"
	if deep > 0 {
		thick = survey.InMM(deep) + " thick"
	}
	m.add(Row{
		For: forFloor, Of: "metal packing", Size: survey.Figure(h.Plate[0]) + " by " + survey.InMM(h.Plate[1]) + ", " + thick, Count: vehicles.Some(1), Unit: pieces, Source: practice,
		Note: "as large as the plate, sawn into strips as the swages lie, open where the hole is",
	})
}
