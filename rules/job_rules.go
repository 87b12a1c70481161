package rules

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sync"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// Wrong says what is wrong with a job's own rules: a name that is no rule's, a length beyond all bounds. With Reduce it
// makes a book a vehicles.Inspector: a job is read and saved by the book that judges it. No book is the built-in one.
func (b *Book) Wrong(job vehicles.Job) []vehicles.Fault { return wrongRules(job) }

// Reduce is the package's Reduce by the book.
func (b *Book) Reduce(job vehicles.Job) (vehicles.Plan, []vehicles.Fault) { return Reduce(job, b) }

func wrongRules(job vehicles.Job) (faults []vehicles.Fault) {
	for _, key := range slices.Sorted(maps.Keys(job.Rules)) {
		value := job.Rules[key]
		wrong := func(text string) {
			faults = append(faults, vehicles.Fault{Key: vehicles.RuleKey(key), Text: "rules: " + text})
		}
		switch rule, _, ok := ruleOf(key); {
		case !ok:
			wrong(noRule(key))
		case rule.Unit == MM && math.Abs(value) > survey.Longest:
			wrong(fmt.Sprintf("%q is %s; it must be a length from -%d to %d mm",
				key, survey.Exact(value), survey.Longest, survey.Longest))
		}
	}
	return faults
}

// Reduce places all that a job measures, with the book's word for how far a chain may miss its overall reading.
func Reduce(job vehicles.Job, book *Book) (vehicles.Plan, []vehicles.Fault) {
	if book == nil {
		book = Builtin()
	}
	own, _ := book.ForJob(job)
	return vehicles.ReduceClosing(job, own.closureLimit())
}

// noRule says that a key is no rule's, and which one it may be meant for.
func noRule(key string) string {
	if rule := rulesByID()[key]; rule != nil {
		return fmt.Sprintf("%q goes by the values of %q: give yours there", key, rule.Values.ID)
	}
	if near := vehicles.Nearest(key, ruleKeys()); near != "" {
		return fmt.Sprintf("%q is no rule; did you mean %q?", key, near)
	}
	return fmt.Sprintf("%q is no rule; all are listed by: undermark rules", key)
}

// ruleKeys are all keys that stand for a rule or for its value for a kind.
var ruleKeys = sync.OnceValue(func() (keys []string) {
	for _, r := range ownValues() {
		keys = append(keys, r.ID)
	}
	for _, r := range ownValues() {
		for _, kind := range r.kinds() {
			keys = append(keys, r.Key(kind))
		}
	}
	return keys
})
