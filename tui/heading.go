package tui

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// headingRow is the second row: how the job stands, in words.
func (r *Root) headingRow() string {
	styles := r.desk.State.Settings.Styles()
	text, style := headingIn(r.desk.State, r.w), styles.Verdict(r.desk.State.Result.Verdict)
	switch result := r.desk.State.Result; {
	case len(r.desk.State.Faults) > 0:
		style = styles.Fault
	case result.Verdict == rules.Clear && (result.Job.Cut == nil || !result.AllKnown()):
		style = styles.Strong // clear's colour is for what was placed, looked for and answered
	}
	return style.Render(desk.FitRow(text, r.w))
}

// headingIn is the heading in w columns. Where there is not room for all of it the worst finding's name gives way, and the words
// round it: the margin stays.
func headingIn(s desk.State, w int) string {
	text := heading(s)
	if desk.Width(text) <= w || len(s.Faults) > 0 || len(s.Result.Findings) == 0 || s.Result.Findings[0].Verdict != rules.Foul {
		return text
	}
	worst := *rules.ForPeople(s.Result.Findings)[0]
	margin := ", " + words.Margin(worst, s.Settings.Units)
	before := words.Tally(s.Result.Findings) + ": "
	if worst.Weight == rules.Kills {
		before += words.Deadly + " "
	}
	return before + desk.Cut(worst.About(), w-desk.Width(before+margin)) + margin
}

// heading says how the job stands. It never says "clear" of more than was entered and looked for.
func heading(s desk.State) string {
	result := s.Result
	switch {
	case len(s.Faults) > 0:
		return "Can't be worked out: " + s.Faults[0].Text + more(len(s.Faults)-1)
	case result.Job.Cut == nil && clearButFloor(result.Findings):
		return rules.NoPlace + missing(result)
	case len(result.Findings) > 0 && result.Findings[0].Verdict != rules.Clear:
		worst := *rules.ForPeople(result.Findings)[0]
		why := worst.Why
		if worst.Verdict == rules.Foul {
			why = words.Margin(worst, s.Settings.Units)
		}
		return fmt.Sprintf("%s%s: worst%s %s, %s", words.Tally(result.Findings), unfinished(result), deadly(worst), worst.About(), why)
	case result.Verdict != rules.Clear:
		return "doubtful: there is not enough entered to judge" + missing(result)
	case !result.AllLooked():
		return rules.ClearOfEntered + "; " + words.Left(result.OpenIn) + " not looked for" + missing(result)
	case !result.AllKnown():
		return rules.ClearOfEntered + "; nobody has said: " + strings.Join(result.Unanswered, ", ") + missing(result)
	}
	return "clear" + missing(result)
}

// clearButFloor tells whether there is nothing to say of any finding but that the floor is a guess.
func clearButFloor(findings []rules.Finding) bool {
	return !slices.ContainsFunc(findings, func(f rules.Finding) bool {
		return f.Verdict != rules.Clear && !(f.OfGuess && f.Verdict == rules.Doubtful)
	})
}

// deadly says of a finding that can kill that it can.
func deadly(f rules.Finding) string {
	if f.Weight == rules.Kills {
		return " (" + f.Weight.String() + ")"
	}
	return ""
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
	return unfinished(r) + "; not checked: " + strings.Join(words.Unchecked(r.Unchecked), ", ")
}

// unfinished says how many things were begun and lack readings, how many were not measured on this van, which readings
// are not in the job, and whether the floor's sizes were measured.
func unfinished(r rules.Result) string {
	text := unconfirmed(r)
	if n := r.Job.UnfinishedCount(); n > 0 {
		text += fmt.Sprintf(", %d unfinished and not judged", n)
	}
	if n := r.Job.RefusedCount(); n > 0 {
		text += fmt.Sprintf(", %d refused and not in the job", n)
	}
	switch n := len(r.Job.Guesses); n {
	case 0:
	case len(vehicles.FloorKeys):
		text += ", the floor is a guess"
	default:
		text += fmt.Sprintf(", %d of the floor's sizes guessed", n)
	}
	return text
}
