package jobcard

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// ruleRecord is the form of one rule's value for a kind, "" for the general one. First is the first row of its group.
type ruleRecord struct {
	rule  *rules.Rule
	kind  string
	first bool
}

// key is what the job's own rules call it.
func (h ruleRecord) key() string { return h.rule.Key(h.kind) }

// ruleRecords are the rules the job has a value of its own for, then all others.
func ruleRecords(s desk.State) []form.Record {
	var own, others []form.Record
	for _, l := range s.Limits() {
		if _, has := s.Job.Rules[l.Key()]; has {
			own = append(own, ruleRecord{l.Rule, l.Kind, len(own) == 0})
		} else {
			others = append(others, ruleRecord{l.Rule, l.Kind, len(others) == 0})
		}
	}
	return append(own, others...)
}

// ID is "rule cut.clearance.brake line".
func (h ruleRecord) ID() string { return "rule " + h.key() }

// limit is what speaks under the key.
func (h ruleRecord) limit(s desk.State) (l rules.Limit, ok bool) {
	if s.Result.Book == nil {
		return l, false
	}
	return s.Result.Book.Lookup(h.rule.ID, h.kind)
}

func (h ruleRecord) row(s desk.State) form.Row {
	l, _ := h.limit(s)
	_, own := s.Job.Rules[h.key()]
	out := form.Row{Text: h.short(own), Right: limits(s.Settings.Units).Write(desk.Limit(l, s.Settings.Units)) + "  " + desk.FitRow(l.Book, bookWidth)}
	switch {
	case h.first && own:
		out.Head = "This job's own rules"
	case h.first:
		out.Head = "All other rules: Enter gives one a value for this job"
	}
	return out
}

// limits is the column of what the rules ask for: what most books say fits in it.
func limits(u survey.Units) desk.Figures {
	if u == desk.Inches {
		return desk.FiguresOf(`157 15/16"`)
	}
	return desk.FiguresOf("4000 mm", "9.21u²")
}

// bookWidth is how wide a book is called: "built in", "this job", "workshop".
const bookWidth = 8

// short is the title, or for a kind only that: it stands under the general rule.
func (h ruleRecord) short(own bool) string {
	if h.kind != "" && !own {
		return "  " + h.kind
	}
	return h.title()
}

// title is the rule's title, with the kind, whether or not a general value speaks for it.
func (h ruleRecord) title() string {
	l := rules.Limit{Rule: h.rule, Kind: h.kind}
	return l.Heading()
}

// asks says what a value is asked for: at least it, at most it, or down to it.
func asks(l rules.Limit) string {
	if l.IsReach() {
		return "to so far below"
	}
	return "at " + l.Sense.String()
}

// Fields is the one field: this job's own value.
func (h ruleRecord) Fields(s desk.State, _ map[string]string) []form.Field {
	l, ok := h.limit(s)
	if !ok {
		return nil
	}
	f := form.Field{
		Key: "value", Label: "for this job", Unit: desk.UnitSign(l.Unit), Heading: asks(l),
		Blank: fmt.Sprintf("%s, %s", desk.Limit(l, s.Settings.Units), l.Book),
	}
	if own, has := s.Job.Rules[h.key()]; has {
		f.Text, f.Blank, f.Note = survey.Exact(own), "the next book speaks", "empty it and the next book speaks again"
	}
	return []form.Field{f}
}

// Set gives the rule this job's own value, or takes it back.
func (h ruleRecord) Set(s desk.State, texts map[string]string) (vehicles.Job, form.Record, error) {
	text := strings.TrimSpace(texts["value"])
	if text == "" {
		return s.Job.WithoutRule(h.key()), h, nil
	}
	v, err := read(text, h.rule.Unit)
	return s.Job.WithRule(h.key(), v), h, err
}

// read reads a value in a rule's unit: a length may have units of its own.
func read(text string, unit rules.Unit) (float64, error) {
	if unit == rules.MM {
		return form.Length(text, vehicles.ALength)
	}
	return form.NumberIn(text, vehicles.AFigure)
}
