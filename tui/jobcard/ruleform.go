package jobcard

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// ruleSheet is the form of one rule, of an id and a kind, "" for none. First is the first row of its group.
type ruleSheet struct {
	id, kind string
	first    bool
}

// key is what the job's own rules call it.
func (h ruleSheet) key() string { return rules.Rule{ID: h.id, Kind: h.kind}.Key() }

// ruleSheets are the rules the job has a value of its own for, then all others.
func ruleSheets(s desk.State) []form.Sheet {
	if s.Result.Book == nil {
		return nil
	}
	var own, others []form.Sheet
	for _, r := range s.Result.Book.Rules() {
		if _, has := s.Job.Rules[r.Key()]; has {
			own = append(own, ruleSheet{r.ID, r.Kind, len(own) == 0})
		} else {
			others = append(others, ruleSheet{r.ID, r.Kind, len(others) == 0})
		}
	}
	return append(own, others...)
}

// ID is "rule cut.clearance.brake line".
func (h ruleSheet) ID() string { return "rule " + h.key() }

// rule is what speaks under the key.
func (h ruleSheet) rule(s desk.State) (r rules.Rule, ok bool) {
	if s.Result.Book == nil {
		return r, false
	}
	return s.Result.Book.Lookup(h.id, h.kind)
}

// settable says whether a job file has a name for the rule.
func (h ruleSheet) settable() bool {
	_, _, _, known := vehicles.SplitRule(h.key())
	return known
}

func (h ruleSheet) row(s desk.State) form.Row {
	r, _ := h.rule(s)
	_, own := s.Job.Rules[h.key()]
	out := form.Row{Text: h.short(r, own), Right: valueOf(r, s.Settings) + ", " + r.Book}
	switch {
	case h.first && own:
		out.Head = "This job's own rules"
	case h.first:
		out.Head = "All other rules: Enter gives one a value for this job"
	}
	return out
}

// short is the title, or for a kind only that: it stands under the general rule.
func (h ruleSheet) short(r rules.Rule, own bool) string {
	if h.kind != "" && !own {
		return "  " + h.kind
	}
	return h.title(r)
}

// title is the rule's title, with the kind when a general value speaks for it.
func (h ruleSheet) title(r rules.Rule) string {
	if h.kind != "" && !strings.HasSuffix(r.Title, h.kind) {
		return r.Title + ": " + h.kind
	}
	return r.Title
}

// Fields is the one field: this job's own value.
func (h ruleSheet) Fields(s desk.State, _ map[string]string) []form.Field {
	r, ok := h.rule(s)
	if !ok {
		return nil
	}
	f := form.Field{
		Key: "value", Label: "for this job", Unit: unitWord(r.Unit), Heading: fmt.Sprintf("at %s", r.Sense),
		Blank: fmt.Sprintf("%s, %s", valueOf(r, s.Settings), r.Book),
	}
	if own, has := s.Job.Rules[h.key()]; has {
		f.Text, f.Blank, f.Note = form.Plain(own), "the next book speaks", "empty it and the next book speaks again"
	}
	f.Shut = !h.settable()
	return []form.Field{f}
}

// Set gives the rule this job's own value, or takes it back.
func (h ruleSheet) Set(s desk.State, texts map[string]string) (vehicles.Job, form.Sheet, error) {
	text := strings.TrimSpace(texts["value"])
	if text == "" {
		return s.Job.WithoutRule(h.key()), h, nil
	}
	r, _ := h.rule(s)
	v, err := read(text, r.Unit)
	return s.Job.WithRule(h.key(), v), h, err
}

// read reads a value in a rule's unit: a length may have units of its own.
func read(text, unit string) (float64, error) {
	if unit == "mm" {
		return form.Length(text, form.AnyLength)
	}
	v, err := strconv.ParseFloat(strings.ReplaceAll(text, ",", "."), 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > 1e9 {
		return 0, errors.New("write a plain number")
	}
	return v, nil
}
