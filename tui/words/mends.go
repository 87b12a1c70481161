package words

import (
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// Mends says what mends the worst of a job that is not clear, as far as it is one of the ways that there are: a move of the cut, runs laid
// otherwise, or readings.
func Mends(r *rules.Result) string {
	const cut, runs, others = "move the cut (4)", "lay the runs otherwise (5, J finds them)", "see what each asks for (7)"
	worst, calls, why := Worst(r.Findings), map[string]bool{}, ""
	for i := range r.Findings {
		switch f := &r.Findings[i]; {
		case f.Verdict != worst:
		case f.ByReadings():
			why = f.Why
		case f.Rule.AtCut:
			calls[cut] = true
		case desk.Show(f).Goto == "Runs":
			calls[runs] = true
		default:
			calls[others] = true
		}
	}
	if len(calls) == 0 {
		return Sentence(why)
	}
	var do []string
	for _, way := range []string{cut, runs, others} {
		if calls[way] {
			do = append(do, way)
		}
	}
	return Sentence(strings.Join(append(do, "or measure again"), ", "))
}
