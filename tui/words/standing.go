package words

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
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
	round, out := survey.InMMAndInches(vehicles.LookRound), survey.InMMAndInches(vehicles.LookOut)
	for _, l := range []sheet.Missing{
		{Title: NotEntered, Items: Unchecked(r.Unchecked)},
		{Title: NobodySaid, Items: r.Unanswered},
		{Title: "Neither entered nor looked for within " + round + " of the cut", Items: r.NotLookedFor},
		{Title: "Looked for round another place than the cut's", Items: r.LookedElsewhere},
		{Title: "Neither entered nor looked for within " + round + " of the runs where they are", Items: r.NotLookedAtRuns},
		{Title: "Openings neither entered nor looked for within " + out + " of outlet, muffler and drains", Items: r.OpeningsNotLookedFor},
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
