package charset

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func set(pairs ...string) *Set {
	return Of(func(name string) string {
		for _, pair := range pairs {
			if value, is := strings.CutPrefix(pair, name+"="); is {
				return value
			}
		}
		return ""
	})
}

// The first of LC_ALL, LC_CTYPE and LANG that says something counts (POSIX.1-2017, 8.2).
func TestTheLocaleNamesTheLetters(t *testing.T) {
	for _, names := range [][]string{
		nil, {"LANG=C"}, {"LC_ALL=POSIX"}, {"LANG=en_GB.UTF-8"}, {"LANG=C.utf8"}, {"LANG=de_DE"}, {"LC_ALL=C.UTF-8", "LANG=de_DE.ISO-8859-1"},
		{"LC_CTYPE=de_DE.UTF-8@euro", "LANG=ru_RU.KOI8-R"}, {"LC_MESSAGES=de_DE.ISO-8859-1"},
	} {
		assert.Nil(t, set(names...), "%q", names)
	}
	for name, of := range map[string]string{
		"LC_ALL=en_US.ISO-8859-1": "ISO 8859-1", "LANG=de_DE.ISO8859-15@euro": "ISO 8859-15", "LC_CTYPE=ru_RU.KOI8-R": "KOI8-R", "LANG=cs_CZ.CP1250": "Windows 1250",
	} {
		s := set(name)
		require.NotNil(t, s, name)
		assert.Equal(t, name, s.Said)
		require.NotNil(t, s.of, name)
		assert.Equal(t, of, s.of.String())
	}
	assert.Nil(t, set("LANG=ja_JP.eucJP").of, "more than a byte a letter")
	assert.Nil(t, set("LANG=en_US.US-ASCII").of)
}

// Values of ISO/IEC 8859-1 and -5 from the tables of the Unicode Consortium (8859-1.TXT, 8859-5.TXT), from memory: the first is Unicode's own row.
func TestWhatIsWrittenIsInTheTerminalsLetters(t *testing.T) {
	const text = "127 ± 3, 30°, 9u², 2×, ü, Ж, ☃, ›\r\n"
	for name, want := range map[string]string{
		"LANG=C.UTF-8":         text,
		"LANG=de_DE.ISO8859-1": "127 \xb1 3, 30\xb0, 9u\xb2, 2\xd7, \xfc, ?, ?, ?\r\n",
		"LANG=ru_RU.ISO8859-5": "127 +- 3, 30deg, 9u^2, 2x, ?, \xb6, ?, ?\r\n",
		"LANG=en_US.CP1252":    "127 \xb1 3, 30\xb0, 9u\xb2, 2\xd7, \xfc, ?, ?, ?\r\n",
		"LANG=ja_JP.eucJP":     "127 +- 3, 30deg, 9u^2, 2x, ?, ?, ?, ?\r\n",
	} {
		var out bytes.Buffer
		n, err := set(name).Writer(&out).Write([]byte(text))
		require.NoError(t, err)
		assert.Equal(t, len(text), n)
		assert.Equal(t, want, out.String(), name)
	}
}

// What is typed is UTF-8 behind the reader, however small the pieces are that it is read in.
func TestWhatIsTypedIsUTF8(t *testing.T) {
	const typed, want = "M\xfcller 30\xb0\x1b[A\r", "Müller 30°\x1b[A\r"
	for _, room := range []int{4, 5, 7, 256} {
		from, got := set("LANG=de_DE.ISO-8859-1").Reader(strings.NewReader(typed)), []byte(nil)
		for {
			p := make([]byte, room)
			n, err := from.Read(p)
			if got = append(got, p[:n]...); err == io.EOF {
				break
			}
			require.NoError(t, err)
		}
		assert.Equal(t, want, string(got), "%d", room)
	}
	from := strings.NewReader(typed)
	assert.Same(t, from, set("LANG=C.UTF-8").Reader(from))
	assert.Same(t, from, set("LANG=ja_JP.eucJP").Reader(from), "nobody knows where a letter ends")
}
