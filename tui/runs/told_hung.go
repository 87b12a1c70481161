package runs

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// toldHung says of what hangs on the run where it is and what it is, or how to have it.
func (m screen) toldHung(p placed, s desk.State) string {
	u := s.Settings.Units
	if !p.there {
		key := keyType
		if p.kind.Wanted {
			key = keyMount
		}
		return words.Upper(p.kind.Name) + ": none. " + key.Help().Key + " puts one " + p.kind.Goes + "."
	}
	if p.kind.Many() {
		return m.toldAlong(p, s)
	}
	run := *m.run(s)
	thing := run.Hanging.Thing(p.kind, p.index)
	text := seated(thing, u)
	for _, d := range thing.Details() {
		text += toldDetail(&d, u)
	}
	return text
}

// seated says on which leg a thing hangs, and where.
func seated(thing *vehicles.Hung, u survey.Units) string {
	return fmt.Sprintf("%s: leg %d, %s along it", words.Upper(thing.Name()), thing.Leg(), desk.Length(thing.Start(), u))
}

// toldDetail goes on with a detail; what nobody has said and may be left out is not spoken of, but for a question of a few words.
func toldDetail(d *vehicles.Detail, u survey.Units) string {
	switch {
	case d.Word != nil && *d.Word == "":
		return "; its " + d.Label + " is " + vehicles.NotKnown + " (" + keyOther.Help().Key + ": " + strings.Join(d.Words, " / ") + ")"
	case d.Word != nil:
		return "; its " + fmt.Sprintf(d.Told, *d.Word)
	case d.Value() == nil:
		return ""
	}
	value := d.Text() + " " + d.Unit
	switch d.Unit {
	case "mm":
		value = desk.Length(*d.Size, u)
	case "°":
		value = d.Text() + d.Unit
	}
	return ", " + fmt.Sprintf(d.Told, value)
}

// toldAlong says where along the run one of many is.
func (m screen) toldAlong(p placed, s desk.State) string {
	u := s.Settings.Units
	text := words.Upper(name(p)) + ": " + desk.Length(p.along, u) + " along"
	if at, ok := m.place(p, s); ok {
		text += ", " + desk.Height(at.Drop, u)
	}
	return text
}
