package under

import (
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Plain is what the screen says where nothing is drawn.
func (m Screen) Plain(s desk.State) desk.Plain {
	if m.looking.shown {
		return m.looking.plain(s)
	}
	p := m.entry.Plain(s)
	if list := p.All; !m.entry.Typing() {
		p.All = func() []string {
			lines := append(list(), aloud.Zeros(s)...)
			for _, of := range vehicles.LookLists {
				lines = append(lines, looking{list: of}.lines(s)...)
			}
			return lines
		}
	}
	return p
}

// plain is a list of the kinds that were looked for.
func (l looking) plain(s desk.State) desk.Plain {
	all := kinds(l.list, s)
	k := all[l.kind()]
	return desk.Plain{
		Here: []string{
			l.heading(s), l.line(k) + "; " + aloud.Of(l.kind(), len(all)), l.list.KindOf(k.kind).Asks,
		},
		All: func() []string { return l.lines(s) },
	}
}

// heading names the list and says where one looks.
func (l looking) heading(s desk.State) string {
	return "Looked for " + roundWhat(l.list, s) + "; left to look for:" + tab(l.list, s)
}

// line is how a kind stands.
func (l looking) line(k looked) string {
	return string(l.list.KindOf(k.kind).Letter) + " " + k.kind + ": " + k.says(false)
}

// lines are all kinds of the list.
func (l looking) lines(s desk.State) []string {
	lines := []string{l.heading(s)}
	for _, k := range kinds(l.list, s) {
		lines = append(lines, l.line(k))
	}
	return lines
}
