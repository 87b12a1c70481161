package desk

import "github.com/charmbracelet/bubbles/key"

func bind(name, what string, keys ...string) key.Binding {
	return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, what))
}

// The keys that mean the same everywhere. The root answers those of Everywhere; the others are for screens.
// The first key of a binding is the one a tap on its hint sends.
var (
	KeyUp       = bind("↑", "up", "up")
	KeyDown     = bind("↓", "down", "down")
	KeyPageUp   = bind("Page up", "a page up", "pgup")
	KeyPageDown = bind("Page down", "a page down", "pgdown")
	KeyHome     = bind("Home", "first", "home")
	KeyEnd      = bind("End", "last", "end")
	KeyNext     = bind("Tab", "next", "tab")
	KeyPrevious = bind("Shift-Tab", "previous", "shift+tab")
	KeyEnter    = bind("Enter", "take", "enter")
	KeyLeave    = bind("Esc", "leave", "esc")

	KeyHelp     = bind("?", "help", "?")
	KeySave     = bind("Ctrl-S", "save", "ctrl+s")
	KeyUndo     = bind("Ctrl-Z", "undo", "ctrl+z")
	KeyRedo     = bind("Ctrl-Y", "redo", "ctrl+y")
	KeyQuit     = bind("Ctrl-C", "quit", "ctrl+c")
	KeyCautions = bind("!", "all the cautions", "!")
	KeyLook     = bind("b", "look: dark, light, sun, night", "b")
	KeyUnits    = bind("u", "mm or inches", "u")
	KeyFigures  = bind("B", "big figures, on or off", "B")
	KeyScreens  = bind("1-9, 0", "go to a screen", "1", "2", "3", "4", "5", "6", "7", "8", "9", "0")
)

// Everywhere are the keys that the root answers on every screen; the letters and digits among them only while
// no field has the keys.
func Everywhere() []key.Binding {
	return []key.Binding{KeyScreens, KeyHelp, KeySave, KeyUndo, KeyRedo, KeyUnits, KeyLook, KeyFigures, KeyCautions, KeyQuit}
}

// Named returns the binding with other words for what it does here.
func Named(b key.Binding, what string) key.Binding {
	b.SetHelp(b.Help().Key, what)
	return b
}
