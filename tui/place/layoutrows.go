package place

import (
	"fmt"
	"math"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// roomForAll is from how many rows on all layouts are listed; on fewer it is the one that is shown.
const roomForAll = 12

// choices list the layouts in h rows of w columns, or say how far the search is or what stands in the way.
func (m screen) choices(s desk.State, w, h int) (rows panelRows) {
	st, best := s.Settings.Styles(), m.proposed()
	switch {
	case m.places.Failed:
		rows.add(-1, desk.Wrapped(st.Fault, desk.NotWorkedOut, w)...)
		return rows
	case !m.places.Done:
		rows.add(-1, desk.Wrapped(st.Plain, "Looking for whole layouts..."+m.progress(), w)...)
		return rows
	case len(best) == 0:
		rows.add(-1, desk.Wrapped(st.Strong, "Nothing can be laid out here at all: no exhaust leads anywhere.", w)...)
		rows.add(-1, m.inTheWay(s, w)...)
		return rows
	}
	rows.add(-1, m.title(s, w)...)
	for i := range best {
		if i != m.at && h < roomForAll {
			continue
		}
		look, mark := st.Plain, "  "
		if i == m.at {
			look, mark = st.Strong, "> "
		}
		for n, row := range desk.Wrapped(look, fmt.Sprint(i+1)+"  "+layoutLine(&best[i], s), w-2) {
			if n > 0 {
				mark = "  "
			}
			rows.add(i, mark+row)
		}
	}
	if m.places.Said.Few() {
		rows.add(-1, desk.Wrapped(st.Plain, words.NoMoreLayouts, w)...)
	}
	if l := &best[m.at]; l.Result.Job.Fuel == nil && l.FuelMiss == nil {
		rows.add(-1, desk.Wrapped(st.Plain, words.Sentence(words.NoFuelLine(l, s.Settings.Units)), w)...)
	}
	rows.add(-1, m.inTheWay(s, w)...)
	return rows
}

// title says what is proposed.
func (m screen) title(s desk.State, w int) []string {
	best := m.proposed()
	text := fmt.Sprintf(words.WholeLayouts+", %d of %d", m.at+1, len(best))
	if s.Result.CutStays() {
		text = fmt.Sprintf("The hole stays. Its runs, %d of %d", m.at+1, len(best))
	}
	if best[0].Verdict() == rules.Foul {
		text += "; " + words.NoneKept
	}
	return desk.Wrapped(s.Settings.Styles().Title, text, w)
}

// progress says how far the search is.
func (m screen) progress() string {
	if m.places.Far == "" {
		return ""
	}
	return " " + m.places.Far + ". " + desk.KeyLeave.Help().Key + " stops it."
}

// layoutLine says of a layout where it is, how the heater looks, where the exhaust comes out, what is to spare at the least and what is not
// clear.
func layoutLine(l *rules.Layout, s desk.State) string {
	u := s.Settings.Units
	text := desk.AtX(l.At.X, u) + ", " + desk.Across(l.At.Y, s.Settings)
	if l.Area != "" {
		text = "area " + l.Area + ", " + text
	}
	if l.AsItIs {
		text = "as it is: " + text
	}
	text += ", warm air " + facing(l.Yaw, s) + "; exhaust out " + outOn(l.Edge, s)
	if l.Least.Set && l.Least.Value >= 0 {
		text += "; " + survey.Format(l.Least.Value, u) + " to spare at the least (" + l.LeastOf + ")"
	}
	if line := l.Result.Plan.Fuel; l.Detour && line != nil {
		text += "; the fuel line goes a long way round, " + desk.Length(line.Line.Length(), u)
	}
	if l.FuelMiss != nil {
		text += "; " + words.NoFuelLine(l, u)
	}
	switch {
	case l.Beyond:
		text += "; " + survey.Format(l.Away, u) + " from the wish, farther than it allows"
	case s.Job.Wish == nil && s.Job.Cut != nil && l.Away >= 1:
		text += "; " + survey.Format(math.Round(l.Away), u) + " from where the cut is"
	}
	return text + unclear(l, s)
}

// outOn says where an exhaust comes out.
func outOn(edge rules.Edge, s desk.State) string {
	switch edge {
	case rules.LeftEdge:
		return "on the " + desk.SideOf(1, s.Settings)
	case rules.RightEdge:
		return "on the " + desk.SideOf(-1, s.Settings)
	}
	return "at the rear"
}

// mostUnclear is how many things that are not clear a line names.
const mostUnclear = 2

// unclear names what a layout breaks or leaves in doubt, a thing once, the worst first.
func unclear(l *rules.Layout, s desk.State) string {
	if l.Verdict() == rules.Clear {
		return "; clear"
	}
	var named []string
	times, seen, more := map[rules.Thing]int{}, map[rules.Thing]bool{}, 0
	for i := range l.Misses {
		if f := &l.Misses[i]; f.Verdict == l.Verdict() && f.Against.Sort != rules.Nothing {
			times[f.Against]++
		}
	}
	for i := range l.Misses {
		f := &l.Misses[i]
		if f.Verdict != l.Verdict() || seen[f.Against] {
			continue
		}
		seen[f.Against] = times[f.Against] > 0
		switch what := f.About(); {
		case len(named) == mostUnclear:
			more++
		case times[f.Against] > 1 && f.Verdict == rules.Doubtful:
			named = append(named, f.Against.String()+" ("+reason(f, s)+")")
		default:
			named = append(named, what+" ("+reason(f, s)+")")
		}
	}
	text := "; " + desk.VerdictWord(l.Verdict()) + ": " + strings.Join(named, ", ")
	switch {
	case len(named) == 0:
		return "; " + rules.ClearOfEntered
	case more > 0:
		text += fmt.Sprintf(" and %d more", more)
	}
	return text
}

// reason says by how much a finding misses, or what its doubt is.
func reason(f *rules.Finding, s desk.State) string {
	if f.Verdict != rules.Foul && f.Why != "" {
		return f.Why
	}
	return words.Margin(*f, s.Settings.Units)
}

// inTheWay says what would make room.
func (m screen) inTheWay(s desk.State, w int) (rows []string) {
	st := s.Settings.Styles()
	for _, shift := range m.places.Said.Shifts {
		rows = append(rows, desk.Wrapped(st.Plain, words.WouldFit+shift.Name+" moved "+words.Way(shift.By, s.Settings)+".", w)...)
	}
	return rows
}
