package sheet

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
)

// Ticks are things to see to, each with a box.
type Ticks []Tick

// Tick is one of them: what it is about in bold, what is to be done, and, where something is to be written or was, what that is.
type Tick struct {
	Name, Words string
	Done        bool
	Ask         string // what is written behind it, such as a unit; "" for nothing
	Value       string // what was written
}

// answer is how wide the place is for what is written behind a tick, mm.
const answer = 40

func (all Ticks) lay(f *flow) {
	for i := range all {
		all[i].lay(f)
	}
}

func (t *Tick) lay(f *flow) {
	const in, after = 5.5, 0.9
	room := f.wide - in
	if t.Ask != "" || t.Value != "" {
		room -= answer + 2
	}
	style := vector.Text{Size: body}
	name := vector.Text{Words: printable(t.Name), Size: body, Bold: true}
	rows := t.rows(name, style, room)
	f.need(min(float64(len(rows))*body*leading, f.full()/2))
	f.box(f.y+0.5, t.Done)
	t.write(f)
	for i, row := range rows {
		f.need(body * leading)
		x := f.left + in
		if i == 0 && t.Name != "" {
			f.write(x, f.y+body, name)
			x += vector.WidthOf(name) + 1.5
		}
		style.Words = row
		f.write(x, f.y+body, style)
		f.y += body * leading
	}
	f.y += after
}

// rows are a tick's words, broken, the first behind its name; that stands alone where it leaves too little room.
func (t *Tick) rows(name, style vector.Text, room float64) []string {
	if t.Name == "" {
		return wrapped(t.Words, style, room)
	}
	first := room - vector.WidthOf(name) - 1.5
	if first < room/4 {
		return append([]string{""}, wrapped(t.Words, style, room)...)
	}
	return behind(t.Words, style, first, room)
}

// box draws a box, ticked where it is done.
func (f *flow) box(y float64, done bool) {
	const side = 2.7
	at := func(x, down float64) geometry.Point {
		return geometry.Point{X: f.left + x*side, Y: y + down*side}
	}
	f.line(thin, at(0, 0), at(1, 0), at(1, 1), at(0, 1), at(0, 0))
	if done {
		f.line(thick, at(0.2, 0.5), at(0.42, 0.8), at(0.85, 0.15))
	}
}

// write puts what was written behind a tick, or a line to write it on, and what it is.
func (t *Tick) write(f *flow) {
	if t.Ask == "" && t.Value == "" {
		return
	}
	from, to, y := f.left+f.wide-answer, f.left+f.wide, f.y+body*1.15
	ask := vector.Text{Words: printable(t.Ask), Size: small, Hold: vector.ByEnd}
	if t.Ask != "" {
		f.write(to, f.y+body, ask)
		to -= vector.WidthOf(ask) + 1
	}
	value := vector.Text{Size: body}
	value.Words = cut(t.Value, value, to-from)
	f.write(from, f.y+body, value)
	f.line(thin, geometry.Point{X: from, Y: y}, geometry.Point{X: to, Y: y})
}

// Lines are lines to write on, each with what is to be written there.
type Lines []string

func (all Lines) lay(f *flow) {
	const high, name = 9, 22.0 // mm
	for _, words := range all {
		f.need(high)
		f.y += high
		f.write(f.left, f.y-0.8, vector.Text{Words: words, Size: small})
		from := f.left
		if words != "" {
			from += min(name, f.wide/3)
		}
		f.line(thin, geometry.Point{X: from, Y: f.y}, geometry.Point{X: f.left + f.wide, Y: f.y})
	}
}
