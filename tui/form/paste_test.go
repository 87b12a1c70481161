package form

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// paste pastes into a form of fields that stay as they are.
func paste(f Form, fields []Field, text string) (Form, []Put, error) {
	return f.Paste([]rune(text), func([]Put) []Field { return fields })
}

func TestPastedLinesGoIntoFields(t *testing.T) {
	for name, c := range map[string]struct {
		from, text string
		put        []Put
		on         string
	}{
		"one line": {"near", "+84", []Put{{"near", "near edge", "+84"}}, "near"},
		"the last has no line end, or has": {
			"near", "652\r\n736\r\n", []Put{{"near", "near edge", "652"}, {"far", "far edge", "736"}}, "far",
		},
		"a blank line leaves its field": {"near", "\r \n300", []Put{{"px", "point 1", "300"}}, "px"},
		"a letter chooses": {
			"kind", "b\n652", []Put{{"kind", "kind", "beam"}, {"near", "near edge", "652"}}, "near",
		},
		"a name chooses":            {"kind", "Beam\n\n\n300", []Put{{"kind", "kind", "beam"}, {"px", "point 1", "300"}}, "px"},
		"behind a choice one is on": {"kind", "pipe", []Put{{"kind", "kind", "pipe"}}, "near"},
		"no line can move a terminal": {
			"near", "\x1b[31m\t", []Put{{"near", "near edge", " [31m "}}, "near",
		},
	} {
		fields := some()
		f, put, err := paste(Form{}.Open(c.from, fields), fields, c.text)
		require.NoError(t, err, name)
		assert.Equal(t, c.put, put, name)
		assert.Equal(t, c.on, f.On(), name)
	}
}

func TestAPasteGoesInAtTheCursor(t *testing.T) {
	fields := some()
	f := Form{}.Open("near", fields).AtEnd()
	f, _ = press(f, fields, named(0x7f)) // backspace
	_, put, err := paste(f, fields, "7\n8")
	require.NoError(t, err)
	assert.Equal(t, "657", put[0].Text)
	assert.Equal(t, "8", put[1].Text, "the next field is selected, as from Enter")
}

func TestALineBreakOfAText(t *testing.T) {
	fields := []Field{{Key: "notes", Label: "notes", Break: "↵"}}
	_, put, err := paste(Form{}.Open("notes", fields), fields, "two\r\nlines\n")
	require.NoError(t, err)
	assert.Equal(t, []Put{{"notes", "notes", "two↵lines"}}, put)
}

func TestAPasteThatIsNotTaken(t *testing.T) {
	for name, c := range map[string]struct{ from, text, says string }{
		"too long for a field":    {"near", strings.Repeat("x", longestLine+1), "too long: more than 2000 characters; nothing was changed"},
		"in a later field":        {"near", "652\n" + strings.Repeat("x", longestLine+1), "too long: more than 2000 characters; nothing was changed"},
		"too long by itself":      {"near", strings.Repeat("x\n", LongestPaste), "too long: more than 8000 characters; nothing was changed"},
		"too many lines":          {"near", strings.Repeat("x\n", mostPasted+1), "too long: more than 100 lines; nothing was changed"},
		"more lines than fields":  {"more10", "1\n2\n3", "too long: 3 lines, 2 fields left; nothing was changed"},
		"more than the last one":  {"more11", "1\n2", "too long: 2 lines, 1 field left; nothing was changed"},
		"nothing":                 {"near", "", "there is no text in what was pasted; nothing was changed"},
		"line ends and blanks":    {"near", " \r\n \n\n", "there is no text in what was pasted; nothing was changed"},
		"none of the choices":     {"kind", "brick\n652", "none of the choices of kind; nothing was changed"},
		"a letter of none":        {"kind", "z", "none of the choices of kind; nothing was changed"},
		"a megabyte":              {"near", strings.Repeat("652\n", 1<<18), "too long: more than 8000 characters; nothing was changed"},
		"a megabyte for a choice": {"kind", strings.Repeat("b", 1<<20), "too long: more than 8000 characters; nothing was changed"},
	} {
		fields := some()
		was := Form{}.Open(c.from, fields)
		f, put, err := paste(was, fields, c.text)
		assert.EqualError(t, err, c.says, name)
		assert.Equal(t, was, f, name)
		assert.Empty(t, put, name)
		assert.LessOrEqual(t, len(c.says), 60, "it fits the foot of the narrowest window")
	}
	longest := fmt.Sprintf("too long: %d lines, %s left%s", mostPasted, count(mostPasted-1, "field"), unchanged)
	assert.LessOrEqual(t, len(longest), 60)
	assert.LessOrEqual(t, len(errFull.Error()), 60)
	assert.LessOrEqual(t, len(pastedWords(mostPasted, mostPasted)), 60)
}
