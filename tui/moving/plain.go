package moving

import (
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// NothingYet stands where no finding concerns what is moved; without a cut it says what is entered first.
func NothingYet(s desk.State) string {
	if s.Job.Cut == nil && len(s.Faults) == 0 {
		return "Nothing to check here yet: " + words.First(s.Result) + "."
	}
	return "Nothing to check here yet."
}

// Said are the findings that concern something, under a title, where nothing is drawn.
func Said(what string, s desk.State, concerns func(f *rules.Finding) bool) []string {
	lines := aloud.Findings(s, concerns)
	title := "Findings of " + what + ", the worst first:"
	switch {
	case len(lines) == 0:
		return []string{title, NothingYet(s)}
	case len(s.Faults) > 0:
		title = "Findings of " + what + " " + BeforeFault + ":"
	}
	return append([]string{title}, lines...)
}

// Unmoved is what only confirming ends, what no move changes, and how much is foul and doubtful beside the list, in a line; "" for nothing.
func (l Worst) Unmoved(s desk.State) string {
	return survey.Joined(". ", l.ToConfirm(), unmoved(l.Rest, s), l.elsewhere(s))
}

// Plain is what the prompt says where nothing is drawn.
func (p Prompt) Plain(heading string, asks []Ask) desk.Plain {
	said := p.form.Plain(p.fields(asks))
	said.Here = append([]string{heading}, said.Here...)
	all := said.All
	said.All = func() []string { return append([]string{heading}, all()...) }
	return said
}
