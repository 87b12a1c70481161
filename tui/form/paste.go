package form

import (
	"errors"
	"fmt"
	"strings"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// A pasted text is one edit: all of its lines are put into fields before the job is asked. It is taken whole or not at all,
// and it is bounded, so that it is answered at once whatever is in it.

const (
	// mostPasted is how many lines a paste may have: the points of a line with fifty of them, far more than a pipe under a van has
	// bends.
	mostPasted = 100
	// LongestPaste is how many characters a paste may have: its lines at the width of a page.
	LongestPaste = mostPasted * 80
)

var (
	errLongPaste  = errors.New(tooLong("characters", LongestPaste))
	errManyLines  = errors.New(tooLong("lines", mostPasted))
	errEmptyPaste = errors.New("there is no text in what was pasted" + unchanged)
)

// Put is a text that goes into a field.
type Put struct{ Key, Label, Text string }

// Paste puts the lines of a pasted text into the field that has the keys and into those that Enter would go on to from there;
// a blank line leaves its field as it is. Fields are the fields with what was put in so far. The error says why nothing was
// taken; then the form is as it was.
func (f Form) Paste(text []rune, fields func(put []Put) []Field) (Form, []Put, error) {
	all := fields(nil)
	f = f.looked(all)
	i := index(all, f.key)
	if i < 0 {
		return f, nil, errEmptyPaste
	}
	lines, err := linesOf(text, all[i].Break)
	if err != nil {
		return f, nil, err
	}
	was := f
	var put []Put
	for n, line := range lines {
		if n > 0 {
			here := f.key
			if f = f.Onward(all); f.key == here {
				return was, nil, fmt.Errorf("too long: %d lines, %s left%s", len(lines), count(n, "field"), unchanged)
			}
		}
		if strings.TrimSpace(line) == "" {
			continue
		}
		var into string
		if f, into, err = f.put(all[f.at], line); err != nil {
			return was, nil, err
		}
		put = append(put, Put{f.key, all[f.at].Label, into})
		all = fields(put)
		f = f.sure(all)
	}
	if put[len(put)-1].Key == f.key && len(all[f.at].Choices) > 0 {
		f = f.Onward(all) // as from a letter that chooses
	}
	return f, put, nil
}

// put puts a pasted line into the field that has the keys and returns what stands there then.
func (f Form) put(field Field, line string) (Form, string, error) {
	if len(field.Choices) == 0 {
		input, err := f.input.insert([]rune(line))
		f.input = input
		return f, input.String(), err
	}
	c, found := field.byWord(strings.TrimSpace(line))
	if !found {
		return f, "", fmt.Errorf("none of the choices of %s%s", field.Label, unchanged)
	}
	return f, c.Name, nil
}

// linesOf are the lines of a pasted text; one line when something stands for a line break in the text itself.
func linesOf(text []rune, lineBreak string) ([]string, error) {
	if len(text) > LongestPaste {
		return nil, errLongPaste
	}
	plain := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(string(text))
	plain = strings.TrimRight(plain, "\n")
	if lineBreak != "" {
		plain = strings.ReplaceAll(plain, "\n", lineBreak)
	}
	switch lines := strings.Split(plain, "\n"); {
	case strings.TrimSpace(plain) == "":
		return nil, errEmptyPaste
	case len(lines) > mostPasted:
		return nil, errManyLines
	default:
		return lines, nil
	}
}

// paste puts a pasted text into the job: one edit, one undo step. What stays in the field that has the keys goes on from
// there as typing does; behind several lines a field is entered afresh.
func (e Editor) paste(text []rune, s desk.State) (Editor, desk.Change, Event) {
	e = e.looked(s)
	f, _ := e.on(e.record, s)
	refused := Refused(e.record, s.Job)
	f, put, err := f.Paste(text, func(put []Put) []Field { return fieldsOf(e.record, s, refused, put) })
	if err != nil {
		return e, desk.Change{Say: err.Error()}, Event{}
	}
	done, err := e.enter(put, s)
	if err != nil {
		return e, desk.Change{Say: err.Error()}, Event{}
	}
	was := e.record.ID()
	e, s = done.editor, done.state
	e.form = f
	if len(put) == 1 && put[0].Key == f.key {
		return e.goneOn(was, strings.TrimPrefix(f.key, was+"/"), Event{}, s), done.change, Event{Key: f.key}
	}
	done.change.Say = pastedWords(len(put), done.refused)
	return e.arrived(was, s), done.change, Event{Key: f.key}
}

// arrived enters the field that has the keys afresh. The record was called was.
func (e Editor) arrived(was string, s desk.State) Editor {
	e.from = origin{}
	f, fields := e.on(e.record, s)
	f.key = e.record.ID() + "/" + strings.TrimPrefix(f.key, was+"/")
	if e.form = f.looked(fields); index(fields, f.key) >= 0 {
		e.form = f.Open(f.key, fields)
	}
	return e
}

// pastedWords says what was made of so many pasted lines, "" for one: that stands in its field.
func pastedWords(lines, refused int) string {
	switch {
	case lines == 1:
		return ""
	case refused == 0:
		return fmt.Sprintf("%d lines taken", lines)
	}
	return fmt.Sprintf("%d of %d lines taken, %d %s", lines-refused, lines, refused, words.Refused)
}

// count is "1 field", "2 fields".
func count(n int, of string) string {
	if n == 1 {
		return "1 " + of
	}
	return fmt.Sprintf("%d %ss", n, of)
}
