package rules

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// pilotRim is how much of the cut must be left round a pilot hole that is wholly inside it, mm.
const pilotRim = 1

// Marks returns what the tape must say at each mark of a job that could be judged: the cut's centre where it is meant,
// and, where the heater will sit, the flange's corners, its bolts, the fuel line's hole, the clips and the muffler's ends.
// Without a cut there are only the fuel line's holes.
func Marks(result Result) MarkSheet {
	sheet := marksOf(&result)
	if result.Plan.Cut.Drilled {
		planned := result
		planned.Plan.Cut.At, planned.Plan.Cut.Drilled = result.Plan.Cut.Intended, false
		sheet.Moved = movedFrom(marksOf(&planned).Marks, sheet.Marks)
	}
	return sheet
}

// unmoved is how far a mark may move and still be where it was, mm: less shows no figure.
const unmoved = 0.05

// movedFrom are those of some marks that lay elsewhere, by their names.
func movedFrom(were, are []Mark) (moved []Moved) {
	old := map[string]Mark{}
	for _, m := range were {
		old[m.Name] = m
	}
	for _, m := range are {
		if was, known := old[m.Name]; known && m.Plan.Sub(was.Plan).Norm() >= unmoved {
			moved = append(moved, Moved{m.Name, m.Words, m.Plan.Sub(was.Plan), was})
		}
	}
	return moved
}

// MayStay is how far, mm in plan, what was marked by a judged job may lie beside where it is to be, and no clearance at the cut falls below what
// is surely enough by it: none is negative. A finding that is doubtful for another reason than its margin counts by its margin.
func MayStay(result *Result) float64 { return leastAtCut(result, func(*Finding) bool { return true }) }

// MayComeOut is how far, mm in plan, a pilot hole may come out beside its mark, and heater, holes and stubs go with it, and no clearance at
// the cut falls below what is surely enough: what lies alike wherever the cut is, as a stub in it, is not asked.
func MayComeOut(result *Result) float64 {
	return leastAtCut(result, func(f *Finding) bool { return f.WithCut() || f.Rule.keep.asks != nil })
}

// leastAtCut is the least that some of the findings at the cut have above what is surely enough, mm; 0 where one has less, or none is there.
func leastAtCut(result *Result, of func(*Finding) bool) float64 {
	least := math.Inf(1)
	for i := range result.Findings {
		if f := &result.Findings[i]; f.Rule.AtCut && f.Rule.Unit == MM && f.Margin.Set && of(f) {
			least = min(least, f.Margin.Value-f.ClearFrom())
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return max(0, least)
}

func marksOf(result *Result) MarkSheet {
	job, plan := &result.Job, &result.Plan
	sheet := MarkSheet{Marks: []Mark{}, Pilot: &Pilot{}}
	m := marker{job: job, fit: &plan.Fit}
	if job.Cut == nil {
		sheet.Marks = append(sheet.Marks, m.fuelHoles(plan)...)
		return sheet
	}
	sheet.Marks = append(sheet.Marks, m.centre(&plan.Cut))
	sheet.Holes = m.pilots(&plan.Cut)
	if job.Heater != nil {
		sheet.Marks = append(sheet.Marks, m.plate(Plate(*job, *plan).Corners())...)
	}
	sheet.Stubs = m.stubs()
	for i, at := range Bolts(job, plan) {
		sheet.Marks = append(sheet.Marks, m.hole(Thing{Sort: ABolt, Index: int32(i)}, at))
	}
	sheet.Marks = append(sheet.Marks, m.fuelHoles(plan)...)
	sheet.Checks = m.checks(plan)
	sheet.Marks = append(sheet.Marks, m.exhaust(plan)...)
	sheet.Pilot = pilot(job.Cut, &plan.Cut)
	return sheet
}

func pilot(cut *vehicles.Cut, place *vehicles.CutPlace) *Pilot {
	p := &Pilot{MayMove: MostBeside(cut), Inside: cut.Across/2 - cut.PilotAcross()/2 - pilotRim}
	if place.Drilled {
		at := place.At
		p.Drilled, p.Off = &at, at.Sub(place.Intended)
	}
	return p
}

// ReadBelow returns what the tape must say at a place on the floor's underside.
func ReadBelow(job *vehicles.Job, p geometry.Point) BelowReadings {
	m := marker{job: job}
	return m.below("", p).Below
}

// CentreAbove is what the tapes say of the centreline on top, from the left and from the right edge used there.
func CentreAbove(job *vehicles.Job) (left, right float64) {
	return reading(job.AboveLeft(), job.Datum.SideAbove), reading(job.AboveRight(), job.Datum.SideAbove)
}

// marker knows where the tapes are hooked.
type marker struct {
	job *vehicles.Job
	fit *survey.Fit
}

// both is a mark for both sides of the floor at a place of the frame below.
func (m *marker) both(name string, p geometry.Point) Mark {
	mark := m.below(name, p)
	d, up := &m.job.Datum, m.fit.Up(p)
	a := &AboveReadings{
		X: up.X, Y: up.Y,
		Bumper: reading(m.job.AboveBumper(up), d.HookAbove),
		Left:   reading(m.job.AboveLeft()-up.Y, d.SideAbove), Right: reading(up.Y+m.job.AboveRight(), d.SideAbove),
		Sigma: m.job.AboveMarkU(up),
	}
	a.PinLeft, a.PinRight = survey.Pins(up, d.ShiftAbove.Value, m.job.Pins(), d.HookAbove.Value)
	mark.Above = a
	return mark
}

// BelowSpread is the largest standard uncertainty in x and in y of the marks that are made from below alone; 0 and 0 without any.
func BelowSpread(sheet MarkSheet) (most [2]float64) {
	for _, m := range sheet.Marks {
		for axis, sigma := range m.Below.Sigma {
			if m.Above == nil {
				most[axis] = max(most[axis], sigma)
			}
		}
	}
	return most
}

// centre is the mark of the cut's centre: once a pilot hole is measured beside it, people hear that it is the one that was meant.
func (m *marker) centre(cut *vehicles.CutPlace) Mark {
	mark := m.both("cut centre", cut.Intended)
	if cut.Drilled {
		mark.Words += " as meant"
	}
	return mark
}

// pilots are the pilot holes that are there. Nobody marks them, so they have no uncertainty of a mark.
func (m *marker) pilots(cut *vehicles.CutPlace) (holes []Mark) {
	put := func(name string, at geometry.Point) {
		hole := m.both(name, at)
		hole.Above.Sigma = [2]float64{}
		holes = append(holes, hole)
	}
	if cut.Drilled {
		put("pilot hole as drilled", cut.At)
	}
	if cut.Old != nil {
		put("old pilot hole", *cut.Old)
	}
	return holes
}

// hole is a mark of a hole drilled beside the cut.
func (m *marker) hole(of Thing, p geometry.Point) Mark {
	mark := m.both(of.String(), p)
	mark.Words = of.spoken()
	return mark
}

// stubs are the places of the heater's stubs, where the heater will sit.
func (m *marker) stubs() (marks []Mark) {
	for _, k := range vehicles.RunKinds {
		if at, there := m.job.Stub(k); there {
			marks = append(marks, m.both(k.String()+" stub", at.Plan()))
		}
	}
	return marks
}

// fuelHoles are the marks of the fuel line's own holes.
func (m *marker) fuelHoles(plan *vehicles.Plan) (marks []Mark) {
	for i, at := range FuelHoles(m.job, plan) {
		marks = append(marks, m.hole(Thing{Sort: AFuelHole, Index: int32(i)}, at))
	}
	return marks
}

// below is a mark on the floor's underside.
func (m *marker) below(name string, p geometry.Point) Mark {
	d := &m.job.Datum
	return Mark{Name: name, Words: name, Plan: p, Below: BelowReadings{
		Bumper: reading(m.job.BelowBumper(p), d.HookBelow),
		Left:   reading(m.job.SideLeft()-p.Y, d.SideBelow), Right: reading(p.Y+m.job.SideRight(), d.SideBelow),
		Sigma: m.job.BelowMarkU(p),
	}}
}

// reading is what a tape says at a plan distance from a zero that hangs so much lower; for a place behind the zero it is negative.
func reading(plan float64, hook vehicles.Number) float64 {
	if hook.Value == 0 {
		return plan
	}
	return survey.AboveReading(plan, hook.Value)
}

func plateMark(i int) string { return fmt.Sprintf("plate %d", i+1) }

// plate are the marks of the flange's corners. Their numbers go round from the warm air's front left; people hear where on the van each is.
func (m *marker) plate(corners [4]geometry.Point) (marks []Mark) {
	where := cornersOf(corners)
	for i, corner := range corners {
		mark := m.both(plateMark(i), corner)
		if where[i] != "" {
			mark.Words += " " + where[i]
		}
		marks = append(marks, mark)
	}
	return marks
}

// eighths are the ways of the van, from its front anticlockwise as seen from above.
var eighths = [...]string{"front", "front left", "left", "rear left", "rear", "rear right", "right", "front right"}

// cornersOf says where on the van each corner of a rectangle is from its middle. Corners of one that is nearly a line would be called
// alike: then nobody is.
func cornersOf(corners [4]geometry.Point) (where [4]string) {
	middle := corners[0].Add(corners[2]).Scale(0.5)
	seen := map[string]bool{}
	for i, c := range corners {
		out := c.Sub(middle)
		eighth := int(math.Round(math.Atan2(out.Y, out.X)/(math.Pi/4))+8) % 8
		where[i] = eighths[eighth]
		seen[where[i]] = true
	}
	if len(seen) < len(corners) {
		return [4]string{}
	}
	return where
}

// checks are the diagonals of the flange, and those from the datum pins to the floor's front corners: pins that stand
// square to the van give the lengths here. They are taped above, from the pins as pin_left and pin_right are.
func (m *marker) checks(plan *vehicles.Plan) []Check {
	var list []Check
	if h := m.job.Heater; h != nil {
		diagonal, corners := math.Hypot(h.Plate[0], h.Plate[1]), Plate(*m.job, *plan).Corners()
		for i := range 2 {
			ends := [2]geometry.Point{m.fit.Up(corners[i]), m.fit.Up(corners[i+2])}
			list = append(list, Check{PlateDiagonal, plateMark(i), plateMark(i + 2), diagonal, ends})
		}
	}
	d, pins := &m.job.Datum, m.job.Pins()
	leftPin, rightPin := geometry.Point{X: d.ShiftAbove.Value, Y: pins}, geometry.Point{X: d.ShiftAbove.Value, Y: -pins}
	front := func(y float64) (corner geometry.Point, left, right float64) {
		corner = m.fit.Up(geometry.Point{X: plan.FloorMax.X, Y: y})
		left, right = survey.Pins(corner, d.ShiftAbove.Value, pins, d.HookAbove.Value)
		return corner, left, right
	}
	frontLeft, _, toLeft := front(plan.FloorMax.Y)
	frontRight, toRight, _ := front(plan.FloorMin.Y)
	return append(list, Check{PinsApart, "left pin", "right pin", 2 * pins, [2]geometry.Point{leftPin, rightPin}},
		Check{PinDiagonal, "left pin", "floor, front right", toRight, [2]geometry.Point{leftPin, frontRight}},
		Check{PinDiagonal, "right pin", "floor, front left", toLeft, [2]geometry.Point{rightPin, frontLeft}})
}

// exhaust are the marks of the exhaust's clips and of its muffler's ends.
func (m *marker) exhaust(plan *vehicles.Plan) []Mark {
	if plan.Exhaust == nil {
		return nil
	}
	var marks []Mark
	for i, clip := range m.job.Exhaust.Clips {
		at := plan.Exhaust.Station(clip)
		marks = append(marks, m.below(fmt.Sprintf("clip %d", i+1), geometry.Point{X: at.X, Y: at.Y}))
	}
	if muffler := plan.Exhaust.Muffler; muffler != nil {
		for i, end := range muffler.Axis {
			marks = append(marks, m.below(fmt.Sprintf("muffler %d", i+1), end.Plan()))
		}
	}
	return marks
}
