package vehicles

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// FormatVersion is the job file's format that this package reads and writes.
const FormatVersion = 1

// LargestFile is the size of the largest job file, bytes: a thousand obstructions are a tenth of it.
const LargestFile = 4 << 20

// deepest is how deep tables and lists may stand in each other. A reader that goes down with them needs a bound.
const deepest = 100

// Inspector says what whoever judges a job finds wrong with it: wrong is what only others than this package know of,
// contradictions are the faults of reducing it, which are asked for only where nothing is wrong.
type Inspector interface {
	Wrong(Job) []Fault
	Reduce(Job) (Plan, []Fault)
}

// ParseJob reads a job file for whoever judges it, by the inspectors; without one readings are reduced by Reduce. file is the
// name that errors carry.
//
// The error is of type FileErrors and holds all that is wrong, each with its line; where the text is no TOML, only
// that. When only the readings contradict each other or themselves, the job beside the error is whole: WholeJob says so.
func ParseJob(data []byte, file string, inspectors ...Inspector) (Job, error) {
	if len(inspectors) == 0 {
		inspectors = []Inspector{unjudged{}}
	}
	job, faults := parse(data, file)
	for _, inspector := range inspectors {
		faults = append(faults, located(inspector.Wrong(job), data, file)...)
	}
	if len(faults) > 0 {
		return job, faults.sorted()
	}
	for _, inspector := range inspectors {
		_, contradictions := inspector.Reduce(job)
		faults = append(faults, located(contradictions, data, file)...)
	}
	if len(faults) == 0 {
		return job, nil
	}
	for i := range faults {
		faults[i].reading = true
	}
	return job, faults.sorted()
}

// unjudged is the inspector of a job that nobody judges.
type unjudged struct{}

func (unjudged) Wrong(Job) []Fault              { return nil }
func (unjudged) Reduce(job Job) (Plan, []Fault) { return Reduce(job) }

// located gives faults of a job their lines in its file.
func located(faults []Fault, data []byte, file string) (errs FileErrors) {
	if len(faults) == 0 {
		return nil
	}
	at := locate(string(data))
	for _, f := range faults {
		errs = append(errs, FileError{File: file, Line: at.find(f.Key), Key: f.Key, Text: f.Text})
	}
	return errs
}

// parse reads a job file as far as its form and its values go. With faults the job holds what was right.
func parse(data []byte, file string) (Job, FileErrors) {
	values, wrong := decode(data)
	if wrong != nil {
		wrong.File = file
		return Job{}, FileErrors{*wrong}
	}
	r := &reader{names: map[string][]string{}}
	var job Job
	if r.version(values) {
		job = readJob(r, values)
	}
	return job, r.errors(data, file)
}

// version says whether the file is of the format this package reads. One of another format is not read further.
func (r *reader) version(values map[string]any) bool {
	v, there := values["format"]
	switch {
	case len(values) == 0:
		r.fault("", " holds nothing: a job file starts with format = %d", FormatVersion)
	case !there:
		r.fault("format", " is missing: a job file starts with format = %d", FormatVersion)
	case v != int64(FormatVersion):
		r.fault("format", " is %s; this program reads format = %d", found(v), FormatVersion)
	default:
		return true
	}
	return false
}

// errors gives the faults their lines.
func (r *reader) errors(data []byte, file string) FileErrors {
	if len(r.faults) == 0 {
		return nil
	}
	at := locate(string(data))
	errs := make(FileErrors, len(r.faults))
	for i, f := range r.faults {
		text := describe(f.key, r.names) + f.text
		if f.also != "" {
			text += fmt.Sprint(at.find(f.also))
		}
		errs[i] = FileError{File: file, Line: at.find(f.key), Key: f.key, Text: text}
	}
	errs[0].more = r.more
	return errs.sorted()
}

func (e FileErrors) sorted() FileErrors {
	slices.SortStableFunc(e, func(a, b FileError) int { return a.Line - b.Line })
	return e
}

// decode reads the text as TOML 1.0, or says where it is none.
func decode(data []byte) (map[string]any, *FileError) {
	switch {
	case len(data) > LargestFile:
		return nil, &FileError{Text: fmt.Sprintf("holds more than %d MiB, too much for a job file: is it the right file?", LargestFile>>20)}
	case bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")):
		return nil, &FileError{Line: 1, Text: "the file is UTF-16: save it as UTF-8"}
	case !utf8.Valid(data):
		good := 0
		for r, n := utf8.DecodeRune(data); r != utf8.RuneError || n != 1; r, n = utf8.DecodeRune(data[good:]) {
			good += n
		}
		return nil, &FileError{Line: lineAt(data, good), Text: fmt.Sprintf("a byte %#x that is no UTF-8: save the file as UTF-8", data[good])}
	}
	if line := tooDeep(data); line > 0 {
		return nil, &FileError{Line: line, Text: fmt.Sprintf("tables or lists stand more than %d deep in each other", deepest)}
	}
	var values map[string]any
	if _, err := toml.Decode(string(data), &values); err != nil {
		return nil, notTOML(data, err)
	}
	if bytes.ContainsAny(data, `{\`) { // in braces or behind a backslash
		if later := locate(string(data)).newer; len(later) > 0 {
			return nil, &FileError{Line: later[0].line, Text: "not TOML 1.0: " + later[0].text}
		}
	}
	return values, nil
}

// ReadTOML reads a file of TOML 1.0 that is no larger than a job file: what it holds, and its values. The error is one
// line, with the line of the file where it is no TOML; it is fs.ErrNotExist when there is no file.
func ReadTOML(path string) (data []byte, values map[string]any, err error) {
	if data, err = ReadFile(path); err != nil {
		return nil, nil, err
	}
	values, wrong := decode(data)
	if wrong != nil {
		wrong.File = path
		return data, nil, *wrong
	}
	return data, values, nil
}

// lineAt is the line of a byte, from 1.
func lineAt(data []byte, at int) int {
	return 1 + bytes.Count(data[:max(0, min(at, len(data)))], []byte("\n"))
}

// tooDeep returns the line where brackets stand too deep in each other, or a key has too many points, 0 for nowhere: a reader
// goes down with both. What stands in texts and comments does not count: of what is no TOML, a reader gets no further than
// where it begins to be none.
func tooDeep(data []byte) int {
	l := lines{text: string(data), line: 1}
	depth, points := 0, 0
	var before byte // the last that is no blank
	for l.at < len(l.text) {
		c := l.peek()
		switch {
		case c == '"' || c == '\'':
			l.quoted()
			before = c
			continue
		case c == '#':
			l.space(true)
			points, before = 0, c
			continue
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			depth = max(0, depth-1)
		}
		switch {
		case c == ' ' || c == '\t':
		case c == '.' && before != '.':
			points++
		case !strings.ContainsRune(bareKeyRunes, rune(c)):
			points = 0
		}
		if c != ' ' && c != '\t' {
			before = c
		}
		if depth > deepest || points > deepest {
			return l.line
		}
		l.advance()
	}
	return 0
}

// hints say what to do about what the TOML library finds; the first whose words it used speaks.
var hints = []struct{ words, hint string }{
	{"already been defined", "each key and [table] stands once; a list of things is written [[like this]]"},
	{"was already created", "each key and [table] stands once; a list of things is written [[like this]]"},
	{"expected value but found", `a text goes in quotes ("brake line"), a list in [ ], true and false are small`},
	{"strings cannot contain newlines", `close the quotes on the same line, or put the text in """ """`},
	{"expected '.' or '='", "a line is key = value; a key with blanks goes in quotes"},
	{"key separator '='", "a line is key = value"},
	{"array terminator", "parting commas and a closing ] make a list"},
	{"top-level item to end", "one key = value on a line, with a point as decimal mark and texts in quotes"},
	{"invalid escape", `write \\ for a backslash and \" for quotes in a text`},
	{"leading zeroes", "take the zeroes in front away"},
	{"datetime", "a date is 2026-11-25"},
	{"table name", "a table is [name], a list of them [[name]]"},
	{"array name", "a list of tables is [[name]]"},
	{"unexpected EOF", "the file ends too early: close what is open, or fetch the whole file"},
}

// notTOML says where and why a text is no TOML.
func notTOML(data []byte, err error) *FileError {
	var at toml.ParseError
	if !errors.As(err, &at) {
		return &FileError{Line: 1, Text: "not TOML: " + oneLine(err.Error())}
	}
	text := "not TOML: " + strings.TrimSuffix(at.Message, ".")
	for _, h := range hints {
		if strings.Contains(at.Message, h.words) {
			text += "; " + h.hint
			break
		}
	}
	return &FileError{Line: syntaxLine(data, at), Text: oneLine(text)}
}

// syntaxLine is the line to mend. The library's own lines are of where it stopped: a list or a table in braces that
// lacks its end, or a comma, is to be mended where its last value stands, and an unclosed text where it starts.
func syntaxLine(data []byte, at toml.ParseError) int {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	start := min(at.Position.Start, len(data))
	switch {
	case strings.Contains(at.Message, "terminator"):
		start = len(bytes.TrimSpace(data[:start]))
	case strings.Contains(at.Message, "unexpected EOF"):
		if open := locate(string(data)).open; open > 0 {
			return open
		}
		start = len(bytes.TrimSpace(data))
	}
	return lineAt(data, start)
}
