package marks

import (
	"fmt"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// made ticks what is shown and goes on to the next that is not made, and says what was ticked: the figures in sight are then
// those of another mark.
func (m screen) made(s desk.State) (screen, desk.Change) {
	all, change := items(s), desk.Change{}
	here := m.here(s)
	if !s.Ticked[here.id()] {
		change.Tick = here.id()
		change.Say = here.done(s.Settings) + saidOf(s, here.id())
	}
	if next, left := nextOf(s, all, m.at); left {
		m.at = next
		return m, change
	}
	if change.Tick == "" {
		change.Say = allMade(s)
	}
	return m, change
}

// ticked ticks a mark, or takes its tick away and says so: what was said of all of them is then no longer true.
func ticked(it item, s desk.State) (change desk.Change) {
	change.Tick = it.id()
	if s.Ticked[change.Tick] {
		change.Say = it.short(s.Settings) + " is not made now."
	}
	return change
}

// nextOf is the next behind one that is not made, round the end; left tells whether there is one.
func nextOf(s desk.State, all []item, at int) (next int, left bool) {
	for step := 1; step < len(all); step++ {
		if next = (at + step) % len(all); !s.Ticked[all[next].id()] {
			return next, true
		}
	}
	return at, false
}

// done says that a mark is made, or a length taped.
func (it item) done(set desk.Settings) string {
	if it.check != nil {
		return it.short(set) + ": the tape says so."
	}
	return it.short(set) + " is made."
}

// saidOf is what is said behind that when the tick of that name was the last on top, or the last of all.
func saidOf(s desk.State, tick string) string {
	before := len(onTop(s))
	ticked := map[string]bool{tick: true}
	for name := range s.Ticked {
		ticked[name] = true
	}
	s.Ticked = ticked
	left := leftOf(s, items(s))
	switch {
	case len(left) == 0:
		return " " + allMade(s)
	case before > 0 && len(onTop(s)) == 0 && s.Marks.Pilot.Drilled == nil:
		next := "drill the pilot, then measure it (" + keyDrill.Help().Key + ")."
		if hit := hitAtCut(s); hit != "" {
			next = "don't drill, the cut is foul: " + hit + "."
		}
		return fmt.Sprintf(" All on top is made: %s Marked from below, and not made yet: %d.", next, len(left))
	}
	return ""
}

// allMade says what comes after the last mark.
func allMade(s desk.State) string {
	text := "All made: on with the steps of the work (9)."
	switch hit := hitAtCut(s); {
	case hit != "":
		text = "All made, but the cut is foul: " + hit + ". Don't drill or saw there; move the cut (Place)."
	case s.Marks.Pilot.Drilled == nil:
		text = "All made: drill the pilot, then measure it from below (" + keyDrill.Help().Key + ")."
	}
	if more := waiting(s); more != "" {
		text += " " + words.Sentence(more)
	}
	return text
}

// hitAtCut names the worst of what a cut where it is would hit, "" for nothing.
func hitAtCut(s desk.State) string {
	foul := rules.FoulAtCut(&s.Result)
	if len(foul) == 0 {
		return ""
	}
	return foul[0].About() + ", " + words.Margin(*foul[0], s.Settings.Units)
}

// leftOf are those of some items that are not made.
func leftOf(s desk.State, all []item) (left []item) {
	for _, it := range all {
		if !s.Ticked[it.id()] {
			left = append(left, it)
		}
	}
	return left
}

// onTop are those that are made on top and not made yet.
func onTop(s desk.State) []item {
	var top []item
	for _, it := range items(s) {
		if it.check != nil || it.mark.Above != nil {
			top = append(top, it)
		}
	}
	return leftOf(s, top)
}

// measurePilot goes to where the drilled pilot hole is entered.
func measurePilot() desk.Change {
	return desk.Change{Goto: "Place", Open: &desk.Open{Obstruction: -1, Opening: -1, Field: "drilled", Back: screen{}.Title()}}
}
