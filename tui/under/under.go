// Package under is the screen for what is underneath: obstructions and openings in a list, the form of the one
// that is picked out, and the plan of the van's underside, which shows each reading as it is typed.
package under

import (
	"fmt"
	"sync/atomic"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// Screen is the screen "Underneath". It is a plain value.
type Screen struct {
	entry   entryscreen.Entry
	looking looking
}

// New returns the screen.
func New() desk.Screen { return Screen{entry: entryscreen.New(&spec)} }

// lookedNone says that a kind was looked for and is not there.
const lookedNone = "looked, none here"

var keyLook = key.NewBinding(key.WithKeys("a"), key.WithHelp("a", lookedNone))

var spec = entryscreen.Spec{
	Title: title, Records: records, Row: row, Warn: wrongs,
	Empty: "Nothing entered yet. n: a new obstruction; o: an opening where gas could get in; a: what was looked for " +
		"and is not there.",
	Fresh: []entryscreen.Fresh{
		{Key: key.NewBinding(key.WithKeys("n"), key.WithHelp("n", "new obstruction")), List: features.Obstructions},
		{Key: key.NewBinding(key.WithKeys("o"), key.WithHelp("o", "new opening")), List: features.Openings},
	},
}

// Title is what the header calls the screen.
func (m Screen) Title() string { return "Underneath" }

// Typing says whether letters belong to a field, or choose a kind that was looked for.
func (m Screen) Typing() bool { return m.entry.Typing() || m.looking.shown }

// Update answers one message.
func (m Screen) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	if size, ok := msg.(tea.WindowSizeMsg); ok {
		m.entry = m.entry.Sized(size.Width, size.Height)
		return m, desk.Change{}, nil
	}
	if open, ok := msg.(desk.Open); ok {
		var change desk.Change
		m.looking.shown = false
		m.entry, change = m.open(open, s)
		return m, change, nil
	}
	if _, ok := msg.(desk.Reveal); ok {
		m, change := m.revealed(s)
		return m, change, nil
	}
	m, change := m.step(msg, s)
	return m, change, nil
}

// revealed goes to the obstruction or the opening that the finding in the state's focus is of.
func (m Screen) revealed(s desk.State) (Screen, desk.Change) {
	if s.Focus == nil {
		return m, desk.Change{}
	}
	list, is := map[rules.Sort]features.List{rules.AnObstruction: features.Obstructions, rules.AnOpening: features.Openings}[s.Focus.Against.Sort]
	if !is {
		return m, desk.Change{}
	}
	var change desk.Change
	m.looking.shown = false
	m.entry, change = m.entry.Reveal(func(of form.Record) bool {
		return of == features.Record{List: list, Row: int(s.Focus.Against.Index)}
	}, s)
	return m, change
}

// open opens the form of an obstruction or an opening.
func (m Screen) open(o desk.Open, s desk.State) (entryscreen.Entry, desk.Change) {
	if o.Obstruction >= 0 {
		return m.entry.OpenAt(features.Record{List: features.Obstructions, Row: o.Obstruction}, o.Field, s)
	}
	return m.entry.OpenAt(features.Record{List: features.Openings, Row: o.Opening}, o.Field, s)
}

// step answers one key or tap.
func (m Screen) step(msg tea.Msg, s desk.State) (Screen, desk.Change) {
	press, isKey := msg.(tea.KeyMsg)
	switch {
	case m.looking.shown:
		return m.look(msg, s)
	case isKey && !m.entry.Typing() && key.Matches(press, keyLook, desk.KeyNext, desk.KeyPrevious):
		m.looking.shown = true
		return m, desk.Change{}
	}
	var change desk.Change
	m.entry, change = m.entry.Update(msg, s)
	return m, change
}

// Records are those of all its forms.
func (m Screen) Records(s desk.State) []form.Record { return records(s) }

// View paints the screen.
func (m Screen) View(s desk.State, w, h int) string {
	if m.looking.shown {
		return m.entry.View(s, w, h, m.paintLooked)
	}
	return m.entry.View(s, w, h, nil)
}

// Keys are the bindings that hold now.
func (m Screen) Keys(s desk.State) []key.Binding {
	if m.looking.shown {
		return lookedKeys
	}
	return m.entry.Keys(s, keyLook)
}

func title(s desk.State) string {
	text := fmt.Sprintf("Obstructions: %d", features.Obstructions.Rows(s.Job))
	n := 0
	for _, list := range vehicles.LookLists {
		n += len(left(list, s))
	}
	if n == 0 {
		return text
	}
	return text + fmt.Sprintf("   kinds not looked for: %d (a)", n)
}

// records are the rows of the list: obstructions, then openings, the unfinished behind the whole ones.
func records(s desk.State) []form.Record {
	return append(features.Obstructions.Records(s.Job), features.Openings.Records(s.Job)...)
}

func row(record form.Record, s desk.State) form.Row {
	feature := record.(features.Record)
	name, kind := feature.Name(s.Job)
	out := form.Row{Text: name}
	if feature.List == features.Obstructions && kind != "" {
		out.Mark = vehicles.KindOf(kind).Code
	}
	if feature.List == features.Openings && feature.Row == 0 {
		out.Head = "Openings: where gas could get in"
	}
	return out
}

// lastOverlaps are those that were asked for last: to measure them anew at each picture takes a tenth of a key with many obstructions.
var lastOverlaps atomic.Pointer[rules.Overlapping]

// overlaps are the things of a plan that fill one space, as far as they are compared.
func overlaps(plan vehicles.Plan) *rules.Overlapping {
	last := lastOverlaps.Load()
	if last == nil {
		last = &rules.Overlapping{}
	}
	last = last.After(plan)
	lastOverlaps.Store(last)
	return last
}

// wrongs says what is wrong with the survey: what keeps the job from being judged, what is a danger to whoever drills, or
// things that fill one space.
func wrongs(s desk.State) []string {
	var out []string
	for _, fault := range s.Faults {
		out = append(out, fault.Text)
	}
	if len(s.Faults) > 0 {
		return out
	}
	out = append(out, rules.Dangers(&s.Result)...)
	found := overlaps(s.Result.Plan)
	if said := inOneAnother(found.Pairs, s); said != "" {
		out = append(out, said)
	}
	if found.Partial {
		out = append(out, "more things lie close to one another than can be compared: not all were looked at for lying in one another")
	}
	return out
}

// inOneAnother says in one line which things fill one space though their kinds do not usually cross; "" for none.
func inOneAnother(pairs []rules.Overlap, s desk.State) string {
	all, deepest, most, n := s.Result.Job.Obstructions, rules.Overlap{}, 0.0, 0
	for _, o := range pairs {
		if cross(&all[o.A], &all[o.B]) {
			continue
		}
		n++
		if by := wayOut(o, s); by > most {
			deepest, most = o, by
		}
	}
	if n == 0 {
		return ""
	}
	text := fmt.Sprintf("%s and %s lie %s in one another", all[deepest.A].Name, all[deepest.B].Name, desk.Length(most, s.Settings.Units))
	if n > 1 {
		return fmt.Sprintf("%d pairs of things lie in one another, the deepest: %s: if neither runs through the other, measure both again", n, text)
	}
	return text + ": if neither runs through the other, measure both again"
}

// wayOut is the shortest way in mm that parts two things, in plan or in height.
func wayOut(o rules.Overlap, s desk.State) float64 {
	a, b := &s.Result.Plan.Obstructions[o.A].Prism, &s.Result.Plan.Obstructions[o.B].Prism
	return min(o.Depth, a.High-b.Low, b.High-a.Low)
}

// cross tells whether things of two kinds usually cross: beams meet rails and ribs, and pipes and wires go through all of these. Two of
// one kind do not: they may be one thing entered twice. Common practice, no source.
func cross(a, b *vehicles.Obstruction) bool {
	const frame = vehicles.TapedAsBeam | vehicles.TapedAsRail | vehicles.BearsClips
	piped := func(o *vehicles.Obstruction) bool { return vehicles.KindOf(o.Kind).Shape == vehicles.Piped }
	if a.Kind == b.Kind {
		return false
	}
	return a.Is(frame) && (b.Is(frame) || piped(b)) || b.Is(frame) && piped(a)
}
