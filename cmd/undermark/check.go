package main

import (
	"cmp"
	"encoding/json"
	"strconv"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

func checkCommand(shared *sharedFlags, s streams) *cobra.Command {
	var f answerFlags
	var next, built bool
	c := &cobra.Command{
		Use:   "check JOB...",
		Short: "Judge every clearance of jobs",
		Long: "Findings come worst first. The exit code is 0 when all is " + rules.ClearOfEntered + ", " + strconv.Itoa(exitDoubtful) + " when something is\n" +
			"doubtful, " + strconv.Itoa(exitFoul) + " when something is foul, " + strconv.Itoa(exitFailed) + " when a job could not be read. With --next the readings worth taking\n" +
			"next follow, those first that would decide most of what is doubtful. With --built the job is judged as it was built,\n" +
			"with what stands under [built] in place of what was planned, each margin beside the one planned.",
		Args: someJobs, ValidArgsFunction: jobFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if built {
				return checkBuilt(args, next, shared, &f, s)
			}
			worst, err := answerJobs(args, shared, &f, s, func(r rules.Result) (string, error) {
				return checkAnswer(f.paperFor(s), r, next, f.json)
			})
			return exitOf(worst, err)
		},
	}
	f.add(c)
	c.Flags().BoolVar(&next, "next", false, "say what to measure next")
	c.Flags().BoolVar(&built, "built", false, "judge the job as it was built, beside what was planned")
	return c
}

// exitOf is the exit of a command that judges: what went wrong, or the worst verdict.
func exitOf(worst rules.Verdict, err error) error {
	switch {
	case err != nil:
		return err
	case worst == rules.Foul:
		return exit(exitFoul)
	case worst == rules.Doubtful:
		return exit(exitDoubtful)
	}
	return nil
}

// checkAnswer writes a judged job, for a program or for a person.
func checkAnswer(p *paper, r rules.Result, next, forProgram bool) (string, error) {
	if !next {
		if forProgram {
			return jsonLine(r)
		}
		checkText(p, r)
		return p.String(), nil
	}
	advice := append([]rules.Advice{}, rules.Next(r, r.Book)...)
	if forProgram {
		data, err := rules.CheckJSON(r, advice)
		return string(data) + "\n", err
	}
	checkText(p, r)
	nextText(p, r, advice)
	return p.String(), nil
}

// nextText lists what to measure next for a person.
func nextText(p *paper, r rules.Result, advice []rules.Advice) {
	p.blank()
	if len(advice) == 0 {
		p.line("Measure next: %s.", words.NoAdvice(r))
		return
	}
	p.line("Measure next, the best first:")
	for _, a := range advice {
		p.item(a.Text)
	}
}

func jsonLine(v any) (string, error) {
	data, err := json.Marshal(v)
	return string(data) + "\n", err
}

// checkText writes a judged job for a person.
func checkText(p *paper, r rules.Result) {
	p.line("%s: %s", r.Job.Ref, words.Standing(&r))
	dangersText(p, &r)
	head := []string{"verdict", "danger", "of", "found", desk.PlusMinusHead, "asked for", "margin", "why"}
	var rows [][]string
	for _, f := range rules.ForPeople(r.Findings) {
		why := cmp.Or(f.Why, words.WhyClear(*f, desk.Millimetres))
		if f.OnlyMargin() {
			why = ""
		}
		rows = append(rows, []string{
			f.Verdict.String(), f.Weight.String(), f.About(), words.Value(*f, desk.Millimetres), plusMinus(*f),
			words.Asked(*f), words.Margin(*f, desk.Millimetres), why,
		})
	}
	p.grid(grid{head, rows, 3, 7})
	for _, lacking := range words.NotKnown(&r) {
		p.list(lacking.Title, lacking.Items)
	}
}

// dangersText says what about a job calls for a caution of its own, a line each, and ends with an empty line.
func dangersText(p *paper, r *rules.Result) {
	for _, danger := range rules.Dangers(r) {
		p.line("%s", danger)
	}
	p.blank()
}

// plusMinus is blank where nothing measured enters.
func plusMinus(f rules.Finding) string {
	if f.Sigma == 0 {
		return ""
	}
	return words.PlusMinus(f, desk.Millimetres) + " " + desk.Millimetres.Sign()
}
