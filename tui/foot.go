package tui

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"

	"bench.example/undermark/tui/desk"
)

// hints are the bindings that the foot shows, most useful first; help always fits.
func (r *Root) hints() []key.Binding {
	if o := r.overlay(); o != nil {
		return o.keys()
	}
	screen := r.screens[r.at]
	rest := []key.Binding{desk.KeyHelp, desk.KeySave, desk.KeyUndo, desk.KeyQuit}
	if r.takesLetters() {
		rest[0] = tapMore
	}
	own := screen.Keys(r.desk.State)
	n := min(len(own), ownHints)
	return slices.Concat(own[:n], rest, own[n:])
}

// ownHints is how many of its keys a screen shows at the foot before help, saving, undo and quitting; with room behind those more. The
// help has them all.
const ownHints = 6

// hintButtons are the hints that fit at the foot. The last hints give way first, but help stays as long as there is any
// room.
func (r *Root) hintButtons() []button {
	hints, x := r.hints(), 0
	room := r.w + hintGap
	for _, b := range hints {
		if isHelp(b) {
			room -= hintWidth(b)
		}
	}
	var buttons []button
	for i, b := range hints {
		n := hintWidth(b)
		if isHelp(b) {
			room += n
		}
		if !b.Enabled() || len(b.Keys()) == 0 {
			continue
		}
		if x+n > room {
			if i >= ownHints { // what comes is of less use, however short it is
				break
			}
			continue
		}
		buttons = append(buttons, button{from: x, width: n - hintGap, near: hintGap / 2, key: tapKey(b), text: b.Help().Key, more: b.Help().Desc})
		x += n
	}
	return buttons
}

// tapMore opens the help by a tap where its key would be typed into a field.
var tapMore = key.NewBinding(key.WithKeys("…"), key.WithHelp("…", "more"))

// tapKey is the key that a tap on a hint sends; "" for a hint of several, as a tap can't mean one of them.
func tapKey(b key.Binding) string {
	if sent := sentBy(b); len(sent) == 1 {
		return sent[0]
	}
	return ""
}

// sentBy are the keys that do what a binding says: one, or one for each of the ways or screens that it names.
func sentBy(b key.Binding) []string {
	keys := b.Keys()
	ends := func(side string) bool {
		return slices.ContainsFunc(keys, func(k string) bool { return strings.HasSuffix(k, side) })
	}
	switch {
	case ends("left") && ends("right"), b.Help() == desk.KeyScreens.Help():
		return keys
	case b.Help().Key == "↑ ↓":
		return []string{"up", "down"}
	case b.Help().Key == "← →":
		return []string{"left", "right"}
	}
	return keys[:1]
}

// keySign is how one of several keys is shown.
func keySign(name string) string {
	for way, sign := range map[string]string{"up": "↑", "down": "↓", "left": "←", "right": "→"} {
		if strings.HasSuffix(name, way) {
			return sign
		}
	}
	return name
}

func isHelp(b key.Binding) bool {
	return b.Help() == desk.KeyHelp.Help() || b.Help() == tapMore.Help()
}

const hintGap = 2

func hintWidth(b key.Binding) int {
	return desk.Width(b.Help().Key) + 1 + desk.Width(b.Help().Desc) + hintGap
}

func (r *Root) foot() string {
	styles := r.desk.State.Settings.Styles()
	var b strings.Builder
	x := 0
	for _, p := range r.hintButtons() {
		b.WriteString(strings.Repeat(" ", p.from-x) + styles.Key.Render(p.text) + " " + styles.Faint.Render(p.more))
		x = p.from + p.width
	}
	return desk.FitPainted(b.String(), r.w)
}
