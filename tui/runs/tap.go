package runs

import (
	"math"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"

	"bench.example/undermark/geometry"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// mouse answers the wheel and taps.
func (m screen) mouse(msg tea.MouseMsg, s desk.State) (screen, desk.Change) {
	if m.cutting {
		if next, mine := m.wheelCutList(msg, s); mine {
			return next, desk.Change{}
		}
	}
	if list := m.under(s); !m.Typing() && list.Scrolls(msg) {
		if top, change, mine := m.worst(s).Mouse(msg, m.top, s, list); mine {
			m.top = top
			if change.Focus != nil && change.Goto == m.Title() {
				m.finger = msg.Y + 1
			}
			return m, change
		}
	}
	a := m.arranged(s, m.w, m.h)
	tap := msg.Button == tea.MouseButtonLeft && msg.Action == tea.MouseActionPress
	below := msg.Y - a.plan.H
	switch {
	case tap && a.body.OnPanel(msg.X, msg.Y):
		x, y, w, h := a.body.PanelIn()
		return m.tapPanel(msg.X-x, msg.Y-y, w, h, s)
	case tap && m.finder.open(): // a search goes on until it is stopped
		return m, desk.Change{}
	case tap && m.Typing():
		m.prompt, m.shielding, m.cutting = moving.Prompt{}, false, false
		return m, desk.Change{}
	case a.sees == together && below >= 0 && tap:
		return m.tapProfile(msg.X, below, a.profile, s)
	case a.sees == fallAlone && tap:
		return m.tapProfile(msg.X, msg.Y, a.profile, s)
	case a.sees == fallAlone || a.sees == together && below >= 0:
		return m, desk.Change{}
	}
	return m.tapPicture(msg, tap, s)
}

// tapPicture answers the wheel and taps on the plan, or on the van from the side.
func (m screen) tapPicture(msg tea.MouseMsg, tap bool, s desk.State) (screen, desk.Change) {
	looking := m.looking(s)
	if !tap {
		pane, change, _ := m.pane.Update(msg, looking, m.shown(s))
		m.pane = pane
		return m.own(change), m.others(change)
	}
	at, ok := m.pane.Plane(msg.X, msg.Y, looking, m.shown(s))
	here, there := m.here(s)
	switch {
	case !ok:
		return m, desk.Change{}
	case !there:
		return m, desk.Change{Say: "No " + m.of.String() + " yet: " + keyAdd.Help().Key + " begins it, " + keyFind.Help().Key + " finds it."}
	}
	seen := m.seen(s)
	near, least := here, moving.PickWithin(looking)
	for _, p := range m.parts(s) {
		if place, has := m.place(p, s); has {
			if off := seen.Point(inSpace(place)).Sub(at).Norm(); off <= least {
				near, least = p, off
			}
		}
	}
	if near.part != here.part {
		m.picked = near.part
		return m, desk.Change{}
	}
	if here.hangs() {
		return m, m.slideTo(here, m.nearest(at, s), s)
	}
	if here.sort != point {
		return m, desk.Change{}
	}
	was := inSpace(m.run(s).Path[here.index])
	to := was.Add(seen.Move(was, at.Sub(seen.Point(was))))
	p := vehicles.RunPoint{X: math.Round(to.X), Y: math.Round(to.Y), Drop: math.Round(-to.Z)}
	if m.aside == 0 {
		p.Drop = m.run(s).Path[here.index].Drop
	}
	return m, m.tapped(s, here.index, p)
}

// tapped puts a point where a picture was tapped, and says so: a tap may not have been meant.
func (m screen) tapped(s desk.State, i int, p vehicles.RunPoint) desk.Change {
	return m.byTap(m.setPoint(s, i, p, ""), placed{part: part{sort: point, index: i}})
}

// byTap has a change by a tap say what it moved.
func (m screen) byTap(change desk.Change, moved placed) desk.Change {
	if change.Job == nil {
		return change
	}
	if change.Say == "" {
		change.Say = m.of.String() + " " + name(moved) + " moved"
	}
	change.Say += ". " + desk.KeyUndo.Help().Key + " takes it back."
	return change
}

// nearest is the place along the run that is seen nearest to a place of the picture.
func (m screen) nearest(at geometry.Point, s desk.State) float64 {
	laid, seen := s.Job.Laid(m.of), m.seen(s)
	if laid == nil {
		return 0
	}
	along, _ := laid.Line.AlongSeen(at, seen.Point)
	return math.Round(along)
}

// nearCells is how near to a part on the profile a tap picks it.
const nearCells = 1

// tapProfile picks what is tapped on the profile, slides what is picked to there, or hangs a point as deep as that.
func (m screen) tapProfile(x, y int, in size, s desk.State) (screen, desk.Change) {
	p, ok := m.beside(s, in)
	here, there := m.here(s)
	if !ok || !there {
		return m, desk.Change{}
	}
	lay := p.lay()
	at, ok := lay.Point(x, y)
	if !ok {
		return m, desk.Change{}
	}
	near, least := here, nearCells+1
	for _, part := range m.parts(s) {
		if col, row, seen := p.cell(lay, part.middle()); seen && part.lies() {
			if off := max(abs(col-x), abs(row-y)); off < least {
				near, least = part, off
			}
		}
	}
	switch {
	case near.part != here.part:
		m.picked = near.part
	case here.sort == point:
		to := m.run(s).Path[here.index]
		to.Drop = math.Round(-at.Y / p.high)
		return m, m.tapped(s, here.index, to)
	case here.hangs():
		return m, m.slideTo(here, math.Round(at.X), s)
	}
	return m, desk.Change{}
}

func abs(n int) int { return max(n, -n) }

// slideTo slides what is picked to a place along the run.
func (m screen) slideTo(here placed, along float64, s desk.State) desk.Change {
	change := m.slide(here, along-here.along, s)
	change.Step = ""
	return m.byTap(change, here)
}

// tapHead answers a tap on the panel's first row: a run, the step, or the whole panel where it has few rows.
func (m screen) tapHead(x, h int, s desk.State) screen {
	tabs := m.tabs()
	for _, t := range tabs {
		if x >= t.from && x < t.to {
			return m.turnTo(t.of)
		}
	}
	switch from := lipgloss.Width(m.head(s)) + 1; {
	case h < leastListed && x >= from && x < from+len(moreOfIt):
		return m.nextPictures(s)
	case x >= tabs[len(tabs)-1].to:
		m.step = m.step.Next()
	}
	return m
}

// tapPanel answers a tap on the head, the list, the fields or the rows of shields.
func (m screen) tapPanel(x, y, w, h int, s desk.State) (screen, desk.Change) {
	switch {
	case m.finder.open():
		return m.tapFinder(y, w, h, s)
	case m.cutting:
		m.cutting = false
		return m, desk.Change{}
	case m.shielding:
		return m.tapShields(y, w, h, s)
	case m.Typing():
		here, _ := m.here(s)
		head := len(desk.Wrapped(s.Settings.Styles().Title, m.heading(here, s), w))
		prompt, change, taken := m.prompt.Tap(x, y-head, w, max(1, h-head), m.asks(here, s), s)
		return m.answered(prompt, change, taken, s)
	case y == 0:
		return m.tapHead(x, h, s), desk.Change{}
	case h < leastListed:
		return m, desk.Change{}
	}
	here, _ := m.here(s)
	parts := m.parts(s)
	i, ok := m.listAt(parts, w, max(1, h/3), x, y-1)
	switch {
	case !ok:
		return m, desk.Change{}
	case i >= len(parts):
		press := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{m.actions(parts)[i-len(parts)].key}}
		return m.press(press, s)
	case parts[i].part == here.part:
		return m.open(here, s)
	}
	m.picked = parts[i].part
	return m, desk.Change{}
}
