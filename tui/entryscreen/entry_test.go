package entryscreen

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/tui/screentest"
	"bench.example/undermark/vehicles"
)

// only is an entry screen of obstructions and nothing else.
type only struct{ Entry }

func (o only) Title() string { return "Only" }

func (o only) Update(msg tea.Msg, s desk.State) (desk.Screen, desk.Change, tea.Cmd) {
	if size, ok := msg.(tea.WindowSizeMsg); ok {
		return only{o.Sized(size.Width, size.Height)}, desk.Change{}, nil
	}
	next, change := o.Entry.Update(msg, s)
	return only{next}, change, nil
}

func (o only) Plain(s desk.State) desk.Plain          { return o.Entry.Plain(s) }
func (o only) View(s desk.State, w, h int) string     { return o.Entry.View(s, w, h, nil) }
func (o only) Keys(s desk.State) (keys []key.Binding) { return o.Entry.Keys(s) }

// spec is of a list of obstructions, which n adds to.
func spec() *Spec {
	return &Spec{
		Title:   func(desk.State) string { return "Things" },
		Records: func(s desk.State) []form.Record { return features.Obstructions.Records(s.Job) },
		Row: func(r form.Record, s desk.State) form.Row {
			name, _ := r.(features.Record).Name(s.Job)
			return form.Row{Text: name}
		},
		Empty: "Nothing entered yet.",
		Fresh: []Fresh{{key.NewBinding(key.WithKeys("n"), key.WithHelp("n", "new")), features.Obstructions}},
	}
}

func started(t *testing.T, spec *Spec, job vehicles.Job, w, h int) *screentest.Driver {
	return screentest.New(t, only{New(spec)}, job, w, h)
}

// at is the row the keys act on.
func at(r *screentest.Driver) int { return r.Screen.(only).At }

func TestTheListIsWalkedAndEndsAtItsEnds(t *testing.T) {
	r := started(t, spec(), screentest.Van(t), 100, 27)
	for _, step := range []struct {
		keys string
		at   int
	}{{"<up>", 0}, {"<down>", 1}, {"<end>", 2}, {"<down>", 2}, {"<pgup>", 0}, {"<pgdown>", 2}, {"<home>", 0}} {
		r.Type(step.keys)
		assert.Equal(t, step.at, at(r), step.keys)
		assert.Equal(t, step.at, r.State.Selected, "the plan picks it out too")
	}
	wheel := func(b tea.MouseButton) { r.Send(tea.MouseMsg{X: 5, Y: 3, Action: tea.MouseActionPress, Button: b}) }
	for range 5 {
		wheel(tea.MouseButtonWheelDown)
	}
	assert.Equal(t, 2, at(r))
	for range 5 {
		wheel(tea.MouseButtonWheelUp)
	}
	assert.Equal(t, 0, at(r))
	assert.Empty(t, r.Steps())
}

func TestAnEmptyListSaysHowToBegin(t *testing.T) {
	job := screentest.Van(t)
	job.Obstructions, job.Looked = nil, nil
	r := started(t, spec(), job, 60, 17)
	assert.Contains(t, r.View(60, 17), "Nothing entered yet.")
	r.Type("<down><enter>dxm[]<end>")
	r.Tap(5, 3)
	assert.False(t, r.Screen.Typing())
	assert.Equal(t, string(job.Format()), string(r.State.Job.Format()))
	r.Type("n")
	assert.True(t, r.Screen.Typing())
	r.Type("<esc>")
	assert.Equal(t, string(job.Format()), string(r.State.Job.Format()), "nothing was typed: nothing was begun")
}

// What the plan picks out is what the list is at, unless a field has the keys.
func TestTheListFollowsWhatIsPickedOutElsewhere(t *testing.T) {
	r := started(t, spec(), screentest.Van(t), 100, 27)
	r.State.Selected = 2
	assert.Contains(t, r.View(100, 27), "▸ spare wheel")
	r.Type("<up>")
	assert.Equal(t, 1, at(r), "from there")
	r.Type("<enter>")
	r.State.Selected = 0
	r.Type("<down>")
	assert.Equal(t, 1, at(r), "whoever types stays where he types")
}

// Undo takes back what was typed of a new thing, and its form is that of a new one again; the next letters make one thing.
func TestUndoWhileANewThingIsTyped(t *testing.T) {
	r := started(t, spec(), screentest.Van(t), 100, 27)
	r.Type("nc652")
	for len(r.Steps()) > 0 {
		r.Undo()
	}
	assert.Contains(t, r.View(100, 27), "new obstruction")
	r.Type("c900<enter>+84<enter>-850<enter>850<esc>")
	require.Len(t, r.State.Job.Obstructions, 4)
	assert.Equal(t, "900", r.State.Job.Obstructions[3].X[0].Text)
	assert.Zero(t, features.Obstructions.Unfinished(r.State.Job))
}

// The plan takes the whole body and gives it back, with the list where it was.
func TestThePlanTakesTheWholeBody(t *testing.T) {
	r := started(t, spec(), screentest.Van(t), 60, 17)
	r.Type("<down>p")
	assert.NotContains(t, r.View(60, 17), "Things")
	r.Type("<down>")
	assert.Equal(t, 1, at(r), "the arrows are the plan's")
	r.Type("<esc>")
	assert.Contains(t, r.View(60, 17), "▸ brake pipe, right")
	r.Type("pn")
	assert.True(t, r.Screen.Typing(), "a new thing brings the form back")
	assert.Contains(t, r.View(60, 17), "Obstruction 4")
}

// The names on the plan stay where they stood while a field is typed in, and may stand anew where another thing is looked at.
func TestNamesStayWhileAFieldIsTypedIn(t *testing.T) {
	r := started(t, spec(), screentest.Van(t), 100, 27)
	assert.False(t, r.Screen.(only).options(r.State).Calm)
	r.Type("<enter>")
	assert.True(t, r.Screen.(only).options(r.State).Calm)
	r.Type("<esc><down>")
	assert.False(t, r.Screen.(only).options(r.State).Calm)
}

func TestAListWithoutAPlanHasNoneOfItsKeys(t *testing.T) {
	s := spec()
	s.NoPlan = true
	r := started(t, s, screentest.Van(t), 100, 27)
	for _, b := range r.Screen.Keys(r.State) {
		assert.NotEqual(t, "p", b.Help().Key)
	}
	was := r.View(100, 27)
	r.Type("p")
	assert.Equal(t, was, r.View(100, 27))
}

// Enter and a second tap do what a row is for in place of opening its form.
func TestARowThatIsForSomethingElse(t *testing.T) {
	s := spec()
	s.Enter = func(form.Record, desk.State) (desk.Change, bool) { return desk.Change{Ask: desk.Save}, true }
	r := started(t, s, screentest.Van(t), 100, 27)
	r.Type("<enter>")
	assert.Equal(t, desk.Save, r.Asked)
	assert.False(t, r.Screen.Typing())
	r.Asked = 0
	r.Tap(8, 1)
	assert.Equal(t, desk.Save, r.Asked, "it was at that row already")
}

// A row says how its thing stands, the gravest first.
func TestARowSaysHowItsThingStands(t *testing.T) {
	job := screentest.Van(t)
	bare := job.Obstructions[0]
	bare.Name, bare.Drop, bare.TapedAt = "bare", vehicles.Span{}, vehicles.Number{}
	job.Obstructions = job.Obstructions.Insert(3, bare)
	job.Unfinished.Obstructions = vehicles.List[vehicles.Begun]{{Texts: map[string]string{"kind": "crossmember", "name": "half", "x0": "700"}}}
	r := started(t, spec(), job, 100, 40)
	seen := 0
	for name, says := range map[string]string{"spare wheel": "not confirmed", "bare": "drop not measured", "half": "! needs far edge"} {
		for _, row := range strings.Split(r.View(100, 40), "\n") {
			if left, _, _ := strings.Cut(row, "│"); strings.HasPrefix(strings.TrimLeft(left, "▸ "), name+" ") {
				assert.Contains(t, left, says)
				seen++
			}
		}
	}
	assert.Equal(t, 3, seen)
	r.Type("<enter><end>x<esc>")
	assert.Contains(t, r.View(100, 40), "! refused: near edge")
}

func TestWhatGoesWithADeletedThingIsNamed(t *testing.T) {
	assert.Equal(t, "deleted rail: Ctrl-Z brings it back", deleted("rail", nil))
	assert.Equal(t, "deleted rail, and with it its shield: Ctrl-Z brings all of it back", deleted("rail", []string{"its shield"}))
	assert.Equal(t, "deleted rail, and with it a, b and c: Ctrl-Z brings all of it back", deleted("rail", []string{"a", "b", "c"}))
}

// The parts of the body do not overlap and leave no row out, however large it is.
func TestTheBodyIsDividedWithoutRest(t *testing.T) {
	s := screentest.State(t)
	for _, keys := range []string{"", "n", "nc", "p"} {
		r := started(t, spec(), s.Job, 100, 27)
		r.Type(keys)
		for w := 60; w <= 170; w += 5 {
			for h := 17; h <= 50; h += 3 {
				a := r.Screen.(only).arranged(r.State, w, h, false)
				cells := 0
				for _, part := range []Area{a.list, a.form, a.panel, a.drawing, a.picture, a.under} {
					if part.H > 0 {
						require.True(t, part.X >= 0 && part.Y >= 0 && part.X+part.W <= w && part.Y+part.H <= h, "%+v in %dx%d", part, w, h)
						cells += part.W * part.H
					}
				}
				rule := 0 // the line between list and plan, and the margin in front of it
				if a.picture.H > 0 && a.picture.X > 0 {
					rule = (1 + desk.Margin) * h
				}
				require.Equal(t, w*h, cells+rule, "%dx%d %q: %+v", w, h, keys, a)
				r.View(w, h)
			}
		}
	}
}

// A list that goes on says so, at each size and wherever it stands; one that is seen whole does not.
func TestAListThatGoesOnSaysSo(t *testing.T) {
	s := spec()
	s.NoPlan = true
	s.Beside = func(Entry, desk.State, int, int) (string, int) { return " a word", 1 }
	for _, size := range screentest.Sizes {
		r := started(t, s, manyThings(t), size.W, size.H)
		for _, keys := range []string{"<home>", "<pgdown>", "<end>"} {
			r.Type(keys)
			e := r.Screen.(only).Entry
			rows, _, here, _ := e.listed(r.State)
			unseen := form.Unseen(rows, e.top, here, e.arranged(r.State, size.W, size.H, false).list.H-1)
			title, _, _ := strings.Cut(r.View(size.W, size.H), "\n")
			require.NotZero(t, unseen[0]+unseen[1])
			for i, way := range []string{"above", "below"} {
				assert.Equal(t, unseen[i] > 0, strings.Contains(title, way), "%s %s: %s", size.Name, keys, title)
			}
		}
		few := started(t, s, screentest.Van(t), size.W, size.H)
		assert.NotContains(t, few.View(size.W, size.H), "more")
	}
}

// manyThings is a job with more obstructions than any window has rows.
func manyThings(t *testing.T) vehicles.Job {
	job := screentest.Van(t)
	one := job.Obstructions[0]
	for i := range 80 {
		one.Name = fmt.Sprint("rib ", i)
		job.Obstructions = job.Obstructions.Insert(len(job.Obstructions), one)
	}
	return job
}

// Where the words beside a list leave room, the form stands under them and the list has the whole height.
func TestTheListHasTheRoomBesideFewWords(t *testing.T) {
	s := spec()
	s.NoPlan = true
	s.Beside = func(Entry, desk.State, int, int) (string, int) { return " a word", 1 }
	r := started(t, s, screentest.Van(t), 100, 27)
	for _, keys := range []string{"", "<enter>"} {
		r.Type(keys)
		a := r.Screen.(only).arranged(r.State, 100, 27, false)
		assert.Equal(t, 27, a.list.H)
		assert.Greater(t, a.form.X, a.list.W)
		assert.Equal(t, 27, a.form.H+a.drawing.H)
	}
	at := r.Screen.(only).arranged(r.State, 100, 27, false).form
	was := r.Screen.(only).Editor.On()
	r.Tap(at.X+4, at.Y+2)
	assert.NotEqual(t, was, r.Screen.(only).Editor.On(), "a tap on the form there is one on it")
}
