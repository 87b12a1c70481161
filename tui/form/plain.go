package form

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/tui/desk"
)

// Plain is what the form says where nothing is drawn: the field that has the keys, what is wanted in it and what stands there.
func (f Form) Plain(fields []Field) desk.Plain {
	f = f.looked(fields)
	p := desk.Plain{
		Came: func(key, was string) string { return f.came(key, was, fields) },
		All:  func() []string { return f.lines(fields) },
	}
	i := index(fields, f.key)
	if i < 0 {
		return p
	}
	field := fields[i]
	p.Field, p.Text, p.Picked = field.Key, f.standing(field).text, field.picked()
	if !p.Picked {
		p.Text = f.input.String()
	}
	p.Here = append(heads(i, fields), f.line(field)+fmt.Sprintf("; field %d of %d", i+1, len(fields)))
	if say := f.comes(field); say != "" {
		p.Here = append(p.Here, say)
	}
	if !p.Picked && (field.Unit == length || field.Big) {
		p.Taped = &desk.Taped{Text: p.Text, Unit: field.Unit, Head: strings.Join(heads(i, fields), ""), Label: field.Label}
	}
	if len(field.Choices) > 0 {
		p.Here = append(p.Here, "One of: "+choicesOf(field), field.again())
	}
	return p
}

// length is the unit of fields that take a length: a plain number in them is mm, whatever units are shown.
const length = "mm"

// picked says whether its text is not typed letter by letter.
func (f Field) picked() bool { return len(f.Choices) > 0 || f.Nudge != nil }

// heads is the heading that a field stands under, none where there is none.
func heads(i int, fields []Field) []string {
	for ; i >= 0; i-- {
		if fields[i].Heading != "" {
			return []string{fields[i].Heading}
		}
	}
	return nil
}

// line is a field: what it is called, its unit, and what stands in it.
func (f Form) line(field Field) string {
	text := field.Label
	if field.Unit != "" {
		text += ", " + field.Unit
	}
	if wrong, bad := f.wrongAt(field); bad {
		return text + ": " + wrong.text + ", not taken"
	}
	switch {
	case field.Text != "":
		return text + ": " + field.Text
	case field.Blank != "":
		return text + ": nothing, " + field.Blank
	}
	return text + ": nothing"
}

// comes is what a field's text comes to, or what is wrong with it; "" for nothing to say.
func (f Form) comes(field Field) string {
	f.key, field.Choices = field.Key, nil
	say, fault := f.say(field)
	if fault {
		return strings.TrimLeft(say, "!? ")
	}
	return say
}

// came is what became of a field that was left, in which was stood when it was last said.
func (f Form) came(key, was string, fields []Field) string {
	i := index(fields, key)
	if i < 0 {
		return ""
	}
	say := f.comes(fields[i])
	if _, bad := f.wrongAt(fields[i]); bad {
		return f.line(fields[i]) + ": " + say
	}
	switch {
	case fields[i].picked() && fields[i].Text != was:
		return f.line(fields[i])
	case fields[i].picked():
		return ""
	}
	return say
}

// choicesOf are what can be chosen, each with its letter.
func choicesOf(field Field) string {
	var all []string
	for _, c := range field.Choices {
		all = append(all, string(c.Letter)+" "+c.Name)
	}
	return strings.Join(all, ", ")
}

// lines are all fields with what they come to.
func (f Form) lines(fields []Field) (lines []string) {
	for _, field := range fields {
		if field.Heading != "" {
			lines = append(lines, field.Heading+":")
		}
		text := f.line(field)
		if say := f.comes(field); say != "" {
			text += "; " + say
		}
		lines = append(lines, text)
	}
	return lines
}

// brief are the fields in which something stands, without their headings, and what they come to.
func (f Form) brief(fields []Field, skip []string) (lines []string) {
	for _, field := range fields {
		_, bad := f.wrongAt(field)
		if field.Text == "" && !bad || slices.Contains(skip, field.Key) {
			continue
		}
		text := field.Label + " " + field.Text
		if bad {
			text = f.line(field)
		}
		if say := f.comes(field); say != "" && (bad || strings.HasPrefix(say, "=")) {
			text += " " + say
		}
		lines = append(lines, text)
	}
	return lines
}

// Brief is what is known of the record in few words: what stands in its fields, those of skip left out, and what it comes to.
func (e Editor) Brief(s desk.State, skip ...string) []string {
	if e.record == nil {
		return nil
	}
	f, fields := e.on(e.record, s)
	for i := range skip {
		skip[i] = e.record.ID() + "/" + skip[i]
	}
	return f.brief(e.noted(fields, s), skip)
}

// Plain is what the form on the record says where nothing is drawn.
func (e Editor) Plain(s desk.State) desk.Plain {
	if e.record == nil {
		return desk.Plain{}
	}
	f, fields := e.on(e.record, s)
	p, prefix := f.Plain(e.noted(fields, s)), e.record.ID()+"/"
	p.Field = strings.TrimPrefix(p.Field, prefix) // a thing that becomes whole while it is typed is called otherwise then
	came := p.Came
	p.Came = func(field, was string) string { return came(prefix+field, was) }
	return p
}

// Plain is the row in one line; kind is what its mark stands for.
func (r Row) Plain(kind string) string {
	text := strings.TrimSpace(r.Text)
	if kind != "" && !strings.HasPrefix(text, kind) {
		text += " (" + kind + ")"
	}
	if r.Head != "" {
		text = strings.TrimPrefix(r.Head+": "+text, ": ")
	}
	if r.Right != "" {
		text += "; " + strings.TrimPrefix(strings.Replace(r.Right, "? ", "still open: ", 1), "! ")
	}
	return text
}
