package words

import (
	"fmt"
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// NoAdvice says in a few words why there is nothing to measure next. It promises nothing of what was not entered.
func NoAdvice(r rules.Result) string {
	doubtful := func(f rules.Finding) bool { return f.Verdict == rules.Doubtful }
	switch {
	case len(r.Job.Guesses) > 0:
		return floorFirst(r)
	case r.Job.Cut == nil:
		return First(r)
	case slices.ContainsFunc(r.Findings, doubtful):
		if things := OnlyUnconfirmed(&r); len(things) > 0 {
			return "what is doubtful was " + rules.NotMeasuredHere + ": " + ConfirmIt(things...)
		}
		if why := onlyReadings(r.Findings); why != "" {
			return why
		}
		if onlyValues(r.Findings) {
			return "what is doubtful has " + NoValue + ": enter that on Job (8)"
		}
		return "no reading would decide what is doubtful: move something"
	}
	switch n := len(r.Open()); n {
	case 0:
	case 1:
		return "no reading is in doubt; 1 kind was not looked for (1)"
	default:
		return fmt.Sprintf("no reading is in doubt; %d kinds were not looked for (1)", n)
	}
	return "nothing more; no verdict on what was entered is in doubt"
}

// onlyReadings says why the first of findings is doubtful where no move ends the doubt of any; "" where one does, or something is foul.
func onlyReadings(findings []rules.Finding) (why string) {
	for i := range findings {
		switch f := &findings[i]; {
		case f.Verdict == rules.Clear:
		case f.Verdict == rules.Foul, !f.ByReadings() && (f.Rule.AtCut || f.WithRun()):
			return ""
		case why == "" || !f.ByReadings():
			why = f.Why
		}
	}
	return why
}

// onlyValues tells whether all that is doubtful of findings is so since nobody has given its rule a value: that ends it, and no move does.
func onlyValues(findings []rules.Finding) bool {
	return !slices.ContainsFunc(findings, func(f rules.Finding) bool { return f.Verdict == rules.Doubtful && f.Required.Set })
}

// floorFirst says of a job whose floor is a guess that everything is judged against it, and what comes then.
func floorFirst(r rules.Result) string {
	switch n := len(r.Job.Guesses); {
	case nothingBelow(r):
		return "first the floor (2), then what is below it (1)"
	case r.Job.Cut == nil:
		return "first the floor (2), then give the cut a place (4)"
	case n == 1:
		return "first the floor (2): a size of it is a guess"
	default:
		return fmt.Sprintf("first the floor (2): %d sizes of it are guesses", n)
	}
}

func nothingBelow(r rules.Result) bool { return len(r.Job.Obstructions) == 0 && len(r.Job.Looked) == 0 }

// First says what is to be entered before anything can be said of a job without a cut.
func First(r rules.Result) string {
	switch {
	case len(r.Job.Guesses) > 0:
		return floorFirst(r)
	case nothingBelow(r):
		return "first enter what is below the floor (1)"
	}
	return "first give the cut a place"
}

// Advice is the line that says what to measure next; "" while nobody knows, as at the start or when the job can't be worked
// out.
func Advice(s desk.State) string {
	switch {
	case len(s.Faults) > 0:
		return ""
	case len(s.Result.Job.Guesses) > 0:
		return "measure: " + floorFirst(s.Result)
	case s.Next.Failed:
		return "measure: what would help most could not be worked out"
	case len(s.Next.Advice) > 0:
		return s.Next.Advice[0].Text
	case s.Next.Known:
		return "measure: " + NoAdvice(s.Result)
	}
	return ""
}
