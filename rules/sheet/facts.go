package sheet

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// facts are what the job is beside what the head of each page says, and from where its tapes were read: without that no reading is one.
func (s *source) facts() Facts {
	d := &s.Job.Datum
	return Facts{
		{"vehicle", s.Job.Vehicle}, {"fitter", s.Job.Fitter}, {"cut", s.cut()}, {"heater", s.heater()},
		{"tape below", "mm from the " + d.Edge() + hooked(d.HookBelow, "floor")},
		{"tape above", "mm from the " + d.Edge() + hookedAbove(d)},
		{"from the sides", sides(d)}, {"side edges below", d.EdgesBelow}, {"side edges above", d.EdgesAbove}, {"pins", s.pins()},
	}
}

// pins says where the two pins stand that the arcs are struck from.
func (s *source) pins() string {
	if s.Job.Cut == nil {
		return ""
	}
	text := survey.Figure(s.Job.Pins()) + " mm off the centreline, "
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
	text := fmt.Sprintf("%s mm across, pilot %s mm", survey.Figure(c.Across), survey.Figure(c.PilotAcross()))
	if c.Relieved.Set {
		text += ", wood, foam and lining cut back to " + survey.Figure(c.Relieved.Value) + " mm"
	}
	return text
}

func (s *source) heater() string {
	h := s.Job.Heater
	if h == nil {
		return ""
	}
	text := fmt.Sprintf("warm air %s, plate %s by %s mm", toward(h.Yaw), survey.Figure(h.Plate[0]), survey.Figure(h.Plate[1]))
	if len(h.Bolts) > 0 {
		text += fmt.Sprintf(", %d bolt holes of %s mm", len(h.Bolts), survey.Figure(h.Bolt))
	}
	return joined(", ", h.Class, text)
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
