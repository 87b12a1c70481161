package runs

import (
	"fmt"
	"strconv"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/plan"
	"bench.example/undermark/vehicles"
)

// name is what a part is called in the list and in what is said of it.
func name(p placed) string {
	switch p.sort {
	case point:
		return "point " + strconv.Itoa(p.index+1)
	case hung:
		return p.kind.Called(p.kind.Name, p.index)
	}
	return [...]string{
		stub: "stub", clips: "clips", pipe: "pipe", shields: "shields", burns: "fuel", from: "begins at", tank: "tank",
	}[p.sort]
}

// letters say what the signs of parts mean.
var letters = func() []plan.Letter {
	list := []plan.Letter{{Sign: "1", Means: "point of the path"}, {Sign: "S", Means: "stub"}}
	for _, k := range vehicles.HangingKinds {
		list = append(list, plan.Letter{Sign: k.Sign, Means: k.Means})
	}
	return list
}()

// sign is what stands for a part on the pictures.
func sign(p placed) string {
	switch p.sort {
	case point:
		return strconv.Itoa(p.index + 1)
	case stub:
		return "S"
	case hung:
		return p.kind.Sign
	}
	return ""
}

// told says of a part where it is and what it is.
func (m screen) told(p placed, s desk.State) string {
	run := m.run(s)
	switch p.sort {
	case point:
		return fmt.Sprintf("Point %d of %d: %s", p.index+1, len(run.Path), where(run.Path[p.index], s))
	case stub:
		at, ok := m.place(p, s)
		if !ok {
			return "Stub: " + noStub
		}
		return "Stub: " + where(at, s) + ", where the heater has it."
	case hung:
		return m.toldHung(p, s)
	case clips:
		if run.Clips == nil {
			return "Clips: nobody has said. " + keyClips.Help().Key + " spreads some, " + keyOther.Help().Key + " says there are none."
		}
		return "Clips: there are none, all of it hangs free. " + keyClips.Help().Key + " spreads some."
	}
	return m.toldWhole(p, s)
}

// toldBriefly says the same of what lies on the run without its sizes.
func (m screen) toldBriefly(p placed, s desk.State) string {
	switch at, ok := m.place(p, s); {
	case p.sort == stub && ok:
		return "Stub: " + where(at, s)
	case p.sort == hung && p.there && p.alone():
		run := *m.run(s)
		thing := run.Hanging.Thing(p.kind, p.index)
		text := seated(thing, s.Settings.Units)
		for _, d := range thing.Details() {
			if d.Word != nil && *d.Word == "" {
				text += "; " + d.Label + "? (" + keyOther.Help().Key + ")"
			}
		}
		return text
	}
	return m.told(p, s)
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
		return beginsAt(run.Supply.From) + " " + keyOther.Help().Key + " says the next."
	case tank:
		return toldTank(run.Supply.Tank, s)
	}
	text := "Pipe: " + desk.Length(run.Across, u) + " across"
	if m.of != vehicles.FuelRun {
		return text + ", bent to a radius of " + sizeOr(run.Bend, s, "0 mm: sharp")
	}
	text = strings.Replace(text, "Pipe", "Line", 1) + ", inside " + sizeOr(run.Supply.Bore, s, vehicles.NotKnown)
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

// askedOnSizing says where what a tank holds is entered, which this screen does not ask.
const askedOnSizing = "; what it holds is entered on Sizing (0), under fuel."

func toldTank(t *vehicles.Tank, s desk.State) string {
	if t == nil {
		return "Tank: " + vehicles.NotKnown + ". " + keyType.Help().Key + " types where it is" + askedOnSizing
	}
	u := s.Settings.Units
	text := "Tank: x " + survey.Format(t.At[0], u) + ", " + desk.Across(t.At[1], s.Settings)
	switch {
	case t.Drop.Set:
		text += ", " + survey.Format(t.Drop.From, u) + " to " + desk.Length(t.Drop.To, u) + " below floor"
	case t.Rise.Set:
		text += ", " + survey.Format(t.Rise.From, u) + " to " + desk.Length(t.Rise.To, u) + " " + desk.AboveFinished
	}
	if t.Litres.Set {
		return text + ", holds " + sizing.Litre.Of(t.Litres.Value)
	}
	return text + askedOnSizing
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
