package runs

import (
	"fmt"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// telling is how much is told of what was found and not put in.
type telling struct {
	most  int  // things that each run breaks are named; how many more there are stands behind them
	brief bool // neither what blocks a stub is told, nor what of a line stays, nor, by name, what is doubtful of a run that was found
}

// tellings are all that may go into h rows, the fullest first.
func (m screen) tellings(h int) (all []telling) {
	most := 1
	for i := range m.finder.found.Said {
		most = max(most, len(m.finder.found.Said[i].Missed()))
	}
	for most = max(1, min(most, h)); most >= 1; most-- {
		all = append(all, telling{most: most})
	}
	return append(all, telling{most: 1, brief: true})
}

// toldRows say why what was found was not put in.
func (m screen) toldRows(s desk.State, how telling, put func(look desk.Style, text, key string)) {
	st, u := s.Settings.Styles(), s.Settings.Units
	some := false
	for i := range m.finder.found.Said {
		r, of := &m.finder.found.Said[i], m.finder.quest.runs[i]
		some = some || r.Run != nil
		if r.Run == nil {
			put(st.Title, words.Sentence(words.NoWay(of))+" Nothing was changed.", "")
			continue
		}
		put(st.Title, m.verdictOn(of, r, s), "")
		if r.Stub != "" && !how.brief {
			put(st.Strong, words.Sentence(words.StubBlocked(of, r.Stub)), "")
		}
		for _, text := range missedRows(r, how, u) {
			put(st.Verdict(r.Verdict), text, "")
		}
		if line := s.Job.Fuel; of == vehicles.FuelRun && line != nil && !how.brief {
			if n := len(rules.FuelTarget(line).Above); n > 0 {
				put(st.Plain, words.StaysAbove(n), "")
			}
		}
	}
	if found, there, less := m.keepsLess(s); less {
		put(st.Strong, "Exhaust and intake that are there keep "+desk.Length(there, u)+", those that were found "+desk.Length(found, u)+".", "")
	}
	if some {
		put(st.Plain, keyPutIn.Help().Key+"  "+keyPutIn.Help().Desc, "enter")
	}
	put(st.Plain, "Esc  leave it as it was", "esc")
}

// verdictOn says what a run that was found is, which was not put in by itself.
func (m screen) verdictOn(of vehicles.RunKind, r *rules.Route, s desk.State) string {
	long := ", " + desk.Length(r.Length, s.Settings.Units) + " long"
	switch {
	case !r.Found():
		return "No " + of.String() + " there keeps every rule. The nearest miss" + long + ":"
	case s.Job.Run(of) != nil && r.Verdict > verdictOf(of, s):
		return "The best " + of.String() + " found" + long + " is worse than the one that is there:"
	}
	return words.Upper(of.String()) + " found" + long + "."
}

// missedRows name what a run breaks, or what is doubtful of one that was found, and count what is not named.
func missedRows(r *rules.Route, how telling, u survey.Units) (texts []string) {
	missed, word := r.Missed(), desk.VerdictWord(r.Verdict)
	if how.brief && r.Found() {
		how.most = 0
	}
	for i := range missed[:min(how.most, len(missed))] {
		texts = append(texts, word+": "+missed[i].About()+", "+words.Margin(missed[i], u))
	}
	switch more := len(missed) - len(texts); {
	case more > 0 && len(texts) > 0:
		texts[len(texts)-1] += fmt.Sprintf("; %d more", more)
	case more > 0:
		texts = []string{fmt.Sprintf("%s: %d", word, more)}
	}
	return texts
}
