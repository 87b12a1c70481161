package words

import (
	"fmt"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sheet"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Unfinished is what is said of things that were begun and lack readings, Refused of readings, behind how many.
const (
	Unfinished = "unfinished and not judged"
	Refused    = "refused and not in the job"
)

// Standing says how a job stands; nothing is clear of more than was entered, looked for and answered.
func Standing(r *rules.Result) string {
	standing := r.Verdict.String()
	if r.Verdict == rules.Clear && !r.AllKnown() {
		standing = rules.ClearOfEntered
	}
	if n := r.Job.UnfinishedCount(); n > 0 {
		standing += fmt.Sprint("; ", n, " ", Unfinished)
	}
	if words := vehicles.RefusedWords(r.Job.Refused()); words != "" {
		standing += "; " + words
	}
	if guesses := r.Job.Guesses; len(guesses) > 0 {
		standing += "; guessed and not measured: " + strings.Join(guesses, ", ")
	}
	return standing
}

// NotKnown are all lists of what a verdict does not speak of; those without anything are left out.
func NotKnown(r *rules.Result) (lists []sheet.Missing) {
	for _, l := range []sheet.Missing{
		{Title: NotEntered, Items: Unchecked(r.Unchecked)},
		{Title: NobodySaid, Items: r.Unanswered},
		{Title: fmt.Sprintf("Neither entered nor looked for within %d mm of the cut", vehicles.LookRound), Items: r.NotLookedFor},
		{Title: "Looked for round another place than the cut's", Items: r.LookedElsewhere},
		{Title: fmt.Sprintf("Neither entered nor looked for within %d mm of the runs where they are", vehicles.LookRound), Items: r.NotLookedAtRuns},
		{Title: fmt.Sprintf("Openings neither entered nor looked for within %d mm of outlet, muffler and drains", vehicles.LookOut), Items: r.OpeningsNotLookedFor},
	} {
		if len(l.Items) > 0 {
			lists = append(lists, l)
		}
	}
	return lists
}

// Asked is what a finding is held to: "at least 60 mm".
func Asked(f rules.Finding) string {
	if !f.Required.Set {
		return NoValue
	}
	return Sense(f) + " " + Required(f, desk.Millimetres)
}
