package runs

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/plan"
)

// shown is what the plan shows beside the job.
func (m screen) shown(s desk.State) plan.Options {
	options := plan.Options{Focus: s.Focus, Shown: drawing.Worst(s.Result.Findings, m.concerns, moving.Dimensions), Letters: letters}
	if here, ok := m.here(s); ok {
		if at, placed := m.place(here, s); placed {
			place := inSpace(at)
			options.Here = &place
		}
	}
	return options
}

// looking is the state as the picture in the plan's place looks at it: from the side or from behind it has a camera of its own.
func (m screen) looking(s desk.State) desk.State {
	if m.aside > 0 {
		s.Camera = plan.SeenFrom(m.camera, m.side(s))
	}
	return s
}

// side is the view in the plan's place: the van's side is seen from where the run at hand goes out, as that is how it is worked on.
func (m screen) side(s desk.State) scene.View {
	view := scene.Sides[m.aside-1]
	if run := m.run(s); run != nil && len(run.Path) > 0 && view == scene.FromRight {
		view = drawing.SideOf(run, m.of)
	}
	return view
}

// seen is the projection of that picture.
func (m screen) seen(s desk.State) scene.Projection { return m.looking(s).Camera.View.Projection() }

// mark is what stands for a part on a picture, in its cell.
type mark struct {
	row, col int
	text     string
	style    desk.Style
}

// marked puts marks on a painted picture of w columns, the last in front.
func marked(view string, marks []mark, w int) string {
	rows := strings.Split(view, "\n")
	for row, front := range frontOf(marks, len(rows), w) {
		rows[row] = spliced(rows[row], front)
	}
	return strings.Join(rows, "\n")
}

// frontOf says for each row that has marks which of them is in front at each of its w columns; nil where there is none.
func frontOf(marks []mark, h, w int) map[int][]*mark {
	front := map[int][]*mark{}
	for i := range marks {
		k := &marks[i]
		if k.row < 0 || k.row >= h || k.col < 0 || k.col+len(k.text) > w {
			continue
		}
		if front[k.row] == nil {
			front[k.row] = make([]*mark, w)
		}
		for x := range k.text {
			front[k.row][k.col+x] = k
		}
	}
	return front
}

// spliced is a row with what is in front at each column. The row is cut once at each end of a mark: each part keeps its escape sequences, so a
// row that was put together mark by mark would double with each.
func spliced(row string, front []*mark) string {
	var b strings.Builder
	for x := 0; x < len(front); {
		from, k := x, front[x]
		for x < len(front) && front[x] == k {
			x++
		}
		if k == nil {
			b.WriteString(ansi.Cut(row, from, x))
		} else {
			b.WriteString(k.style.Render(k.text[from-k.col : x-k.col]))
		}
	}
	return b.String()
}

// ofParts are the marks of the parts of the run, of which cell says where they are; what is picked comes last.
func (m screen) ofParts(s desk.State, cell func(p placed) (col, row int, seen bool)) (marks []mark) {
	st := s.Settings.Styles()
	here, ok := m.here(s)
	if !ok {
		return nil
	}
	for _, p := range m.parts(s) {
		if col, row, seen := cell(p); seen && p.part != here.part {
			marks = append(marks, mark{row, col, sign(p), st.Strong})
		}
	}
	slices.Reverse(marks) // those nearer to the run's beginning in front
	if sign(here) == "" {
		return marks
	}
	if col, row, seen := cell(here); seen {
		marks = append(marks, mark{row, col, sign(here), st.Here})
	}
	return marks
}

// picture is the plan, or the van from the side, with the parts of the run on their places.
func (m screen) picture(s desk.State, in size) string {
	s = m.looking(s)
	options := m.shown(s)
	for _, p := range m.parts(s) {
		if at, ok := m.place(p, s); ok && sign(p) != "" {
			options.Signs = append(options.Signs, inSpace(at))
		}
	}
	view := m.pane.View(s, in.W, in.H, options)
	pane := m.pane.Sized(in.W, in.H)
	where := pane.Cells(s, m.shown(s))
	return marked(view, m.ofParts(s, func(p placed) (col, row int, seen bool) {
		at, ok := m.place(p, s)
		if !ok {
			return 0, 0, false
		}
		return where(inSpace(at))
	}), in.W)
}

// followed has the view follow what is picked when that leaves the picture, from the side and from behind as in the plan.
func (m screen) followed(change desk.Change, s desk.State) (screen, desk.Change) {
	if change.Job != nil {
		s.Job = *change.Job
	}
	here, ok := m.here(s)
	if !ok || m.w == 0 {
		return m, change
	}
	at, ok := m.place(here, s)
	if !ok {
		return m, change
	}
	a := m.arranged(s, m.w, m.h)
	change = moving.Followed(change, inSpace(at), 0, m.pane.Sized(a.plan.W, a.plan.H), m.looking(s), m.shown(s))
	return m.own(change), m.others(change)
}
