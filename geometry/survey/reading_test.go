package survey

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// The grammar and its examples are those of the job-file contract; 25.4 mm to the inch is the international yard
// and pound agreement of 1959 (from memory).
func TestParseTakesTheWholeGrammar(t *testing.T) {
	for _, c := range []struct {
		text  string
		start Start
		mm    float64
	}{
		{"652", Datum, 652},
		{"65.2cm", Datum, 652},
		{"0.652m", Datum, 652},
		{"0.652 m", Datum, 652},
		{"1.005m", Datum, 1005},
		{" 652 mm ", Datum, 652},
		{"-12.5", Datum, -12.5},
		{"- 12.5 cm", Datum, -125},
		{"0", Datum, 0},
		{"007", Datum, 7},
		{"20000", Datum, 20000},
		{"30 3/4in", Datum, 781.05},
		{`2'6 1/2"`, Datum, 774.7},
		{`2 ' 6 1 / 2 "`, Datum, 774.7},
		{"5in", Datum, 127},
		{"3/8in", Datum, 9.525},
		{"303/4in", Datum, 1924.05},
		{"5.5in", Datum, 139.7},
		{`2'"`, Datum, 609.6},
		{"2'1/2 in", Datum, 622.3},
		{"2'6.5in", Datum, 774.7},
		{"9/8in", Datum, 28.575},
		{"L 240", FromLeft, 240},
		{"L240mm", FromLeft, 240},
		{"R 310", FromRight, 310},
		{"L10 1/16 in", FromLeft, 255.5875},
		{"+84", On, 84},
		{"+ 94", On, 94},
		{"+6'2 13/16 in", On, 1900.2375},
		{"+ 0.353 m", On, 353},
	} {
		r, err := Parse(c.text, Y)
		require.NoError(t, err, c.text)
		assert.Equal(t, Reading{Text: c.text, Start: c.start, Length: r.Length}, r, c.text)
		assert.InDelta(t, c.mm, r.Length, 1e-11, c.text)
		assert.Equal(t, c.text, r.String())
	}
}

// Decimal readings must come out as the number a person would write, not a rounding step beside it.
func TestParseMetricIsExact(t *testing.T) {
	for text, mm := range map[string]float64{"1.005m": 1005, "0.285m": 285, "114.3cm": 1143, "2.3cm": 23} {
		r, err := Parse(text, X)
		require.NoError(t, err)
		assert.Equal(t, mm, r.Length, text)
	}
	r, err := Parse("-0", X)
	require.NoError(t, err)
	assert.False(t, math.Signbit(r.Length), "no negative zero")
}

func TestParseSaysWhatIsWrong(t *testing.T) {
	for _, c := range []struct{ text, says string }{
		{"", "empty"},
		{"  ", "empty"},
		{"65,2", "a comma, where the decimal mark is a point"},
		{"L+84", "two starts"},
		{"++84", "two starts"},
		{"L R 3", "two starts"},
		{"L", "no length behind the start"},
		{"+", "no length behind the start"},
		{"L -5", "a minus sign goes only with a plain metric reading"},
		{"+-5", "a minus sign goes only with a plain metric reading"},
		{"-5in", "a minus sign goes only with a plain metric reading"},
		{`-2'6"`, "a minus sign goes only with a plain metric reading"},
		{"--5", "a minus sign goes only in front"},
		{"5-6", "a minus sign goes only in front"},
		{"1e3", "an exponent"},
		{"1.5E+2", "an exponent"},
		{"3/0in", "the bottom of the fraction is 0"},
		{"1 3/00\"", "the bottom of the fraction is 0"},
		{"nan", "not a length"},
		{"-inf", "not a length"},
		{"Infinity", "not a length"},
		{"3ft", "the unit is not"},
		{"65.2 MM", "the unit is not"},
		{"652 mmm", "the unit is not"},
		{"30.5 3/4in", "a fraction is of whole numbers"},
		{"1.5/2in", "a fraction is of whole numbers"},
		{"2.5'6in", "feet are whole"},
		{"2'6", `end in " or in`},
		{"3/4", `end in " or in`},
		{"6 52", "blanks inside a number"},
		{"65. 2", "blanks inside a number"},
		{".5", "a decimal point has a digit on both sides"},
		{"5.", "a decimal point has a digit on both sides"},
		{"1.2.3", "two decimal points"},
		{"l 240", "the side is a capital L or R"},
		{"about 60", "not a reading"},
		{`"`, "not a reading"},
		{"20001", "no length may be more than 20000 mm"},
		{"-20.001m", "no length may be more than 20000 mm"},
		{"999999999999999999999cm", "no length may be more"},
	} {
		_, err := Parse(c.text, Y)
		require.Error(t, err, c.text)
		assert.ErrorContains(t, err, c.says, c.text)
		assert.ErrorContains(t, err, `"`+c.text+`": `, c.text)
		assert.ErrorContains(t, err, `a reading is mm or e.g. 65.2cm, 2'6 1/2", L 240, +84`)
		assert.NotContains(t, err.Error(), "\n")
	}
}

func TestSidesAreOfYOnly(t *testing.T) {
	for _, text := range []string{"L 240", "R240"} {
		_, err := Parse(text, X)
		require.ErrorContains(t, err, "L and R count across")
		assert.NotContains(t, err.Error(), "L 240, +84", "what is accepted is what x accepts")
	}
	_, err := Parse("+84", X)
	assert.NoError(t, err)
}

func TestErrorsQuoteNoMoreThanALine(t *testing.T) {
	long := ""
	for range 1000 {
		long += "é"
	}
	_, err := Parse(long, Y)
	assert.Less(t, len(err.Error()), 300)
	for _, runes := range []int{LongestQuote, LongestQuote + 1} {
		text := string([]rune(long)[:runes])
		_, err = Parse(text, Y)
		assert.Equal(t, runes == LongestQuote, strings.Contains(err.Error(), `"`+text+`"`), "%d", runes)
	}
	assert.Equal(t, 60, LongestQuote, "what fits on a line beside what is wrong with it")
}

// Digits without end are a length, and too long a one.
func TestALengthBeyondAllNumbersIsTooLong(t *testing.T) {
	endless := strings.Repeat("9", 400)
	for _, text := range []string{endless, endless + "cm", "-" + endless, endless + " in", endless + "'", "L " + endless, "+" + endless} {
		_, err := Parse(strings.Replace(text, "9'", "9' 1in", 1), Y)
		assert.ErrorContains(t, err, "no length may be more than 20000 mm", text[:3])
	}
	_, err := Parse("20000", Y)
	assert.NoError(t, err)
	_, err = Parse("20000.001", Y)
	assert.ErrorContains(t, err, "no length may be more")
}

func TestFromNumberWritesWhatTOMLHolds(t *testing.T) {
	for _, c := range []struct {
		mm      float64
		integer bool
		text    string
	}{
		{652, true, "652"}, {-850, true, "-850"}, {652, false, "652.0"}, {652.25, false, "652.25"},
		{-521.4, false, "-521.4"}, {1e-7, false, "0.0000001"}, {math.Copysign(0, -1), false, "0.0"},
		{math.NaN(), false, "nan"}, {math.Inf(1), false, "+inf"}, {math.Inf(-1), false, "-inf"},
	} {
		r := FromNumber(c.mm, c.integer)
		assert.Equal(t, c.text, r.Text)
		assert.True(t, r.Number)
		assert.Equal(t, Datum, r.Start)
	}
}

func TestCheckRefusesWhatNoTapeSays(t *testing.T) {
	assert.NoError(t, FromNumber(-20000, true).Validate())
	assert.EqualError(t, FromNumber(20000.5, false).Validate(), "20000.5: no length may be more than 20000 mm")
	assert.EqualError(t, FromNumber(math.NaN(), false).Validate(), "nan: not a length")
	assert.Error(t, FromNumber(math.Inf(-1), false).Validate())
}

func TestFractionsAreExactToAHair(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		feet, whole := rapid.IntRange(0, 20).Draw(t, "feet"), rapid.IntRange(0, 11).Draw(t, "inches")
		n, d := rapid.IntRange(0, 64).Draw(t, "n"), rapid.IntRange(1, 64).Draw(t, "d")
		text := strconv.Itoa(feet) + "'" + strconv.Itoa(whole) + " " + strconv.Itoa(n) + "/" + strconv.Itoa(d) + `"`
		r, err := Parse(text, X)
		require.NoError(t, err)
		want := 304.8*float64(feet) + 25.4*float64(whole) + 25.4*float64(n)/float64(d)
		assert.InDelta(t, want, r.Length, 1e-11)
	})
}

// Whatever the text, Parse gives a sound reading or an error of one line; what it takes, it takes again the same.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{"652", "65.2cm", `2'6 1/2"`, "L 240", "+84", "-1", "3/0in", "1e3", "65,2", "é", "+ 0.353 m", "999999999/1in"} {
		f.Add(seed, true)
	}
	f.Fuzz(func(t *testing.T, text string, y bool) {
		axis := X
		if y {
			axis = Y
		}
		r, err := Parse(text, axis)
		if err != nil {
			require.NotContains(t, err.Error(), "\n")
			return
		}
		require.NoError(t, r.Validate())
		again, err := Parse(r.Text, axis)
		require.NoError(t, err)
		require.Equal(t, r, again)
		require.False(t, r.Length < 0 && r.Start != Datum)
	})
}
