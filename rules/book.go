package rules

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"

	"bench.example/undermark/vehicles"
)

// Sense says on which side of a rule's value is right.
type Sense uint8

// The senses of a rule.
const (
	Least Sense = iota // at least the value
	Most               // at most the value
)

func (s Sense) String() string { return [...]string{"least", "most"}[s] }

// Rule is one value of a book: of an id, and of a kind of thing where Kind is not "".
type Rule struct {
	ID, Kind   string
	Value      vehicles.Number // not set: nobody but the heater's maker can say
	Unit       string          // mm, mm/m, deg, count or ""
	Sense      Sense
	Title, Ask string // in a fitter's words: what is asked, and why or how to find out
	Source     string
	Book       string // which book says it: "this job", "workshop", "built in"
}

// Key is the name the rule goes by in a job's [rules].
func (r Rule) Key() string { return ruleKey(r.ID, r.Kind) }

func ruleKey(id, kind string) string {
	if kind == "" {
		return id
	}
	return id + "." + kind
}

// The names of the books, as findings say them.
const (
	ThisJob  = "this job"
	Workshop = "workshop"
	BuiltIn  = "built in"
)

// Book is what is allowed: rules by id and kind, over the books behind it. It is never changed once made.
type Book struct {
	rules []Rule              // in the order of the file, kinds behind their general rule
	by    map[string]*entries // by id
	under *Book               // speaks when this one says nothing; nil for the last
}

// entries are what one book says under an id.
type entries struct {
	general *Rule // nil: nothing without a kind
	kinds   map[string]*Rule
}

// of is what the entries say of a kind: their own word for it before the general one; nil for nothing.
func (e *entries) of(kind string) *Rule {
	if r := e.kinds[kind]; r != nil {
		return r
	}
	return e.general
}

//go:embed book.toml
var builtinText []byte

// Builtin returns the book the program comes with.
func Builtin() *Book { return builtin() }

var builtin = sync.OnceValue(func() *Book {
	book, err := parseBook(builtinText, "book.toml", BuiltIn, nil)
	if err != nil {
		panic(err) // the program's own file, held by a test
	}
	return book
})

// Over returns the book b with another behind it.
func (b *Book) Over(under *Book) *Book {
	c := *b
	c.under = under
	return &c
}

func newBook(rules []Rule) *Book {
	b := &Book{rules: rules, by: make(map[string]*entries, len(rules))}
	for i := range rules {
		r := &rules[i]
		e := b.by[r.ID]
		if e == nil {
			e = &entries{}
			b.by[r.ID] = e
		}
		if r.Kind == "" {
			e.general = r
			continue
		}
		if e.kinds == nil {
			e.kinds = map[string]*Rule{}
		}
		e.kinds[r.Kind] = r
	}
	return b
}

// ForJob returns the book with the job's own rules in front, and a fault for every rule of the job that no book knows.
func (b *Book) ForJob(job vehicles.Job) (*Book, []vehicles.Fault) {
	if len(job.Rules) == 0 {
		return b, nil
	}
	var faults []vehicles.Fault
	own := make([]Rule, 0, len(job.Rules))
	for key, value := range job.Rules {
		rule, ok := knownRules()[key]
		if !ok {
			faults = append(faults, vehicles.Fault{Key: vehicles.JoinKey("rules", key), Text: unknownRule(key)})
			continue
		}
		rule.Value, rule.Source, rule.Book = vehicles.Some(value), ThisJob, ThisJob
		own = append(own, rule)
	}
	slices.SortFunc(faults, func(a, b vehicles.Fault) int { return strings.Compare(a.Key, b.Key) })
	return newBook(own).Over(b), faults
}

// Lookup returns the rule that holds for an id and a kind ("" for none): the nearest book that says anything about it
// speaks, its entry for the kind before its general one. ok is false when no book does.
func (b *Book) Lookup(id, kind string) (rule Rule, ok bool) {
	if r := b.find(id, kind); r != nil {
		return *r, true
	}
	return Rule{}, false
}

// find is Lookup without the copy; nil when no book says anything.
func (b *Book) find(id, kind string) *Rule {
	for ; b != nil; b = b.under {
		if e := b.by[id]; e != nil {
			if r := e.of(kind); r != nil {
				return r
			}
		}
	}
	return nil
}

// byKind is find for one id and many kinds: what the books say under the id, the nearest first.
type byKind []*entries

func (b *Book) ofKinds(id string) byKind {
	var list byKind
	for ; b != nil; b = b.under {
		if e := b.by[id]; e != nil {
			list = append(list, e)
		}
	}
	return list
}

func (list byKind) of(kind string) *Rule {
	for _, e := range list {
		if r := e.of(kind); r != nil {
			return r
		}
	}
	return nil
}

// Rules lists every rule that can speak, in the built-in book's order: for each id and kind the one that holds.
func (b *Book) Rules() []Rule {
	var list []Rule
	for _, id := range ruleIDs() {
		for _, kind := range append([]string{""}, kindsOf(id)...) {
			if !b.says(id, kind) {
				continue
			}
			rule := *b.find(id, kind)
			if rule.Kind != kind { // a nearer book's general value speaks for the kind
				rule = ofKind(rule, kind)
			}
			list = append(list, rule)
		}
	}
	return list
}

// says tells whether this book or one behind it has an entry for the very kind, or the general one for "".
func (b *Book) says(id, kind string) bool {
	for ; b != nil; b = b.under {
		if e := b.by[id]; e != nil && (kind == "" && e.general != nil || e.kinds[kind] != nil) {
			return true
		}
	}
	return false
}

// ruleIDs are the ids of the built-in book, in its order.
var ruleIDs = sync.OnceValue(func() []string {
	var ids []string
	for _, r := range Builtin().rules {
		if r.Kind == "" {
			ids = append(ids, r.ID)
		}
	}
	return ids
})

// kindsOf returns the kinds a rule may have values for.
func kindsOf(id string) []string {
	switch {
	case strings.HasSuffix(id, ".clearance"), strings.HasSuffix(id, ".shielded"):
		return vehicles.Kinds
	case id == "exhaust.outlet":
		return vehicles.OpeningKinds
	case id == "stub.in-cut":
		return []string{"exhaust", "intake", "fuel"}
	}
	return nil
}

// knownRules are all rules that may be given a value, by key, without one.
var knownRules = sync.OnceValue(func() map[string]Rule {
	known := map[string]Rule{}
	for _, r := range Builtin().rules {
		if r.Kind != "" {
			continue
		}
		r.Value = vehicles.Number{}
		known[r.ID] = r
		for _, kind := range kindsOf(r.ID) {
			known[ruleKey(r.ID, kind)] = ofKind(r, kind)
		}
	}
	return known
})

// ofKind is a general rule made into the one for a kind.
func ofKind(general Rule, kind string) Rule {
	general.Kind = kind
	general.Title += ": " + kind
	return general
}

func unknownRule(key string) string {
	hint := ""
	if _, _, near, ok := vehicles.SplitRule(key); !ok && near != "" {
		hint = fmt.Sprintf("; near it is %q", near)
	}
	return fmt.Sprintf("%q is no rule%s; all are listed by: undermark rules", key, hint)
}
