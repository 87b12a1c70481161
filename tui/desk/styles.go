package desk

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/looks"
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

// Styles returns the looks for the terminal's colours.
func (s Settings) Styles() Styles { return *styles()[s.Colour][s.Look] }

// styles returns the styles by colour and look. Only who paints waits for them to be made.
var styles = sync.OnceValue(func() (all [TrueColour + 1][looks.Count]*Styles) {
	for l := range looks.Count {
		t := looks.Look(l).Table()
		all[NoColour][l] = withoutColour()
		all[Colours16][l] = coloured(termenv.ANSI, t.Text, func(c looks.Colour) lipgloss.Color { return lipgloss.Color(strconv.Itoa(int(c.Of))) })
		all[Colours256][l] = coloured(termenv.ANSI256, t.Text, func(c looks.Colour) lipgloss.Color { return lipgloss.Color(strconv.Itoa(int(t.Number(c)))) })
		all[TrueColour][l] = coloured(termenv.TrueColor, t.Text, func(c looks.Colour) lipgloss.Color { return lipgloss.Color(fmt.Sprintf("#%06x", c.RGB)) })
	}
	return all
})

// Dress lays the look's own ground under a whole painted screen, where it has one.
func (s Settings) Dress(picture string) string {
	t := s.Look.Table()
	switch {
	case !t.Own || s.Colour == NoColour:
		return picture
	case s.Colour == Colours16:
		return looks.Dress(picture, Sixteen(t.Ink, Fore)+";"+Sixteen(t.Paper, Back))
	case s.Colour == Colours256:
		return looks.Dress(picture, OfCube(t.Number(t.Ink), Fore)+";"+OfCube(t.Number(t.Paper), Back))
	}
	return looks.Dress(picture, trueColour(t.Ink, Fore)+";"+trueColour(t.Paper, Back))
}

// Plane says whether a colour is a letter's or what lies behind it.
type Plane int

// The planes, by the number of the first of eight colours on them: ECMA-48, SGR.
const (
	Fore Plane = 30
	Back Plane = 40
)

// Sixteen returns the parameter that sets one of sixteen colours; the bright eight are 60 above the others.
func Sixteen(c looks.Colour, p Plane) string {
	n := int(p) + int(c.Of)
	if c.Of >= 8 {
		n += 60 - 8
	}
	return strconv.Itoa(n)
}

// OfCube returns the parameters that set one of 256 colours.
func OfCube(n uint8, p Plane) string { return fmt.Sprintf("%d;5;%d", int(p)+8, n) }

func trueColour(c looks.Colour, p Plane) string {
	return fmt.Sprintf("%d;2;%d;%d;%d", int(p)+8, c.RGB>>16&255, c.RGB>>8&255, c.RGB&255)
}

// plain is what every look is made from.
func plain(p termenv.Profile) lipgloss.Style {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(p)
	r.SetHasDarkBackground(true)
	return r.NewStyle()
}

func coloured(p termenv.Profile, in looks.Text, of func(looks.Colour) lipgloss.Color) *Styles {
	plain := plain(p)
	ink := func(c looks.Colour) lipgloss.Style { return plain.Foreground(of(c)) }
	return &Styles{
		Plain: made(plain), Strong: made(plain.Bold(true)), Faint: made(ink(in.Faint)), Title: made(ink(in.Title).Bold(true)),
		Here: made(ink(in.Title).Reverse(true).Bold(true)), Key: made(ink(in.Key).Bold(true)),
		Field: made(ink(in.Field).Underline(true)), FieldOn: made(ink(in.Field).Reverse(true)),
		Fault: made(ink(in.Foul)), Clear: made(ink(in.Clear)), Doubtful: made(ink(in.Doubtful).Bold(true)),
		Foul: made(ink(in.Foul).Bold(true).Reverse(true)), Unsaved: made(ink(in.Doubtful)), Frame: made(ink(in.Faint)),
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
