// Package charset knows what a terminal reads and sends that is not for UTF-8, by the locale it was given. What is written to it is put into its
// own characters, a byte each, or spelled in ASCII; what is typed there becomes UTF-8. Files and pipes have nothing to do with it: they are UTF-8.
package charset

import (
	"io"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// Set is a set of characters. The nil Set is Unicode in UTF-8, and changes nothing.
type Set struct {
	Said string           // what named it: LC_ALL=de_DE.ISO-8859-1
	of   *charmap.Charmap // nil where a character may take more than a byte: then it is ASCII alone
}

// Of returns the set that the environment names, nil for UTF-8. Where no set is named, as in LANG=C, a terminal is taken to know UTF-8: nearly
// all do. Source: POSIX.1-2017, 8.2, of the variables; what stands behind the dot is the implementation's, a name of the set everywhere.
func Of(env func(string) string) *Set {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if env(name) == "" {
			continue
		}
		_, set, _ := strings.Cut(env(name), ".")
		set, _, _ = strings.Cut(set, "@")
		if set = plainly(set); set == "" || set == "utf8" {
			return nil
		}
		return &Set{name + "=" + env(name), charmapOf(set)}
	}
	return nil
}

// plainly is a set's name as all spell it: small letters and figures.
func plainly(name string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, strings.ToLower(name))
}

// charmapOf is the set of a name, nil for one that is not known.
func charmapOf(name string) *charmap.Charmap {
	if page, is := strings.CutPrefix(name, "cp125"); is {
		name = "windows125" + page
	}
	for _, e := range charmap.All {
		if of, is := e.(*charmap.Charmap); is && plainly(of.String()) == name {
			return of
		}
	}
	return nil
}

// Writer returns a writer of what a terminal is to show. A text comes to it in whole runes.
func (s *Set) Writer(to io.Writer) io.Writer {
	if s == nil {
		return to
	}
	return writer{s, to}
}

type writer struct {
	*Set
	to io.Writer
}

func (w writer) Write(p []byte) (int, error) {
	if _, err := io.WriteString(w.to, w.spelled(string(p))); err != nil {
		return 0, err
	}
	return len(p), nil
}

// inASCII is how the signs of our answers are spelled where a set has none.
var inASCII = map[rune]string{'±': "+-", '°': "deg", '×': "x", '²': "^2", '³': "^3", '·': "*", '…': "..."}

// spelled is a text in the set's bytes; what it has no sign for is a question mark. Bytes from 0x80 to 0x9f steer some terminals (ECMA-48, C1), and
// are none of it.
func (s *Set) spelled(text string) string {
	var out strings.Builder
	for _, r := range text {
		switch b, has := s.byteOf(r); {
		case r < utf8.RuneSelf:
			out.WriteByte(byte(r))
		case has && b >= 0xa0:
			out.WriteByte(b)
		case inASCII[r] != "":
			out.WriteString(inASCII[r])
		default:
			out.WriteByte('?')
		}
	}
	return out.String()
}

func (s *Set) byteOf(r rune) (b byte, has bool) {
	if s.of == nil {
		return 0, false
	}
	return s.of.EncodeRune(r)
}

// Reader returns a reader of what is typed on a terminal, in UTF-8.
func (s *Set) Reader(from io.Reader) io.Reader {
	if s == nil || s.of == nil {
		return from
	}
	return reader{s, from}
}

type reader struct {
	*Set
	from io.Reader
}

// Read reads no more than has room in p as UTF-8: nothing stays behind for which nobody would be woken.
func (r reader) Read(p []byte) (int, error) {
	n, err := r.from.Read(p[:max(1, len(p)/utf8.UTFMax)])
	var out []byte
	for _, b := range p[:n] {
		out = utf8.AppendRune(out, r.of.DecodeByte(b))
	}
	return copy(p, out), err
}
