package marks

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/rules"
	"bench.example/undermark/rules/work"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// faultRows says why there are no numbers: those of an older job must not be marked.
func faultRows(s desk.State, w int) []string {
	st := s.Settings.Styles()
	rows := []string{st.Foul.Render(" No marks: something in the job is wrong "), ""}
	for _, f := range s.Faults {
		rows = append(rows, desk.Wrapped(st.Fault, f.Key+": "+f.Text, w)...)
	}
	return append(append(rows, ""), desk.Wrapped(st.Plain, "Put that right first; the numbers come back by themselves.", w)...)
}

func noCutRows(s desk.State, w int) []string {
	st := s.Settings.Styles()
	rows := []string{st.Title.Render("No marks yet"), ""}
	rows = append(rows, desk.Wrapped(st.Plain, "No cut is placed. The marks are worked out from where the cut is.", w)...)
	return append(rows, "", choice(st, keyPlace))
}

// beforeMark heads what is read and answered before the marks: some may have been made at another place of the cut, or
// another day, and a hole was drilled at one.
func beforeMark(s desk.State) string {
	if len(s.Ticked) > 0 || s.Job.Cut != nil && s.Job.Cut.Drilled != nil {
		return "Before the next mark"
	}
	return "Before the first mark"
}

// askRows asks for the first kind still open.
func askRows(s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	open := s.Result.Open()
	rows := []string{
		st.Title.Render(beforeMark(s)) + st.Faint.Render(fmt.Sprintf("   still open: %d", len(open))), "",
		"Under the floor, within " + desk.Length(vehicles.LookRound, s.Settings.Units) + " of the cut, is there any", "",
		"    " + st.Here.Render(" "+open[0]+" ") + " ?", "",
		choice(st, keyNone), "", choice(st, keyThere), "", choice(st, keyLater), "",
	}
	if len(open) > 1 {
		rest := desk.Wrapped(st.Faint, "Then: "+strings.Join(open[1:], ", "), w)
		rows = append(rows, rest[:min(len(rest), max(0, h-len(rows)))]...)
	}
	return rows
}

// startRows says how the place stands, before the cautions and the first mark: what is not clear stands between the tally and the answers, from
// one on.
func startRows(now stage, from int, s desk.State, w, h int) []string {
	head, foot, unclear := startHead(now, s, w, h), startFoot(now, s, w), notClear(s)
	room := startRoom(head, foot, unclear, h)
	from = max(0, min(from, len(unclear)-room))
	till := min(from+room, len(unclear))
	title := ""
	if room < len(unclear) {
		title = s.Settings.Styles().ListTitle("Not clear", from, len(unclear)-till, w)
	}
	rows := append(head, title)
	for _, f := range unclear[from:till] {
		rows = append(rows, unclearRow(f, s, w))
	}
	return append(rows, foot...)
}

// startRoom is how many of what is not clear there is room for.
func startRoom(head, foot []string, unclear []*rules.Finding, h int) int {
	return max(1, min(len(unclear), h-len(head)-1-len(foot)))
}

// notClear are the findings that are not clear, as people read them.
func notClear(s desk.State) (list []*rules.Finding) {
	for _, f := range rules.ForPeople(s.Result.Findings) {
		if f.Verdict != rules.Clear {
			list = append(list, f)
		}
	}
	return list
}

// unclearRow is a finding in w columns; where there is no room for its ± that is left out whole.
func unclearRow(f *rules.Finding, s desk.State, w int) string {
	st := s.Settings.Styles()
	word := fmt.Sprintf("%-8s", desk.VerdictWord(f.Verdict))
	text := " " + words.Named(*f) + ", " + words.Margin(*f, s.Settings.Units)
	if pm := " " + words.PlusMinus(*f, s.Settings.Units); pm != " " && desk.Width(word+text+pm) <= w {
		text += pm
	}
	return st.Verdict(f.Verdict).Render(word) + st.Plain.Render(text)
}

// airyFrom is from how many rows on there are some to spare between what is said.
const airyFrom = 20

// startHead says above what is not clear how the place stands.
func startHead(now stage, s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	at, others := words.SplitAtCut(s.Result.Findings)
	rows := []string{st.Title.Render(beforeMark(s))}
	if h >= airyFrom {
		rows = append(rows, "")
	}
	if now == ready {
		rows = append(rows, st.Clear.Render("The job is "+rules.ClearOfEntered+"."))
	} else {
		rows = append(rows, st.Verdict(words.Worst(at)).Render(" At the cut: "+words.Tally(at)+" "),
			st.Verdict(words.Worst(others)).Render(" Elsewhere:  "+words.Tally(others)+" "))
	}
	return append(append(rows, dangerRows(s, w)...), openRows(s, w)...)
}

// dangerRows say what about this job must not be missed by whoever drills.
func dangerRows(s desk.State, w int) (rows []string) {
	for _, danger := range rules.Dangers(&s.Result) {
		rows = append(rows, desk.Wrapped(s.Settings.Styles().Fault, danger, w)...)
	}
	return rows
}

// openRows names what nobody has looked for, in two rows at most.
func openRows(s desk.State, w int) []string {
	kinds := s.Result.Open()
	if len(kinds) == 0 {
		return nil
	}
	rows := desk.Wrapped(s.Settings.Styles().Doubtful, fmt.Sprintf("Not looked for, %d kinds: %s", len(kinds), strings.Join(kinds, ", ")), w)
	if len(rows) > 2 {
		rows[1] = desk.FitPainted(rows[1]+rows[2], w)
		rows = rows[:2]
	}
	return rows
}

func startFoot(now stage, s desk.State, w int) []string {
	st := s.Settings.Styles()
	rows := []string{""}
	if now == ready {
		return append(rows, choice(st, keyStart))
	}
	mend := words.Mends(&s.Result)
	if things := words.OnlyUnconfirmed(&s.Result); len(things) > 0 {
		mend = "What is left hangs on what nobody confirmed on this van: " + named(things) + ". Measure it again, or " + words.ConfirmIt(things...) + "."
	}
	rows = append(rows, desk.Wrapped(st.Strong, work.NoUncut+" "+mend, w)...)
	return append(rows, choice(st, keyShow), choice(st, keyAll))
}

// named are the names of things, in a row.
func named(things []rules.Thing) string {
	names := make([]string, len(things))
	for i, t := range things {
		names[i] = t.String()
	}
	return strings.Join(names, ", ")
}

func choice(st desk.Styles, k key.Binding) string {
	return "  " + st.Key.Render(fmt.Sprintf("%-6s", k.Help().Key)) + " " + k.Help().Desc
}
