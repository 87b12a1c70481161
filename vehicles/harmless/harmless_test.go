package harmless_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	. "bench.example/undermark/vehicles/harmless"
)

func TestHarmfulTextIsSeen(t *testing.T) {
	for text, want := range map[string]string{
		"\x1b[31mred\x1b[0m":                   "␛[31mred␛[0m",
		"\x1b]0;title\a":                       "␛]0;title␇",
		"one\ntwo\r\tthree\x00\x7f":            "one␊two␍␉three␀␡",
		"\u009b31m\u0085":                      "▯31m▯",
		"\u202eeldoow":                         "▯eldoow",
		"a\u2066b\u2069 c\u200fd\u061ce":       "a▯b▯ c▯d▯e",
		"brake\u00adpipe":                      "brake▯pipe",
		"\ufeffa\u200bb\u2060c":                "▯a▯b▯c",
		"x\u2028y\u2029z":                      "x▯y▯z",
		"tag\U000e0041\U000e007f":              "tag▯▯",
		"blank\u3164\u115f\uffa0\u034f":        "blank▯▯▯▯",
		"logo \ue000 \U0010fffd":               "logo ▯ ▯",
		"no rune \u0378 \ufdd0 \U000e1000":     "no rune ▯ ▯ ▯",
		"\xff\xfe\xc3(":                        "▯▯▯(",
		"\xed\xa0\x80":                         "▯▯▯",
		"⚠\ufe0f ❤\ufe0f\u200d🔥":               "⚠▯ ❤▯▯🔥",
		"👍🏽 🇦🇧":                                "👍▯ ▯▯",
		"می\u200cخواهم":                        "می▯خواهم",
		"\u0301starts with an accent":          "▯starts with an accent",
		"z" + strings.Repeat("\u0301", 7):      "z" + strings.Repeat("\u0301", 4) + "▯▯▯",
		"\u202e\u0301\u0301":                   "▯▯▯",
		"\u1100\u1161\u1161\u1161\u1161\u1161": "\u1100\u1161\u1161\u1161\u1161▯",
	} {
		assert.Equal(t, want, Text(text), "%+q", text)
	}
}

func TestOrdinaryTextStaysAsItIs(t *testing.T) {
	for _, text := range []string{
		"", "brake pipe, right", `25 11/16" ~ ± 2 × 3 °`, "Bremsleitung für Ölwanne, große Öse", "Čeština, Łódź, İstanbul, æøå",
		"e\u0301 n\u0303 u\u0308\u0304", "Việt Nam", "Vie\u0302\u0323t", "бензобак й", "ρεζερβουάρ", "燃料タンク", "燃料箱", "연료", "\u1112\u1161\u11ab",
		"שָׁלוֹם", "مخزن", "खिड़की", "ถังน้ำมัน", "🔥 ⚠ ✓ ☐", "a\u00a0b\u3000c", "► ◄ ● │ ⠿ ⌀ µ € …", "\ufffd", "←↵→",
	} {
		assert.Equal(t, text, Text(text))
		assert.Equal(t, text, Painted(text))
		assert.Equal(t, text, Lines(text))
		assert.Equal(t, text, JSON(text))
	}
}

func TestWhatTheProgramLaysOutStays(t *testing.T) {
	assert.Equal(t, "a\tb\nc▯␍\n", Lines("a\tb\nc\u202e\r\n"))
	assert.Equal(t, "␛[1mbold", Lines("\x1b[1mbold"))
	assert.Equal(t, "\x1b[1;38;2;1;2;3mbold\x1b[0m\n\x1b[4:3m", Painted("\x1b[1;38;2;1;2;3mbold\x1b[0m\n\x1b[4:3m"))
	for text, want := range map[string]string{
		"\x1b[2J": "␛[2J", "\x1b[?25l": "␛[?25l", "\x1b[31": "␛[31", "\x1b]8;;x\x1b\\": "␛]8;;x␛\\", "\x1b": "␛", "\x1b[>4m": "␛[>4m",
		"\x1bc": "␛c", "\t": "␉", "\x1bP+q\x1b\\": "␛P+q␛\\", "\x1b[1\x1b[31mx": "␛[1\x1b[31mx",
	} {
		assert.Equal(t, want, Painted(text), "%q", text)
	}
}

func TestJSONSaysTheSameWithoutHarm(t *testing.T) {
	text := "a\x1b[31m\x7f\u0085\u202e\u200b\u00ad\U000e0041\U0001f1e6\ue000\ufe0f \u4e16 \u00e9 <&>\n" + strings.Repeat("\u0301", 9)
	data, err := json.Marshal(map[string]string{text: text})
	require.NoError(t, err)
	safe := JSON(string(data) + "\n")
	var back map[string]string
	require.NoError(t, json.Unmarshal([]byte(safe), &back))
	assert.Equal(t, map[string]string{text: text}, back)
	assert.Equal(t, safe, Lines(safe), "nothing harmful is left")
	assert.Contains(t, safe, `\u202e`)
	assert.Contains(t, safe, `\udb40\udc41`)
	assert.Contains(t, safe, "世")
}

// whole are texts of all kinds of runes and of bytes that are none.
func whole() *rapid.Generator[string] {
	return rapid.OneOf(
		rapid.String(),
		rapid.StringOf(rapid.SampledFrom([]rune("a é\u0301\u0301\u093f\u202e\u00ad\u200b\n\t\x1b[31m;▯␛\U000e0041世\u1160\u1161🔥🏽\U0001f1e6"))),
		rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) }),
	)
}

func TestNothingHarmfulIsLeft(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { holds(t, whole().Draw(t, "text")) })
}

func FuzzText(f *testing.F) {
	for _, seed := range []string{"", "a\u202eb", "\x1b[31m", "\xff", "e\u0301\u0301\u0301\u0301\u0301", "\u1161", "▯\u0301"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) { holds(t, text) })
}

// holds checks what is promised of any text, by slower words of its own.
func holds(t require.TestingT, text string) {
	ways := map[string]func(string) string{"text": Text, "lines": Lines, "painted": Painted, "json": JSON}
	for name, way := range ways {
		got := way(text)
		require.True(t, utf8.ValidString(got), name)
		require.Equal(t, got, way(got), "%s twice is as once", name)
	}
	got := Text(text)
	require.Equal(t, utf8.RuneCountInString(text), utf8.RuneCountInString(got), "one stand-in a rune")
	marks := 0
	for _, r := range got {
		require.False(t, unicode.In(r, unicode.C, unicode.Zl, unicode.Zp, unicode.Bidi_Control, unicode.Join_Control,
			unicode.Other_Default_Ignorable_Code_Point, unicode.Variation_Selector), "%+q", r)
		if marks++; !unicode.Is(unicode.M, r) {
			marks = 0
		}
		require.LessOrEqual(t, marks, 4)
	}
	safe := func(r rune) bool { return unicode.In(r, unicode.L, unicode.N, unicode.P, unicode.Zs) && !unusual(r) }
	if strings.IndexFunc(text, func(r rune) bool { return !safe(r) }) < 0 {
		require.Equal(t, text, got)
	}
	require.NotContains(t, Lines(text), "\x1b")
	for _, part := range strings.Split(Painted(text), "\x1b")[1:] {
		require.Regexp(t, `^\[[0-9;:]*m`, part)
	}
}

// unusual are the letters that are shown on others or not at all.
func unusual(r rune) bool {
	return unicode.In(r, unicode.Other_Default_Ignorable_Code_Point) || 0x1160 <= r && r < 0x1200 || 0xd7b0 <= r && r < 0xd800
}

func TestWriterPassesHarmlessText(t *testing.T) {
	var out bytes.Buffer
	n, err := Writer{&out}.Write([]byte("a\tb\u202e\n"))
	require.NoError(t, err)
	assert.Equal(t, 7, n)
	assert.Equal(t, "a\tb▯\n", out.String())
	_, err = Writer{full{}}.Write([]byte("a"))
	assert.Error(t, err)
}

// What is the program's own besides colours comes through whole; what is like it, or joins onto it, does not.
func TestWhatIsTheProgramsOwnComesThrough(t *testing.T) {
	const own = "\U0010eeee\u0305\u030d"
	mine := func(s string) int {
		if strings.HasPrefix(s, own) {
			return len(own)
		}
		return 0
	}
	for text, want := range map[string]string{
		"":                           "",
		"a" + own + own + "b":        "a" + own + own + "b",
		own + "\u0301":               own + "▯",
		"\U0010eeee":                 "▯",
		"\U0010eeee\u0305x":          "▯▯x",
		"\x1b[1m" + own + "\x1b[0m":  "\x1b[1m" + own + "\x1b[0m",
		"e\u0301" + own + "\x1b]0;x": "e\u0301" + own + "␛]0;x",
		own[:6] + own:                "▯▯" + own,
		"\n" + own + "\n":            "\n" + own + "\n",
	} {
		assert.Equal(t, want, PaintedWith(text, mine), "%q", text)
		assert.NotContains(t, Painted(text), "\U0010eeee")
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		none := func(string) int { return 0 }
		require.Equal(t, Painted(text), PaintedWith(text, none))
	})
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("full") }

// The short ways for common runes say the same as the tables.
func TestEveryRuneIsWhatTheTablesSay(t *testing.T) {
	for r := rune(0); r <= unicode.MaxRune; r++ {
		if r == Box || '␀' <= r && r <= '␡' || !utf8.ValidRune(r) {
			continue
		}
		invisible := unicode.In(r, unicode.Other_Default_Ignorable_Code_Point, unicode.Variation_Selector)
		melts := 0x1f1e6 <= r && r <= 0x1f1ff || 0x1f3fb <= r && r <= 0x1f3ff
		lone := unicode.Is(unicode.M, r) || 0x1160 <= r && r < 0x1200 || 0xd7b0 <= r && r < 0xd800
		harmful := !unicode.IsGraphic(r) || invisible || melts
		if Text(string(r)) == string(r) == (harmful || lone) || Text("a"+string(r)) == "a"+string(r) == harmful {
			t.Fatalf("%U: harmful %v, lone %v", r, harmful, lone)
		}
	}
}

// Every message paints the screen, and all of it passes here: a picture of 160 by 50 cells must cost little beside the
// millisecond that it takes to paint one.
func BenchmarkCleanPicture(b *testing.B) {
	row := "\x1b[1;38;2;159;211;255m" + strings.Repeat("⠿", 60) + "\x1b[0m│\x1b[38;2;1;2;3m" + strings.Repeat("cut: brake ± 2.9 ", 6) + "\x1b[0m\n"
	picture := strings.Repeat(row, 50)
	b.SetBytes(int64(len(picture)))
	b.ReportAllocs()
	for b.Loop() {
		Painted(picture)
	}
}

func BenchmarkCleanValue(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Text("brake pipe, right")
	}
}
