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

// adviceHeight is from how many rows on what to measure next has a row of its own above the foot. In a lower window it
// stands behind the heading where there is room; the help and the checks have it always.
const adviceHeight = 24

// adviceRows is how many rows what to measure next has above the foot.
func (r *Root) adviceRows() int {
	if r.h >= adviceHeight {
		return 1
	}
	return 0
}

// adviceLine is what to measure next, painted.
func (r *Root) adviceLine(w int) string {
	styles := r.desk.State.Settings.Styles()
	return styles.Title.Render(desk.FitRow(words.Advice(r.desk.State), w))
}

// besideHeading is what to measure next behind a heading in a low window: all of it, or nothing.
func (r *Root) besideHeading(heading string) string {
	text := words.Advice(r.desk.State)
	room := r.w - desk.Width(heading) - hintGap
	if r.adviceRows() > 0 || text == "" || desk.Width(text) > room {
		return ""
	}
	return strings.Repeat(" ", hintGap) + r.adviceLine(room)
}

// takeAdvice goes to where the reading to take next is entered.
func (r *Root) takeAdvice() tea.Cmd {
	if !r.desk.State.Next.Known || len(r.desk.State.Next.Advice) == 0 {
		return nil
	}
	return r.apply(desk.Measure(r.desk.State.Next.Advice[0]))
}
