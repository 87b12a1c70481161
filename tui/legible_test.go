package tui

import (
	"fmt"
	"image/color"
	"strings"
	"testing"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
	uv "github.com/charmbracelet/ultraviolet"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

// planned are the screens with a plan, and the keys that show it whole and near.
var planned = []struct{ title, keys string }{
	{"Underneath", "f"}, {"Place", "f"}, {"Place", "g"}, {"Runs", "f"}, {"Runs", "g"}, {"Runs", "down"}, {"Runs", "tab"},
}

// eachPicture shows the sample van on the screens with a plan, in each look and with each number of colours.
func eachPicture(t *testing.T, see func(what string, l looks.Look, colour desk.Colour, term *vt.Emulator, w, h int)) {
	r := working(t, "")
	for _, size := range windows {
		r.Update(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		for _, p := range planned {
			r.goTo(r.titled(p.title))
			msg, _ := keyNamed(p.keys)
			r.Update(msg)
			for l := range looks.Look(looks.Count) {
				for _, colour := range []desk.Colour{desk.Colours16, desk.Colours256, desk.TrueColour} {
					r.desk.State.Settings.Look, r.desk.State.Settings.Colour = l, colour
					term := vt.NewEmulator(size[0], size[1])
					_, err := term.WriteString(strings.ReplaceAll(r.View(), "\n", "\r\n"))
					require.NoError(t, err)
					see(fmt.Sprintf("%s %s, %v, look %s, colours %d", p.title, p.keys, size, l, colour), l, colour, term, size[0], size[1])
				}
			}
		}
	}
}

// shownAs are the colours of a cell as xterm has them, 0xRRGGBB: what the terminal has for its own is taken to be the look's.
func shownAs(c *uv.Cell, l looks.Look, colour desk.Colour) (ink, ground int) {
	t := l.Table()
	if colour == desk.Colours256 {
		t = l.InCube()
	}
	rgb := func(c color.Color, own int) int {
		switch c := c.(type) {
		case nil:
			return own
		case ansi.BasicColor:
			return looks.OfSixteen(uint8(c))
		case ansi.IndexedColor:
			if c < 16 {
				return looks.OfSixteen(uint8(c))
			}
			return looks.InCube(uint8(c))
		}
		r, g, b, _ := c.RGBA()
		return int(r>>8)<<16 | int(g>>8)<<8 | int(b>>8)
	}
	ink, ground = rgb(c.Style.Fg, t.Ink.RGB), rgb(c.Style.Bg, t.Paper.RGB)
	if c.Style.Attrs&uv.AttrReverse != 0 {
		ink, ground = ground, ink
	}
	return ink, ground
}

// Each letter and figure on a screen with a plan can be read, whatever the look and however many colours there are: 4.5 to 1, WCAG 2.1, success
// criterion 1.4.3. Sixteen colours everybody sets as they like: as xterm has them it is what that asks of what is large, 3 to 1.
func TestEveryWordCanBeReadInEveryLook(t *testing.T) {
	worst := map[string]float64{}
	eachPicture(t, func(what string, l looks.Look, colour desk.Colour, term *vt.Emulator, w, h int) {
		faint := map[string]bool{}
		for y := range h {
			for x := range w {
				c := term.CellAt(x, y)
				if c == nil || c.Content == "" {
					continue
				}
				if r := []rune(c.Content)[0]; !unicode.IsLetter(r) && !unicode.IsDigit(r) {
					continue
				}
				ink, ground := shownAs(c, l, colour)
				contrast := looks.Contrast(ink, ground)
				key := fmt.Sprintf("%s, colours %d", l, colour)
				if have, there := worst[key]; !there || contrast < have {
					worst[key] = contrast
				}
				least := float64(looks.Readable)
				if colour == desk.Colours16 {
					least = looks.Visible
				}
				if contrast < least {
					faint[fmt.Sprintf("%06x on %06x (%.2f): %s", ink, ground, contrast, around(term, x, y, w))] = true
				}
			}
		}
		for words := range faint {
			assert.Fail(t, what, words)
		}
	})
	for key, contrast := range worst {
		t.Logf("%s: %.2f", key, contrast)
	}
}

// around is what stands about a cell in its row.
func around(term *vt.Emulator, x, y, w int) (text string) {
	for i := max(x-8, 0); i < min(x+9, w); i++ {
		if c := term.CellAt(i, y); c != nil {
			text += c.Content
		}
	}
	return text
}
