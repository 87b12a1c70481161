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
	const in = 5.5
	room := f.wide - in
	if t.Ask != "" || t.Value != "" {
		room -= answer + 2
	}
	high := f.measured(words{t, room}, f.wide)
	if high < f.full()/2 {
		f.need(high)
	}
	f.box(f.y+0.5, t.Done)
	from := f.y
	t.write(f)
	below := f.y
	f.y = from
	f.named(t.Name, t.Words, in, room)
	f.y = max(f.y, below)
}

// words are a tick's, to be measured.
type words struct {
	*Tick
	room float64
}

func (w words) lay(f *flow) {
	f.named(w.Name, w.Words, 0, w.room)
	answered := wrapped(w.Value, vector.Text{Size: body}, answer)
	f.y = max(f.y, float64(len(answered))*leading*body)
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
	from, to := f.left+f.wide-answer, f.left+f.wide
	if t.Ask != "" {
		ask := vector.Text{Size: small, Hold: vector.ByEnd}
		ask.Words = cut(t.Ask, ask, answer/2)
		f.write(to, f.y+body, ask)
		to -= vector.WidthOf(ask) + 1
	}
	value := vector.Text{Size: body}
	for _, row := range wrapped(t.Value, value, to-from) {
		value.Words = row
		f.write(from, f.y+body, value)
		f.y += leading * body
	}
	f.line(thin, geometry.Point{X: from, Y: f.y - 0.4}, geometry.Point{X: to, Y: f.y - 0.4})
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
