package rules

import (
	"slices"
	"sync"

	"bench.example/undermark/vehicles"
)

// Rule is one thing that is asked of a job. All that is known of it stands in one value, in the file of its group, but for
// the numbers it asks for: those are a book's, with their sources.
type Rule struct {
	ID        string // what books, jobs and programs call it, its group first; never given to another rule
	Findings  string // the id its findings carry where they are a case of another's; "" where that is ID
	Unit      Unit
	Sense     Sense
	Weight    Weight // what a fault can do
	ByFuel    bool   // a tank that holds diesel may have a value of its own
	ByKind    Sort   // the sort of thing whose kinds may have values of their own; Nothing: none has
	AtCut     bool   // of the hole itself and what is bolted to it, not of the runs
	HoldsBack bool   // others are doubtful while it is not clear
	Values    *Rule  // the rule whose values it goes by; nil: it has its own

	Word   string // what its findings are called in a list
	Title  string // what is asked, in a fitter's words
	Ask    string // why, or how to find the value out
	Advice string // what to do about a finding that is not clear

	named naming    // what a list names behind the word
	short shortfall // by how much a finding misses; none where the check says what is counted
	doubt string    // why a finding above the limit is doubtful, where it is never foul; "" where it may be
	unset string    // why a finding is doubtful while nobody has given the rule a value; "": the heater's figure is needed
	reach bool      // it gives no finding, but says how far below the floor a thing may be and still count

	check func(*judge, *Rule)  // holds a job to it; nil where another rule's check asks for its value
	keep  keeper               // what it asks of the place of the cut
	way   func(*course, *Rule) // what it asks of the way of a run that is sought; nil: nothing that the search could heed
	ends  bool                 // it is of where a run ends alone
}

// Unit is what a rule's value is in.
type Unit string

// The units.
const (
	MM     Unit = "mm"
	PerM   Unit = "mm/m"
	Degree Unit = "deg"
	Count  Unit = "count"
	Times  Unit = "times" // one of another
	Pure   Unit = ""      // a square of a deviation over its uncertainty
)

// Sense says on which side of a rule's value is right.
type Sense uint8

// The senses of a rule.
const (
	Least Sense = iota // at least the value
	Most               // at most the value
)

func (s Sense) String() string { return [...]string{"least", "most"}[s] }

// naming is what a list names behind the word for a finding.
type naming uint8

const (
	otherNamed   naming = iota // what it is held against: "cut: brake pipe, right"
	subjectNamed               // what it is of: "stub in the cut: exhaust"
	bothNamed                  // in place of the word what it is of, and what that is held against: "bolt hole 1: floor"
	pairNamed                  // what it is of and what that is held against: "full travel, exhaust: rear axle"
	axisNamed                  // what it is held against, and which of its readings
	wordAlone                  // nothing: the word says all
)

// shortfall is how a finding that is foul misses what is asked.
type shortfall struct {
	words  string // a format for the amount
	margin bool   // they say no more than the finding's margin does, in mm
}

// The ways most findings miss.
var (
	tooClose       = shortfall{"%s mm too close", true}
	tooMuch        = shortfall{"%s mm too much", true}
	degreesTooFew  = shortfall{words: "%s degrees too few"}
	degreesTooMany = shortfall{words: "%s degrees too many"}
	tooFarForward  = shortfall{words: "points %s° too far forward"}
	tooFarUp       = shortfall{words: "points %s° too far up"}
)

// What several rules say of the figure that they ask for.
const (
	enterFigure = "Enter the figure of your heater's instructions"
	bendsChoke  = "Every bend chokes the flow: see the heater's instructions."
)

// Advice that several rules give.
const (
	moveExhaust       = "move the points of the exhaust, in Runs."
	moveIntake        = "move the points of the intake, in Runs."
	moveOrTurn        = "move the cut, or turn the heater, in Place."
	moveOff           = "move the cut away from it, in Place."
	leadFuelElsewhere = "move or turn the heater, or lead the fuel line through elsewhere."
	tiltPump          = "turn the pump to the tilt its instructions ask for."
	addClip           = "add a clip in the longest stretch."
	mendShortLegs     = "lengthen the short legs, or use a tighter bend."
)

// Group is rules that are about one thing.
type Group struct {
	Name  string
	rules []*Rule
}

// Groups are the groups of rules, in the order of allRules.
var Groups = []Group{
	{"survey", surveyRules},
	{"pilot hole", pilotRules},
	{"cut", cutRules},
	{"holes beside the cut, inside the floor", slices.Concat(holeRules, inFloorRules)},
	{"heater", heaterRules},
	{"heater's air", airRules},
	{"exhaust", exhaustRules},
	{"outlet", outletRules},
	{"intake", intakeRules},
	{"fuel", fuelRules},
	{"runs of the driven van, clips and reach", runsRules},
}

// Limits lists every limit of the group that can speak, by a book.
func (g *Group) Limits(b *Book) (list []Limit) {
	for _, r := range g.rules {
		if r.Values == nil {
			list = append(list, b.limitsOf(r)...)
		}
	}
	return list
}

// allRules are in the order in which a job is held to them: what others rest on comes first. Findings that are as bad as
// each other keep it.
var allRules = func() (all []*Rule) {
	for _, g := range Groups {
		all = append(all, g.rules...)
	}
	return all
}()

var rulesByID = sync.OnceValue(func() map[string]*Rule {
	by := make(map[string]*Rule, len(allRules))
	for _, r := range allRules {
		by[r.ID] = r
	}
	return by
})

// FindingID is the id that findings of the rule carry.
func (r *Rule) FindingID() string {
	if r.Findings != "" {
		return r.Findings
	}
	return r.ID
}

// kinds are the kinds of thing that may have values of their own under the rule.
func (r *Rule) kinds() []string {
	switch r.ByKind {
	case AnObstruction:
		if r.ByFuel {
			kinds := slices.Clone(vehicles.Kinds)
			for _, tank := range vehicles.KindsWith(vehicles.VanTank) {
				kinds = append(kinds, tank+ofDiesel)
			}
			return kinds
		}
		return vehicles.Kinds
	case AnOpening:
		return vehicles.OpeningKinds
	case AStub:
		return []string{TheExhaust.String(), TheIntake.String(), TheFuel.String()}
	}
	return nil
}

// ofDiesel ends the kind of a fuel tank under a rule that has a value of its own for one with diesel.
const ofDiesel = "." + vehicles.Diesel

// Key is the name that the rule's value for a kind goes by in a job's [rules]; kind is "" for its general value.
func (r *Rule) Key(kind string) string {
	id := r.valued().ID
	if kind == "" {
		return id
	}
	return id + "." + kind
}

// valued is the rule under which a book has the values that this one goes by.
func (r *Rule) valued() *Rule {
	if r.Values != nil {
		return r.Values
	}
	return r
}

// ownValues are the rules that books have values for.
var ownValues = sync.OnceValue(func() []*Rule {
	return slices.DeleteFunc(slices.Clone(allRules), func(r *Rule) bool { return r.Values != nil })
})

// keyed is what a key stands for: a rule's value for a kind, "" for its general one.
type keyed struct {
	rule *Rule
	kind string
}

var rulesByKey = sync.OnceValue(func() map[string]keyed {
	by := map[string]keyed{}
	for _, r := range ownValues() {
		for _, kind := range append([]string{""}, r.kinds()...) {
			by[r.Key(kind)] = keyed{r, kind}
		}
	}
	return by
})

// ruleOf is the rule and the kind that a key stands for; ok is false for one that stands for none.
func ruleOf(key string) (r *Rule, kind string, ok bool) {
	k, ok := rulesByKey()[key]
	return k.rule, k.kind, ok
}
