package place

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/tui/desk"
)

func bind(name, what string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, what))
}

var (
	keyMove    = bind("arrows", "move", "up", "down", "left", "right")
	keyStep    = bind("s", "step", "s")
	keyThing   = bind("Tab", "cut / exhaust / intake", "tab")
	keyThing2  = bind("Shift-Tab", "the one before", "shift+tab")
	keyType    = bind("t", "type a place", "t", "enter")
	keyHere    = bind("Enter", "place a cut in the middle", "enter")
	keyPilot   = bind("m", "pilot as measured", "m")
	keyCollar  = bind("k", "collar and hole", "k")
	keyPipe    = bind("k", "pipe and bend", "k")
	keyTurn    = bind(",", fmt.Sprintf("turn %d° anticlockwise as seen", desk.TurnStep), ",", "<")
	keyTurn2   = bind(".", fmt.Sprintf("turn %d° clockwise as seen", desk.TurnStep), ".", ">")
	keyNext    = bind("n", "next point", "n")
	keyBack    = bind("p", "point before", "p")
	keyRaise   = bind("r", "raise", "r", "pgup")
	keyLower   = bind("d", "drop", "d", "pgdown")
	keyInsert  = bind("i", "insert a point before", "i")
	keyAdd     = bind("a", "add a point at the end", "a")
	keyDelete  = bind("x", "delete the point", "x", "delete")
	keyUpright = bind("o", "first points under the stubs", "o")
	keyTaped   = bind("Enter", "takes it, next", "enter")
	keyUntaped = bind("Ctrl-U", "clears it", "ctrl+u")
	keyTake    = bind("Enter", "next, then take it", "enter")
)

// Keys are the bindings that hold now.
func (m screen) Keys(s desk.State) []key.Binding {
	switch {
	case m.explaining:
		return []key.Binding{keyAssume, desk.KeyLeave}
	case m.choosing:
		return []key.Binding{keyChosen, desk.KeyLeave}
	case m.shielding:
		return []key.Binding{keyShield, desk.KeyDown, desk.KeyUp, desk.KeyLeave}
	case m.tapes.open:
		return []key.Binding{desk.Named(desk.KeyLeave, "back"), keyTaped, keyUntaped}
	case m.Typing():
		return []key.Binding{desk.Named(desk.KeyLeave, "leaves the field"), keyTake}
	}
	keys := []key.Binding{keyMove, keyStep, keyThing}
	switch {
	case m.moving != hole && m.run(s) == nil:
		keys = []key.Binding{keyAdd, keyThing}
	case m.moving != hole:
		keys = append(keys, keyNext, keyBack, keyRaise, keyLower, keyAdd, keyInsert, keyDelete, keyType, keyPipe)
		if m.moving == exhaust {
			keys = append(keys, keyShields)
		}
	case s.Job.Cut == nil:
		keys = []key.Binding{keyHere, keyThing, keyChoose}
	default:
		keys = append(pilotKeys(s), append(keys, keyType, keyPilot, keyTurn, keyTurn2, keyCollar)...)
		keys = append(keys, roomKeys()...)
	}
	if len(leaning(s)) > 0 {
		keys = append(keys, keyUpright)
	}
	return append(append(keys, keyThing2), m.pane.Keys()...)
}
