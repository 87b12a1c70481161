package tui

import (
	"fmt"
	"strings"

	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
)

// What lies over the screens says in lines what it shows.

func (q *question) plain(*Root) desk.Plain {
	lines := []string{q.asks}
	if q.because != "" {
		lines = append(lines, strings.Split(q.because, "\n")...)
	}
	for i, a := range q.answers {
		lines = append(lines, fmt.Sprintf("%d: %s", i+1, a.text))
	}
	marked := fmt.Sprintf("Marked: %d, %s", q.on+1, q.answers[q.on].text)
	return desk.Plain{Here: append(lines, marked), All: func() []string { return append(lines, marked) }}
}

func (d *reader) plain(r *Root) desk.Plain {
	rows, room := d.page(r, r.w, r.bodyHeight())
	top := min(d.top, max(len(rows)-room, 0))
	shown := aloud.Rows(rows[top:min(top+room, len(rows))]...)
	left := len(rows) - top - room
	on := fmt.Sprintf("%s; %s: %s", d.left(left), desk.KeyEnter.Help().Key, d.onward())
	return desk.Plain{
		Here: append(append([]string{d.title}, shown...), on),
		All:  func() []string { return append(append([]string{d.title}, aloud.Rows(rows...)...), on) },
	}
}

func (p *prompt) plain(*Root) desk.Plain {
	said := p.form.Plain(p.fields)
	said.Here = append([]string{p.asks, p.said}, said.Here...)
	here := said.Here
	said.All = func() []string { return here }
	return said
}
