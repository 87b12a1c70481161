package runs

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

func bind(name, what string, keys ...string) key.Binding { return moving.Bind(name, what, keys...) }

var (
	keyRun      = bind("Tab", "exhaust / intake / fuel line", "tab")
	keyRun2     = bind("Shift-Tab", "the one before", "shift+tab")
	keyNext     = bind("n", "next point", "n")
	keyBack     = bind("p", "point before", "p")
	keyOn       = bind(".", "next in the list", ".")
	keyOff      = bind(",", "the one before", ",")
	keySlide    = bind("← →", "slide along the run", "right")
	keyType     = bind("t", "type it", "t", "enter")
	keyRaise    = bind("r", "raise", "r")
	keyLower    = bind("d", "drop", "d")
	keyInsert   = bind("i", "insert a point before", "i")
	keyAdd      = bind("a", "add a point at the end", "a")
	keyDelete   = bind("x", "delete it", "x", "delete")
	keyTakeAway = bind("X", "delete all of the run", "X")
	keyMount    = bind("m", "what it wants most", "m") // named by its kind where it is shown
	keyClips    = bind("c", "clips, spread", "c")
	keyDrains   = bind("w", "drain holes at low points", "w")
	keySide     = bind("y", "outlet out at the side", "y")
	keyOther    = bind("Space", "says the other", " ")
	keyPipe     = bind("k", "pipe", "k")
	keyProfile  = bind("e", "both / plan and list / fall and list", "e")
	keyAside    = bind("z", "plan / from the side / from behind", "z")
)

// Keys are the bindings that hold now.
func (m screen) Keys(s desk.State) []key.Binding {
	switch {
	case m.finder.open():
		return m.findKeys(s)
	case m.cutting:
		return []key.Binding{desk.KeyDown, desk.KeyUp, desk.KeyPageDown, desk.KeyPageUp, desk.KeyLeave}
	case m.shielding:
		return []key.Binding{keyShield, desk.KeyDown, desk.KeyUp, desk.KeyLeave}
	case m.Typing():
		return []key.Binding{desk.Named(desk.KeyLeave, "leaves the field"), moving.KeyTake}
	}
	here, ok := m.here(s)
	if !ok {
		return append([]key.Binding{desk.Named(keyAdd, "begin it"), keyFind, keyFindTo, keyFindBoth, keyRun, keyRun2, keyCutList}, m.pane.KeysBut(keyCutList)...)
	}
	keys := append(m.guided(here, s), keyRun)
	if !wholePanel(m.w, m.h) {
		keys = append(keys, keyProfile)
	}
	keys = append(keys, keyAside)
	keys = append(keys, keyAdd, keyFind, keyFindTo, keyFindBoth)
	switch m.of {
	case vehicles.ExhaustRun:
		keys = append(append(append(keys, keySide), m.mounts()...), keyClips, keyDrains, keyShields)
	case vehicles.IntakeRun:
		keys = append(append(keys, m.mounts()...), keyClips, keyDrains)
	default:
		keys = append(append(keys, m.mounts()...), keyClips)
	}
	keys = append(append(keys, keyPipe, keyTakeAway, keyCutList), moving.LeanKeys(s)...)
	keys = append(keys, keyRun2, moving.KeyListDown, moving.KeyListUp)
	return once(append(keys, m.pane.KeysBut(keyCutList)...))
}

// once are keys without those that stand among them before.
func once(keys []key.Binding) (list []key.Binding) {
	seen := map[string]bool{}
	for _, k := range keys {
		if !seen[k.Help().Key] {
			list = append(list, k)
		}
		seen[k.Help().Key] = true
	}
	return list
}

// guided are the keys of the part that is picked, those before them that give the run what it lacks: the foot shows the first few, and
// whoever presses what stands there comes to a whole run.
func (m screen) guided(here placed, s desk.State) []key.Binding {
	keys, lacks := m.ofPart(here), m.lacks(s)
	if len(lacks) == 0 || here.sort != point {
		return append(lacks, keys...)
	}
	return append(append([]key.Binding{moving.KeyMove, keyLower}, lacks...), keys...)
}

// mounts is the key that puts on what the run at hand is not whole without; none where there is no such thing.
func (m screen) mounts() []key.Binding {
	if k := m.wants(); k != nil {
		return []key.Binding{desk.Named(keyMount, k.Name)}
	}
	return nil
}

// lacks are the keys that give the run at hand what it does not have yet; when it has all, the one that goes on to a run not begun.
func (m screen) lacks(s desk.State) (keys []key.Binding) {
	run := m.run(s)
	switch {
	case m.of == vehicles.ExhaustRun && len(run.Path) < 2:
		keys = append(keys, keySide)
	case m.of == vehicles.IntakeRun && len(run.Path) < 3: // its mouth looks away from where the van drives
		keys = append(keys, keyAdd)
	case m.of == vehicles.FuelRun && len(run.Path) < 3:
		keys = append(keys, desk.Named(keyAdd, "a point on the way"))
	}
	if k := m.wants(); k != nil && !k.Has(run.Hanging) {
		keys = append(keys, m.mounts()...)
	}
	if run.Clips == nil {
		keys = append(keys, keyClips)
	}
	for _, of := range vehicles.RunKinds {
		if len(keys) == 0 && s.Job.Run(of) == nil {
			keys = append(keys, keyRun)
		}
	}
	return keys
}

// ofPart are the keys of the part that is picked.
func (m screen) ofPart(here placed) []key.Binding {
	pick := []key.Binding{keyOn, keyOff, keyNext, keyBack}
	switch {
	case here.sort == point:
		return append([]key.Binding{moving.KeyMove, moving.KeyStep, keyRaise, keyLower, keyNext, keyBack, keyType}, keyInsert, keyDelete, keyOn, keyOff)
	case here.sort == stub:
		return append(pick, desk.Named(keyDelete, "delete all of it"))
	case here.sort == pipe:
		return append(pick, keyType, desk.Named(keyDelete, "delete all of it"))
	case here.hangs():
		keys := append([]key.Binding{keySlide, moving.KeyStep}, append(pick, keyType, keyDelete)...)
		if here.alone() {
			if d, ok := answered(here.kind.Usual()); ok {
				keys = append([]key.Binding{desk.Named(keyOther, d.Label+" "+strings.Join(d.Words, " / "))}, keys...)
			}
		} else {
			keys = append(keys, desk.Named(keyInsert, "one more behind it"))
		}
		return keys
	case here.sort == clips:
		return append(pick, desk.Named(keyInsert, "a clip"), desk.Named(keyOther, "there are none / not said"))
	case here.sort == burns || here.sort == from:
		return append(pick, desk.Named(keyOther, "the next"), keyType)
	case here.sort == tank && here.there:
		return append(pick, keyType, keyDelete)
	}
	return append(pick, keyType)
}
