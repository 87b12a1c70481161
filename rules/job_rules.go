package rules

import (
	"fmt"
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
	var wrong []string
	for key, value := range job.Rules {
		if rule, _, ok := ruleOf(key); !ok || rule.Unit == MM && vehicles.ALength.Takes(value) != nil {
			wrong = append(wrong, key)
		}
	}
	slices.Sort(wrong)
	for _, key := range wrong {
		text := fmt.Sprintf("%q is %s; it %v", key, survey.Exact(job.Rules[key]), vehicles.ALength.Takes(job.Rules[key]))
		if _, _, ok := ruleOf(key); !ok {
			text = noRule(key)
		}
		faults = append(faults, vehicles.Fault{Key: vehicles.RuleKey(key), Text: "rules: " + text})
	}
	return faults
}

// Reduce places all that a job measures, with the book's word for how far a chain may miss its overall reading.
func Reduce(job vehicles.Job, book *Book) (vehicles.Plan, []vehicles.Fault) {
	return ReduceAfter(nil, job, book)
}

// ReduceAfter is Reduce of a job that was edited: what the edit did not touch is taken over from the plan before it.
func ReduceAfter(before *vehicles.Plan, job vehicles.Job, book *Book) (vehicles.Plan, []vehicles.Fault) {
	if book == nil {
		book = Builtin()
	}
	own, _ := book.ForJob(job)
	return vehicles.ReduceAfter(before, &job, own.closureLimit())
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
