package vehicles

import (
	"strconv"
	"strings"

	"bench.example/undermark/geometry/survey"
)

func (w *writer) datum(d Datum) {
	if d == (Datum{}) {
		return
	}
	w.table("datum")
	w.texts("name", d.Name)
	w.maybe("hook_below", d.HookBelow)
	w.maybe("hook_above", d.HookAbove)
	w.maybe("shift_above", d.ShiftAbove)
	w.maybe("left", d.Left)
	w.maybe("right", d.Right)
	w.maybe("above_left", d.AboveLeft)
	w.maybe("above_right", d.AboveRight)
	w.maybe("side_below", d.SideBelow)
	w.maybe("side_above", d.SideAbove)
	w.maybe("frames", d.Frames)
	w.maybe("pins", d.Pins)
	w.texts("pins_on", d.PinsOn)
	w.texts("edges_below", d.EdgesBelow)
	w.texts("edges_above", d.EdgesAbove)
}

// bow writes how the bumper's edge runs.
func (w *writer) bow(points []BowPoint) {
	for _, p := range points {
		w.list("datum.bow")
		w.number("y", p.Y)
		w.number("offset", p.Offset)
	}
}

func (w *writer) tape(t Tape) {
	if t == (Tape{}) {
		return
	}
	w.table("tape")
	w.texts("class", t.Class)
	w.maybe("read", t.Read)
	w.maybe("mark", t.Mark)
	w.maybe("height", t.Height)
	w.maybe("turn", t.Turn)
}

func (w *writer) place(p Place) {
	switch p.Shape {
	case Piped:
		points := make([]string, len(p.Path))
		for i, point := range p.Path {
			points[i] = tomlPair(point)
		}
		w.value("path", "["+strings.Join(points, ", ")+"]")
		w.maybe("across", p.Across)
	case Disc:
		w.pair("centre", p.Centre)
		w.maybe("across", p.Across)
	default:
		w.pair("x", p.X)
		w.pair("y", p.Y)
	}
}

// turn writes a rectangle's turn, behind its heights as people fill them in.
func (w *writer) turn(p Place) {
	if p.Shape == Box && p.Turn != 0 {
		w.number("turn", p.Turn)
	}
}

func (w *writer) obstruction(o Obstruction) {
	w.list("obstruction")
	w.text("name", o.Name)
	w.text("kind", o.Kind)
	w.place(o.Place)
	w.span("drop", o.Drop)
	w.turn(o.Place)
	w.maybe("taped_at", o.TapedAt)
	if !o.Measured {
		w.value("measured", "false")
	}
	w.texts("holds", o.Holds)
	w.maybe("travel", o.Travel)
	w.eitherOf("total", o.Total)
}

// eitherOf writes those of two readings that there are.
func (w *writer) eitherOf(key string, p Pair) {
	said := func(r survey.Reading) string {
		if r.Text == "" {
			return ""
		}
		return tomlReading(r)
	}
	if x, y := said(p[0]), said(p[1]); x+y != "" {
		w.value(key, inline("x", x, "y", y))
	}
}

func (w *writer) opening(o Opening) {
	w.list("opening")
	w.text("name", o.Name)
	w.text("kind", o.Kind)
	w.place(o.Place)
	w.span("drop", o.Drop)
	w.turn(o.Place)
	if o.Unconfirmed {
		w.value("measured", "false")
	}
}

func (w *writer) fitting(f Fitting) {
	w.list("fitting")
	w.text("name", f.Name)
	w.texts("kind", f.Kind)
	w.place(f.Place)
	w.span("rise", f.Rise)
	w.turn(f.Place)
	if f.Unconfirmed {
		w.value("measured", "false")
	}
	w.eitherOf("total", f.Total)
}

func (w *writer) tie(t Tie) {
	w.list("tie")
	w.text("name", t.Name)
	w.pair("below", t.Below)
	w.pair("above", t.Above)
	if !t.Use {
		w.value("use", "false")
	}
}

func (w *writer) wheel(v Wheel) {
	w.list("wheel")
	w.numbers("at", v.At[:]...)
	w.maybe("across", Number{v.Across, v.Across != 0})
	w.maybe("width", Number{v.Width, v.Width != 0})
}

// heater writes what the file said of the heater; the class gives the rest again.
func (w *writer) heater(h Heater) {
	w.table("heater")
	said := func(key HeaterKeys, write func()) {
		if h.Given&key != 0 {
			write()
		}
	}
	said(HasClass, func() { w.text("class", h.Class) })
	said(HasYaw, func() { w.number("yaw", h.Yaw) })
	said(HasBody, func() { w.numbers("body", h.Body[:]...) })
	said(HasBodyAt, func() { w.numbers("body_at", h.BodyAt[:]...) })
	said(HasPlate, func() { w.numbers("plate", h.Plate[:]...) })
	said(HasSpace, func() { w.value("space", spaceText(h)) })
	said(HasTurret, func() { w.maybe("turret", h.Turret) })
	said(HasStubDrop, func() { w.number("stub_drop", h.StubDrop) })
	said(HasExhaustStub, func() { w.numbers("exhaust_stub", h.ExhaustStub[:]...) })
	said(HasIntakeStub, func() { w.numbers("intake_stub", h.IntakeStub[:]...) })
	said(HasFuelStub, func() { w.numbers("fuel_stub", h.FuelStub[:]...) })
	said(HasBolts, func() { w.value("bolts", pointList(h.Bolts)) })
	said(HasBolt, func() { w.number("bolt", h.Bolt) })
	said(HasPacked, func() { w.value("packed", strconv.FormatBool(h.Packed)) })
	w.air(h)
}

// spaceText is the space kept free, as far as the file said it.
func spaceText(h Heater) string {
	var said []string
	for _, side := range h.Space.sides() {
		if h.Given&side.has != 0 {
			said = append(said, side.key, survey.Exact(*side.at))
		}
	}
	return inline(said...)
}

func (w *writer) cut(c Cut) {
	w.table("cut")
	w.numbers("at", c.At[:]...)
	w.number("across", c.Across)
	w.maybe("pilot", c.Pilot)
	if c.Drilled != nil {
		w.pair("drilled", *c.Drilled)
	}
	if c.Old != nil {
		w.pair("old_pilot", *c.Old)
	}
	w.eitherOf("sawn", c.Sawn)
	if len(c.Direct) > 0 {
		tapes := make([]string, len(c.Direct))
		for i, d := range c.Direct {
			tapes[i] = inline("to", tomlText(d.To), "gap", tomlReading(d.Gap))
		}
		w.value("direct", "["+strings.Join(tapes, ", ")+"]")
	}
	w.maybe("relieved", c.Relieved)
}

func pointList(points [][2]float64) string {
	texts := make([]string, len(points))
	for i, b := range points {
		texts[i] = numberList(b[:]...)
	}
	return "[" + strings.Join(texts, ", ") + "]"
}

func (w *writer) points(path []RunPoint) {
	texts := make([]string, len(path))
	for i, p := range path {
		texts[i] = numberList(p.X, p.Y, p.Drop)
	}
	w.value("path", "["+strings.Join(texts, ", ")+"]")
}

// run writes a run of any kind: what its kind does not have is not set.
func (w *writer) run(k RunKind, r Run) {
	w.table(k.Table())
	w.texts("kind", r.Supply.Kind)
	w.texts("from", r.Supply.From)
	w.maybe("hole", r.Supply.Hole)
	w.number("across", r.Across)
	w.maybe("bend", r.Bend)
	w.maybe("bore", r.Supply.Bore)
	if t := r.Supply.Tank; t != nil {
		w.value("tank", inline("at", numberList(t.At[:]...), "rise", spanText(t.Rise), "drop", spanText(t.Drop),
			"litres", t.Litres.Text(), "filler", quoted(t.Filler), "breather", quoted(t.Breather)))
	}
	w.points(r.Path)
	if len(r.Taped) > 0 {
		w.value("taped", wordList(r.Taped))
	}
	w.hanging(r.Hanging)
	switch s := r.Shielded; {
	case s.All:
		w.value("shielded", "true")
	case len(s.Names) > 0:
		w.value("shielded", wordList(s.Names))
	}
}

// inline is a table in braces of keys and values in turn, without those that are "".
func inline(keysAndValues ...string) string {
	var parts []string
	for i := 0; i+1 < len(keysAndValues); i += 2 {
		if keysAndValues[i+1] != "" {
			parts = append(parts, keysAndValues[i]+" = "+keysAndValues[i+1])
		}
	}
	return "{ " + strings.Join(parts, ", ") + " }"
}

func spanText(s Span) string {
	if !s.Set {
		return ""
	}
	return numberList(s.From, s.To)
}

// quoted is a text as a value of the file, "" for none.
func quoted(s string) string {
	if s == "" {
		return ""
	}
	return tomlText(s)
}
