package rules

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"path/filepath"
	"slices"

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
// a source. The error is all that is wrong, a line each: FILE:LINE: what is wrong and what to do.
func LoadBook(path string) (*Book, error) {
	text, values, err := vehicles.ReadTOML(path)
	if err != nil {
		return nil, err
	}
	if faults := misread(values); len(faults) > 0 {
		return nil, vehicles.FaultsIn(text, path, faults)
	}
	return parseBook(text, path, Workshop)
}

func parseBook(text []byte, file, name string) (*Book, error) {
	var f bookFile
	if _, err := toml.Decode(string(text), &f); err != nil {
		return nil, fmt.Errorf("%s: %w", file, err) // of the program's own file: others are looked into before
	}
	if f.Format != 1 {
		return nil, vehicles.FaultsIn(text, file, []vehicles.Fault{{Key: "format", Text: fmt.Sprintf("format is %d: this program reads format = 1", f.Format)}})
	}
	var limits []Limit
	var faults []vehicles.Fault
	there := map[string]bool{}
	for i, r := range f.Rules {
		added, wrong, leaf := r.limits(name)
		if wrong == "" {
			wrong, leaf = repeated(there, added), "id"
		}
		if wrong != "" {
			faults = append(faults, vehicles.Fault{Key: fmt.Sprintf("rule[%d].%s", i, leaf), Text: wrong})
		}
		limits = append(limits, added...)
	}
	return newBook(limits), vehicles.FaultsIn(text, file, faults)
}

// repeated says which of the added limits is there already, and notes them all.
func repeated(there map[string]bool, added []Limit) (wrong string) {
	for _, a := range added {
		key := a.Key()
		if there[key] && wrong == "" {
			wrong = fmt.Sprintf("rule %q is there twice: keep one", key)
		}
		there[key] = true
	}
	return wrong
}

// limits turns one [[rule]] into the general limit and those of its kinds. What is wrong is said with the key it is at.
func (r ruleFile) limits(name string) (limits []Limit, wrong, leaf string) {
	rule := rulesByID()[r.ID]
	if rule == nil || rule.Values != nil {
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
			return nil, fmt.Sprintf("%q has no kind %q", r.ID, kind), vehicles.JoinKey("kinds", kind)
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
