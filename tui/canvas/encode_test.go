package canvas

import (
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
)

var modes = map[desk.Colour]*regexp.Regexp{
	// Parameters as ECMA-48 and its extension for direct colour (ISO/IEC 8613-6) have them, from memory.
	desk.NoColour:   regexp.MustCompile(`^0(;[147])*$`),
	desk.Colours16:  regexp.MustCompile(`^0(;[147])*(;(3|9)[0-7])?(;(4|10)[0-7])?$`),
	desk.Colours256: regexp.MustCompile(`^0(;[147])*(;38;5;\d+)?(;48;5;\d+)?$`),
	desk.TrueColour: regexp.MustCompile(`^0(;[147])*(;38;2;\d+;\d+;\d+)?(;48;2;\d+;\d+;\d+)?$`),
}

func TestEachModeUsesItsOwnSequencesOnly(t *testing.T) {
	p := Paint(van(scene.Below), 100, 27, plainLook)
	sequence := regexp.MustCompile("\x1b\\[([0-9;]*)m")
	for mode, allowed := range modes {
		for l := range looks.Count {
			out := p.Encode(mode, looks.Look(l))
			assert.Equal(t, strings.Join(p.lines(), "\n"), ansi.Strip(out), "the text is the same in every mode")
			found := sequence.FindAllStringSubmatch(out, -1)
			require.NotEmpty(t, found)
			for _, f := range found {
				assert.Regexp(t, allowed, f[1])
			}
			for _, line := range strings.Split(out, "\n") {
				last := sequence.FindAllStringSubmatch(line, -1)
				if len(last) > 0 {
					assert.Equal(t, "0", last[len(last)-1][1], "a line must not leave its colours on")
				}
			}
		}
	}
}

func TestALookIsWrittenOnceForARun(t *testing.T) {
	c := Canvas{Width: 12, Height: 1, Cells: make([]Cell, 12)}
	c.Put(0, 0, "aaaa", Ink{Role: scene.Steel, Tone: Bold})
	c.Put(4, 0, "bbbb", Ink{Role: scene.Hot, Tone: Bold})
	c.Put(8, 0, "cccc", Ink{Role: scene.Hot, Tone: Bold, State: scene.Foul})
	assert.Equal(t, "\x1b[0;1;37maaaa\x1b[0;1;35mbbbb\x1b[0;1;91mcccc\x1b[0m", c.Encode(desk.Colours16, looks.Dark))
	assert.Equal(t, "\x1b[0;1maaaabbbbcccc\x1b[0m", c.Encode(desk.NoColour, looks.Dark))
	assert.Equal(t,
		"\x1b[0;1;38;2;181;197;231maaaa\x1b[0;1;38;2;203;156;132mbbbb\x1b[0;1;38;2;246;80;72mcccc\x1b[0m",
		c.Encode(desk.TrueColour, looks.Dark))
}

// A terminal emulator must show what the canvas holds.
func TestATerminalShowsTheCanvas(t *testing.T) {
	p := Paint(van(scene.Below), 100, 27, plainLook)
	for mode := range modes {
		term := vt.NewEmulator(100, 27)
		_, err := term.WriteString(strings.ReplaceAll(p.Encode(mode, looks.Dark), "\n", "\r\n"))
		require.NoError(t, err)
		for row := range p.Height {
			for col := range p.Width {
				want, got := p.At(col, row), term.CellAt(col, row)
				require.Equal(t, string(want.Rune), got.Content)
				if want.Rune == ' ' {
					continue
				}
				require.Equal(t, mode != desk.NoColour, got.Style.Fg != nil, "colour at %d,%d", col, row)
				if !mode.Faces(looks.Dark) {
					require.Nil(t, got.Style.Bg)
				}
			}
		}
	}
}

// Written cell by cell, each with its own look, the picture is the same: the colour and weight that a blank takes over from its
// neighbour are not seen.
func TestWhatABlankTakesOverIsNotSeen(t *testing.T) {
	p := Paint(van(scene.Below), 100, 27, plainLook)
	p.Put(3, 3, "a b", Ink{Role: scene.Steel, Tone: Inverse})
	p.Put(3, 4, "a b", Ink{Role: scene.Steel, Tone: Bold, Selected: true})
	shown := func(text string) *vt.Emulator {
		e := vt.NewEmulator(100, 27)
		_, err := e.WriteString(strings.ReplaceAll(text, "\n", "\r\n"))
		require.NoError(t, err)
		return e
	}
	bold := shown("\x1b[1mx").CellAt(0, 0).Style.Attrs
	for mode := range modes {
		var slow strings.Builder
		for i, cell := range p.Cells {
			if i > 0 && i%p.Width == 0 {
				slow.WriteString("\x1b[0m\n")
			}
			if cell.Rune == ' ' && cell.Ink.Tone != Inverse {
				cell.Ink = Ink{}
			}
			slow.WriteString(sgr(dress{cell.Ink, cell.Ground}, mode, tableOf(looks.Dark, mode)) + "m" + string(cell.Rune))
		}
		want, got := shown(slow.String()), shown(p.Encode(mode, looks.Dark))
		for row := range p.Height {
			for col := range p.Width {
				one, other := *want.CellAt(col, row), *got.CellAt(col, row)
				if one.Content == " " && p.At(col, row).Ink.Tone != Inverse {
					one.Style.Fg, other.Style.Fg = nil, nil
					one.Style.Attrs, other.Style.Attrs = one.Style.Attrs&^bold, other.Style.Attrs&^bold
				}
				require.Equal(t, one, other, "%d,%d", col, row)
			}
		}
	}
}
