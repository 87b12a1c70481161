package rules

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/geometry/survey"
)

// Nobody who writes a rule can forget its words, its advice, its weight or what it falls short of. That it has a value and
// a source the book's own test says, and that it has jobs that keep it and that don't, that of the jobs.
func TestEveryRuleIsWhole(t *testing.T) {
	titles, id := map[string]bool{}, regexp.MustCompile(`^[a-z]+(\.[a-z-]+)+$`)
	for _, r := range allRules {
		assert.Regexp(t, id, r.ID, "an id is also the name of a folder")
		assert.Same(t, r, rulesByID()[r.ID], "%s is the id of two rules", r.ID)
		assert.False(t, titles[r.Title], "%q is the title of two rules", r.Title)
		titles[r.Title] = true
		assert.NotEmpty(t, r.Title, r.ID)
		assert.NotEmpty(t, r.Ask, r.ID)
		assert.Contains(t, []Unit{MM, PerM, Degree, Count, Times, Pure}, r.Unit, r.ID)
		assert.Contains(t, []Sense{Least, Most}, r.Sense, r.ID)
		assert.Contains(t, []Weight{Nuisance, Damages, Kills}, r.Weight, r.ID)
		assert.Equal(t, r.keep.of != Nothing, r.keep.asks != nil, r.ID)
		if !r.reach { // those give no finding
			givesFindings(t, r)
		}
	}
}

func givesFindings(t *testing.T, r *Rule) {
	assert.NotEmpty(t, r.Word, r.ID)
	assert.NotEmpty(t, r.Advice, r.ID)
	assert.True(t, strings.HasSuffix(r.Advice, "."), "%s: %q ends a sentence", r.ID, r.Advice)
	if r.doubt == "" {
		if r.Unit == Count {
			assert.Zero(t, r.short, "%s says what it counts", r.ID)
		} else {
			assert.Equal(t, 1, strings.Count(r.short.words, "%s"), "%s says by how much it is missed", r.ID)
			assert.True(t, !r.short.margin || r.Unit == MM, "%s: only mm are said like a margin", r.ID)
		}
	}
	if r.Findings == "" {
		assert.NotNil(t, r.check, "%s is held to by nobody", r.ID)
		return
	}
	assert.True(t, strings.HasPrefix(r.ID, r.Findings+"."), "%s is a case of %s", r.ID, r.Findings)
}

// A rule of the place of the cut limits where that may be, or says why it does not.
func TestEveryRuleOfThePlaceOfTheCutLimitsMovingIt(t *testing.T) {
	alike := map[*Rule]bool{CollarThrough: true, StubTimber: true, rulesByID()["stub.in-cut"]: true} // wherever the cut is
	for _, r := range allRules {
		if r.AtCut && r.keep.asks == nil {
			assert.True(t, r.reach || r.HoldsBack || r.doubt != "" || alike[r], "%s has no keep", r.ID)
		}
	}
}

func TestAFindingInAFewWords(t *testing.T) {
	about := func(id string, subject, against Thing) string {
		f := Finding{Limit: &Limit{Rule: rulesByID()[id]}, Subject: subject, Against: against}
		return f.About()
	}
	assert.Equal(t, "cut: brake pipe, right", about("cut.clearance", the(TheCut), Thing{AnObstruction, 3, "brake pipe, right"}))
	assert.Equal(t, "exhaust: exhaust", about("exhaust.clearance", the(TheExhaust), Thing{AnObstruction, 3, "exhaust"}), "a thing is named, whatever its name")
	assert.Equal(t, "exhaust bends", about("exhaust.bends", the(TheExhaust), Thing{}))
	assert.Equal(t, "exhaust fall: leg 2", about("exhaust.fall", the(TheExhaust), Thing{Sort: ALeg, Index: 1}))
	assert.Equal(t, "exhaust: floor", about("exhaust.floor", the(TheExhaust), the(TheFloor)))
	assert.Equal(t, "muffler level", about("exhaust.muffler-level", the(TheExhaust), the(TheMuffler)))
	assert.Equal(t, "collar through the floor", about("stack.turret", the(TheStack), the(TheFloor)))
	assert.Equal(t, "exhaust: heater's fuel line", about("exhaust.fuel", the(TheExhaust), the(TheFuel)), "the van has fuel lines too")
	assert.Equal(t, "exhaust: heater's fuel stub", about("exhaust.fuel", the(TheExhaust), the(TheFuelStub)))
	assert.Equal(t, "intake: heater's exhaust", about("intake.exhaust", the(TheIntake), the(TheExhaust)))
	assert.Equal(t, "bolt hole 2: reductant tank", about("hole.clearance", Thing{Sort: ABolt, Index: 1}, Thing{AnObstruction, 0, "reductant tank"}))
	assert.Equal(t, "fuel hole 1: floor", about("hole.on-floor", Thing{Sort: AFuelHole}, the(TheFloor)))
	across := Finding{Limit: &Limit{Rule: chainClosure}, Subject: the(TheSurvey), Against: Thing{AnObstruction, 0, "rail"}, axis: survey.Y}
	assert.Equal(t, "chain and its overall reading: rail, y", across.About())
	assert.Equal(t, "stub in the cut: intake", about("stub.in-cut", the(TheIntake), the(TheCut)))
}
