package rules

import (
	_ "embed"
	"maps"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"bench.example/undermark/vehicles"
)

// Practice is the source of what the trade does and nobody has printed.
const Practice = "common practice, no source"

// UnlessHeaterSays goes on behind a figure of common practice for something that the heater comes with words on.
const UnlessHeaterSays = ", unless the heater's instructions say another"

// Limit is what a book asks under a rule: of a kind of thing where Kind is not "".
type Limit struct {
	*Rule
	Kind   string
	Value  vehicles.Number // not set: nobody but the heater's maker can say
	Source string
	Book   string // which book says it: "this job", "workshop", "built in"
}

// Key is the name the limit goes by in a job's [rules].
func (l *Limit) Key() string { return l.Rule.Key(l.Kind) }

// Heading is the rule's title, with the kind it is for.
func (l *Limit) Heading() string {
	if l.Kind == "" {
		return l.Title
	}
	return l.Title + ": " + l.Kind
}

// The names of the books, as findings say them.
const (
	ThisJob  = "this job"
	Workshop = "workshop"
	BuiltIn  = "built in"
)

// Book is what is allowed: limits by rule and kind, over the books behind it. It is never changed once made.
type Book struct {
	limits []Limit            // in the order of the file, kinds behind their general limit
	by     map[*Rule]*entries // what it says under each rule
	under  *Book              // speaks when this one says nothing; nil for the last

	kinds sync.Map // of []*Limit by *Rule, for ofEachKind

	own atomic.Pointer[ownBook] // what ForJob made last: a job's own rules seldom change, and each key asks for them
}

// ownBook is a book with a job's own rules in front, and what is wrong with those.
type ownBook struct {
	rules  map[string]float64
	book   *Book
	faults []vehicles.Fault
}

// entries are what one book says under a rule.
type entries struct {
	general *Limit // nil: nothing without a kind
	kinds   map[string]*Limit
}

// of is what the entries say of a kind: their own word for it before the general one, of a tank with diesel before that
// of any tank; nil for nothing.
func (e *entries) of(kind string) *Limit {
	if l := e.kinds[kind]; l != nil {
		return l
	}
	if tank, diesel := strings.CutSuffix(kind, ofDiesel); diesel {
		return e.of(tank)
	}
	return e.general
}

//go:embed book.toml
var builtinText []byte

// Builtin returns the book the program comes with.
func Builtin() *Book { return builtin() }

var builtin = sync.OnceValue(func() *Book {
	book, err := parseBook(builtinText, "book.toml", BuiltIn)
	if err != nil {
		panic(err) // the program's own file, held by a test
	}
	return book
})

// Over returns the book b with another behind it.
func (b *Book) Over(under *Book) *Book {
	return &Book{limits: b.limits, by: b.by, under: under}
}

func newBook(limits []Limit) *Book {
	b := &Book{limits: limits, by: make(map[*Rule]*entries, len(limits))}
	for i := range limits {
		l := &limits[i]
		e := b.by[l.Rule]
		if e == nil {
			e = &entries{}
			b.by[l.Rule] = e
		}
		if l.Kind == "" {
			e.general = l
			continue
		}
		if e.kinds == nil {
			e.kinds = map[string]*Limit{}
		}
		e.kinds[l.Kind] = l
	}
	return b
}

// ForJob returns the book with the job's own rules in front, and what is wrong with those, as Wrong says it.
func (b *Book) ForJob(job vehicles.Job) (*Book, []vehicles.Fault) {
	if len(job.Rules) == 0 {
		return b, nil
	}
	own := b.own.Load()
	if own == nil || !maps.Equal(own.rules, job.Rules) {
		own = &ownBook{maps.Clone(job.Rules), newBook(ownLimits(job.Rules)).Over(b), wrongRules(job)}
		b.own.Store(own)
	}
	return own.book, slices.Clone(own.faults)
}

// ownLimits are the limits that a job's own rules set.
func ownLimits(rules map[string]float64) []Limit {
	own := make([]Limit, 0, len(rules))
	for key, value := range rules {
		if rule, kind, ok := ruleOf(key); ok {
			own = append(own, Limit{Rule: rule, Kind: kind, Value: vehicles.Some(value), Source: ThisJob, Book: ThisJob})
		}
	}
	return own
}

// Lookup returns the limit that holds under a rule's id for a kind ("" for none): the nearest book that says anything
// about it speaks, its entry for the kind before its general one. ok is false when no book does.
func (b *Book) Lookup(id, kind string) (limit Limit, ok bool) {
	if rule := rulesByID()[id]; rule != nil {
		if l := b.find(rule, kind); l != nil {
			return *l, true
		}
	}
	return Limit{}, false
}

func (b *Book) find(rule *Rule, kind string) *Limit {
	for ; b != nil; b = b.under {
		if e := b.by[rule.valued()]; e != nil {
			if l := e.of(kind); l != nil {
				return l.under(rule)
			}
		}
	}
	return nil
}

// under is the limit as a rule goes by it, which may be another than the one it stands under.
func (l *Limit) under(rule *Rule) *Limit {
	if l.Rule == rule {
		return l
	}
	own := *l
	own.Rule = rule
	return &own
}

// of is the limit that holds under a rule in general. Where no book says anything it is one without a value.
func (b *Book) of(rule *Rule) *Limit { return b.ofKinds(rule).of("") }

// byKind is what a book says under a rule, kind by kind.
type byKind struct {
	rule *Rule
	book *Book
}

func (b *Book) ofKinds(rule *Rule) byKind { return byKind{rule, b} }

// ofEachKind are the limits of a rule by kind of obstruction, as vehicles.KindIndex has them. They are looked up once in a book's
// life: each judging asks, and each run that is tried.
func (b *Book) ofEachKind(rule *Rule) []*Limit {
	if known, there := b.kinds.Load(rule); there {
		return known.([]*Limit)
	}
	said, limits := b.ofKinds(rule), make([]*Limit, len(vehicles.Kinds)+1)
	for i, kind := range vehicles.Kinds {
		limits[i] = said.of(kind)
	}
	limits[len(vehicles.Kinds)] = said.of("") // a kind that has no name
	known, _ := b.kinds.LoadOrStore(rule, limits)
	return known.([]*Limit)
}

// of is the limit that holds for a kind. Where no book says anything it is one without a value.
func (k byKind) of(kind string) *Limit {
	if l := k.book.find(k.rule, kind); l != nil {
		return l
	}
	return &Limit{Rule: k.rule}
}

// Limits lists every limit that can speak, in the built-in book's order: for each rule and kind the one that holds.
func (b *Book) Limits() []Limit {
	var list []Limit
	for i := range Builtin().limits {
		if rule := Builtin().limits[i]; rule.Kind == "" {
			list = append(list, b.limitsOf(rule.Rule)...)
		}
	}
	return list
}

// says tells whether any of the books has something of its own under a rule for a kind, "" for in general.
func (b *Book) says(rule *Rule, kind string) bool {
	for ; b != nil; b = b.under {
		if e := b.by[rule.valued()]; e != nil && (kind == "" && e.general != nil || e.kinds[kind] != nil) {
			return true
		}
	}
	return false
}

func (b *Book) limitsOf(rule *Rule) (list []Limit) {
	said := b.ofKinds(rule)
	for _, kind := range append([]string{""}, rule.kinds()...) {
		if b.says(rule, kind) {
			limit := *said.of(kind)
			limit.Kind = kind // a nearer book's general value may speak for the kind
			list = append(list, limit)
		}
	}
	return list
}
