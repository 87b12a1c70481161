package moving

import "bench.example/undermark/tui/desk"

// Plain is what the prompt says where nothing is drawn.
func (p Prompt) Plain(heading string, asks []Ask) desk.Plain {
	said := p.form.Plain(p.fields(asks))
	said.Here = append([]string{heading}, said.Here...)
	all := said.All
	said.All = func() []string { return append([]string{heading}, all()...) }
	return said
}
