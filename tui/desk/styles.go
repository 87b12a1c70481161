package desk

import (
	"io"
	"sync"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles/harmless"
)

// Styles are the looks every screen paints with. None of them pads or breaks text. Without colour, bold,
// reverse and underline carry what colour would, and words carry the meaning in any case.
type Styles struct {
	Plain    lipgloss.Style
	Strong   lipgloss.Style // what the eye should find first
	Faint    lipgloss.Style // what can be left unread
	Title    lipgloss.Style // above a list or a pane
	Here     lipgloss.Style // the screen one is on, the row the keys act on
	Key      lipgloss.Style // a key to press
	Field    lipgloss.Style // what can be typed in
	FieldOn  lipgloss.Style // the field that has the keys
	Fault    lipgloss.Style // what is wrong with what was typed
	Clear    lipgloss.Style
	Doubtful lipgloss.Style
	Foul     lipgloss.Style
	Unsaved  lipgloss.Style
	Frame    lipgloss.Style // lines round panes
}

// Verdict returns the look of a verdict. Its word is always written out beside it.
func (s Styles) Verdict(v rules.Verdict) lipgloss.Style {
	return [...]lipgloss.Style{s.Clear, s.Doubtful, s.Foul}[v-rules.Clear]
}

// Styles returns the looks for the terminal's colours and background.
func (s Settings) Styles() Styles {
	light := 0
	if s.Light {
		light = 1
	}
	return looks()[s.Colour][light]
}

// looks returns the styles by colour and background, dark first. Only who paints waits for them to be made.
var looks = sync.OnceValue(func() [3][2]Styles {
	return [...][2]Styles{
		NoColour:   {withoutColour(), withoutColour()},
		Colours16:  {coloured(termenv.ANSI, dark16), coloured(termenv.ANSI, light16)},
		TrueColour: {coloured(termenv.TrueColor, darkTrue), coloured(termenv.TrueColor, lightTrue)},
	}
})

// inks are the colours of one kind of terminal on one background.
type inks struct{ faint, title, key, field, foul, doubtful, clear lipgloss.Color }

// The inks keep foul, doubtful and clear apart also for eyes that don't part red from green: they differ in
// lightness and towards blue.
var (
	dark16    = inks{faint: "8", title: "14", key: "11", field: "15", foul: "9", doubtful: "11", clear: "14"}
	light16   = inks{faint: "8", title: "4", key: "5", field: "0", foul: "1", doubtful: "5", clear: "6"}
	darkTrue  = inks{"#8f98a3", "#9fd3ff", "#ffd479", "#e8eef4", "#ff6b5e", "#ffc24b", "#5fd0b5"}
	lightTrue = inks{"#5d6670", "#0b4f8a", "#7a4a00", "#10161c", "#b3140b", "#8a5a00", "#00695c"}
)

// style is what every look is made from. It makes text harmless before it paints it: what is painted already is not to
// be painted again.
func style(p termenv.Profile) lipgloss.Style {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(p)
	r.SetHasDarkBackground(true)
	return r.NewStyle().Transform(harmless.Text)
}

func coloured(p termenv.Profile, in inks) Styles {
	plain := style(p)
	ink := func(c lipgloss.Color) lipgloss.Style { return plain.Foreground(c) }
	return Styles{
		Plain: plain, Strong: plain.Bold(true), Faint: ink(in.faint), Title: ink(in.title).Bold(true),
		Here: ink(in.title).Reverse(true).Bold(true), Key: ink(in.key).Bold(true),
		Field: ink(in.field).Underline(true), FieldOn: ink(in.field).Reverse(true),
		Fault: ink(in.foul), Clear: ink(in.clear), Doubtful: ink(in.doubtful).Bold(true),
		Foul: ink(in.foul).Bold(true).Reverse(true), Unsaved: ink(in.doubtful), Frame: ink(in.faint),
	}
}

func withoutColour() Styles {
	// The plainest profile would drop bold and reverse along with the colours.
	plain := style(termenv.ANSI)
	return Styles{
		Plain: plain, Strong: plain.Bold(true), Faint: plain, Title: plain.Bold(true),
		Here: plain.Reverse(true).Bold(true), Key: plain.Bold(true), Field: plain.Underline(true),
		FieldOn: plain.Reverse(true), Fault: plain.Bold(true), Clear: plain, Doubtful: plain.Bold(true),
		Foul: plain.Bold(true).Reverse(true), Unsaved: plain.Bold(true), Frame: plain,
	}
}
