package tui

import (
	"fmt"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/figures"
)

// headingRow is the second row: how the job stands, in words.
func (r *Root) headingRow() string {
	styles := r.state.Settings.Styles()
	text, style := heading(r.state), styles.Verdict(r.state.Result.Verdict)
	if len(r.state.Faults) > 0 {
		style = styles.Fault
	}
	return style.Render(desk.FitRow(text, r.w))
}

// heading says how the job stands. It never says "clear" of more than was entered and looked for.
func heading(s desk.State) string {
	result := s.Result
	switch {
	case len(s.Faults) > 0:
		return "Can't be worked out: " + s.Faults[0].Text + more(len(s.Faults)-1)
	case len(result.Findings) > 0 && result.Findings[0].Verdict != rules.Clear:
		worst := result.Findings[0]
		return fmt.Sprintf("%s%s: worst %s, %s", figures.Tally(result.Findings), unfinished(result), figures.About(worst), worst.Why)
	case result.Job.Cut == nil:
		return "the cut has no place yet" + missing(result)
	case result.Verdict != rules.Clear:
		return "doubtful: there is not enough entered to judge" + missing(result)
	case len(result.NotLookedFor) > 0:
		return fmt.Sprintf("clear of what was entered; %d kinds not looked for", len(result.NotLookedFor)) + missing(result)
	}
	return "clear" + missing(result)
}

func more(n int) string {
	if n <= 0 {
		return ""
	}
	return fmt.Sprintf(" (and %d more)", n)
}

// missing names what was not checked as it is not there.
func missing(r rules.Result) string {
	if len(r.Unchecked) == 0 {
		return unfinished(r)
	}
	return unfinished(r) + "; not checked: " + strings.Join(r.Unchecked, ", ")
}

// unfinished says how many things were begun and lack readings.
func unfinished(r rules.Result) string {
	n := r.Job.UnfinishedCount()
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(", %d unfinished and not judged", n)
}
