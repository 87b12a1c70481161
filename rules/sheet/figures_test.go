package sheet

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// taut is how far a tape reaches along the floor that is hooked so far below it.
func taut(reading float64, hook vehicles.Number) float64 {
	return math.Sqrt(max(0, reading*reading-hook.Value*hook.Value))
}

// underFloor is where a place is by its printed readings: from the datum's edge, from the left, and how far below the floor; ok is false where
// it lies behind a zero.
func underFloor(t *testing.T, s *source, bumper, left, drop string) (p geometry.Point3, ok bool) {
	b, l := figure(t, bumper), figure(t, left)
	d := &s.Job.Datum
	p = geometry.Point3{X: taut(b, d.HookBelow), Y: s.Job.SideLeft() - taut(l, d.SideBelow), Z: -figure(t, drop)}
	return p, b > d.HookBelow.Value && l > d.SideBelow.Value
}

// fallSaid is a leg's fall in words that a test can reckon with again, in mm in a metre.
func fallSaid(leg geometry.Point3) string {
	return "falls " + strconv.FormatFloat(-leg.Z/leg.Plan().Norm()*1000, 'f', 1, 64)
}

// Whoever hangs a run has its points, its legs and its fall from three columns: by the printed readings alone each leg is as long as is printed, and falls
// as is said, in every sample job. A tenth at either end of a leg and of a drop is what the printing loses.
func TestTheRunsOnPaperAreAsLongAndFallAsIsSaid(t *testing.T) {
	legs := 0
	look := func(name string, s *source, _ *expected) {
		s.say.Fall = fallSaid
		for _, table := range each[Table](s.runs()) {
			if table.Cols[0].Head != "point" {
				continue
			}
			for i := 1; i < len(table.Rows); i++ {
				was, is := table.Rows[i-1].Cells, table.Rows[i].Cells
				from, known := underFloor(t, s, was[1], was[2], was[4])
				to, alsoKnown := underFloor(t, s, is[1], is[2], is[4])
				if !known || !alsoKnown {
					continue
				}
				legs++
				leg := to.Sub(from)
				assert.InDelta(t, leg.Norm(), figure(t, was[5]), 0.3, "%s: the leg behind %s", name, was[0])
				if plan := leg.Plan().Norm(); plan > 100 {
					assert.InDelta(t, -leg.Z/plan*1000, figure(t, strings.TrimPrefix(was[6], "falls ")), 0.1+300/plan, "%s: the leg behind %s", name, was[0])
				}
			}
			last := table.Rows[len(table.Rows)-1].Cells
			assert.Equal(t, "ends", last[0])
			assert.Len(t, last, 5, "no leg goes on from the end")
		}
	}
	cases(t, look)
	look("the sample", paperOf(t, vehicles.Demo()), nil)
	assert.Greater(t, legs, 25)
}

// What hangs on a run is on it: by the printed readings it is no farther from the line of the printed points than a bend cuts a corner, and the muffler is
// as long as it is.
func TestWhatHangsOnARunIsOnIt(t *testing.T) {
	hung := 0
	look := func(name string, s *source, _ *expected) {
		var line []geometry.Point3
		total, whole := 0.0, true // whole: no point lies behind a tape's zero
		for _, table := range each[Table](s.runs()) {
			if table.Cols[0].Head == "point" {
				line, total, whole = nil, 0, true
				for _, row := range table.Rows {
					p, known := underFloor(t, s, row.Cells[1], row.Cells[2], row.Cells[4])
					whole = whole && known
					if line = append(line, p); len(row.Cells) > 5 {
						total += figure(t, row.Cells[5])
					}
				}
				continue
			}
			for _, row := range table.Rows {
				p, known := underFloor(t, s, row.Cells[2], row.Cells[3], row.Cells[5])
				if !known || !whole {
					continue
				}
				hung++
				const corner = 100 * (math.Sqrt2 - 1) // a square corner at the widest radius of the samples
				assert.Less(t, apartFrom(p, line), corner+0.3, "%s: %s", name, row.Cells[0])
				along := figure(t, row.Cells[1])
				assert.True(t, along >= 0 && along <= total, "%s: %s at %g of %g", name, row.Cells[0], along, total)
			}
			begins, ends := rowOf(table, "muffler begins"), rowOf(table, "muffler ends")
			if begins != nil {
				m := s.Job.Exhaust.Muffler
				assert.InDelta(t, m.Length, figure(t, ends.Cells[1])-figure(t, begins.Cells[1]), 0.11, name)
				assert.Equal(t, survey.Figure(m.Across)+" across", begins.Under)
			}
		}
	}
	cases(t, look)
	look("the sample", paperOf(t, vehicles.Demo()), nil)
	assert.Greater(t, hung, 25)
}

func rowOf(t Table, name string) *Row {
	for i := range t.Rows {
		if t.Rows[i].Cells[0] == name {
			return &t.Rows[i]
		}
	}
	return nil
}

// apartFrom is how far a place is from a line, by a step of half a mm along it.
func apartFrom(p geometry.Point3, line []geometry.Point3) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		leg := line[i].Sub(line[i-1])
		steps := math.Ceil(leg.Norm() * 2)
		for k := range int(steps) + 1 {
			least = min(least, line[i-1].Add(leg.Scale(float64(k)/max(steps, 1))).Sub(p).Norm())
		}
	}
	return least
}

// What the job is stands beside its marks, by hand for a job of which no two figures are alike.
func TestTheFactsOfAJobByHand(t *testing.T) {
	job := vehicles.Demo()
	heater, cut := *job.Heater, *job.Cut
	heater.Body, heater.Plate, heater.Space = [3]float64{321, 126, 137}, [2]float64{191, 152}, vehicles.Space{Front: 201, Rear: 153, Sides: 54, Top: 65}
	heater.Given |= vehicles.HasBody
	cut.Relieved = vehicles.Some(167)
	job.Cut, job.Fitter = &cut, "workshop two"
	job = job.WithHeater(heater)
	facts := map[string]string{}
	for _, fact := range paperOf(t, job).facts() {
		facts[fact[0]] = fact[1]
	}
	assert.Equal(t, map[string]string{
		"vehicle": "", "fitter": "workshop two", "floor": "3200 long from 40 on, 1780 wide, up to 31 thick, 460 up",
		"cut":        "127 mm across, pilot 6 mm, wood, foam and lining cut back to 167 mm",
		"heater":     "2 kW, warm air to the rear, plate 191 by 152, 4 holes of 7",
		"its body":   "321 long, 126 wide, 137 high; free before its warm air 201, behind 153, beside 54, over it 65",
		"tape below": "mm from the bumper edge, zero 150 below the floor", "tape above": "mm from the bumper edge, zero 60 below the floor's top",
		"from the sides": "held level", "side edges below": "the sills' outer flanges", "side edges above": "the lower edges of the wall lining",
		"centreline": "below 888 to the left edge, 887 right; above 884, 883", "pins": "700 mm off the centreline, on the bumper edge", "warm-air ducts": "",
	}, facts)

	job.Datum.PinsOn, job.Cut = vehicles.Batten, nil
	facts = map[string]string{}
	for _, fact := range paperOf(t, job).facts() {
		facts[fact[0]] = fact[1]
	}
	assert.Empty(t, facts["pins"], "no arc is struck to a cut that is nowhere")
	assert.Empty(t, facts["cut"])
	job.Cut = &cut
	assert.Contains(t, paperOf(t, job).pins(), "700 mm off the centreline, marked on a straight batten along the ")
	assert.Empty(t, (&source{Result: &rules.Result{}}).body(), "no heater")
	job.Vehicle = strings.Repeat("a very long name of a van ", 5)
	assert.Equal(t, job.Vehicle, paperOf(t, job).vehicle(), "the head has no room for all of it")
	job.Guesses = []string{"thickness"}
	assert.Contains(t, paperOf(t, job).floor(), " up; not all of it measured")
}
