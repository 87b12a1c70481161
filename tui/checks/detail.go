package checks

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// heading names a finding and says its verdict.
func heading(f rules.Finding, s desk.State, w int) []string {
	st := s.Settings.Styles()
	title := f.Limit.Heading()
	if f.Against.Sort != rules.Nothing {
		title += " (" + f.Against.String() + ")"
	}
	return append(desk.Wrapped(st.Strong, title, w), verdict(f, s))
}

// verdict is a finding's verdict with its margin.
func verdict(f rules.Finding, s desk.State) string {
	word := s.Settings.Styles().Verdict(f.Verdict).Render(strings.ToUpper(desk.VerdictWord(f.Verdict)))
	text := word + " " + words.SureMargin(f, s.Settings.Units)
	if from := words.Unmeasured(f); from != "" {
		text += ", " + from
	}
	if f.Weight == rules.Kills {
		text += "; " + words.DeadlyIs
	}
	return text
}

// detail is one finding in full: its rule, its numbers, why, what to do, and who says so.
func detail(f rules.Finding, s desk.State, w int) []string {
	st := s.Settings.Styles()
	rows := append(toBeDone(f, s, w), desk.Wrapped(st.Faint, f.Rule.Ask, w)...)
	return append(rows, desk.Wrapped(st.Faint, "Says: "+f.Limit.Book+"; "+f.Limit.Source, w)...)
}

// toBeDone are its rows down to what to do.
func toBeDone(f rules.Finding, s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	rows := heading(f, s, w)
	asks := words.Required(f, u)
	if f.Required.Set {
		asks = words.Sense(f) + " " + asks
	}
	rows = append(rows, desk.Wrapped(st.Plain, "Found "+words.Value(f, u)+", asked "+asks+".", w)...)
	if why := words.WhyClear(f, u); why != "" {
		rows = append(rows, desk.Wrapped(st.Plain, words.Sentence(why), w)...)
	}
	if f.Verdict == rules.Doubtful { // of a foul one the margin says it
		rows = append(rows, desk.Wrapped(st.Plain, why(f), w)...)
	}
	if f.Verdict != rules.Clear {
		rows = append(rows, desk.Wrapped(st.Plain, "Do: "+advice(f, s), w)...)
	}
	return rows
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
		{p.Mark, rules.PuttingTheMark},
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

// advice says what to do about a finding that is not clear.
func advice(f rules.Finding, s desk.State) string {
	act := s.Result.Advice(&f)
	switch {
	case !f.Required.Set:
		return "look the value up in the heater's instructions and enter it in the job's rules."
	case f.Unconfirmed:
		return words.ConfirmIt(f.Against) + ", or measure it again."
	case f.Verdict == rules.Doubtful && f.Sigma > 0:
		return "measure again, or " + act
	}
	return act
}
