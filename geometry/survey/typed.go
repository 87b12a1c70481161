package survey

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// longestTyped is how many characters a typed reading has at most: the longest that anybody needs, "L 12' 11 15/16 in", has
// fewer than 20. Whatever is longer was not read off a tape, and is not searched for what is wrong with it.
const longestTyped = 100

var (
	// keyboardMarks are what keyboards put in place of the marks of the grammar.
	keyboardMarks = strings.NewReplacer("′", "'", "’", "'", "″", `"`, "”", `"`, "−", "-", "\u00a0", " ")
	// thousands is a comma that may as well part thousands: in mm nobody writes three decimals.
	thousands   = form(`\d,\d{3}[ \t]*(mm)?$`)
	plainNumber = form(`^-?[ \t]*\d+(\.\d+)?$`)
)

// Typed reads what a person types in a field. Beside all that Parse reads it takes small l and r, a comma as
// decimal mark, typographic quotes and minus, and a point in front as well as a + for a reading that runs on:
// ".84" is "+84", half a millimetre is "0.5". "1,200" is refused, as it may be 1200 or 1.2.
//
// Text of the result is of the grammar of Parse: "L 240", "+84"; a plain number of mm becomes a bare Number.
func Typed(text string, axis Axis) (Reading, error) {
	body := typedStart(strings.TrimSpace(keyboardMarks.Replace(text)))
	switch {
	case utf8.RuneCountInString(body) > longestTyped:
		return Reading{}, unreadable(text, fmt.Sprintf("more than %d characters", longestTyped), axis)
	case thousands().MatchString(body):
		return Reading{}, unreadable(text, "thousands or a decimal comma: write 1200 or 1.2", axis)
	}
	body = strings.ReplaceAll(body, ",", ".")
	r, fault := parse(body, axis)
	if fault != "" {
		return Reading{}, unreadable(text, fault, axis)
	}
	if plainNumber().MatchString(body) {
		return FromNumber(r.Length, !strings.Contains(body, ".")), nil
	}
	return r, nil
}

// typedStart writes the start of a typed reading as the grammar has it, with one blank behind a side.
func typedStart(body string) string {
	if body == "" {
		return body
	}
	rest := strings.TrimLeft(body[1:], " \t")
	switch body[0] {
	case 'l', 'L':
		return strings.TrimRight("L "+rest, " ")
	case 'r', 'R':
		return strings.TrimRight("R "+rest, " ")
	case '+', '.':
		return "+" + rest
	}
	return body
}
