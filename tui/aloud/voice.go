package aloud

import (
	"io"
	"slices"
	"strings"

	"bench.example/undermark/tui/desk"
)

// Voice writes lines in order and what is typed as it is typed, and nothing else. The zero Voice is not usable.
type Voice struct {
	to     io.Writer
	ends   string     // of a line
	width  func() int // columns of the terminal as it is now
	typed  string     // what stands on the line that is being typed
	column int        // of its cursor
	open   bool       // there is such a line
}

// NewVoice returns a voice that writes to a terminal, raw where a line end does not go back to the first column by itself, of as
// many columns as width says.
func NewVoice(to io.Writer, raw bool, width func() int) *Voice {
	ends := "\n"
	if raw {
		ends = "\r\n"
	}
	return &Voice{to: to, ends: ends, width: width}
}

// Say writes lines. A terminal that is gone hears nothing: whoever listens to its end ends the program.
func (v *Voice) Say(lines ...string) {
	rows := Broken(slices.DeleteFunc(slices.Clone(lines), func(l string) bool { return Line(l) == "" }), v.width())
	if len(rows) == 0 {
		return
	}
	v.Shut()
	_, _ = io.WriteString(v.to, strings.Join(rows, v.ends)+v.ends)
}

// Order writes what is for the terminal itself and is not seen.
func (v *Voice) Order(sequence string) {
	v.Shut()
	_, _ = io.WriteString(v.to, sequence)
}

// nothing is said of a text that was taken away.
const nothing = "nothing"

// Type writes what stands in a field that is being typed in: only what was added, on the line that was begun. After any other
// edit all of it stands on a line of its own.
func (v *Voice) Type(text string) {
	text = spelled(text)
	if added, goesOn := strings.CutPrefix(text, v.typed); v.open && goesOn && v.typed != "" {
		v.put(added)
	} else {
		v.Shut()
		v.put(text)
	}
	v.typed, v.open = text, true
	if text == "" {
		v.put(nothing)
	}
}

// put writes on the line that is being typed, in as many rows as it takes.
func (v *Voice) put(text string) {
	var out strings.Builder
	for _, r := range text {
		w := desk.Width(string(r))
		if v.column+w > v.width() {
			out.WriteString(v.ends)
			v.column = 0
		}
		out.WriteRune(r)
		v.column += w
	}
	_, _ = io.WriteString(v.to, out.String())
}

// Shut ends the line that is being typed, if there is one.
func (v *Voice) Shut() {
	if v.open {
		_, _ = io.WriteString(v.to, v.ends)
	}
	v.typed, v.column, v.open = "", 0, false
}
