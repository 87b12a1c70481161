package place

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/tui/words"
)

var (
	keyShade   = bind("h", "shade where the cut can go", "h")
	keyArea    = bind("n", "best places", "n")
	keyNearest = bind("j", "nearest open place", "j")
	keyStay    = bind("y", "arrows stay on open floor", "y")
)

// pressRoom answers them; mine is false for any other key.
func (m screen) pressRoom(k tea.KeyMsg, s desk.State) (next screen, change desk.Change, mine bool) {
	switch {
	case key.Matches(k, keyChoose):
		m, change = m.choose(s)
	case key.Matches(k, keyShade):
		m.unshaded = !m.unshaded
	case key.Matches(k, keyStay):
		m.staying = !m.staying
		change.Say = "The arrows move freely."
		if m.staying {
			change.Say = "The arrows keep the cut on open floor, along its edge: what is left there may still be doubtful."
		}
	case key.Matches(k, keyArea):
		if change = refused(s); change.Say == "" {
			m, change = m.nextArea(s)
		}
	case key.Matches(k, keyNearest):
		if change = refused(s); change.Say == "" {
			change = nearest(s)
		}
	default:
		return m, change, false
	}
	return m, change, true
}

// roomUnknown is said where a fault keeps from looking for room.
const roomUnknown = "Put the fault right first: until then nobody knows where there is room."

// refused says why the cut can't be put somewhere else; its Say is empty when it can.
func refused(s desk.State) desk.Change {
	switch {
	case len(s.Faults) > 0:
		return desk.Change{Say: roomUnknown}
	case sawn(s):
		return desk.Change{Say: isSawn}
	case holeOf(s).unmeasured():
		return desk.Change{Say: "The pilot hole is drilled, as Work has it. To look for another place take the tick back there: Space."}
	case holeOf(s).there():
		return desk.Change{Say: "The pilot hole is drilled. To look for another place, take it out first (" + keyPilot.Help().Key + ", both blank)."}
	}
	return desk.Change{}
}

// nextArea puts the cut at the best place of the next open area, the roomiest first.
func (m screen) nextArea(s desk.State) (screen, desk.Change) {
	areas, room := m.pane.Areas(s)
	if len(areas) == 0 {
		return m, desk.Change{Say: noRoom}
	}
	m.area %= len(areas)
	area := areas[m.area]
	m.area++
	change := moveCut(withCut(s.Job), openHundredth(room, area.Best.At), "")
	change.Say = fmt.Sprintf("Area %s, %d of %d: %s, the uncertainty left out.",
		area.Name, m.area, len(areas), words.Spare(area.Best.Margin, s.Settings.Units)) + runsToo(s)
	return m, change
}

// runsToo says what is to be done with runs that a cut was moved away from.
func runsToo(s desk.State) string {
	if s.Job.Exhaust == nil && s.Job.Intake == nil {
		return ""
	}
	return " Lay the runs anew: 5, then J."
}

const noRoom = words.NoPlaceKeepsAll + "."

// nearest puts the cut at the nearest place that keeps every distance.
func nearest(s desk.State) desk.Change {
	if s.Job.Cut == nil {
		return desk.Change{Say: "No cut yet: " + keyArea.Help().Key + " puts one at the best place, " + keyHere.Help().Key + " in the middle."}
	}
	room, from := rules.RoomForSaw(&s.Result), plan2(s.Job.Cut.At)
	place, ok := room.Margins.Nearest(from)
	if !ok {
		return desk.Change{Say: noRoom}
	}
	away := place.At.Sub(from).Norm()
	if away == 0 {
		return desk.Change{Say: "The cut is on open floor already: " + words.Spare(place.Margin, s.Settings.Units) + "."}
	}
	change := moveCut(s.Job, openHundredth(room, place.At), "")
	change.Say = "Moved " + desk.Length(away, s.Settings.Units) + " to the edge of open floor: nothing is to spare there, so it is doubtful."
	return change
}

// slid is where the cut comes to when it is moved but kept on open floor; ok is false when it isn't on open floor.
func slid(s desk.State, by geometry.Point) (to geometry.Point, ok bool) {
	room, from := rules.RoomForSaw(&s.Result), plan2(s.Job.Cut.At)
	if room.Margins.At(from).Margin < 0 {
		return from, false
	}
	return openHundredth(room, room.Margins.Slide(from, by)), true
}

// openHundredth rounds an open place to 0.01 mm and keeps it open; where that can't be it stays as it is.
func openHundredth(room rules.Room, p geometry.Point) geometry.Point {
	for _, off := range [9][2]float64{{}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {1, -1}, {-1, 1}, {-1, -1}} {
		q := geometry.Point{X: moving.Hundredth(p.X + off[0]/100), Y: moving.Hundredth(p.Y + off[1]/100)}
		if room.Margins.At(q).Margin >= 0 {
			return q
		}
	}
	return p
}
