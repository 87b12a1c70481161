package survey

import (
	"fmt"
	"regexp"
)

// longestQuote is how much of a faulty text an error repeats, in runes.
const longestQuote = 60

// faults says what is wrong with a text that has no form of a reading. The first that matches speaks.
var faults = []struct {
	in  *regexp.Regexp
	say string
}{
	{regexp.MustCompile(`^$`), "empty"},
	{regexp.MustCompile(`(?i)^[-+]?(nan|inf|infinity)$`), "not a length"},
	{regexp.MustCompile(`^[lr]`), "the side is a capital L or R"},
	{regexp.MustCompile(`^[LR+][ \t]*$`), "no length behind the start"},
	{regexp.MustCompile(`^[LR+][ \t]*[LRlr+]`), "two starts, and a reading has one"},
	{regexp.MustCompile(`^[LR+][ \t]*-|^-.*(in|["'/])`), "a minus sign goes only with a plain metric reading"},
	{regexp.MustCompile(`-[ \t]*-|.-`), "a minus sign goes only in front"},
	{regexp.MustCompile(`,`), "a comma, where the decimal mark is a point"},
	{regexp.MustCompile(`\d[eE][-+]?\d`), "an exponent"},
	{regexp.MustCompile(`/[ \t]*0+[ \t]*(in|"|$)`), "the bottom of the fraction is 0"},
	{regexp.MustCompile(`\.\d*.*/|/.*\.`), "a fraction is of whole numbers, behind whole inches"},
	{regexp.MustCompile(`\d\.\d*[ \t]*'`), "feet are whole, with inches behind them"},
	{regexp.MustCompile(`^[^a-z"]*['/][^a-z"]*$`), `feet, inches and fractions end in " or in`},
	{regexp.MustCompile(`\d[ \t]+\.?\d|\d\.[ \t]+\d`), "blanks inside a number"},
	{regexp.MustCompile(`(^|\D)\.|\.(\D|$)`), "a decimal point has a digit on both sides"},
	{regexp.MustCompile(`\.\d*\.`), "two decimal points"},
	{regexp.MustCompile(`^[LR+-]?[ \t]*\d[\d.]*[ \t]*[^\d \t.]`), `the unit is not mm, cm, m, in or "`},
}

func whatIsWrong(text string) string {
	for _, f := range faults {
		if f.in.MatchString(text) {
			return f.say
		}
	}
	return "not a reading"
}

// unreadable is the error for a text: what was found, what is wrong, what is accepted.
func unreadable(text, fault string, axis Axis) error {
	accepted := `mm or e.g. 65.2cm, 2'6 1/2", L 240, +84`
	if axis == X {
		accepted = `mm or e.g. 65.2cm, 2'6 1/2", +84`
	}
	if r := []rune(text); len(r) > longestQuote {
		text = string(r[:longestQuote]) + "..."
	}
	return fmt.Errorf("%q: %s; a reading is %s", text, fault, accepted)
}
