package runs

import (
	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

func bind(name, what string, keys ...string) key.Binding { return moving.Bind(name, what, keys...) }

var (
	keyRun    = bind("Tab", "exhaust / intake", "tab")
	keyRun2   = bind("Shift-Tab", "the one before", "shift+tab")
	keyType   = bind("t", "type a place", "t", "enter")
	keyPipe   = bind("k", "pipe and bend", "k")
	keyNext   = bind("n", "next point", "n")
	keyBack   = bind("p", "point before", "p")
	keyRaise  = bind("r", "raise", "r")
	keyLower  = bind("d", "drop", "d")
	keyInsert = bind("i", "insert a point before", "i")
	keyAdd    = bind("a", "add a point at the end", "a")
	keyDelete = bind("x", "delete the point", "x", "delete")
)

// Keys are the bindings that hold now.
func (m screen) Keys(s desk.State) []key.Binding {
	switch {
	case m.shielding:
		return []key.Binding{keyShield, desk.KeyDown, desk.KeyUp, desk.KeyLeave}
	case m.Typing():
		return []key.Binding{desk.Named(desk.KeyLeave, "leaves the field"), moving.KeyTake}
	}
	keys := []key.Binding{keyAdd, keyRun}
	if m.run(s) != nil {
		keys = []key.Binding{
			moving.KeyMove, moving.KeyStep, keyRun, keyNext, keyBack, keyRaise, keyLower, keyAdd, keyInsert, keyDelete, keyType, keyPipe,
		}
		if m.of == vehicles.ExhaustRun {
			keys = append(keys, keyShields)
		}
	}
	keys = append(append(keys, moving.LeanKeys(s)...), keyRun2, moving.KeyListDown, moving.KeyListUp)
	return append(keys, m.pane.Keys()...)
}
