package main

import (
	"errors"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// checkBuilt judges jobs as they were built, beside what was planned; the exit code is of what was built.
func checkBuilt(args []string, next bool, shared *sharedFlags, f *answerFlags, s streams) error {
	if next {
		return errors.New("--built and --next are of two times: keep one of them")
	}
	book, err := shared.load()
	if err != nil {
		return err
	}
	worst := rules.Clear
	_, err = answerJobs(args, shared, f, s, func(planned rules.Result) (string, error) {
		if planned.Job.Built == nil {
			worst = max(worst, rules.Doubtful)
			return notBuilt(f, &planned, s)
		}
		built, faults := rules.AsBuilt(&planned, book)
		if len(faults) > 0 {
			return "", lacking(faults[0])
		}
		worst = max(worst, built.Verdict)
		if f.json {
			data, err := rules.BuiltJSON(planned, built)
			return string(data) + "\n", err
		}
		return builtText(f.paperFor(s), &planned, &built), nil
	})
	return exitOf(worst, err)
}

// notBuilt says that nobody has said of a job what came out otherwise: whether it was built at all, nobody knows, so it is doubtful. In
// JSON nothing is otherwise, and what is built is as planned.
func notBuilt(f *answerFlags, planned *rules.Result, s streams) (string, error) {
	if f.json {
		data, err := rules.BuiltJSON(*planned, *planned)
		return string(data) + "\n", err
	}
	p := f.paperFor(s)
	p.line("%s: nothing is recorded as built yet; as planned: %s.", planned.Job.Ref, words.Standing(planned))
	return p.String(), nil
}

// builtText sets what was planned beside what was built for a person.
func builtText(p *paper, planned, built *rules.Result) string {
	p.line("%s as built: %s; as planned: %s.", planned.Job.Ref, words.Standing(built), words.Standing(planned))
	p.line("Made otherwise: %s.", strings.Join(words.BuiltOtherwise(&planned.Job), ", "))
	deviationsText(p, rules.Deviations(planned, built))
	dangersText(p, built)
	list := rules.Compare(planned, built)
	head := []string{"built", "danger", "of", "margin built", "planned", desk.PlusMinusHead, "why"}
	rows := make([][]string, len(list))
	for i, c := range list {
		rows[i] = builtRow(c)
	}
	p.grid(grid{head, rows, 3, 6})
	p.list(words.NotEntered, words.Unchecked(built.Unchecked))
	return p.String()
}

// deviationsText says what was planned, what was built and by how much that is more, each with its worst finding as built.
func deviationsText(p *paper, list []rules.Deviation) {
	rows := make([][]string, len(list))
	for i, d := range list {
		cells := words.Deviation(d, desk.Millimetres)
		rows[i] = append([]string{d.Verdict.String()}, cells[:]...)
	}
	p.grid(grid{append([]string{"built"}, words.DeviationHeads[:]...), rows, 2, 6})
	if note := words.Unexplained(list); note != "" {
		p.line("%s", note)
	}
}

// builtRow is one pair of things, as built and as planned.
func builtRow(c rules.Compared) []string {
	of, why, was, is, off := c.Built, "", "", "", ""
	if of == nil {
		of, why = c.Planned, "not there as built"
	} else {
		is, off, why = words.Signed(*of, desk.Millimetres), plusMinus(*of), of.Why
	}
	if f := c.Planned; f != nil {
		was = words.Signed(*f, desk.Millimetres)
	}
	return []string{words.BuiltVerdict(c), of.Weight.String(), of.About(), is, was, off, why}
}
