package runs

import (
	"fmt"
	"strconv"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

// name is what a part is called in the list and in what is said of it.
func name(p placed) string {
	switch p.sort {
	case point:
		return "point " + strconv.Itoa(p.index+1)
	case clip:
		return "clip " + strconv.Itoa(p.index+1)
	case drain:
		return "drain " + strconv.Itoa(p.index+1)
	}
	return [...]string{
		stub: "stub", muffler: "muffler", filter: "filter", pump: "pump", clips: "clips", pipe: "pipe", shields: "shields", burns: "fuel", from: "begins at", tank: "tank",
	}[p.sort]
}

// letters say what the signs of parts mean.
var letters = []plan.Letter{
	{Sign: "1", Means: "point of the path"}, {Sign: "S", Means: "stub"}, {Sign: "M", Means: "muffler"}, {Sign: "c", Means: "clip"},
	{Sign: "w", Means: "drain hole"}, {Sign: "F", Means: "fuel filter"}, {Sign: "P", Means: "pump"},
}

// sign is what stands for a part on the pictures.
func sign(p placed) string {
	if p.sort == point {
		return strconv.Itoa(p.index + 1)
	}
	return map[sort]string{stub: "S", muffler: "M", clip: "c", drain: "w", filter: "F", pump: "P"}[p.sort]
}

// told says of a part where it is and what it is.
func (m screen) told(p placed, s desk.State) string {
	run, u := m.run(s), s.Settings.Units
	switch p.sort {
	case point:
		return fmt.Sprintf("Point %d of %d: %s", p.index+1, len(run.Path), where(run.Path[p.index], s))
	case stub:
		at, ok := m.place(p, s)
		if !ok {
			return "Stub: " + noStub
		}
		return "Stub: " + where(at, s) + ", where the heater has it."
	case clip, drain:
		return m.toldAlong(p, s)
	case muffler:
		return toldMuffler(run.Muffler, p, u)
	case filter:
		return toldFilter(run.Filter, p, u)
	case pump:
		return toldPump(run.Pump, p, u)
	case clips:
		if run.Clips == nil {
			return "Clips: nobody has said. " + keyClips.Help().Key + " spreads some, " + keyOther.Help().Key + " says there are none."
		}
		return "Clips: there are none, all of it hangs free. " + keyClips.Help().Key + " spreads some."
	}
	return m.toldWhole(p, s)
}

// toldWhole says what holds for the run as a whole.
func (m screen) toldWhole(p placed, s desk.State) string {
	run, u := m.run(s), s.Settings.Units
	switch p.sort {
	case shields:
		return "Heat shields: " + shieldWords(run.Shielded) + ". " + keyShields.Help().Key + " lists what is near."
	case burns:
		return "The line carries: " + orNotKnown(run.Supply.Kind) + ". " + keyOther.Help().Key + " says the next."
	case from:
		return "The line begins at: " + orNone(run.Supply.From) + ". " + keyOther.Help().Key + " says the next."
	case tank:
		return toldTank(run.Supply.Tank, s)
	}
	text := "Pipe: " + desk.Length(run.Across, u) + " across"
	if m.of != vehicles.FuelRun {
		return text + ", bent to a radius of " + sizeOr(run.Bend, s, "0 mm: sharp")
	}
	text = strings.Replace(text, "Pipe", "Line", 1) + ", inside " + sizeOr(run.Supply.Bore, s, notKnown)
	return text + ", through the floor in a hole of " + desk.Length(run.Supply.HoleAcross(), u)
}

func sizeOr(v vehicles.Number, s desk.State, none string) string {
	if !v.Set {
		return none
	}
	return desk.Length(v.Value, s.Settings.Units)
}

// where is a place in words.
func where(p vehicles.RunPoint, s desk.State) string {
	u := s.Settings.Units
	return "x " + survey.Format(p.X, u) + ", " + desk.Across(p.Y, s.Settings) + ", " + desk.Height(p.Drop, u)
}

// toldAlong says where along the run a clip or a drain hole is, and how far the next clips are.
func (m screen) toldAlong(p placed, s desk.State) string {
	u := s.Settings.Units
	text := upper(name(p)) + ": " + desk.Length(p.along, u) + " along"
	if at, ok := m.place(p, s); ok {
		text += ", " + desk.Height(at.Drop, u)
	}
	return text
}

func toldMuffler(h *vehicles.Muffler, p placed, u survey.Units) string {
	if !p.there {
		return "Muffler: none. " + keyMount.Help().Key + " puts one on."
	}
	text := fmt.Sprintf("Muffler: leg %d, %s along it, %s long, %s across; its drain hole ", h.Leg, desk.Length(h.Start, u), desk.Length(h.Length, u), desk.Length(h.Across, u))
	if h.Drain == "" {
		return text + "is " + notKnown + " (" + keyOther.Help().Key + ": down / aside)"
	}
	return text + "points " + h.Drain
}

func toldFilter(h *vehicles.Filter, p placed, u survey.Units) string {
	if !p.there {
		return "Filter: none. " + keyType.Help().Key + " puts one in."
	}
	return fmt.Sprintf("Filter: leg %d, %s along it", h.Leg, desk.Length(h.Start, u))
}

func toldPump(h *vehicles.Pump, p placed, u survey.Units) string {
	if !p.there {
		return "Pump: none. " + keyMount.Help().Key + " puts one on."
	}
	text := fmt.Sprintf("Pump: leg %d, %s along it, outlet %s° up", h.Leg, desk.Length(h.Start, u), survey.Exact(h.Tilt))
	if h.MlPer1000.Set {
		text += ", " + h.MlPer1000.Text() + " ml in 1000 strokes"
	}
	if h.Hz.Set {
		text += ", " + h.Hz.Text() + " Hz"
	}
	return text
}

func toldTank(t *vehicles.Tank, s desk.State) string {
	if t == nil {
		return "Tank: " + notKnown + ". " + keyType.Help().Key + " types where it is."
	}
	u := s.Settings.Units
	text := "Tank: x " + survey.Format(t.At[0], u) + ", " + desk.Across(t.At[1], s.Settings)
	switch {
	case t.Drop.Set:
		text += ", " + survey.Format(t.Drop.From, u) + " to " + desk.Length(t.Drop.To, u) + " below floor"
	case t.Rise.Set:
		text += ", " + survey.Format(t.Rise.From, u) + " to " + desk.Length(t.Rise.To, u) + " above the finished floor"
	}
	return text
}

func shieldWords(s vehicles.Shields) string {
	switch {
	case s.All:
		return "before everything"
	case len(s.Names) == 0:
		return "none"
	}
	return "before " + strings.Join(s.Names, ", ")
}
