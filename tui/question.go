package tui

import (
	"strconv"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/tui/desk"
)

// question asks something with a few answers, taken by digit, arrows and Enter, or a tap. It stays until it is
// answered; Esc takes the last answer, which changes nothing.
type question struct {
	asks    string
	because string // what one should know before answering; its line ends are the program's own
	answers []answer
	on      int
}

type answer struct {
	text string
	do   func() tea.Cmd // nil: nothing
}

func (q *question) waits() bool { return true }

func (q *question) update(r *Root, msg tea.Msg) tea.Cmd {
	last := len(q.answers) - 1
	if row, tap := isTap(msg); tap {
		_, at := q.lay(r, r.w, r.bodyHeight())
		for i, first := range at[:last+1] {
			if row >= first && row < at[i+1] {
				return q.take(r, i)
			}
		}
		return nil
	}
	pressed, ok := msg.(tea.KeyMsg)
	if !ok {
		return nil
	}
	if digit, err := strconv.Atoi(pressed.String()); err == nil && digit >= 1 && digit <= last+1 {
		return q.take(r, digit-1)
	}
	switch {
	case key.Matches(pressed, desk.KeyUp, desk.KeyPrevious):
		q.on = max(q.on-1, 0)
	case key.Matches(pressed, desk.KeyDown, desk.KeyNext):
		q.on = min(q.on+1, last)
	case key.Matches(pressed, desk.KeyEnter):
		return q.take(r, q.on)
	case key.Matches(pressed, desk.KeyLeave):
		return q.take(r, last)
	}
	return nil
}

func (q *question) take(r *Root, i int) tea.Cmd {
	r.shut(q)
	if q.answers[i].do == nil {
		return nil
	}
	return q.answers[i].do()
}

// lay returns the rows for w columns, the first row of each answer, and behind them the row after the last. With
// room in h rows there is air between the answers, so that a finger meets the right one; without, what one should know is
// cut short: every answer is seen.
func (q *question) lay(r *Root, w, h int) (rows []string, at []int) {
	var because []string
	if q.because != "" {
		for line := range strings.SplitSeq(q.because, "\n") {
			because = append(because, desk.Wrap(line, w-4)...)
		}
	}
	if rows, at = q.laid(r, w, because, true); len(rows) <= h {
		return rows, at
	}
	rows, at = q.laid(r, w, because, false)
	if over := len(rows) - h; over > 0 && over < len(because) {
		because = because[:len(because)-over]
		because[len(because)-1] = desk.FitRow(strings.TrimRight(because[len(because)-1], " ")+" …", w-4)
		rows, at = q.laid(r, w, because, false)
	}
	return rows, at
}

// laid lays the question out, airy or not.
func (q *question) laid(r *Root, w int, because []string, airy bool) (rows []string, at []int) {
	styles := r.desk.State.Settings.Styles()
	add := func(texts []string, style desk.Style) {
		for _, text := range texts {
			rows = append(rows, "  "+style.Render(text))
		}
	}
	if airy {
		rows = append(rows, "")
	}
	add(desk.Wrap(q.asks, w-4), styles.Title)
	add(because, styles.Plain)
	rows = append(rows, "")
	for i, a := range q.answers {
		at = append(at, len(rows))
		lead, style := "  ", styles.Plain
		if i == q.on {
			lead, style = "> ", styles.Here
		}
		number := strconv.Itoa(i + 1)
		texts := desk.Wrap(a.text+" ", w-8-len(number))
		for n := range texts {
			if n > 0 {
				lead, number = "  ", strings.Repeat(" ", len(number))
			}
			texts[n] = lead + number + "  " + texts[n]
		}
		add(texts, style)
		if airy {
			rows = append(rows, "")
		}
	}
	return rows, append(at, len(rows))
}

func (q *question) view(r *Root, w, h int) string {
	rows, _ := q.lay(r, w, h)
	return strings.Join(rows, "\n")
}

func (q *question) keys() []key.Binding {
	return []key.Binding{
		desk.Named(desk.KeyEnter, "take the marked answer"), desk.Named(desk.KeyLeave, "the last one"),
		desk.Named(desk.KeyDown, "next"), desk.Named(desk.KeyUp, "the one before"),
	}
}
