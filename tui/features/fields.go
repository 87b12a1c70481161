package features

import (
	"fmt"
	"maps"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// labels are what the fields of a place are called.
var labels = map[string]string{
	"kind": "kind", "form": "form", "name": "name", "x0": words.Edges["x"][0], "x1": words.Edges["x"][1], "y0": words.Edges["y"][0],
	"y1": words.Edges["y"][1], "turn": "turned", "cy": "middle, across",
	"taped": "taped at drop", "measured": "measured", "holds": "holds", "travel": "moves by",
	"tx": "overall", "ty": "overall, side",
	"bx": "below", "by": "below, across", "ax": "above", "ay": "above, across", "use": "counts",
}

func labelOf(key string, shape vehicles.Shape, l List, d *vehicles.Datum) string {
	switch key {
	case "cx":
		return "middle, from " + desk.Datum(d, shortDatum)
	case "across":
		if shape == vehicles.Disc {
			return "diameter"
		}
		return "thick"
	case "top":
		return l.table().heads[1]
	case "low":
		return l.table().heads[2]
	}
	if label, known := labels[key]; known {
		return label
	}
	row, axis, isPoint := pointOf(key)
	switch {
	case !isPoint:
		return key
	case axis == survey.X:
		return fmt.Sprintf("point %d", row+1)
	}
	return fmt.Sprintf("point %d across", row+1)
}

// maker makes the fields of one thing.
type maker struct {
	list  List
	units survey.Units
	job   vehicles.Job
	texts texts // what the job has
	shape vehicles.Shape
	out   []form.Field
	head  string // stands above the next field
}

// Fields are the thing's fields. A form that is chosen but not taken yet already has its own fields.
func (h Record) Fields(s desk.State, held map[string]string) []form.Field {
	x := h.texts(s.Job)
	if x == nil {
		return nil
	}
	pending := maps.Clone(x)
	for key, text := range held {
		pending[key] = text
	}
	m := maker{list: h.List, units: s.Settings.Units, job: s.Job, texts: x, shape: pending.shape()}
	if h.List == Ties {
		m.tie()
	} else {
		m.what()
		m.place(pending)
		m.heights()
		m.holds(pending)
		m.travel(pending)
		m.confirm()
		if h.Real(s.Job) {
			m.totals(pending)
		}
	}
	return m.out
}

// add adds a field; blank is what it says when nothing is in it.
func (m *maker) add(key, unit, blank string) *form.Field {
	m.out = append(m.out, form.Field{
		Key: key, Label: labelOf(key, m.shape, m.list, &m.job.Datum), Text: m.texts[key], Unit: unit, Blank: blank, Heading: m.head,
	})
	m.head = ""
	return &m.out[len(m.out)-1]
}

const needed = "needed"

// shortDatum is how much of the datum's name there is room for in a label or a note.
const shortDatum = 16

// thenAcross is the end of the heading of a place.
const thenAcross = ", then across (L 240, R 310)"

// fromDatum is a heading that names where x starts; with a line of its own there may be things behind it, and how they are
// written takes the place of what would not fit then.
func (m *maker) fromDatum(before, behind string) string {
	d := &m.job.Datum
	if !d.Named() {
		return before + d.Called() + behind
	}
	behind, _, _ = strings.Cut(strings.Replace(behind, "then ", "", 1), " (")
	return before + desk.Datum(d, shortDatum) + " (behind: minus)" + behind
}

// pressLetter says how a kind is chosen among some, of which several may have one letter.
func pressLetter(choices []form.Choice) string {
	letters := map[rune]bool{}
	for _, c := range choices {
		if letters[c.Letter] {
			return "letter; again: the next"
		}
		letters[c.Letter] = true
	}
	return "press its letter"
}

// what are the fields that say what the thing is.
func (m *maker) what() {
	if m.list.ofKind() {
		choices := m.list.kindChoices()
		kind := m.add("kind", "", pressLetter(choices))
		kind.Choices, kind.Must = choices, true
	}
	name := m.add("name", "", needed)
	name.Pass = m.list.ofKind()
	if m.list == Fittings {
		kind := m.add("kind", "", "")
		kind.Choices = append([]form.Choice{{Letter: '-', Name: onlyStands}}, m.list.kindChoices()...)
		kind.Note = "of what runs under mat or lining: the cut and the bolt holes keep clear of it"
		if kind.Text == "" {
			kind.Text = onlyStands
		}
	}
	shape := m.add("form", "", "")
	shape.Choices, shape.Pass = shapeChoices, m.list.ofKind()
	if shape.Text == "" {
		shape.Text = shapeWords[m.shape]
	}
}

// holds is the field that says which fuel is in a thing that holds fuel.
func (m *maker) holds(pending texts) {
	if m.list != Obstructions || !vehicles.KindOf(pending["kind"]).Is(vehicles.HoldsFuel) {
		return
	}
	holds := m.add("holds", "", "")
	holds.Choices, holds.Pass = holdsChoices, true
	if holds.Text == "" {
		holds.Text = vehicles.NotKnown
	}
}

// travel is the field that says how far a thing moves up and down as the van drives.
func (m *maker) travel(pending texts) {
	if m.list == Obstructions && vehicles.KindOf(pending["kind"]).Is(vehicles.Travels) {
		travel := m.add("travel", "mm", vehicles.NotKnown)
		travel.Pass = true
		travel.Note = "up and down as the van drives; runs keep clear of " + desk.Length(rules.UsualTravel, m.units) + " while it is not known"
	}
}

// place are the fields that say where the thing is.
func (m *maker) place(pending texts) {
	switch m.shape {
	case vehicles.Box:
		m.head = m.fromDatum("From the ", "")
		m.add("x0", "mm", needed)
		m.add("x1", "mm", needed)
		m.head = "Across: L 240, R 310, or from the centreline"
		m.add("y0", "mm", needed)
		m.add("y1", "mm", needed)
		m.add("turn", "°", "not turned").Pass = true
	case vehicles.Piped:
		m.head = m.fromDatum("Points: from ", thenAcross)
		rows := max(2, pending.points()+1)
		for i := range rows {
			x := m.add(pointKey(i, 0), "mm", needed)
			if i >= 2 {
				x.Blank, x.IfBlank = "no more", "across"
			}
			m.add(pointKey(i, 1), "mm", x.Blank).Second = true
		}
		m.add("across", "mm", m.thick())
	case vehicles.Disc:
		m.add("cx", "mm", needed)
		m.add("cy", "mm", needed)
		m.add("across", "mm", needed)
	}
}

// thick is what a line without a thickness says.
func (m *maker) thick() string {
	if m.list == Openings {
		return "no thickness"
	}
	return needed
}

// heights are the fields of heights.
func (m *maker) heights() {
	m.head = m.list.table().heads[0]
	blank := needed
	if m.list == Obstructions {
		blank = vehicles.NotMeasured
	}
	m.add("top", "mm", blank)
	m.add("low", "mm", blank)
	if m.list == Obstructions && (m.job.Datum.HookBelow.Set || m.texts["taped"] != "") {
		low := m.texts["low"]
		if low == "" {
			low = vehicles.NotMeasured
		}
		m.add("taped", "mm", "at the bottom: "+low).Pass = true // so it is, mostly: Enter goes on to the next thing, whose kind a letter chooses
	}
}

// confirm is the field that says whether the thing was measured on this van.
func (m *maker) confirm() {
	if !m.list.Confirmable() {
		return
	}
	measured := m.add("measured", "", "")
	measured.Choices, measured.Pass = form.YesNo(onThisVan, notConfirmed), true
	if measured.Text == "" {
		measured.Text = onThisVan
	}
}
