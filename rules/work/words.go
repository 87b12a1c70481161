package work

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// Retorque is what is done when the owner is back on the day that was agreed.
const Retorque = "clamps and screws tightened once more, exhaust and fuel line looked at"

// Text is what a value should come to, in words: "20 mm/m at least", "15 to 90 °"; "" where nobody knows.
func (e Expected) Text(unit string) string {
	switch {
	case e.Least.Set && e.Most.Set:
		return fmt.Sprintf("%s to %s %s", limit(e.Least), limit(e.Most), unit)
	case e.Least.Set:
		return fmt.Sprintf("%s %s at least", limit(e.Least), unit)
	case e.Most.Set:
		return fmt.Sprintf("%s %s at most", limit(e.Most), unit)
	}
	return e.Words
}

// limit is a limit as it is told: to the thousandth, as a cable's metres and what was given in inches have. To a tenth a value just outside would
// be told as the limit itself.
func limit(n vehicles.Number) string { return survey.FigureTo(n.Value, 3) }

// added is what limits that were added up may be off.
const added = 1e-6

// sources are where an expectation stands and who says so, as one text: "the job's floor, ±3 mm: common practice, no source".
func (e Expected) sources() string {
	by := e.Source.String()
	if e.Of != "" && by != "" {
		return e.Of + ": " + by
	}
	return cmp.Or(e.Of, by)
}

// Amiss says what of a step's value is not as it should be, "" where it is, or where nobody knows.
func (s *Step) Amiss() string {
	v, e := s.Done.Value, s.Expected
	if !v.Set || (!e.Least.Set || v.Value >= e.Least.Value-added) && (!e.Most.Set || v.Value <= e.Most.Value+added) {
		return ""
	}
	return fmt.Sprintf("%s: %s is expected", s.Value(), e.Text(s.Unit))
}

// Lacks says what a step that is done lacks: the value that is measured in it; "" for nothing.
func (s *Step) Lacks() string {
	if s.Ticked() && s.Measures() && !s.Done.Value.Set {
		return s.Measured + " not noted"
	}
	return ""
}

// Value is what was measured, with its unit, "" where nothing was.
func (s *Step) Value() string {
	if !s.Done.Value.Set {
		return ""
	}
	return s.Done.Value.Text() + " " + s.Unit
}

// Warning says why step i should not be done yet: what bars it as the job stands, what should have been done before it for safety, and
// what comes of it; "" for nothing.
func (l List) Warning(i int) string {
	open := l.Early(i)
	if len(open) == 0 {
		return l[i].bars()
	}
	names := make([]string, len(open))
	for k, s := range open {
		if names[k] = s.Name(); s.Ticked() {
			names[k] += " (" + s.Amiss() + ")"
		}
	}
	text := "ot done before it: " + strings.Join(names, ", ") + ". " + l[i].Danger
	if bars := l[i].bars(); bars != "" {
		return bars + " N" + text
	}
	return strings.TrimSpace("n" + text)
}

// bars says why the step should not be done as the job stands; "" for nothing.
func (s *Step) bars() string {
	if s.Foul == "" {
		return ""
	}
	return "foul now: " + s.Foul
}

// Barred says on paper why a step that is still to be done must not be as the job stands: "Not while foul: ..."; "" for nothing.
func (s *Step) Barred() string {
	if s.Foul == "" || s.Ticked() || s.Known != "" {
		return ""
	}
	return "Not while foul: " + s.Foul
}

// Sentence is what is done in a step, with what of the job it is done to, and what the job has of it from elsewhere.
func (s *Step) Sentence() string {
	text := s.Do
	if s.Of != "" {
		text += " Here: " + s.Of + "."
	}
	if s.Known != "" {
		text += " The job has it: " + s.Known + "."
	}
	return text
}

// Wanted says what is measured in a step and what is expected of it, by whom; "" where nothing is measured.
func (s *Step) Wanted() string { return s.wanted(s.Expected.sources()) }

// briefly is Wanted for whoever says once of all steps that a figure without a source is what the trade does.
func (s *Step) briefly() string {
	e := s.Expected
	e.Source = slices.DeleteFunc(slices.Clone(e.Source), func(by string) bool { return by == rules.Practice })
	return s.wanted(e.sources())
}

func (s *Step) wanted(source string) string {
	if !s.Measures() {
		return ""
	}
	text := strings.ToUpper(s.Measured[:1]) + s.Measured[1:] + ", " + s.Unit
	if e := s.Expected.Text(s.Unit); e != "" {
		text += ": " + e
	}
	if source != "" {
		text += " (" + source + ")"
	}
	return text + "."
}
