package aloud

import (
	"strconv"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// Finding is a finding in one line: verdict, what it is of, what was found and asked, what that leaves, how sure it is.
func Finding(f rules.Finding, s desk.State) string {
	u := s.Settings.Units
	text := desk.VerdictWord(f.Verdict)
	if f.Weight == rules.Kills {
		text += ", " + f.Weight.String()
	}
	text += ": " + f.About() + ": found " + words.Value(f, u) + ", asked "
	if f.Required.Set {
		text += words.Sense(f) + " "
	}
	return text + words.Required(f, u) + "; " + Margin(f, s)
}

// Margin is what a finding leaves, and how sure that is.
func Margin(f rules.Finding, s desk.State) string {
	text := words.SureMargin(f, s.Settings.Units)
	if why := words.WhyClear(f, s.Settings.Units); why != "" {
		text += "; " + why
	}
	return text
}

// mostClear is how many clear findings are said beside a place: those with the least to spare. Checks has all.
const mostClear = 10

// Findings are those that concern something, in the order in which people read them; of the clear ones the first.
func Findings(s desk.State, concerns func(f *rules.Finding) bool) (lines []string) {
	clear := 0
	for _, f := range rules.ForPeople(s.Result.Findings) {
		if !concerns(f) {
			continue
		}
		if f.Verdict == rules.Clear {
			clear++
		}
		if clear <= mostClear {
			lines = append(lines, Finding(*f, s))
		}
	}
	if clear > mostClear {
		lines = append(lines, strconv.Itoa(clear-mostClear)+" more are clear: Checks has them.")
	}
	return lines
}

// Worst is the worst of those that concern something; "" while that is what the verdict on the whole job names anyway, and
// without any.
func Worst(s desk.State, concerns func(f *rules.Finding) bool) string {
	for i, f := range rules.ForPeople(s.Result.Findings) {
		if concerns(f) {
			if i == 0 && f.Verdict != rules.Clear {
				return ""
			}
			return "Worst here: " + Finding(*f, s)
		}
	}
	return ""
}

// Of says which of how many something is: "3 of 11".
func Of(at, n int) string { return strconv.Itoa(at+1) + " of " + strconv.Itoa(n) }

// Joined are the texts that say something, as one line.
func Joined(texts ...string) string {
	var say []string
	for _, text := range texts {
		if text = Line(text); text != "" {
			say = append(say, strings.TrimSuffix(text, "."))
		}
	}
	return strings.Join(say, "; ")
}
