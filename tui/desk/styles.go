package desk

import (
	"io"
	"strings"
	"sync"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles/harmless"
)

// Style is a look that plain text is painted with: what goes to the terminal before it, and after. Looks are made with the
// library; it would take a tenth of a key's time to make them anew for every word.
type Style struct{ before, after string }

// Render paints plain text, on one line, having made it harmless: what is painted already is not to be painted again.
func (s Style) Render(text string) string {
	if text == "" {
		return ""
	}
	return s.before + harmless.Text(text) + s.after
}

// made is a look of the library's as what goes before and after a text.
func made(look lipgloss.Style) Style {
	const text = "x"
	before, after, _ := strings.Cut(look.Render(text), text)
	return Style{before, after}
}

// Styles are the looks every screen paints with. None of them pads or breaks text. Without colour, bold,
// reverse and underline carry what colour would, and words carry the meaning in any case.
type Styles struct {
	Plain    Style
	Strong   Style // what the eye should find first
	Faint    Style // what can be left unread
	Title    Style // above a list or a pane
	Here     Style // the screen one is on, the row the keys act on
	Key      Style // a key to press
	Field    Style // what can be typed in
	FieldOn  Style // the field that has the keys
	Fault    Style // what is wrong with what was typed
	Clear    Style
	Doubtful Style
	Foul     Style
	Unsaved  Style
	Frame    Style // lines round panes
}

// Verdict returns the look of a verdict. Its word is always written out beside it.
func (s Styles) Verdict(v rules.Verdict) Style {
	return [...]Style{s.Clear, s.Doubtful, s.Foul}[v-rules.Clear]
}

// Styles returns the looks for the terminal's colours and background.
func (s Settings) Styles() Styles {
	light := 0
	if s.Light {
		light = 1
	}
	return *looks()[s.Colour][light]
}

// looks returns the styles by colour and background, dark first. Only who paints waits for them to be made.
var looks = sync.OnceValue(func() [3][2]*Styles {
	return [...][2]*Styles{
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

// plain is what every look is made from.
func plain(p termenv.Profile) lipgloss.Style {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(p)
	r.SetHasDarkBackground(true)
	return r.NewStyle()
}

func coloured(p termenv.Profile, in inks) *Styles {
	plain := plain(p)
	ink := func(c lipgloss.Color) lipgloss.Style { return plain.Foreground(c) }
	return &Styles{
		Plain: made(plain), Strong: made(plain.Bold(true)), Faint: made(ink(in.faint)), Title: made(ink(in.title).Bold(true)),
		Here: made(ink(in.title).Reverse(true).Bold(true)), Key: made(ink(in.key).Bold(true)),
		Field: made(ink(in.field).Underline(true)), FieldOn: made(ink(in.field).Reverse(true)),
		Fault: made(ink(in.foul)), Clear: made(ink(in.clear)), Doubtful: made(ink(in.doubtful).Bold(true)),
		Foul: made(ink(in.foul).Bold(true).Reverse(true)), Unsaved: made(ink(in.doubtful)), Frame: made(ink(in.faint)),
	}
}

func withoutColour() *Styles {
	// The plainest profile would drop bold and reverse along with the colours.
	look := plain(termenv.ANSI)
	plain, bold, reverse := made(look), made(look.Bold(true)), made(look.Reverse(true))
	return &Styles{
		Plain: plain, Strong: bold, Faint: plain, Title: bold, Here: made(look.Reverse(true).Bold(true)), Key: bold,
		Field: made(look.Underline(true)), FieldOn: reverse, Fault: bold, Clear: plain, Doubtful: bold,
		Foul: made(look.Bold(true).Reverse(true)), Unsaved: bold, Frame: plain,
	}
}
