package features

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// Record is the form of one thing of a list. Rows count the list's things, then its unfinished ones; Fresh is a
// thing that does not exist before the first text is in: it will be the first of the unfinished.
type Record struct {
	List  List
	Row   int
	Fresh bool
}

// New is the record of a thing to be.
func New(l List, j vehicles.Job) Record { return Record{l, l.Len(j), true} }

// Rows is how many things of a list there are, unfinished ones included.
func (l List) Rows(j vehicles.Job) int { return l.Len(j) + l.Unfinished(j) }

// Records are the records of a list's things.
func (l List) Records(j vehicles.Job) []form.Record {
	out := make([]form.Record, l.Rows(j))
	for row := range out {
		out[row] = Record{List: l, Row: row}
	}
	return out
}

// Real says whether the thing is one of the job's, and not unfinished.
func (h Record) Real(j vehicles.Job) bool { return !h.Fresh && h.Row < h.List.Len(j) }

// ID is "obstruction 3".
func (h Record) ID() string { return fmt.Sprintf("%s %d", h.List.One(), h.Row+1) }

// texts are what the job has of the thing; nil when there is no such thing.
func (h Record) texts(j vehicles.Job) texts {
	switch {
	case h.Fresh:
		return texts{}
	case h.Real(j):
		return textsOf(h.List.At(j, h.Row))
	}
	all := h.List.unfinished(j)
	if i := h.Row - h.List.Len(j); i < len(all) {
		x := texts{}
		maps.Copy(x, all[i].Texts)
		return x
	}
	return nil
}

// Gone says whether there is no such thing any more: an undo has taken it back.
func (h Record) Gone(j vehicles.Job) bool { return h.texts(j) == nil }

// Name is what the thing is called in lists, and its kind.
func (h Record) Name(j vehicles.Job) (name, kind string) {
	if name, kind = h.called(j); name == "" {
		name = "new " + h.List.One()
	}
	return name, kind
}

// called are the thing's name and kind as the job has them. A list asks for those of all its things at every picture.
func (h Record) called(j vehicles.Job) (name, kind string) {
	if h.Real(j) {
		t := h.List.At(j, h.Row)
		return t.Name, t.Kind
	}
	x := h.texts(j)
	return x["name"], x["kind"]
}

// Lacks says what keeps an unfinished thing from being whole: "far edge and 2 more".
func (h Record) Lacks(j vehicles.Job) string {
	x := h.texts(j)
	_, missing, _ := h.List.build(Feature{}, nil, x)
	return h.lacking(j, missing, x)
}

// FirstMissing is the first field that a thing which is not whole needs, "" for a thing of the job.
func (h Record) FirstMissing(j vehicles.Job) string {
	if h.Real(j) {
		return ""
	}
	_, missing, _ := h.List.build(Feature{}, nil, h.texts(j))
	if len(missing) == 0 {
		return ""
	}
	return missing[0]
}

// Lacking is what a field that a thing needs is called.
func (h Record) Lacking(field string, j vehicles.Job) string {
	return labelOf(field, h.texts(j).shape(), h.List, &j.Datum)
}

func (h Record) lacking(j vehicles.Job, missing []string, x texts) string {
	if len(missing) == 0 {
		return ""
	}
	first := labelOf(missing[0], x.shape(), h.List, &j.Datum)
	if n := len(missing) - 1; n > 0 {
		return fmt.Sprintf("%s and %d more", first, n)
	}
	return first
}

// Set returns the job with these texts in the thing, and where the thing is then.
func (h Record) Set(s desk.State, edits map[string]string) (vehicles.Job, form.Record, error) {
	was := h.texts(s.Job)
	now := maps.Clone(was)
	if now == nil {
		now = texts{}
	}
	for key, text := range edits {
		now[key] = canonical(key, text)
	}
	err := h.named(s.Job, was, now, edits)
	if err != nil {
		return s.Job, h, err
	}
	var after vehicles.Job
	var next form.Record
	if h.Real(s.Job) {
		after, next, err = h.change(s, was, now, edits)
	} else {
		after, next, err = h.goOn(s, now, edits)
	}
	if err != nil {
		return s.Job, h, err
	}
	return after, next, nil
}

// named proposes a name for a new kind and holds names apart.
func (h Record) named(j vehicles.Job, was, now texts, edits map[string]string) error {
	if _, set := edits["kind"]; set && now["kind"] != "" && now["name"] == was["name"] && proposed(was["name"], was["kind"]) {
		now["name"] = h.List.unusedName(j, now["kind"])
	}
	name, set := edits["name"]
	if !set {
		if now["name"] == "" && remeasured(was, now) {
			now["name"] = h.List.numbered(j)
		}
		return nil
	}
	name = strings.TrimSpace(name)
	now["name"] = name
	if name == "" {
		return form.Fault{Key: "name", Why: "a name is needed: findings speak of it"}
	}
	for row := range h.List.Rows(j) {
		if other, _ := (Record{h.List, row, false}).Name(j); other == name && (h.Fresh || row != h.Row) {
			return form.Fault{Key: "name", Why: fmt.Sprintf("there is another %q: give this one a name of its own", form.Quoted(name))}
		}
	}
	return nil
}

// unusedName is a name that neither the job's things nor the unfinished ones have.
func (l List) unusedName(j vehicles.Job, base string) string {
	for _, b := range l.unfinished(j) {
		j.Obstructions = j.Obstructions.Insert(len(j.Obstructions), vehicles.Obstruction{Name: b.Texts["name"]})
	}
	return j.UniqueName(base)
}

// numbered is a name for a thing without a kind, once it has a reading and nobody has named it: the first free "point 3".
func (l List) numbered(j vehicles.Job) string {
	base := map[List]string{Ties: "point", Fittings: "fitting"}[l]
	if base == "" {
		return ""
	}
	for n := 1; ; n++ {
		name := fmt.Sprintf("%s %d", base, n)
		taken := false
		for row := range l.Rows(j) {
			other, _ := (Record{l, row, false}).Name(j)
			taken = taken || other == name
		}
		if !taken {
			return name
		}
	}
}

// proposed says whether a name is none, or one that was made from the kind.
func proposed(name, kind string) bool {
	rest, fromKind := strings.CutPrefix(name, kind)
	return name == "" || fromKind && kind != "" && strings.Trim(rest, " 0123456789") == ""
}

// change puts new texts into a thing of the job. The job takes all or nothing.
func (h Record) change(s desk.State, was, now texts, edits map[string]string) (vehicles.Job, form.Record, error) {
	j := s.Job
	if h.List.Confirmable() && remeasured(was, now) && edits["measured"] == "" {
		now["measured"] = onThisVan
	}
	t, missing, wrong := h.List.build(h.List.At(j, h.Row), was, now)
	if err := firstOf(wrong, edits); err != nil {
		return j, h, err
	}
	if len(missing) > 0 {
		return j, h, h.needs(j, missing, now)
	}
	after := h.List.table().with(j, h.Row, t)
	if h.List == Obstructions && t.Name != was["name"] {
		after = after.Renaming(was["name"], t.Name)
	}
	return after, h, h.List.tryAt(s, after, h.Row)
}

// remeasured says whether a reading is there that was not there before: who enters a reading has measured the thing on
// this van.
func remeasured(was, now texts) bool {
	for key, text := range now {
		if isReading(key) && text != "" && text != was[key] {
			return true
		}
	}
	return false
}

// goOn puts texts into an unfinished thing and, once all are in, the thing into the list.
func (h Record) goOn(s desk.State, now texts, edits map[string]string) (vehicles.Job, form.Record, error) {
	l, j := h.List, s.Job
	t, missing, wrong := l.build(Feature{}, nil, now)
	if err := firstOf(wrong, edits); err != nil {
		return j, h, err
	}
	all := l.unfinished(j)
	if h.Fresh {
		all, h.Row, h.Fresh = all.Insert(0, vehicles.Begun{}), l.Len(j), false
	}
	i := h.Row - l.Len(j)
	if i < 0 || i >= len(all) {
		return j, h, errors.New("this thing is gone: go back to the list")
	}
	if len(missing) == 0 && len(wrong) == 0 {
		after := l.withUnfinished(l.table().put(j, l.Len(j), t), all.Without(i)).Keeping(l.One()+" "+t.Name, all[i].Others)
		return after, Record{l, l.Len(j), false}, l.tryAt(s, after, l.Len(j))
	}
	if sketch, ok := l.sketch(now, j.Floor); ok {
		if err := l.tryAt(s, l.table().put(j, l.Len(j), sketch), l.Len(j)); err != nil {
			return j, h, err
		}
	}
	return l.withUnfinished(j, all.With(i, all[i].Saying(now))), h, nil
}

// firstOf returns what is wrong with the texts, first with one that is new.
func firstOf(wrong map[string]error, edits map[string]string) error {
	keys := slices.Sorted(maps.Keys(wrong))
	if len(keys) == 0 {
		return nil
	}
	var anew, others form.Faults
	for _, key := range keys {
		fault := form.Fault{Key: key, Why: wrong[key].Error()}
		if _, edited := edits[key]; edited {
			anew = append(anew, fault)
		} else {
			others = append(others, fault)
		}
	}
	return append(anew, others...)
}

// Sketch is the job on the desk with what is known of an unfinished thing, as Sketched has it, reduced. It is asked for at
// every picture, and made once a change.
func (h Record) Sketch(s desk.State) desk.Sketch {
	id := h.ID()
	if s.Sketch != nil && s.Sketch.Of == id {
		return *s.Sketch
	}
	sketch := desk.Sketch{Of: id}
	if sketch.Job, sketch.Row = h.Sketched(s.Job); sketch.Row >= 0 {
		sketch.Plan, sketch.Faults = rules.Reduce(sketch.Job, s.Book)
	}
	if s.Sketch != nil {
		*s.Sketch = sketch
	}
	return sketch
}

// Sketched returns the job with what is known of an unfinished thing at the end of its list, for the eye only,
// and where it is there; the job as it is for any other.
func (h Record) Sketched(j vehicles.Job) (vehicles.Job, int) {
	if h.Fresh || h.Real(j) {
		return j, h.Row
	}
	if h.Gone(j) {
		return j, -1
	}
	t, ok := h.List.sketch(h.texts(j), j.Floor)
	if !ok {
		return j, -1
	}
	n := h.List.Len(j)
	return h.List.table().put(j, n, t), n
}
