package sheet

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
)

// Ticks are things to see to, each with a box.
type Ticks []Tick

// Tick is one of them: what it is about in bold, what is to be done, and what is to be written behind it, or was.
type Tick struct {
	Name, Words string
	Done        bool
	Answers     []Answer // below each other, at the right
}

// Answer is a place to write: what is written there, such as a unit, and what was.
type Answer struct{ Ask, Value string }

// answer is how wide the place is for what is written behind a tick, mm.
const answer = 33

func (all Ticks) lay(f *flow) {
	for i := range all {
		all[i].lay(f)
	}
}

func (t *Tick) lay(f *flow) {
	const in = 5.5
	room := f.wide - in
	if len(t.Answers) > 0 {
		room -= answer + 2
	}
	if high := f.measured(ticked{t, room}, f.wide); high < f.full()/2 {
		f.need(high)
	}
	f.box(f.y+0.5, t.Done)
	from, page := f.y, len(f.pages)
	f.named(t.Name, t.Words, in, room)
	below := f.y
	if len(f.pages) > page { // it was long: what is written stands below
		from = below
	}
	f.y = from
	t.answers(f)
	f.y = max(f.y, below)
}

// ticked is a tick's words with its answers, to be measured.
type ticked struct {
	*Tick
	room float64
}

func (w ticked) lay(f *flow) {
	from := f.y
	w.answers(f)
	below := f.y
	f.y = from
	f.named(w.Name, w.Words, 0, w.room)
	f.y = max(f.y, below)
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

// answers puts what was written behind a tick, or a line to write it on, and what it is.
func (t *Tick) answers(f *flow) {
	value, ask := vector.Text{Size: body}, vector.Text{Size: small, Align: vector.ByEnd}
	for i, a := range t.Answers {
		if i > 0 {
			f.y += 1 // hands need more room than letters
		}
		from, to := f.left+f.wide-answer, f.left+f.wide
		if ask.Words = cut(a.Ask, ask, answer/2); ask.Words != "" {
			f.write(to, f.y+body, ask)
			to -= vector.WidthOf(ask) + 1
		}
		for _, row := range wrapped(a.Value, value, to-from) {
			f.need(leading * body)
			value.Words = row
			f.write(from, f.y+body, value)
			f.y += leading * body
		}
		f.line(thin, geometry.Point{X: from, Y: f.y - 0.4}, geometry.Point{X: to, Y: f.y - 0.4})
	}
	if len(t.Answers) > 1 {
		f.y += 0.6 // or the last one runs into the next thing's
	}
}

// Lines are lines to write on, each with what is to be written there.
type Lines []string

func (all Lines) lay(f *flow) {
	const high, name = 7.0, 22.0 // mm
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
