package survey

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTypedSpeaksTheContractsGrammar(t *testing.T) {
	for _, c := range []struct {
		typed, text string
		number      bool
		start       Start
		mm          float64
	}{
		{"652", "652", true, Datum, 652},
		{" 652,5 ", "652.5", true, Datum, 652.5},
		{"652.0", "652.0", true, Datum, 652},
		{"-850", "-850", true, Datum, -850},
		{"−850", "-850", true, Datum, -850},
		{"65,2cm", "65.2cm", false, Datum, 652},
		{"1,234 m", "1.234 m", false, Datum, 1234},
		{"652mm", "652mm", false, Datum, 652},
		{"l240", "L 240", false, FromLeft, 240},
		{"L  240", "L 240", false, FromLeft, 240},
		{"r 31,5", "R 31.5", false, FromRight, 31.5},
		{"+ 84", "+84", false, On, 84},
		{".84", "+84", false, On, 84},
		{". 5cm", "+5cm", false, On, 50},
		{".5", "+5", false, On, 5},
		{"2’6 1/2″", `2'6 1/2"`, false, Datum, 774.7},
	} {
		r, err := Typed(c.typed, Y)
		require.NoError(t, err, c.typed)
		assert.InDelta(t, c.mm, r.Length, 1e-11, c.typed)
		r.Length = 0
		assert.Equal(t, Reading{Text: c.text, Number: c.number, Start: c.start}, r, c.typed)
	}
}

func TestTypedSaysWhatIsWrong(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"", "empty"}, {"l", "no length"}, {"..5", "digit on both sides"}, {",5", "digit on both sides"},
		{"1,200", "write 1200 or 1.2"}, {"1,200 mm", "write 1200 or 1.2"}, {"1,2,3", "two decimal points"},
		{"+l 5", "two starts"}, {".-5", "minus sign"}, {"30 3/0in", "fraction is 0"},
	} {
		_, err := Typed(c.text, Y)
		require.ErrorContains(t, err, c.says, c.text)
		assert.ErrorContains(t, err, `"`+c.text+`": `)
	}
	_, err := Typed("l 240", X)
	assert.ErrorContains(t, err, "L and R count across")
}

func TestALongTextIsNotSearchedForFaults(t *testing.T) {
	_, err := Typed(strings.Repeat("5", longestTyped+1), Y)
	assert.ErrorContains(t, err, "more than 100 characters")
	r, err := Typed("l"+strings.Repeat("0", longestTyped-5)+"240", Y)
	require.NoError(t, err)
	_, err = Typed(r.Text, Y)
	assert.NoError(t, err, "what was taken is taken again, with the blank behind its L")
}

// Every key in a field whose text can't be read yet asks what is wrong with it: the patterns are not compiled again for
// each.
func BenchmarkWhatIsWrong(b *testing.B) {
	for _, text := range []string{"7x", "\x01\x7fjunk" + strings.Repeat("?", 80), strings.Repeat("?", 2000)} {
		b.Run(fmt.Sprint(len(text)), func(b *testing.B) {
			for b.Loop() {
				_, _ = Typed(text, Y)
			}
		})
	}
}

func TestFaultPatternsAreCompiledOnce(t *testing.T) {
	_, _ = Typed("7x", Y)
	assert.Less(t, testing.AllocsPerRun(100, func() { _, _ = Typed("7x", Y) }), 30., "compiling one takes more than that")
}

// What a field takes, a job file takes, and it means the same there.
func FuzzTyped(f *testing.F) {
	for _, seed := range []string{"652", "l240", ".84", "652,5", "2’6 1/2″", "−5", "1,200", "+ 84", "r\u00a05"} {
		f.Add(seed, true)
	}
	f.Fuzz(func(t *testing.T, text string, y bool) {
		axis := X
		if y {
			axis = Y
		}
		r, err := Typed(text, axis)
		if err != nil {
			require.NotContains(t, err.Error(), "\n")
			return
		}
		file, err := Parse(r.Text, axis)
		require.NoError(t, err)
		require.Equal(t, r.Length, file.Length)
		require.Equal(t, r.Start, file.Start)
		require.Equal(t, strings.TrimSpace(r.Text), r.Text)
		again, err := Typed(r.Text, axis)
		require.NoError(t, err)
		require.Equal(t, r, again)
	})
}
