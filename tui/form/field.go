// Package form is a column of fields: what each is called, what it says, and what is wrong with what was typed.
//
// A form holds no values. Its fields are made afresh from the job each time; the form knows only which of them
// has the keys, the text being typed, and the texts that the job did not take, which stay in their own words.
package form

import "strings"

// Field is one line of a form, as the job has it.
type Field struct {
	Key     string // what the program calls it
	Label   string
	Text    string                           // what the job holds; "" for nothing
	Unit    string                           // stands behind the text
	Blank   string                           // what an empty field says, such as vehicles.NotMeasured
	Note    string                           // what the text comes to, shown while the field has the keys
	Heading string                           // a line above the field
	Choices []Choice                         // one of these in place of a text
	Nudge   func(text string, by int) string // left and right change the text by a step; nil: they move the cursor
	Big     bool                             // its figures are shown big where those of lengths are
	Guess   bool                             // nobody has measured the text: KeySo says that it was
	Pass    bool                             // Enter goes past it; arrows and taps reach it
	Must    bool                             // Enter stays while nothing is chosen: what comes after hangs on it
	Second  bool                             // stands in the row of the field before it, behind its text
	IfBlank string                           // where Enter goes on to when nothing is typed; "" for the next field
	Break   string                           // stands for a line break in the text; "" where a line is a field's
}

// NewLine stands for a line break in the one row of a field.
const NewLine = "↵"

// Choice is one thing to choose, and the letter that chooses it.
type Choice struct {
	Letter rune
	Name   string
}

// YesNo are the choices of a question.
func YesNo(yes, no string) []Choice { return []Choice{{'y', yes}, {'n', no}} }

// index returns where the field of a key is, -1 when it is not there.
func index(fields []Field, key string) int {
	for i, f := range fields {
		if f.Key == key {
			return i
		}
	}
	return -1
}

// chosen returns where the field's text is among its choices, -1 when it is none of them.
func (f Field) chosen() int {
	for i, c := range f.Choices {
		if c.Name == f.Text {
			return i
		}
	}
	return -1
}

// byLetter returns the choice of a letter, small or capital: of several the one after what is chosen. alone tells
// whether there is only one.
func (f Field) byLetter(letter rune) (c Choice, alone, found bool) {
	at, count := -1, 0
	for i, c := range f.Choices {
		if !strings.EqualFold(string(c.Letter), string(letter)) {
			continue
		}
		if count++; at < 0 || at <= f.chosen() && i > f.chosen() {
			at = i
		}
	}
	if at < 0 {
		return Choice{}, false, false
	}
	return f.Choices[at], count == 1, true
}

// again says what the letter of the choice chosen chooses when it is pressed again; "" where no other has it.
func (f Field) again() string {
	at := f.chosen()
	if at < 0 {
		return ""
	}
	next, alone, _ := f.byLetter(f.Choices[at].Letter)
	if alone {
		return ""
	}
	return string(next.Letter) + " again: " + next.Name + "; Enter: go on"
}

// byWord returns the choice of a letter or a name, small or capital.
func (f Field) byWord(word string) (Choice, bool) {
	if letter := []rune(word); len(letter) == 1 {
		c, _, found := f.byLetter(letter[0])
		return c, found
	}
	for _, c := range f.Choices {
		if strings.EqualFold(c.Name, word) {
			return c, true
		}
	}
	return Choice{}, false
}

// step returns the choice so many places on, round the end.
func (f Field) step(by int) string {
	n := len(f.Choices)
	at := f.chosen()
	if at < 0 && by < 0 {
		at = 0
	}
	return f.Choices[((at+by)%n+n)%n].Name
}
