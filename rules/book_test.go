package rules

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/vehicles"
)

func TestTheTidyJobIsClear(t *testing.T) {
	result, faults := Judge(tidy(), Builtin())
	require.Empty(t, faults)
	assert.Equal(t, Clear, result.Verdict)
	for _, f := range result.Findings {
		assert.Equal(t, Clear, f.Verdict, "%s %s %s: %v of %v, sigma %v", f.ID(), f.Subject, f.Against, f.Value, f.Required, f.Sigma)
	}
	assert.Empty(t, result.Unchecked)
	assert.Empty(t, result.NotLookedFor)
}

func TestTheReachOfTheSawSaysWhatCounts(t *testing.T) {
	judged := func(top float64) bool {
		job := tidy()
		job.Obstructions = append(job.Obstructions, box("deep", "other", 1150, 1300, 200, 300, top, 300))
		result, faults := Judge(job, Builtin())
		require.Empty(t, faults)
		for _, f := range result.Findings {
			if f.ID() == "cut.clearance" && f.Against.Name == "deep" {
				return true
			}
		}
		return false
	}
	assert.True(t, judged(151.8), "150 + 1.645 * 2/sqrt(3) is 151.9")
	assert.False(t, judged(152))
}

func TestTheBookIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range Builtin().Limits() {
		assert.False(t, seen[l.Key()], "%s twice", l.Key())
		seen[l.Key()] = true
		assert.NotEmpty(t, l.Source, l.Key())
		assert.Equal(t, BuiltIn, l.Book)
		assert.NotContains(t, l.Source, "R122")
	}
	for _, r := range allRules {
		assert.Equal(t, r.Values == nil, seen[r.ID], "%s has a value and a source in the book, or goes by another's", r.ID)
	}
}

// What burns, leaks, brakes or is under pressure never has less than the general value.
func TestWhatBurnsOrLeaksIsNeverBelowTheGeneralValue(t *testing.T) {
	risky := []string{"brake line", "fuel line", "fuel tank", "wiring", "reductant tank", "gas tank", "air line", "tyre", "plastic part"}
	for _, id := range []string{"cut.clearance", "exhaust.clearance", "exhaust.clearance.shielded", "intake.clearance", "fuel.clearance"} {
		general, ok := Builtin().Lookup(id, "")
		require.True(t, ok)
		for _, kind := range risky {
			own, _ := Builtin().Lookup(id, kind)
			assert.GreaterOrEqual(t, own.Value.Value, general.Value.Value, "%s %s", id, kind)
		}
	}
	for _, kind := range vehicles.Kinds {
		bare, _ := Builtin().Lookup("exhaust.clearance", kind)
		shielded, _ := Builtin().Lookup("exhaust.clearance.shielded", kind)
		assert.LessOrEqual(t, shielded.Value.Value, bare.Value.Value, kind)
	}
}

// A shield holds off heat. It gives no room to what moves, nor to what a cold intake has to keep away from.
func TestAShieldGivesNoRoomToWhatMoves(t *testing.T) {
	value := func(id, kind string) float64 {
		limit, ok := Builtin().Lookup(id, kind)
		require.True(t, ok)
		return limit.Value.Value
	}
	const shielded = "exhaust.clearance.shielded"
	for _, kind := range []string{"suspension", "driveshaft", "axle"} {
		assert.Equal(t, value("exhaust.clearance", kind), value(shielded, kind), kind)
	}
	for _, kind := range vehicles.Kinds {
		if vehicles.KindOf(kind).Role != scene.Hot {
			assert.GreaterOrEqual(t, value(shielded, kind), value("intake.clearance", kind), kind)
		}
	}
}

func writeBook(t *testing.T, text string) string {
	path := filepath.Join(t.TempDir(), "book.toml")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	return path
}

func TestTheNearestBookSpeaks(t *testing.T) {
	workshop, err := LoadBook(writeBook(t, "format = 1\n[[rule]]\nid = \"cut.clearance\"\nvalue = 33\nsource = \"bench sheet\"\n"))
	require.NoError(t, err)
	book, faults := workshop.Over(Builtin()).ForJob(vehicles.Job{Rules: map[string]float64{"cut.clearance.wiring": 7}})
	require.Empty(t, faults)
	for _, c := range []struct {
		id, kind, book, source string
		value                  float64
	}{
		{"cut.clearance", "wiring", ThisJob, ThisJob, 7},
		{"cut.clearance", "brake line", Workshop, "bench sheet", 33}, // though the built-in one has a value for the kind
		{"cut.clearance", "", Workshop, "bench sheet", 33},
		{"exhaust.clearance", "crossmember", BuiltIn, "common practice, no source", 30},
	} {
		rule, ok := book.Lookup(c.id, c.kind)
		require.True(t, ok)
		assert.Equal(t, c.value, rule.Value.Value, "%s %s", c.id, c.kind)
		assert.Equal(t, c.book, rule.Book)
		assert.Equal(t, c.source, rule.Source)
	}
	_, ok := book.Lookup("no.rule", "")
	assert.False(t, ok)
}

// A workshop's book, and a job, may speak of every rule and of every kind it may have a value for.
func TestABookMaySpeakOfEveryRule(t *testing.T) {
	for _, r := range ownValues() {
		text := fmt.Sprintf("format = 1\n[[rule]]\nid = %q\nvalue = 5\nsource = \"bench sheet\"\n", r.ID)
		own := map[string]float64{r.ID: 7}
		for i, kind := range r.kinds() {
			if i == 0 {
				text += "[rule.kinds]\n"
			}
			text += fmt.Sprintf("%q = %d\n", kind, 10+i)
			own[r.Key(kind)] = float64(100 + i)
		}
		book, err := LoadBook(writeBook(t, text))
		require.NoError(t, err, r.ID)
		job, faults := book.Over(Builtin()).ForJob(vehicles.Job{Rules: own})
		require.Empty(t, faults, r.ID)
		for i, kind := range r.kinds() {
			said, _ := book.Lookup(r.ID, kind)
			assert.Equal(t, 10.0+float64(i), said.Value.Value, "%s %s", r.ID, kind)
			said, _ = job.Lookup(r.ID, kind)
			assert.Equal(t, 100.0+float64(i), said.Value.Value, "%s %s", r.ID, kind)
		}
	}
	_, err := LoadBook(writeBook(t, "format = 1\n[[rule]]\nid = \"exhaust.clearance\"\n[rule.kinds]\n\"fuel tank.diesel\" = 120\n"))
	require.NoError(t, err)
	_, err = LoadBook(writeBook(t, "format = 1\n[[rule]]\nid = \"exhaust.clearance\"\n[rule.kinds]\n\"fuel tank.petrol\" = 120\n"))
	require.ErrorContains(t, err, `has no kind "fuel tank.petrol"`)
	_, err = LoadBook(writeBook(t, "format = 1\n[[rule]]\nid = \"cut.clearance\"\n[rule.kinds]\n\"fuel tank.diesel\" = 60\n"))
	require.ErrorContains(t, err, `has no kind "fuel tank.diesel"`)
}

func TestAWorkshopsBookSaysWhereItIsWrong(t *testing.T) {
	const head = "format = 1\n[[rule]]\nid = \"exhaust.length\"\nvalue = 1500\n\n[[rule]]\n"
	for _, c := range []struct {
		text, says string
		line       int
	}{
		{"format = 2\n", "format is 2", 1},
		{head + "id = \"exhaust.lenght\"\nvalue = 3\n", `"exhaust.lenght" is no rule; did you mean "exhaust.length"?`, 7},
		{head + "id = \"exhaust.length\"\nvalue = 3\n", "twice", 7},
		{head + "id = \"cut.clearance\"\nkinds = { \"pony\" = 3 }\n", "pony", 8},
		{head + "id = \"cut.clearance\"\nvalue = nan\n", "not a number", 8},
		{head + "id = \"cut.clearance\"\nsense = \"most\"\n", "stays so", 8},
		{head + "id = \"exhaust.bends\"\nsense = \"least\"\n", "stays so", 8},
		{head + "id = \"cut.clearance\"\nvalu = 3\n", "unknown key", 8},
		{head + "id = \"cut.clearance\nvalue = 3\n", "", 7},
		{head + "id = \"cut.clearance\"\nvalue = \"3\"\n\n[[rule]]\nid = \"exhaust.fall\"\nvalue = 3\n", "value must be a number", 8},
		{head + "id = \"cut.clearance\"\nvalue = 9007199254740993\n", "value must be a number", 8},
		{head + "id = 3\n", "id must be a text in quotes", 7},
		{head + "id = \"cut.clearance\"\n[rule.kinds]\nwiring = 3\nother = true\n", "a number for each kind", 10},
		{head + "id = \"cut.clearance\"\n[rule.sources]\nwiring = 3\n", "a text in quotes for each kind", 9},
		{head + "id = \"cut.clearance\"\nkinds = 3\n", "a number for each kind", 8},
		{"format = 1\n\nrule = 3\n", "[[rule]] tables", 3},
		{"format = 1\n\n[rule]\nid = \"cut.clearance\"\n", "[[rule]] tables", 3},
		{"# no\nformat = \"1\"\n", "format = 1", 2},
		{"", "format", 1},
		{"format = 1\n\nrules = 3\n", "unknown key", 3},
		{"# a valu = 2\nformat = 1\n[[rule]]\nid = \"cut.clearance\"\nsource = \"\"\"\nvalu = 4\n\"\"\"\nvalu = 3\n", "unknown key", 8},
	} {
		path := writeBook(t, c.text)
		_, err := LoadBook(path)
		require.Error(t, err, c.text)
		assert.True(t, strings.HasPrefix(err.Error(), fmt.Sprintf("%s:%d: ", path, c.line)), "%s", err)
		assert.Contains(t, err.Error(), c.says)
	}
}

func TestAllFaultsOfABookAreTold(t *testing.T) {
	_, err := LoadBook(writeBook(t, "format = 1\n[[rule]]\nid = \"no.rule\"\n[[rule]]\nvalu = 1\nvalue = \"x\"\n"))
	require.Error(t, err)
	assert.Equal(t, 1, strings.Count(err.Error(), "\n"), "what can be read is looked into once it can: %s", err)
	_, err = LoadBook(writeBook(t, "format = 1\n[[rule]]\nid = \"no.rule\"\n[[rule]]\nid = \"exhaust.length\"\nsense = \"up\"\n"))
	require.Error(t, err)
	assert.Regexp(t, `(?s)book\.toml:3: .*\n.*book\.toml:6: `, err.Error())
}

func TestAJobsUnknownRuleIsAFault(t *testing.T) {
	job := tidy()
	job.Rules = map[string]float64{"cut.clearence": 4}
	_, faults := Judge(job, Builtin())
	require.Len(t, faults, 1)
	assert.Equal(t, `rules."cut.clearence"`, faults[0].Key)
	assert.Equal(t, `rules: "cut.clearence" is no rule; did you mean "cut.clearance"?`, faults[0].Text)
}
