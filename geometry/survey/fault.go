package survey

import (
	"regexp"
	"strings"
	"sync"
)

// LongestQuote is how much of a faulty text an error repeats, in runes: what fits on a line beside the rest.
const LongestQuote = 60

// faults says what is wrong with a text that has no form of a reading. The first that matches speaks.
var faults = []struct{ in, say string }{
	{`^$`, "empty"},
	{`(?i)^[-+]?(nan|inf|infinity)$`, "not a length"},
	{`^[lr]`, "the side is a capital L or R"},
	{`^[LR+][ \t]*$`, "no length behind the start"},
	{`^[LR+][ \t]*[LRlr+]`, "two starts, and a reading has one"},
	{`^[LR+][ \t]*-|^-.*(in|["'/])`, "a minus sign goes only with a plain metric reading"},
	{`-[ \t]*-|.-`, "a minus sign goes only in front"},
	{`,`, "a comma, where the decimal mark is a point"},
	{`\d[eE][-+]?\d`, "an exponent"},
	{`/[ \t]*0+[ \t]*(in|"|$)`, "the bottom of the fraction is 0"},
	{`\.\d*.*/|/.*\.`, "a fraction is of whole numbers, behind whole inches"},
	{`\d\.\d*[ \t]*'`, "feet are whole, with inches behind them"},
	{`^[^a-z"]*['/][^a-z"]*$`, `feet, inches and fractions end in " or in`},
	{`\d[ \t]+\.?\d|\d\.[ \t]+\d`, "blanks inside a number"},
	{`(^|\D)\.|\.(\D|$)`, "a decimal point has a digit on both sides"},
	{`\.\d*\.`, "two decimal points"},
	{`^[LR+-]?[ \t]*\d[\d.]*[ \t]*[^\d \t.]`, `the unit is not mm, cm, m, in or "`},
}

// patterns are those of faults, compiled once, when the first is wanted: a start of the program does not wait for them.
var patterns = sync.OnceValue(func() []*regexp.Regexp {
	out := make([]*regexp.Regexp, len(faults))
	for i, f := range faults {
		out[i] = regexp.MustCompile(f.in)
	}
	return out
})

func whatIsWrong(text string) string {
	for i, pattern := range patterns() {
		if pattern.MatchString(text) {
			return faults[i].say
		}
	}
	return "not a reading"
}

// Unread is what is wrong with a text that is no reading, and what is one.
type Unread struct {
	Found    string // the text in quotes, and what is wrong with it
	accepted string
}

func (u Unread) Error() string { return u.Found + "; a reading is " + u.accepted }

// unreadable is the error for a text: what was found, what is wrong, what is accepted.
func unreadable(text, fault string, axis Axis) error {
	accepted := `mm or e.g. 65.2cm, 2'6 1/2", L 240, +84`
	if axis == X {
		accepted = `mm or e.g. 65.2cm, 2'6 1/2", +84`
	}
	if r := []rune(text); len(r) > LongestQuote {
		text = string(r[:LongestQuote]) + "..."
	}
	text = strings.ReplaceAll(text, "\n", "␊") // an error is one line; Unicode's own sign for a line's end
	// Else it is shown as it was typed: what shows it makes it harmless.
	return Unread{"\"" + text + "\": " + fault, accepted}
}
