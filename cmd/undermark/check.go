package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

func checkCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var next bool
	c := &cobra.Command{
		Use:   "check JOB...",
		Short: "Judge every clearance of jobs",
		Long: "Findings come worst first. The exit code is 0 when all is " + rules.ClearOfEntered + ", 10 when something is\n" +
			"doubtful, 11 when something is foul, 1 when a job could not be read. With --next the readings worth taking\n" +
			"next follow, those first that would decide most of what is doubtful.",
		Args: someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			worst, err := answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				return checkAnswer(r, next, f.json)
			})
			switch {
			case err != nil:
				return err
			case worst == rules.Foul:
				return exit(exitFoul)
			case worst == rules.Doubtful:
				return exit(exitDoubtful)
			}
			return nil
		},
	}
	f.add(c)
	c.Flags().BoolVar(&next, "next", false, "say what to measure next")
	return c
}

// checkAnswer writes a judged job, for a program or for a person.
func checkAnswer(r rules.Result, next, forProgram bool) (string, error) {
	if !next {
		if forProgram {
			return jsonLine(r)
		}
		return checkText(r), nil
	}
	advice := append([]rules.Advice{}, rules.Next(r, r.Book)...)
	if forProgram {
		data, err := rules.CheckJSON(r, advice)
		return string(data) + "\n", err
	}
	return checkText(r) + nextText(r, advice), nil
}

// nextText lists what to measure next for a person.
func nextText(r rules.Result, advice []rules.Advice) string {
	if len(advice) == 0 {
		return "\nMeasure next: " + words.NoAdvice(r) + ".\n"
	}
	var b strings.Builder
	b.WriteString("\nMeasure next, the best first:\n")
	for _, a := range advice {
		line(&b, "  %s", a.Text)
	}
	return b.String()
}

func jsonLine(v any) (string, error) {
	data, err := json.Marshal(v)
	return string(data) + "\n", err
}

// checkText writes a judged job for a person.
func checkText(r rules.Result) string {
	var b strings.Builder
	line(&b, "%s: %s", r.Job.Ref, standing(r))
	dangersText(&b, &r)
	head := []string{"verdict", "danger", "of", "found", desk.PlusMinusHead, "asked for", "margin", "why"}
	var rows [][]string
	for _, f := range rules.ForPeople(r.Findings) {
		rows = append(rows, []string{
			f.Verdict.String(), f.Weight.String(), f.About(), words.Value(*f, desk.Millimetres), plusMinus(*f),
			asked(*f), words.Margin(*f, desk.Millimetres), f.Why,
		})
	}
	grid(&b, head, rows, 3, 7)
	list(&b, "Not checked, as it is not there", r.Unchecked)
	list(&b, "Not checked, as nobody has said", words.Unanswered(r.Unanswered))
	list(&b, fmt.Sprintf("Neither entered nor looked for within %d mm of the cut", vehicles.LookRound), r.NotLookedFor)
	list(&b, "Looked for round another place than the cut's", r.LookedElsewhere)
	list(&b, fmt.Sprintf("Neither entered nor looked for within %d mm of the runs where they are", vehicles.LookRound), r.NotLookedAtRuns)
	list(&b, fmt.Sprintf("Openings neither entered nor looked for within %d mm of outlet, muffler and drains", vehicles.LookOut), r.OpeningsNotLookedFor)
	return b.String()
}

// standing says how a job stands; nothing is clear of more than was entered, looked for and answered.
func standing(r rules.Result) string {
	standing := r.Verdict.String()
	if r.Verdict == rules.Clear && !r.AllKnown() {
		standing = rules.ClearOfEntered
	}
	if n := r.Job.UnfinishedCount(); n > 0 {
		standing += fmt.Sprintf("; %d begun and lacking readings, not judged", n)
	}
	if words := vehicles.RefusedWords(r.Job.Refused()); words != "" {
		standing += "; " + words
	}
	if guesses := r.Job.Guesses; len(guesses) > 0 {
		standing += "; guessed and not measured: " + strings.Join(guesses, ", ")
	}
	return standing
}

// dangersText says what about a job calls for a caution of its own, a line each, and ends with an empty line.
func dangersText(b *strings.Builder, r *rules.Result) {
	for _, danger := range rules.Dangers(r) {
		line(b, "%s", danger)
	}
	fmt.Fprintln(b)
}

// plusMinus is blank where nothing measured enters.
func plusMinus(f rules.Finding) string {
	if f.Sigma == 0 {
		return ""
	}
	return words.PlusMinus(f, desk.Millimetres) + " mm"
}

// asked is what a finding is held to: "at least 60 mm".
func asked(f rules.Finding) string {
	if !f.Required.Set {
		return words.NoValue
	}
	return words.Sense(f) + " " + words.Required(f, desk.Millimetres)
}

func list(b *strings.Builder, title string, words []string) {
	if len(words) > 0 {
		fmt.Fprintln(b)
		line(b, "%s: %s.", title, strings.Join(words, ", "))
	}
}
