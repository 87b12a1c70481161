package sheet

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/vehicles"
)

// facts are what the job is beside what the head of each page says, and from where its tapes were read: without that no reading is one.
func (s *source) facts() SmallFacts {
	d := &s.Job.Datum
	return SmallFacts{
		{"vehicle", s.vehicle()}, {"fitter", s.Job.Fitter}, {"floor", s.floor()}, {"cut", s.cut()}, {"heater", s.heater()}, {"its body", s.body()},
		{"warm-air ducts", work.Ducts(s.Result)},
		{"tape below", "mm from the " + d.Edge() + hooked(d.HookBelow, "floor")},
		{"tape above", "mm from the " + d.Edge() + hookedAbove(d)},
		{"from the sides", sides(d)}, {"side edges below", edges(d.EdgesBelow)}, {"side edges above", edges(d.EdgesAbove)}, {"centreline", s.centreline()},
		{"pins", s.pins()},
	}
}

// vehicle is which van it is, "" where the head of each page has room for that.
func (s *source) vehicle() string {
	const room = 85 // mm: half of a page
	if measured(vector.Text{Size: small}, s.Job.Vehicle) <= room {
		return ""
	}
	return s.Job.Vehicle
}

// floor is how large the floor is, and how thick.
func (s *source) floor() string {
	f := &s.Job.Floor
	text := fmt.Sprintf("%s long from %s on, %s wide, up to %s thick, %s up", survey.Figure(f.Length), survey.Figure(f.From), survey.Figure(f.Width),
		survey.Figure(f.Thickness), survey.Figure(f.Ground))
	if len(s.Job.Guesses) > 0 {
		text += "; not all of it measured"
	}
	return text
}

// edges says which edges the left and the right one are.
func edges(text string) string {
	if text == "" {
		return "nobody has said which: ask whoever measured"
	}
	return text
}

// centreline says how far it is from the side edges on either side of the floor: y counts from it, and so do the pins.
func (s *source) centreline() string {
	below := rules.ReadBelow(&s.Job, geometry.Point{})
	left, right := rules.CentreAbove(&s.Job)
	return fmt.Sprintf("below %s to the left edge, %s right; above %s, %s", survey.Figure(below.Left), survey.Figure(below.Right), survey.Figure(left), survey.Figure(right))
}

// body is how large the heater is, and what is kept free round it.
func (s *source) body() string {
	h := s.Job.Heater
	if h == nil {
		return ""
	}
	return fmt.Sprintf("%s long, %s wide, %s high; free before its warm air %s, behind %s, beside %s, over it %s", survey.Figure(h.Body[0]), survey.Figure(h.Body[1]), survey.Figure(h.Body[2]),
		survey.Figure(h.Space.Front), survey.Figure(h.Space.Rear), survey.Figure(h.Space.Sides), survey.Figure(h.Space.Top))
}

// pins says where the two pins stand that the arcs are struck from.
func (s *source) pins() string {
	if s.Job.Cut == nil {
		return ""
	}
	text := survey.InMM(s.Job.Pins()) + " off the centreline, "
	if s.Job.Datum.PinsOn == vehicles.Batten {
		return text + "marked on a straight batten along the " + s.Job.Datum.Line()
	}
	return text + "on the " + s.Job.Datum.Edge()
}

func (s *source) cut() string {
	c := s.Job.Cut
	if c == nil {
		return ""
	}
	text := fmt.Sprintf("%s across, pilot %s", survey.InMM(c.Across), survey.InMM(c.PilotAcross()))
	if c.Relieved.Set {
		text += ", wood, foam and lining cut back to " + survey.InMM(c.Relieved.Value)
	}
	return text
}

func (s *source) heater() string {
	h := s.Job.Heater
	if h == nil {
		return ""
	}
	text := fmt.Sprintf("warm air %s, plate %s by %s", toward(h.Yaw), survey.Figure(h.Plate[0]), survey.Figure(h.Plate[1]))
	if len(h.Bolts) > 0 {
		text += fmt.Sprintf(", %s of %s", survey.Counted(len(h.Bolts), "hole"), survey.Figure(h.Bolt))
	}
	return survey.Joined(", ", h.Class, text)
}

// hooked says where the zero of a tape hangs; without a height it is held level.
func hooked(zero vehicles.Number, from string) string {
	switch {
	case !zero.Set:
		return ", held level"
	case zero.Value == 0:
		return ", zero at the " + from
	case zero.Value < 0:
		return fmt.Sprintf(", zero %s above the %s", survey.Figure(-zero.Value), from)
	}
	return fmt.Sprintf(", zero %s below the %s", survey.Figure(zero.Value), from)
}

// hookedAbove says where the tape hangs above; without a height its zero is at the floor's top.
func hookedAbove(d *vehicles.Datum) string {
	text := hooked(vehicles.Some(d.HookAbove.Or(0)), "floor's top")
	switch x := d.ShiftAbove.Or(0); {
	case x > 0:
		text += ", " + survey.Figure(x) + " ahead of the one used below"
	case x < 0:
		text += ", " + survey.Figure(math.Abs(x)) + " behind the one used below"
	}
	return text
}

// sides says where the zeros of the side edges hang.
func sides(d *vehicles.Datum) string {
	if !d.SideBelow.Set && !d.SideAbove.Set {
		return "held level"
	}
	return "below" + hooked(d.SideBelow, "floor") + "; above" + hooked(d.SideAbove, "floor's top")
}
