package desk

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/vehicles/harmless"
)

// NO_COLOR as no-color.org has it: present and not empty, whatever its value.
func TestColoursComeFromTheEnvironment(t *testing.T) {
	for _, c := range []struct {
		term, colorterm, noColor string
		want                     Colour
	}{
		{"xterm-256color", "truecolor", "", TrueColour},
		{"xterm-256color", "24bit", "", TrueColour},
		{"xterm-direct", "", "", TrueColour},
		{"xterm-256color", "", "", Colours256},
		{"xterm", "", "", Colours16},
		{"linux", "", "", Colours16},
		{"dumb", "truecolor", "", NoColour},
		{"", "", "", NoColour},
		{"xterm-256color", "truecolor", "1", NoColour},
		{"xterm-256color", "truecolor", "0", NoColour},
	} {
		env := map[string]string{"TERM": c.term, "COLORTERM": c.colorterm, "NO_COLOR": c.noColor}
		assert.Equal(t, c.want, Detect(func(k string) string { return env[k] }), "%+v", c)
	}
}

func TestWithoutColourNoStyleHasAny(t *testing.T) {
	s := Settings{Colour: NoColour}.Styles()
	for _, text := range []string{s.Foul.Render("x"), s.Here.Render("x"), s.Key.Render("x"), s.FieldOn.Render("x"), s.Doubtful.Render("x")} {
		assert.Contains(t, text, "\x1b[", "it is told apart by bold, reverse or underline")
		assert.NotRegexp(t, `\x1b\[[0-9;]*(3[0-9]|4[0-9]|9[0-7]|10[0-7])[;m]`, text)
	}
}

// The 16 colours are SGR 30-37 and 90-97 of ECMA-48 and its usual extension; 38 asks for more than those.
func TestSixteenColoursStaySixteen(t *testing.T) {
	for l := range looks.Count {
		s := Settings{Colour: Colours16, Look: looks.Look(l)}.Styles()
		for _, text := range []string{s.Foul.Render("x"), s.Clear.Render("x"), s.Doubtful.Render("x"), s.Title.Render("x")} {
			assert.Regexp(t, `\x1b\[[0-9;]*(3[0-7]|9[0-7])`, text)
			assert.NotContains(t, text, "38;")
		}
		assert.Contains(t, Settings{Colour: TrueColour, Look: looks.Look(l)}.Styles().Foul.Render("x"), "38;2;")
	}
}

func TestVerdictsLookDifferent(t *testing.T) {
	for colour := NoColour; colour <= TrueColour; colour++ {
		s := Settings{Colour: colour}.Styles()
		seen := map[string]bool{}
		for _, v := range []rules.Verdict{rules.Clear, rules.Doubtful, rules.Foul} {
			seen[s.Verdict(v).Render("x")] = true
		}
		assert.Len(t, seen, 3, "colour %d", colour)
	}
}

func TestSidesAreSpokenOfAsTheWorkshopDoes(t *testing.T) {
	for side, want := range map[Side][2]string{
		LeftRight: {"left", "right"}, NearsideLeft: {"nearside", "offside"}, NearsideRight: {"offside", "nearside"},
	} {
		s := Settings{Nearside: side}
		assert.Equal(t, want, [2]string{Left(s), Right(s)})
		assert.Equal(t, want, [2]string{SideOf(1, s), SideOf(-1, s)})
	}
	assert.Equal(t, "240 mm left", Across(240, Settings{}))
	assert.Equal(t, "240.5 mm right", Across(-240.5, Settings{}))
	assert.Equal(t, "on the centreline", Across(-0.01, Settings{}))
}

func TestHeightsAndLengths(t *testing.T) {
	assert.Equal(t, "95 mm below floor", Height(95, Millimetres))
	assert.Equal(t, "22 mm above floor", Height(-22, Millimetres))
	assert.Equal(t, "at the floor", Height(0, Millimetres))
	assert.Equal(t, `25 11/16"`, Length(652.5, Inches)) // 652.5 / 25.4 = 25.689, 11/16 = 0.6875
	// 1.96 of the normal distribution's sigmas hold 95 %: JCGM 100:2008, table G.1.
	assert.Equal(t, "± 2", PlusMinus95(1.0204, Millimetres))
}

func TestSettingsComeBackAsTheyWere(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new folder", "settings.toml")
	rapid.Check(t, func(t *rapid.T) {
		s := Settings{
			Units:    rapid.SampledFrom([]Units{Millimetres, Inches}).Draw(t, "units"),
			Nearside: rapid.SampledFrom([]Side{LeftRight, NearsideLeft, NearsideRight}).Draw(t, "sides"),
			Big:      rapid.Bool().Draw(t, "big"),
			Look:     looks.Look(rapid.IntRange(0, looks.Count-1).Draw(t, "look")),
			Plan:     rapid.SampledFrom([]PlanIn{InPixels, InCells}).Draw(t, "plan"),
		}
		require.NoError(t, s.Save(path))
		got, err := LoadSettings(path)
		require.NoError(t, err)
		require.Equal(t, s, got)
	})
	files, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	assert.Len(t, files, 1, "nothing is left beside it")
}

func TestSettingsThatCantBeReadSayWhy(t *testing.T) {
	path := filepath.Join(t.TempDir(), "settings.toml")
	got, err := LoadSettings(path)
	assert.NoError(t, err, "none yet")
	assert.Equal(t, Settings{}, got)
	for text, want := range map[string]string{
		`look = "pink"`:                         `:1: look is "pink"; must be one of: dark, light, sun, night`,
		`units = "cubits"`:                      `:1: units is "cubits"; must be one of: mm, inches`,
		`plan = "braille"`:                      `:1: plan is "braille"; must be one of: pixels, cells`,
		"# \n\nbackground = \"pink\"":           `:3: background is "pink"; must be one of: dark, light`,
		"units = \"mm\"\nsides = ":              ":2: not TOML",
		"sides = \"nearside is starboard\"":     ":1: sides is \"nearside is starboard\"; must be one of: left and right",
		"units = \"mm\"\nsides = 3":             ":2: sides must be a text in quotes, one of: left and right",
		"units = \"\\u001b[31m\\u202e\"":        `:1: units is "\x1b[31m\u202e"; must`,
		"units = \"mm\"\n\n\xff = 1":            ":3: a byte 0xff",
		"units = \"mm\"\nunits = \"a\x1b[31m\"": ":2: not TOML",
	} {
		require.NoError(t, os.WriteFile(path, []byte(text+"\n"), 0o644))
		_, err := LoadSettings(path)
		assert.ErrorContains(t, err, path+want, text)
		assert.NotContains(t, err.Error(), "\n", "one line")
		assert.NotContains(t, err.Error(), "\x1b")
	}
	require.NoError(t, os.WriteFile(path, []byte("units = \"inches\"\nbackground = \"pink\"\n"), 0o644))
	got, _ = LoadSettings(path)
	assert.Equal(t, Inches, got.Units, "what can be read holds")
}

// A file of the time when there were two looks, which it called backgrounds.
func TestALightBackgroundIsTheLightLook(t *testing.T) {
	path := filepath.Join(t.TempDir(), "settings.toml")
	for text, want := range map[string]looks.Look{
		"background = \"light\"": looks.Light, "background = \"dark\"": looks.Dark, "background = \"light\"\nlook = \"night\"": looks.Night,
	} {
		require.NoError(t, os.WriteFile(path, []byte(text+"\n"), 0o644))
		got, err := LoadSettings(path)
		require.NoError(t, err)
		assert.Equal(t, want, got.Look, text)
	}
}

// Sun and night bring their ground: every cell of a screen stands on it, whatever was painted there. Without colours nothing is brought.
func TestSunAndNightBringTheirGround(t *testing.T) {
	for l := range looks.Count {
		for colour := NoColour; colour <= TrueColour; colour++ {
			s := Settings{Colour: colour, Look: looks.Look(l)}
			st := s.Styles()
			picture := st.Foul.Render("foul") + " plain " + st.Key.Render("k") + "\n" + FitRow("row", 13)
			if colour == TrueColour && looks.Look(l) >= looks.Sun {
				picture = "\x1b[0;1;4;7;38;2;1;2;3;48;2;4;5;6m" + picture
			}
			e := vt.NewEmulator(13, 2)
			_, err := e.WriteString(strings.ReplaceAll(s.Dress(picture), "\n", "\r\n"))
			require.NoError(t, err)
			for y := range 2 {
				for x := range 12 {
					own := e.CellAt(x, y).Style.Bg != nil
					assert.Equal(t, l >= int(looks.Sun) && colour != NoColour, own, "%s, colour %d, cell %d,%d", looks.Look(l), colour, x, y)
				}
			}
			assert.Equal(t, ansi.Strip(picture), ansi.Strip(s.Dress(picture)))
			for _, sequence := range regexp.MustCompile("\x1b\\[[0-9;]*m").FindAllString(s.Dress(picture), -1) {
				assert.LessOrEqual(t, strings.Count(sequence, ";"), 15, "a terminal may hold 16 parameters (VT510, from memory) and drop the rest: %q", sequence)
			}
		}
	}
}

func TestFitIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.SampledFrom([]rune("ab ⌀é世\n"))).Draw(t, "text")
		w, h := rapid.IntRange(0, 12).Draw(t, "w"), rapid.IntRange(1, 6).Draw(t, "h")
		rows := strings.Split(Fit(text, w, h), "\n")
		require.Len(t, rows, h)
		for _, row := range rows {
			require.Equal(t, w, ansi.StringWidth(row), "%q", row)
		}
	})
}

// Plain text is harmless before it is measured, cut or painted: columns are then those that the terminal shows.
func TestPlainTextIsMadeHarmlessFirst(t *testing.T) {
	const text = "\x1b[31ma\u202e\u00adb\n"
	assert.Equal(t, 10, Width(text))
	assert.Equal(t, "␛[31ma▯▯b␊ ", FitRow(text, 11))
	assert.Equal(t, "␛[…", Cut(text, 4))
	assert.Equal(t, []string{"␛[31ma▯▯b␊"}, Wrap(text, 20))
	assert.Equal(t, "\x1b[31ma▯▯b\x1b[0m  \n␛[2J  ", Fit("\x1b[31ma\u202e\u00adb\x1b[0m\n\x1b[2J", 6, 2))
	for colour := NoColour; colour <= TrueColour; colour++ {
		st := Settings{Colour: colour}.Styles()
		for _, style := range []Style{st.Plain, st.Faint, st.Field, st.Here, st.Foul} {
			assert.Equal(t, "␛[31ma▯▯b␊", ansi.Strip(style.Render(text)))
		}
	}
}

// What is measured the short way takes as many columns as the library says, alone and beside anything.
func TestWidthIsTheLibrarys(t *testing.T) {
	for r := rune(' '); r < 0x3000; r++ {
		if text := string(r); OneColumn(r) {
			require.Equal(t, ansi.StringWidth(text), width(text), "%U", r)
			require.Equal(t, 1, width(text), "%U", r)
		}
	}
	pieces := []string{"a", " ", "x1", "±", "°", "é", "ſ", "─", "│", "▲", "►", "●", "▯", "⠿", "⣿", "…", "†", "↑", "↔", "≤", "\u2028", "\ufe0f", "e\u0301", "燃料", "❤", "🔥", "◽", "한",
		"\u1112\u1161\u11ab", "क्षि", "\x1b[0m", "\x1b[1;38;2;1;2;3m", "\x1b[4:3m"}
	rapid.Check(t, func(t *rapid.T) {
		text := harmless.Painted(strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 20).Draw(t, "text"), ""))
		require.Equal(t, ansi.StringWidth(text), width(text), "%q", text)
	})
}

func TestAFailedWriteLeavesTheOldFile(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "taken")
	require.NoError(t, os.MkdirAll(filepath.Join(path, "by a folder"), 0o755))
	assert.ErrorContains(t, WriteFile(path, []byte("new")), path)
	files, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, files, 1)
}

// A number is shown whole or not at all: 6… of 64.3 would be read as 6.
func TestARowIsNotCutWithinANumber(t *testing.T) {
	for text, want := range map[string][]string{ // from 12 columns down
		"rear rail, 64.3 mm": {"rear rail, …", "rear rail,…", "rear rail…"},
		"rail 64.3 mm off":   {"rail 64.3 m…", "rail 64.3 …", "rail 64.3…", "rail …", "rail …", "rail …", "rail …", "rail…"},
		"12,5 and 1250000":   {"12,5 and …", "12,5 and …", "12,5 and …", "12,5 and…"},
		"1234567890123456":   {"…", "…"},
		"wheel 2 of four":    {"wheel 2 of …", "wheel 2 of…", "wheel 2 o…", "wheel 2 …", "wheel 2…", "wheel …", "wheel…"},
	} {
		for i, cut := range want {
			w := 12 - i
			assert.Equal(t, cut, Cut(text, w), "%d columns", w)
			assert.Equal(t, cut+strings.Repeat(" ", w-Width(cut)), FitRow(text, w), "%d columns", w)
			painted := "\x1b[1m" + text + "\x1b[0m"
			assert.Equal(t, FitRow(text, w), ansi.Strip(FitPainted(painted, w)), "%d columns, painted", w)
		}
	}
	assert.Equal(t, "64.3 mm", Cut("64.3 mm", 7), "what fits is not cut")
	assert.Empty(t, Cut("64.3", 0))
}

// A hyphen behind a full row goes to the next: no row is wider than it may be.
func TestAHyphenBehindAFullRow(t *testing.T) {
	assert.Equal(t, []string{"aaaaaaaaaaaaaaaaaaaa", "-"}, Wrap("aaaaaaaaaaaaaaaaaaaa-", 20))
	assert.Equal(t, []string{"aaaaaaaaaaaaaaaaaaa-", "b"}, Wrap("aaaaaaaaaaaaaaaaaaa-b", 20))
	rapid.Check(t, func(t *rapid.T) {
		text, w := rapid.StringOf(rapid.SampledFrom([]rune("ab -1世"))).Draw(t, "text"), rapid.IntRange(2, 40).Draw(t, "w")
		for _, row := range Wrap(text, w) {
			require.LessOrEqual(t, Width(row), w)
		}
	})
}
