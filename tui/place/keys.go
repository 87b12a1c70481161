package place

import (
	"fmt"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
)

func bind(name, what string, keys ...string) key.Binding { return moving.Bind(name, what, keys...) }

var (
	keyType    = bind("t", "type a place", "t", "enter")
	keyHere    = bind("Enter", "place a cut in the middle", "enter")
	keyPilot   = bind("m", "pilot as measured", "m")
	keyCollar  = bind("k", "collar and hole", "k")
	keyTurn    = bind(",", fmt.Sprintf("turn %d° anticlockwise as seen", desk.TurnStep), ",", "<")
	keyTurn2   = bind(".", fmt.Sprintf("turn %d° clockwise as seen", desk.TurnStep), ".", ">")
	keyTaped   = bind("Enter", "takes it, next", "enter")
	keyUntaped = bind("Ctrl-U", "clears it", "ctrl+u")
)

// Keys are the bindings that hold now.
func (m screen) Keys(s desk.State) []key.Binding {
	switch {
	case m.explaining:
		return []key.Binding{keyAssume, desk.Named(desk.KeyDown, "down the list"), desk.KeyLeave}
	case m.choosing && len(m.proposed()) == 0:
		return []key.Binding{desk.Named(desk.KeyLeave, "stops it")}
	case m.choosing:
		return []key.Binding{keyTakeAll, keyThrough, desk.KeyLeave}
	case m.tapes.open:
		return []key.Binding{desk.Named(desk.KeyLeave, "back"), keyTaped, keyUntaped}
	case m.Typing():
		return []key.Binding{desk.Named(desk.KeyLeave, "leaves the field"), moving.KeyTake}
	}
	if s.Job.Cut == nil {
		return append([]key.Binding{keyHere, keyArea, keyChoose}, m.pane.Keys()...)
	}
	keys := pilotKeys(s)
	if !m.holds(s) {
		keys = append(keys, moving.KeyMove)
	}
	keys = append(keys, moving.KeyStep, keyType)
	if holeOf(s).there() {
		if keys = append(keys, keyPilot); !sawn(s) {
			keys = append(keys, keyRelease)
		}
		keys = append(keys, keyChoose)
	} else { // first where it can go, then where it went
		keys = append(keys, keyArea, keyNearest, keyChoose, keyPilot)
	}
	keys = append(keys, keyTurn, keyTurn2, keyCollar, keyStay, keyShade)
	keys = append(append(keys, moving.LeanKeys(s)...), moving.KeyListDown, moving.KeyListUp)
	return append(keys, m.pane.Keys()...)
}
