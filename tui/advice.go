package tui

import (
	"strings"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// adviceSettle is how long the job must be left alone before it is worked out what to measure next: every reading that
// could be taken is tried, which at hundreds of obstructions takes a third of a second.
const adviceSettle = 300 * time.Millisecond

// advise works out what to measure next once the job has been left alone for a while.
func (r *Root) advise() tea.Cmd {
	r.asked++
	if len(r.desk.State.Faults) > 0 {
		return nil
	}
	asked := r.asked
	return tea.Tick(r.settle, func(time.Time) tea.Msg { return settled{asked} })
}

// settled says that the job was left alone since the question was asked.
type settled struct{ asked uint64 }

func (m settled) happened(r *Root) tea.Cmd {
	if m.asked != r.asked {
		return nil
	}
	result, book := r.desk.State.Result, r.desk.State.Book
	return func() tea.Msg { return advised{m.asked, next(result, book, rules.Next)} }
}

// heeded leaves out messages that come too late to matter or say what is known: each would have the screen painted, and every key sends one. Before the terminal is
// let go of, what it was asked is waited for.
func (r *Root) heeded(_ tea.Model, msg tea.Msg) tea.Msg {
	switch m := msg.(type) {
	case settled:
		if m.asked != r.asked {
			return nil
		}
	case tea.WindowSizeMsg:
		if r.knows(m) {
			return nil
		}
	case tea.QuitMsg, tea.InterruptMsg, suspended:
		if r.parting != nil {
			r.parting()
		}
	}
	return msg
}

// next asks for the advice on a judged job. Nobody's work may be lost because of a fault in it.
func next(result rules.Result, book *rules.Book, ask func(rules.Result, *rules.Book) []rules.Advice) (found desk.Next) {
	defer func() {
		if recover() != nil {
			found = desk.Next{Known: true, Failed: true}
		}
	}()
	return desk.Next{Advice: ask(result, book), Known: true}
}

// advised is the answer to a question.
type advised struct {
	asked uint64
	next  desk.Next
}

func (m advised) happened(r *Root) tea.Cmd {
	if m.asked == r.asked {
		r.desk.State.Next = m.next
	}
	return nil
}

// adviceLine is what to measure next, painted; it stands in the row above the foot while nothing is said there.
func (r *Root) adviceLine(w int) string {
	styles := r.desk.State.Settings.Styles()
	text := words.Advice(r.desk.State)
	if desk.Width(text) > w { // what it does is at its end
		text = strings.TrimPrefix(text, "measure: ")
	}
	return styles.Title.Render(desk.FitRow(text, w))
}

// takeAdvice goes to where the reading to take next is entered.
func (r *Root) takeAdvice() tea.Cmd {
	if len(r.desk.State.Faults) == 0 && len(r.desk.State.Result.Job.Guesses) > 0 {
		return r.apply(desk.Change{Goto: "On top"}) // the floor comes first in it
	}
	if !r.desk.State.Next.Known || len(r.desk.State.Next.Advice) == 0 {
		return nil
	}
	return r.apply(desk.Measure(r.desk.State.Next.Advice[0]))
}
