package rules

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"
	"github.com/adrg/xdg"

	"bench.example/undermark/vehicles"
)

// bookFile is a book as its file has it.
type bookFile struct {
	Format int        `toml:"format"`
	Rules  []ruleFile `toml:"rule"`
}

// ruleFile is what a book says under a rule. Unit and words are the rule's own: they may stand there, and change nothing.
type ruleFile struct {
	ID      string             `toml:"id"`
	Value   *float64           `toml:"value"`
	Unit    string             `toml:"unit"`
	Sense   string             `toml:"sense"`
	Title   string             `toml:"title"`
	Ask     string             `toml:"ask"`
	Source  string             `toml:"source"`
	Kinds   map[string]float64 `toml:"kinds"`
	Sources map[string]string  `toml:"sources"`
}

// WorkshopPath is where a workshop's own book lies.
func WorkshopPath() string { return filepath.Join(xdg.ConfigHome, "undermark", "book.toml") }

// WorkshopBook returns the workshop's own book over the built-in one, or the built-in one when there is none.
func WorkshopBook() (*Book, error) {
	book, err := LoadBook(WorkshopPath())
	if errors.Is(err, fs.ErrNotExist) {
		return Builtin(), nil
	}
	if err != nil {
		return Builtin(), err
	}
	return book.Over(Builtin()), nil
}

// LoadBook reads a workshop's own book: [[rule]] tables with an id of the built-in book, a value, kinds of their own and
// a source. Errors are one line: FILE:LINE: what is wrong and what to do.
func LoadBook(path string) (*Book, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read: %w", path, err)
	}
	return parseBook(text, path, Workshop)
}

func parseBook(text []byte, file, name string) (*Book, error) {
	var f bookFile
	meta, err := toml.Decode(string(text), &f)
	if err != nil {
		return nil, decodeError(err, file)
	}
	if extra := meta.Undecoded(); len(extra) > 0 {
		leaf := extra[0][len(extra[0])-1]
		return nil, fmt.Errorf("%s:%d: unknown key %q: a rule has id, value, unit, sense, title, ask, source, kinds and sources",
			file, lineOf(text, -1, leaf), extra[0])
	}
	if f.Format != 1 {
		return nil, fmt.Errorf("%s:%d: format is %d: this program reads format = 1", file, lineOf(text, -1, "format"), f.Format)
	}
	var limits []Limit
	for i, r := range f.Rules {
		added, wrong, leaf := r.limits(name)
		if wrong == "" {
			wrong, leaf = repeated(limits, added), "id"
		}
		if wrong != "" {
			return nil, fmt.Errorf("%s:%d: %s", file, lineOf(text, i, leaf), wrong)
		}
		limits = append(limits, added...)
	}
	return newBook(limits), nil
}

func decodeError(err error, file string) error {
	var parse toml.ParseError
	if errors.As(err, &parse) {
		return fmt.Errorf("%s:%d: %s", file, parse.Position.Line, parse.Message)
	}
	return fmt.Errorf("%s: %s", file, strings.TrimPrefix(err.Error(), "toml: "))
}

// repeated says which of the added limits is there already.
func repeated(limits, added []Limit) string {
	for _, a := range added {
		if slices.ContainsFunc(limits, func(l Limit) bool { return l.Key() == a.Key() }) {
			return fmt.Sprintf("rule %q is there twice: keep one", a.Key())
		}
	}
	return ""
}

// limits turns one [[rule]] into the general limit and those of its kinds. What is wrong is said with the key it is at.
func (r ruleFile) limits(name string) (limits []Limit, wrong, leaf string) {
	rule := rulesByID()[r.ID]
	if rule == nil {
		return nil, noRule(r.ID), "id"
	}
	switch r.Sense {
	case "", rule.Sense.String():
	case Least.String(), Most.String():
		return nil, fmt.Sprintf("the sense of %q is %q and stays so: leave it out", r.ID, rule.Sense), "sense"
	default:
		return nil, fmt.Sprintf("sense is %q: it is least or most", r.Sense), "sense"
	}
	general := Limit{Rule: rule, Source: r.Source, Book: name}
	if general.Source == "" {
		general.Source = name
	}
	if r.Value != nil {
		general.Value = vehicles.Some(*r.Value)
	}
	if r.Value != nil || name == BuiltIn {
		limits = append(limits, general)
	}
	for _, kind := range sortedKinds(r.Kinds) {
		if !slices.Contains(rule.kinds(), kind) {
			return nil, fmt.Sprintf("%q has no kind %q", r.ID, kind), kind
		}
		own := general
		own.Kind, own.Value = kind, vehicles.Some(r.Kinds[kind])
		if source := r.Sources[kind]; source != "" {
			own.Source = source
		}
		limits = append(limits, own)
	}
	for _, limit := range limits {
		if v := limit.Value.Value; math.IsNaN(v) || math.IsInf(v, 0) {
			return nil, fmt.Sprintf("the value of %q is not a number", limit.Key()), "value"
		}
	}
	return limits, "", ""
}

func sortedKinds(values map[string]float64) []string {
	kinds := make([]string, 0, len(values))
	for kind := range values {
		kinds = append(kinds, kind)
	}
	slices.Sort(kinds)
	return kinds
}

// lineOf returns the line, from 1, of a key in the nth [[rule]] (-1: anywhere), or of that table's beginning, or 1.
func lineOf(text []byte, rule int, leaf string) int {
	line, table := 1, -1
	for i, l := range strings.Split(string(text), "\n") {
		l = strings.TrimSpace(l)
		if strings.HasPrefix(l, "[[rule]]") {
			if table++; table == rule {
				line = i + 1
			}
		}
		key, _, found := strings.Cut(l, "=")
		if found && strings.Trim(strings.TrimSpace(key), `"'`) == leaf && (rule == table || rule == -1) {
			return i + 1
		}
	}
	return line
}
