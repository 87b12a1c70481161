package place

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// where says what the arrows move, how far, and where it is.
func (m screen) where(s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	rows := []string{m.head(s)}
	if m.moving != hole {
		return append(rows, m.wherePoint(s, w)...)
	}
	if s.Job.Cut == nil {
		return append(rows, desk.Wrapped(st.Strong, "No cut yet. Tap the plan, or press Enter: it goes to the middle of the view.", w)...)
	}
	at := s.Job.Cut.At
	if p, ok := pilotOf(s); ok {
		return append(rows, pilotRows(p, s, w)...)
	}
	rows = append(rows, desk.Wrapped(st.Plain, "At "+desk.AtX(at[0], u)+", "+desk.Across(at[1], s.Settings)+"; "+stack(s), w)...)
	if m.staying {
		rows = append(rows, desk.Wrapped(st.Strong, "The arrows stay on open floor ("+keyStay.Help().Key+": freely).", w)...)
	}
	return append(rows, m.belowReadings(s, w)...)
}

// head names what can be moved, the one that is moved in capitals, and the step.
func (m screen) head(s desk.State) string {
	st := s.Settings.Styles()
	row := ""
	for t := range movables {
		name := " " + t.String() + " "
		if t == m.moving {
			row += st.Here.Render(strings.ToUpper(name))
		} else {
			row += st.Faint.Render(name)
		}
	}
	return row + "  step " + st.Strong.Render(desk.Length(steps(s)[m.step], s.Settings.Units))
}

// belowReadings is what the tape must say at the cut from below.
func (m screen) belowReadings(s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	if len(s.Faults) > 0 || len(s.Marks.Marks) == 0 {
		return nil
	}
	b := s.Marks.Marks[0].Below
	return desk.Wrapped(st.Plain, "From below: "+fromDatum(b.Bumper, s)+", "+desk.Left(s.Settings)+" "+survey.Format(b.Left, u)+
		", "+desk.Right(s.Settings)+" "+survey.Format(b.Right, u), w)
}

// fromDatum is a reading from the datum line with its name: "bumper 1219", "step of the side… -420 behind".
func fromDatum(mm float64, s desk.State) string {
	text := desk.Datum(&s.Job.Datum, 24) + " " + survey.Format(mm, s.Settings.Units)
	if mm < 0 {
		text += " behind"
	}
	return text
}

// stack is the floor, the collar and which way the heater looks, in a few words.
func stack(s desk.State) string {
	u := s.Settings.Units
	text := "floor " + survey.Format(s.Job.Floor.Thickness, u)
	if s.Job.Heater == nil {
		return text + ", no heater chosen"
	}
	text += ", collar " + desk.NotMeasured
	if t := s.Job.Heater.Turret; t.Set {
		text = strings.TrimSuffix(text, desk.NotMeasured) + survey.Format(t.Value, u)
	}
	return text + ", warm air " + facing(s.Job.Heater.Yaw, s)
}

// facing says which way a yaw points.
func facing(yaw float64, s desk.State) string {
	yaw = geometry.WithinHalfTurn(yaw)
	switch yaw {
	case 0:
		return "ahead"
	case 180:
		return "to the rear"
	}
	side := desk.Left(s.Settings)
	if yaw < 0 {
		side, yaw = desk.Right(s.Settings), -yaw
	}
	return survey.Figure(yaw) + "° " + side
}

func (m screen) wherePoint(s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	run := m.run(s)
	if run == nil || len(run.Path) == 0 {
		return desk.Wrapped(st.Strong, "No "+m.moving.String()+" yet: "+keyAdd.Help().Key+" adds its first point under the stub.", w)
	}
	p := run.Path[m.point]
	return desk.Wrapped(st.Plain, fmt.Sprintf("Point %d of %d: x ", m.point+1, len(run.Path))+survey.Format(p.X, u)+", "+desk.Across(p.Y, s.Settings)+", "+desk.Height(p.Drop, u), w)
}

// notes are what the fitter must know of this place beside its clearances.
func (m screen) notes(s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	var rows []string
	for _, f := range s.Faults {
		rows = append(rows, desk.Wrapped(st.Fault, f.Key+": "+f.Text, w)...)
	}
	for _, danger := range rules.Dangers(&s.Result) {
		rows = append(rows, desk.Wrapped(st.Fault, danger, w)...)
	}
	if f := s.Focus; f != nil {
		rows = append(rows, desk.Wrapped(st.Strong, "Shown: "+f.About()+", "+desk.VerdictWord(f.Verdict)+", "+words.Margin(*f, u), w)...)
	}
	if all := leaning(s); len(all) > 0 {
		aside := make([]string, len(all))
		for i, l := range all {
			aside[i] = l.of.String() + " " + survey.Format(l.aside, u)
		}
		rows = append(rows, desk.Wrapped(st.Doubtful, "First leg aside: "+strings.Join(aside, ", ")+" ("+keyUpright.Help().Key+": upright)", w)...)
	}
	return rows
}

// worst are at most n findings of what is moved, as the list beside the plan has them.
func (m screen) worst(s desk.State, n int) []*rules.Finding {
	var worst []*rules.Finding
	for _, f := range rules.ForPeople(s.Result.Findings) {
		if m.concerns(f) && f.Places > 0 && len(worst) < n {
			worst = append(worst, f)
		}
	}
	return worst
}

// clearances are the worst findings of what is moved, in at most h rows; with few rows the head gives way.
func (m screen) clearances(s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	var rows []string
	for _, f := range rules.ForPeople(s.Result.Findings) {
		if m.concerns(f) && len(rows) < h {
			rows = append(rows, findingRow(*f, s, w))
		}
	}
	title := "Worst here (" + words.DeadlyIs + "), margin " + desk.PlusMinusHead
	switch {
	case len(rows) == 0:
		return []string{st.Faint.Render("Nothing to check here yet.")}
	case len(s.Faults) > 0:
		title = "As it was before the fault"
	case h < 4:
		return rows
	}
	return append([]string{st.Title.Render(title)}, rows[:min(len(rows), max(0, h-1))]...)
}

// concerns says whether a finding is of what the arrows move.
func (m screen) concerns(f *rules.Finding) bool {
	if m.moving == hole {
		return f.Rule.AtCut
	}
	moved := [...]rules.Sort{hole: rules.TheCut, exhaust: rules.TheExhaust, intake: rules.TheIntake}[m.moving]
	return f.Subject.Sort == moved || f.Against.Sort == moved
}

// findingRow is a verdict, what it is of, and its margin at the end of the row.
func findingRow(f rules.Finding, s desk.State, w int) string {
	st, u := s.Settings.Styles(), s.Settings.Units
	verdict := st.Verdict(f.Verdict).Render(desk.VerdictWord(f.Verdict))
	verdict += strings.Repeat(" ", max(0, 9-len(desk.VerdictWord(f.Verdict))))
	number := strings.TrimRight(" "+words.Signed(f, u)+" "+words.PlusMinus(f, u), " ")
	return verdict + desk.FitRow(words.Named(f), w-9-lipgloss.Width(number)) + number
}
