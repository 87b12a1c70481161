package sheet

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
)

// above is the van from above with the marks that are made there.
func (s *source) above() Section {
	sheet := rules.Marks(*s.Result)
	opts := drawing.Options{View: scene.Above, Selected: -1, Marks: sheet.Marks[:min(1, len(sheet.Marks))], Pins: true}
	title := "The floor, and the arcs from the pins to the middle of the cut"
	if s.Job.Cut == nil {
		title = "The floor"
	}
	whole := onTop(drawing.Draw(*s.Result, opts))
	pick(whole, scene.Mark)
	section := Section{Heading: "On top: the floor from above, and what the tape says at each mark", Parts: []Part{
		s.top(sheet),
		Beside{s.picture(title, whole, floorHigh), Parts{Legend{whole}, s.hands(scene.Above)}, legendWide},
	}}
	if len(sheet.Marks) == 0 {
		section.Parts = append(section.Parts, Where{})
		return section
	}
	section.Parts = append(section.Parts, s.marks(sheet))
	return section
}

// floorHigh is how high the picture of the whole floor may be, mm: with the marks it is one page. legendWide is how wide the legend beside it is.
const floorHigh, legendWide = 67, 36

// pick has the lines of what has a role stand out of all others: arcs that are to be struck are looked for.
func pick(s scene.Scene, of scene.Role) {
	for i := range s.Items {
		if it := &s.Items[i]; it.Role == of && it.Primitive == scene.Stroke {
			it.Selected = true
		}
	}
}

// onTop takes the names from what the floor hides: the picture from below has them.
func onTop(s scene.Scene) scene.Scene {
	for i := range s.Items {
		if it := &s.Items[i]; s.Projection.Hidden(it) {
			it.Label, it.Code = "", ""
		}
	}
	return bareHoles(s)
}

// bareHoles takes the names from holes: they stand at their marks.
func bareHoles(s scene.Scene) scene.Scene {
	for i := range s.Items {
		if it := &s.Items[i]; it.Role == scene.Hole {
			it.Label = ""
		}
	}
	return s
}

// hands says whose hand the foot of a picture is on: of whoever works there.
func (s *source) hands(view scene.View) Text {
	p := view.Projection()
	hand := strings.ReplaceAll(p.Hands[0], string(scene.ToBumper), scene.ToBumper.Called(s.Job.Datum.Name))
	return Text{Words: "Down in the picture is the van's " + string(p.Bottom()) + ": " + hand + ".", Size: small}
}

// picture is a scene of the job.
func (s *source) picture(title string, of scene.Scene, most float64) Picture {
	return Picture{Title: title, Scene: of, Most: most, Say: s.say, Datum: s.Job.Datum.Name}
}

// top is what the job is, beside what is near the cut.
func (s *source) top(sheet rules.MarkSheet) Part {
	facts := Parts{First{cautionsHeading, "Read the cautions before anything else", s.facts()}}
	if dangers := rules.Dangers(s.Result); len(dangers) > 0 {
		facts = append(facts, List(dangers))
	}
	if len(sheet.Checks) > 0 {
		facts = append(facts, s.checkLengths(sheet.Checks))
	}
	ties := s.ties()
	if s.Job.Cut == nil {
		return append(facts, ties)
	}
	near := drawing.Draw(*s.Result, drawing.Options{View: scene.Above, Selected: -1, Marks: coded(sheet.Marks)})
	return Beside{Left: facts, Right: Parts{s.near(s.nearTitle("Near the cut", true), bareHoles(near)), ties}}
}

// nearTitle says by which letters a picture has what is marked near the cut.
func (s *source) nearTitle(title string, plate bool) string {
	of := ""
	add := func(there bool, words string) {
		if there {
			of = survey.Joined(", ", of, words)
		}
	}
	add(plate && s.Job.Heater != nil, "plate's corners P")
	add(len(rules.Bolts(&s.Job, &s.Plan)) > 0, "bolts B")
	add(len(rules.FuelHoles(&s.Job, &s.Plan)) > 0, "fuel hole F")
	return survey.Joined(": ", title, of)
}

// codes are what marks are called on a picture that has no room for more.
var codes = strings.NewReplacer("plate ", "P", "bolt hole ", "B", "bolt ", "B", "fuel hole ", "F")

// coded are the marks by their letters and numbers.
func coded(marks []rules.Mark) []rules.Mark {
	out := slices.Clone(marks)
	for i := range out {
		if code := codes.Replace(out[i].Name); len(code) <= len("P10") {
			out[i].Words = code
		}
	}
	return out
}

// nearHigh is how high the picture of what is near the cut may be, mm, and nearHalf how far from its middle it shows at least, mm of the
// van: with the lists beside and below it is one page, on top and underneath.
const (
	nearHigh = 44
	nearHalf = 142
)

// near is what of a picture is near the cut.
func (s *source) near(title string, of scene.Scene) Picture {
	near := s.picture(title, of, nearHigh)
	near.Around = s.nearCut()
	return near
}

func (s *source) nearCut() *Around {
	half := geometry.Point{X: nearHalf, Y: nearHalf}
	for _, at := range append(rules.Bolts(&s.Job, &s.Plan), rules.FuelHoles(&s.Job, &s.Plan)...) {
		const most = 350 // a hole farther off is seen on the whole floor
		if off := at.Sub(s.Plan.Cut.At); off.Norm() < most {
			half.X, half.Y = max(half.X, off.Norm()+20), max(half.Y, off.Norm()+20)
		}
	}
	return &Around{Middle: s.Plan.Cut.At, Half: half}
}

// spreadHead stands over how much a place may be off either way, 95 times in 100; its blanks hold it together.
const spreadHead = "±\u00a095\u00a0%"

// marks are the readings of the tape at each mark, as programs get them; the stubs, which nobody marks, come last.
func (s *source) marks(sheet rules.MarkSheet) Part {
	t := Table{Size: small, Cols: []Col{
		{Head: "mark"}, {Head: "below: " + s.Job.Datum.Called(), Figure: true}, {Head: "left", Figure: true}, {Head: "right", Figure: true},
		{Head: "above: " + s.Job.Datum.Called(), Figure: true}, {Head: spreadHead, Figure: true}, {Head: "left", Figure: true}, {Head: "right", Figure: true},
		{Head: spreadHead, Figure: true}, {Head: "left pin", Figure: true}, {Head: spreadHead, Figure: true}, {Head: "right pin", Figure: true}, {Head: spreadHead, Figure: true},
	}}
	for _, m := range sheet.Listed() {
		name := m.Words
		if m.Above == nil { // what hangs on the exhaust; the other runs have clips, too
			name = "exhaust's " + name
		}
		cells := []string{name, survey.Figure(m.Below.Bumper), survey.Figure(m.Below.Left), survey.Figure(m.Below.Right)}
		if a := m.Above; a != nil {
			spread := func(way rules.TapeWay) string {
				if sigma := rules.SigmaOf(s.Result, m, way); sigma > 0 {
					return s.say.Spread95(sigma)
				}
				return ""
			}
			cells = append(cells, survey.Figure(a.Bumper), spread(rules.FromDatum), survey.Figure(a.Left), survey.Figure(a.Right), spread(rules.FromLeft),
				survey.Figure(a.PinLeft), spread(rules.FromLeftPin), survey.Figure(a.PinRight), spread(rules.FromRightPin))
		}
		t.Rows = append(t.Rows, Row{Cells: cells, Strong: true})
	}
	said := append([]string{"A mark lies where two tapes cross, from the " + s.Job.Datum.Edge() + " and from a side; the pins' arcs check it."}, s.say.InTheWay(s.Result, sheet)...)
	if below := rules.BelowSpread(sheet); below != [2]float64{} {
		said[0] += " " + s.say.BelowSpread(below)
	}
	out := Parts{t, Where{strings.Join(said, "\n")}}
	if p := sheet.Pilot; p.Drilled != nil {
		out = append(out, Text{Words: s.say.PilotOff(*p) + ". " + rules.SetOffHole, Bold: true}, Text{Words: s.say.Beside(s.Job.Cut) + "."})
	}
	if text := s.say.OldPilot(s.Result); text != "" {
		out = append(out, Text{Words: text, Bold: true})
	}
	if moved := s.say.Moved(sheet.Moved); len(moved) > 0 {
		out = append(out, List(moved))
	}
	return out
}

// checkLengths are the lengths to tape that show whether what was set out is square.
func (s *source) checkLengths(checks []rules.Check) Part {
	t := Table{Size: small, Cols: []Col{{Head: "to check above; diagonals alike"}, {Head: "mm", Figure: true}}}
	for _, c := range checks {
		t.Rows = append(t.Rows, Row{Cells: []string{s.say.Check(c), survey.Figure(c.Length)}})
	}
	return t
}
