package aloud

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// beside is one thing beside the cut.
type beside struct {
	name, kind string
	placed     *vehicles.Placed
	sort       rules.Sort
	index      int
	separation geometry.Separation // of the cut's circle from it
}

// Near says what lies round the cut within LookRound, under the floor and in it, the nearest first: which way, how far from the
// cut's rim, how high, and the verdict; and how many things lie farther off.
func Near(s desk.State) []string {
	return near("What lies near the cut under the floor or in it, nearest first:", false, s)
}

// NearOnTop says the same of what stands on the floor.
func NearOnTop(s desk.State) []string {
	return near("What stands near the cut on the floor, nearest first:", true, s)
}

// near says it of what stands on the floor, or of all else.
func near(title string, standing bool, s desk.State) []string {
	if s.Job.Cut == nil || len(s.Faults) > 0 {
		return nil
	}
	var lines []string
	if !standing {
		lines = append(lines, Lying(s.Job.Datum.Name))
	}
	said, far := len(lines), 0
	for _, b := range besides(s) {
		if b.stands(s) != standing {
			continue
		}
		finding := ofCut(b, s)
		if b.separation.Gap > vehicles.LookRound && (finding == nil || finding.Verdict == rules.Clear) {
			far++
			continue
		}
		lines = append(lines, b.said(finding, s))
	}
	if len(lines) == said {
		lines = append(lines, desk.NoneWithin(vehicles.LookRound, "cut", s.Settings.Units))
	}
	if far > 0 {
		lines = append(lines, fmt.Sprintf("Farther off than %s: %d.", desk.Length(vehicles.LookRound, s.Settings.Units), far))
	}
	return Whole(title, lines)
}

// stands says whether a thing stands on the floor.
func (b beside) stands(s desk.State) bool {
	return b.sort == rules.AFitting && !rules.InsideFloor(&s.Result.Job.Fittings[b.index])
}

// besides are all obstructions and fittings, the nearest to the cut first.
func besides(s desk.State) (all []beside) {
	at, radius := s.Result.Plan.Cut.At, s.Result.Job.Cut.Across/2
	add := func(sort rules.Sort, i int, name, kind string, placed *vehicles.Placed) {
		all = append(all, beside{name, kind, placed, sort, i, placed.Prism.Footprint.GapCircle(at, radius)})
	}
	for i := range s.Result.Plan.Obstructions {
		o := &s.Result.Job.Obstructions[i]
		add(rules.AnObstruction, i, o.Name, o.Kind, &s.Result.Plan.Obstructions[i])
	}
	for i := range s.Result.Plan.Fittings {
		f := &s.Result.Job.Fittings[i]
		add(rules.AFitting, i, f.Name, f.Kind, &s.Result.Plan.Fittings[i])
	}
	slices.SortStableFunc(all, func(a, b beside) int { return cmp.Compare(a.separation.Gap, b.separation.Gap) })
	return all
}

// ofCut is the finding of the cut with a thing, nil where no rule has one.
func ofCut(b beside, s desk.State) *rules.Finding {
	for i := range s.Result.Findings {
		if f := &s.Result.Findings[i]; f.Subject.Sort == rules.TheCut && f.Against.Is(b.sort, b.index) {
			return f
		}
	}
	return nil
}

// said is the thing in one line.
func (b beside) said(finding *rules.Finding, s desk.State) string {
	verdict := "not held against the cut"
	switch {
	case finding != nil && finding.Weight == rules.Kills:
		verdict = desk.VerdictWord(finding.Verdict) + ", " + Margin(*finding, s) + ", " + finding.Weight.String()
	case finding != nil:
		verdict = desk.VerdictWord(finding.Verdict) + ", " + Margin(*finding, s)
	case b.stands(s):
		verdict = ""
	case !vehicles.KindOf(b.kind).Is(vehicles.InSheetMetal):
		verdict += ": it lies deeper than the saw gets"
	}
	unsure := ""
	if !b.placed.Measured {
		unsure = rules.NotMeasuredHere
	}
	return Joined(called(b.name, b.kind)+": "+b.far(s), b.way(s), high(b.placed, b.sort, s), verdict, unsure)
}

// called is a thing's name, with its kind where the name does not say it.
func called(name, kind string) string {
	if kind == "" || len(name) >= len(kind) && name[:len(kind)] == kind {
		return name
	}
	return name + " (" + kind + ")"
}

// far is how far from the cut's rim it is.
func (b beside) far(s desk.State) string {
	gap := desk.Length(math.Abs(b.separation.Gap), s.Settings.Units)
	switch {
	case b.separation.Gap <= 0 && b.stands(s):
		return "over the cut, " + gap + " inside its rim"
	case b.separation.Gap <= 0:
		return "in the cut, " + gap + " inside its rim"
	}
	return gap + " from the cut's rim"
}

// way is which way of the cut it lies.
func (b beside) way(s desk.State) string {
	at := s.Result.Plan.Cut.At
	if b.placed.Prism.Footprint.Contains(at) {
		return Joined("over the cut's centre", crossing(b.placed, s))
	}
	return Joined(towards(b.separation.B.Sub(at), !b.stands(s), s), crossing(b.placed, s))
}

// high is how high or low a thing lies.
func high(p *vehicles.Placed, sort rules.Sort, s desk.State) string {
	u, floor := s.Settings.Units, 0.0
	if sort == rules.AFitting {
		floor = s.Result.Job.Floor.Thickness
	}
	low, top := p.Prism.Low-floor, p.Prism.High-floor
	switch {
	case p.Assumed:
		return "drop " + vehicles.NotMeasured + ", taken to reach the ground"
	case sort == rules.AFitting:
		return "from " + desk.Length(low, u) + " to " + desk.Length(top, u) + " " + desk.AboveFinished
	}
	return desk.Height(-top, u) + " to " + desk.Height(-low, u)
}

// crossing says how a pipe or line runs through the cut's circle: from which side to which; "" for what does not.
func crossing(p *vehicles.Placed, s desk.State) string {
	f, at, radius := &p.Prism.Footprint, s.Result.Plan.Cut.At, s.Result.Job.Cut.Across/2
	if f.Shape != geometry.Line || len(f.Path) < 2 {
		return ""
	}
	var rim []geometry.Point
	for i := 1; i < len(f.Path); i++ {
		rim = append(rim, rimPoints(f.Path[i-1], f.Path[i], at, radius)...)
	}
	switch len(rim) {
	case 0:
		return ""
	case 1:
		return "ends in the circle, coming from " + side(rim[0].Sub(at), s)
	}
	return "crosses the circle from " + side(rim[0].Sub(at), s) + " to " + side(rim[len(rim)-1].Sub(at), s)
}

// side is a way as a place.
func side(by geometry.Point, s desk.State) string { return "the side " + Towards(by, s) }

// rimPoints are where a straight leg goes through a circle's rim, in its own order.
func rimPoints(from, to, middle geometry.Point, radius float64) (points []geometry.Point) {
	leg, off := to.Sub(from), from.Sub(middle)
	a, b, c := leg.Dot(leg), 2*leg.Dot(off), off.Dot(off)-radius*radius
	root := b*b - 4*a*c
	if a == 0 || root <= 0 {
		return nil
	}
	for _, t := range []float64{(-b - math.Sqrt(root)) / (2 * a), (-b + math.Sqrt(root)) / (2 * a)} {
		if t >= 0 && t <= 1 {
			points = append(points, from.Add(leg.Scale(t)))
		}
	}
	return points
}
