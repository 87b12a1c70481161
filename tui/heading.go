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

// headingIn is the heading in w columns. Where there is not room for all of it the words give way, never what they mean: of the worst finding
// the margin stays, of a clear job how much of it is open.
func headingIn(s desk.State, w int) string {
	text := heading(s)
	if desk.Width(text) <= w {
		return text
	}
	switch result := s.Result; {
	case len(s.Faults) > 0:
		const before = "Can't be worked out: "
		behind := more(len(s.Faults) - 1)
		return before + desk.Cut(s.Faults[0].Text, w-desk.Width(before+behind)) + behind
	case result.Job.Cut == nil && clearButFloor(result.Findings):
		return leftOpen(rules.CutHasNoPlace, result, w)
	case len(result.Findings) > 0 && result.Findings[0].Verdict != rules.Clear:
		return worstIn(s, w)
	case result.Verdict != rules.Clear:
		return leftOpen("doubtful: not enough entered", result, w)
	case !result.AllKnown():
		return leftOpen(rules.ClearOfEntered, result, w)
	}
	return leftOpen("clear", s.Result, w)
}

// worstIn is the tally and the worst finding: its margin stays, or why it is doubtful where that fits.
func worstIn(s desk.State, w int) string {
	worst := *rules.ForPeople(s.Result.Findings)[0]
	before := words.Tally(s.Result.Findings) + ": "
	if worst.Weight == rules.Kills {
		before += words.Deadly + " "
	}
	behind := ", " + worst.Why
	switch {
	case worst.Verdict == rules.Foul:
		behind = ", " + words.Margin(worst, s.Settings.Units)
	case desk.Width(before+worst.About()+behind) > w:
		behind = ""
	}
	return before + desk.Cut(worst.About(), w-desk.Width(before+behind)) + behind
}

// leftOpen is how a job stands and, in w columns, how much is open, counted: as much as fits, and that there is more.
func leftOpen(standing string, r rules.Result, w int) string {
	const rest = ", more (7)"
	counts := counted(r)
	if all := standing + "; " + strings.Join(counts, ", "); desk.Width(all) <= w {
		return all
	}
	text, sep := standing, "; "
	for _, count := range counts {
		if desk.Width(text+sep+count+rest) > w {
			break
		}
		text, sep = text+sep+count, ", "
	}
	return text + rest
}

// counted are what is open of a job, each a number with few words.
func counted(r rules.Result) (texts []string) {
	notLooked, notSaid, unchecked := 0, 0, "not checked"
	if r.Job.Cut != nil { // one looks round a cut, and says things of what goes there
		notSaid = len(r.Unanswered)
		for _, list := range vehicles.LookLists {
			notLooked += len(r.OpenIn(list))
		}
	} else {
		unchecked = "not checked until it has"
	}
	for _, c := range []struct {
		n    int
		what string
	}{
		{r.Job.RefusedCount(), words.Refused},
		{r.Job.UnfinishedCount(), words.Unfinished},
		{notLooked, "not looked for"},
		{notSaid, vehicles.NotSaid},
		{len(rules.Unconfirmed(r, vehicles.LookRound)), "not confirmed"},
		{len(r.Unchecked), unchecked},
	} {
		if c.n > 0 {
			texts = append(texts, fmt.Sprint(c.n, " ", c.what))
		}
	}
	if floor := floorGuessed(r); floor != "" {
		texts = append([]string{floor}, texts...)
	}
	return texts
}

// floorGuessed says which of the floor's sizes are guesses; "" for none.
func floorGuessed(r rules.Result) string {
	switch n := len(r.Job.Guesses); n {
	case 0:
		return ""
	case len(vehicles.FloorKeys):
		return "the floor is a guess"
	default:
		return fmt.Sprintf("%d of the floor's sizes guessed", n)
	}
}

// heading says how the job stands. It never says "clear" of more than was entered and looked for.
func heading(s desk.State) string {
	result := s.Result
	switch {
	case len(s.Faults) > 0:
		return "Can't be worked out: " + s.Faults[0].Text + more(len(s.Faults)-1)
	case result.Job.Cut == nil && clearButFloor(result.Findings):
		return rules.CutHasNoPlace + missing(result)
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
		text += fmt.Sprint(", ", n, " ", words.Unfinished)
	}
	if n := r.Job.RefusedCount(); n > 0 {
		text += fmt.Sprint(", ", n, " ", words.Refused)
	}
	if floor := floorGuessed(r); floor != "" {
		text += ", " + floor
	}
	return text
}
