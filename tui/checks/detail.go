package checks

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/figures"
)

// heading names a finding and says its verdict.
func heading(f rules.Finding, s desk.State, w int) []string {
	st := s.Settings.Styles()
	title := f.Title
	if f.Against.Sort != rules.Nothing {
		title += " (" + f.Against.String() + ")"
	}
	return append(figures.Wrapped(st.Strong, title, w), verdict(f, s))
}

// verdict is a finding's verdict with its margin.
func verdict(f rules.Finding, s desk.State) string {
	word := s.Settings.Styles().Verdict(f.Verdict).Render(strings.ToUpper(desk.VerdictWord(f.Verdict)))
	return word + " " + figures.Margin(f, s.Settings.Units) + " " + figures.PlusMinus(f, s.Settings.Units) + " (95 %)"
}

// detail is one finding in full: its rule, its numbers, why, what to do, and who says so.
func detail(f rules.Finding, s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	rows := heading(f, s, w)
	asks := figures.Required(f, u)
	if f.Required.Set {
		asks = figures.Sense(f) + " " + asks
	}
	rows = append(rows, figures.Wrapped(st.Plain, "Found "+figures.Value(f, u)+", asked "+asks+".", w)...)
	if f.Verdict == rules.Doubtful { // of a foul one the margin says it
		rows = append(rows, figures.Wrapped(st.Plain, why(f), w)...)
	}
	if f.Verdict != rules.Clear {
		rows = append(rows, figures.Wrapped(st.Plain, "Do: "+advice(f), w)...)
	}
	if rule, ok := lookup(f, s); ok && rule.Ask != "" {
		rows = append(rows, figures.Wrapped(st.Faint, rule.Ask, w)...)
	}
	return append(rows, figures.Wrapped(st.Faint, "Says: "+f.Book+"; "+f.Source, w)...)
}

func lookup(f rules.Finding, s desk.State) (rules.Rule, bool) {
	if s.Result.Book == nil {
		return rules.Rule{}, false
	}
	return s.Result.Book.Lookup(f.ID, f.Kind)
}

// why is what keeps a doubtful finding from being clear, and what most of its uncertainty comes from.
func why(f rules.Finding) string {
	text := "Why: " + f.Why
	if from := unsure(f.Spread); from != "" {
		text += "; most of the ± comes from " + from
	}
	return text
}

// unsure names the largest part of a spread, "" when there is none.
func unsure(p rules.Spread) string {
	parts := []struct {
		part float64
		from string
	}{
		{p.Survey, "the readings of the thing measured"},
		{p.Mark, "putting the mark"},
		{p.Height, "the heights"},
		{p.Turn, "the turn of the thing measured"},
		{p.Frames, "how well above and below match"},
	}
	most, from := 0., ""
	for _, p := range parts {
		if p.part > most {
			most, from = p.part, p.from
		}
	}
	return from
}

// advices say what to do about a finding, by the longest start of its rule's id.
var advices = map[string]string{
	"cut":                   "move the cut away from it, in Place.",
	"plate":                 "move the cut, or turn the heater, in Place.",
	"body":                  "move the cut, turn the heater, or shift the fitting.",
	"stub":                  "check the stubs on the heater's own drawing and the width of the hole.",
	"stack":                 "use a deeper collar, or thin the floor round the hole as the heater's instructions allow.",
	"chain":                 "measure the chain again, each reading from the last, and its overall reading.",
	"ties":                  "measure the matching points again; take the one out that is most left over.",
	"exhaust":               "move the points of the exhaust, in Place.",
	"exhaust.fall":          "lower the leg's far end, so that water runs to the drain.",
	"exhaust.drains":        "lower or raise points so that water runs to the outlet or the muffler's drain.",
	"exhaust.muffler-level": "bring both ends of the muffler's leg to one height.",
	"exhaust.length":        "shorten the exhaust; the heater's instructions give the longest.",
	"exhaust.bends":         "straighten the exhaust: fewer and wider bends.",
	"exhaust.bend-room":     "lengthen the short legs, or use a tighter bend.",
	"exhaust.clip-span":     "add a clip in the longest stretch.",
	"exhaust.outlet":        "end the exhaust farther from the opening: its gas kills.",
	"exhaust.edge":          "carry the outlet out to the van's edge: gas must not gather under the floor.",
	"exhaust.ground":        "raise the lowest point of the exhaust.",
	"exhaust.fuel":          "move the exhaust and the fuel line apart.",
	"intake":                "move the points of the intake, in Place.",
	"intake.length":         "shorten the intake; the heater's instructions give the longest.",
	"intake.bends":          "straighten the intake: fewer and wider bends.",
	"intake.bend-room":      "lengthen the short legs, or use a tighter bend.",
	"intake.apart":          "move the intake's mouth away from the exhaust: it must not breathe exhaust gas.",
	"intake.facing":         "turn the intake's mouth away from the airstream.",
	"intake.ground":         "raise the lowest point of the intake.",
	"fuel":                  "lay the fuel line elsewhere.",
	"fuel.pump-tilt":        "turn the pump to the tilt its instructions ask for.",
	"fuel.suction":          "move the pump nearer the tank.",
	"fuel.delivery":         "move the pump nearer the heater.",
}

// advice says what to do about a finding that is not clear.
func advice(f rules.Finding) string {
	group, _, _ := strings.Cut(f.ID, ".")
	act, known := advices[f.ID]
	if !known {
		act = advices[group]
	}
	switch {
	case !f.Required.Set:
		return "look the value up in the heater's instructions and enter it in the job's rules."
	case f.Verdict == rules.Doubtful && f.Sigma > 0:
		return "measure again, or " + act
	}
	return act
}
