package features

import (
	"errors"
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// builder makes a thing of texts. A text that is as it was leaves what the file said untouched.
type builder struct {
	was, now texts
	old      Feature
	missing  []string // keys of fields that must not be blank, in order
	wrong    map[string]error
	used     map[string]bool // keys that the form of the place has
}

// build makes a thing of the list of now. What the texts leave out is named in missing, what can't be read in
// wrong; the thing is whole when both are empty.
func (l List) build(old Feature, was, now texts) (t Feature, missing []string, wrong map[string]error) {
	b := builder{was: was, now: now, old: old, wrong: map[string]error{}, used: map[string]bool{}}
	t.Kind, t.Name, t.Shape = now["kind"], strings.TrimSpace(now["name"]), now.shape()
	if l == Ties {
		b.tie(&t)
		return t, b.missing, b.wrong
	}
	if l.ofKind() && t.Kind == "" {
		b.missing = append(b.missing, "kind")
	}
	switch t.Shape {
	case vehicles.Box:
		t.X = vehicles.Pair{b.reading("x0", old.X[0]), b.reading("x1", old.X[1])}
		t.Y = vehicles.Pair{b.reading("y0", old.Y[0]), b.reading("y1", old.Y[1])}
		t.Turn = b.angle("turn")
	case vehicles.Piped:
		t.Path = b.path()
		t.Across = b.size("across", l != Openings)
	case vehicles.Disc:
		t.Centre = vehicles.Pair{b.reading("cx", old.Centre[0]), b.reading("cy", old.Centre[1])}
		t.Across = b.size("across", true)
	}
	t.Span = b.span(l != Obstructions)
	if l == Obstructions {
		t.TapedAt = b.number("taped", old.TapedAt)
	}
	t.Holds, t.Travel = b.holds(), b.travel()
	if l.chained() {
		t.Total = b.totals()
	}
	t.Measured = !l.Confirmable() || now["measured"] != notConfirmed
	if t.Name == "" {
		b.missing = append(b.missing, "name")
	}
	b.strangers()
	return t, b.missing, b.wrong
}

// holds is the fuel in the thing: what holds none keeps what the file says of it, until it becomes another.
func (b *builder) holds() string {
	switch kind, holds := b.now["kind"], b.now["holds"]; {
	case !vehicles.KindOf(kind).Is(vehicles.HoldsFuel) && kind == b.old.Kind:
		return b.old.Holds
	case vehicles.KindOf(kind).Is(vehicles.HoldsFuel) && holds != vehicles.NotKnown:
		return holds
	}
	return ""
}

var errBack = errors.New("how far it moves either way: 0 mm or more")

// travel is how far the thing moves: what does not move keeps what the file says of it, until it becomes another.
func (b *builder) travel() vehicles.Number {
	switch kind := b.now["kind"]; {
	case vehicles.KindOf(kind).Is(vehicles.Travels):
		n := b.number("travel", b.old.Travel)
		if n.Value < 0 {
			b.wrong["travel"] = errBack
		}
		return n
	case kind == b.old.Kind:
		return b.old.Travel
	}
	return vehicles.Number{}
}

// text is what a field says.
func (b *builder) text(key string) string {
	b.used[key] = true
	return b.now[key]
}

// reading reads what the tape said; every reading of a place is needed.
func (b *builder) reading(key string, old survey.Reading) survey.Reading {
	text := b.text(key)
	switch {
	case strings.TrimSpace(text) == "":
		b.missing = append(b.missing, key)
		return survey.Reading{}
	case text == b.was[key]:
		return old
	}
	r, err := survey.Typed(text, axisOf(key))
	if err != nil {
		b.wrong[key] = err
	}
	return r
}

// strangers finds new texts of a place of another form than the thing has.
func (b *builder) strangers() {
	for key, text := range b.now {
		if text != "" && text != b.was[key] && !b.used[key] && ofPlace(key) {
			b.wrong[key] = errors.New("goes with another form: taken as soon as that has all it needs")
		}
	}
}

// path reads the points, one row each; a row left blank is no point.
func (b *builder) path() []vehicles.Pair {
	var out []vehicles.Pair
	rows := b.now.points()
	for i := range rows {
		kx, ky := pointKey(i, 0), pointKey(i, 1)
		if b.text(kx)+b.text(ky) == "" {
			continue
		}
		var old vehicles.Pair
		if i < len(b.old.Path) {
			old = b.old.Path[i]
		}
		out = append(out, vehicles.Pair{b.reading(kx, old[0]), b.reading(ky, old[1])})
	}
	for i := len(out); i < 2; i++ {
		b.missing = append(b.missing, pointKey(max(rows, i), 0), pointKey(max(rows, i), 1))
	}
	return out
}

// number reads a length that may be left blank.
func (b *builder) number(key string, old vehicles.Number) vehicles.Number {
	text := b.text(key)
	switch {
	case strings.TrimSpace(text) == "":
		return vehicles.Number{}
	case text == b.was[key] && old.Set:
		return old
	}
	mm, err := form.Length(text, vehicles.ALength)
	if err != nil {
		b.wrong[key] = err
		return vehicles.Number{}
	}
	return vehicles.Some(mm)
}

// size reads a width or a diameter.
func (b *builder) size(key string, needed bool) vehicles.Number {
	n := b.number(key, b.old.Across)
	switch {
	case n.Set && n.Value <= 0:
		b.wrong[key] = vehicles.ASize.Takes(n.Value)
	case !n.Set && needed && b.wrong[key] == nil:
		b.missing = append(b.missing, key)
	}
	return n
}

// angle reads degrees, 0 when left blank.
func (b *builder) angle(key string) float64 {
	text := strings.TrimSpace(b.text(key))
	if text == "" {
		return 0
	}
	deg, err := form.Degrees(text)
	if err != nil {
		b.wrong[key] = err
	}
	return deg
}

// span reads the heights: both or, where they may be left out, neither.
func (b *builder) span(needed bool) vehicles.Span {
	from := b.number("top", vehicles.Number{Value: b.old.Span.From, Set: b.old.Span.Set})
	to := b.number("low", vehicles.Number{Value: b.old.Span.To, Set: b.old.Span.Set})
	for _, end := range []struct {
		key string
		n   vehicles.Number
	}{{"top", from}, {"low", to}} {
		if !end.n.Set && b.wrong[end.key] == nil && (needed || from.Set || to.Set) {
			b.missing = append(b.missing, end.key)
		}
	}
	if from.Set && to.Set && from.Value > to.Value {
		b.wrong["low"] = fmt.Errorf("%s is less than %s: the first comes first", survey.Exact(to.Value), survey.Exact(from.Value))
		b.wrong["top"] = b.wrong["low"]
	}
	return vehicles.Span{From: from.Value, To: to.Value, Set: from.Set && to.Set}
}
