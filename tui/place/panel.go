package place

import (
	"strings"

	"github.com/charmbracelet/lipgloss"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// where says what the arrows move, how far, and where it is.
func (m screen) where(s desk.State, w int) []string {
	st, u := s.Settings.Styles(), s.Settings.Units
	rows := []string{m.head(s)}
	if s.Job.Cut == nil {
		return append(rows, desk.Wrapped(st.Strong, "No cut yet. "+keyArea.Help().Key+": it goes to the best place. Tap the plan, or press Enter: to the middle of the view.", w)...)
	}
	at := s.Job.Cut.At
	if p, ok := pilotOf(s); ok {
		if !m.holds(s) {
			rows = append(rows, desk.Wrapped(st.Strong, moveDrilled+" ("+keyRelease.Help().Key+": hold it).", w)...)
		}
		if moving.Under(w) {
			rows[0] += "   " + st.Plain.Render("pilot at "+desk.AtX(p.Is.X, u)+", "+desk.Across(p.Is.Y, s.Settings))
			return append(rows, pilotBrief(p, s, w)...)
		}
		return append(rows, pilotRows(p, s, w)...)
	}
	if holeOf(s).unmeasured() && !sawn(s) {
		rows = append(rows, desk.Wrapped(st.Strong, m.unmeasured(s), w)...)
	}
	place := "At " + desk.AtX(at[0], u) + ", " + desk.Across(at[1], s.Settings)
	if w < desk.SideBySide && lipgloss.Width(rows[0])+3+desk.Width(place) <= w { // rows are dear under a plan
		rows[0] += "   " + st.Plain.Render(place)
		rows = append(rows, desk.Wrapped(st.Plain, stack(s), w)...)
	} else {
		rows = append(rows, desk.Wrapped(st.Plain, place+"; "+stack(s), w)...)
	}
	if by, beside, there := rules.OldPilot(&s.Result); there && len(s.Faults) == 0 {
		rows = append(rows, desk.Wrapped(st.Strong, words.OffPilot(by, beside, u)+".", w)...)
	}
	if m.staying {
		rows = append(rows, desk.Wrapped(st.Strong, "The arrows stay on open floor ("+keyStay.Help().Key+": freely).", w)...)
	}
	return append(rows, m.belowReadings(s, w)...)
}

// unmeasured says of a pilot hole that Work alone knows of whether the cut stays with it.
func (m screen) unmeasured(s desk.State) string {
	if m.holds(s) {
		return "Pilot drilled: the cut stays (" + keyPilot.Help().Key + ": measure it)."
	}
	return moveDrilled + " (" + keyRelease.Help().Key + ": hold it)."
}

// head names what is moved, and the step.
func (m screen) head(s desk.State) string {
	st := s.Settings.Styles()
	return st.Here.Render(" CUT ") + "  step " + st.Strong.Render(desk.Length(m.step.Length(s), s.Settings.Units))
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
	text += ", collar " + vehicles.NotMeasured
	if t := s.Job.Heater.Turret; t.Set {
		text = strings.TrimSuffix(text, vehicles.NotMeasured) + survey.Format(t.Value, u)
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
	return survey.InDegrees(yaw) + " " + side
}
