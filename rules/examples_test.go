package rules

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Each rule has a folder of small jobs under testdata/rules, named by its id: those that keep it (pass-) and those that don't
// (fail-). What is to be found stands in the job, under [extra.finding], worked out by hand above it:
//
//	subject, against   which finding is meant, where there are several
//	id                 whose finding, where it is not the rule's own
//	none               there is no such finding
//	value, margin      to 0.0001; without a margin there is to be none
//	verdict
//	why                what is said of it, where that is not the same for all findings of the rule
const examples = "../testdata/rules"

// digits is how close a value worked out by hand to four decimals is.
const digits = 5.1e-5

func TestEveryRuleHasJobsThatKeepItAndJobsThatDoNot(t *testing.T) {
	for _, rule := range allRules {
		t.Run(rule.ID, func(t *testing.T) {
			for _, kind := range []string{"pass", "fail"} {
				files, err := filepath.Glob(filepath.Join(examples, rule.ID, kind+"-*.toml"))
				require.NoError(t, err)
				assert.NotEmpty(t, files, "a job that is to %s", kind)
				for _, file := range files {
					t.Run(strings.TrimSuffix(filepath.Base(file), ".toml"), func(t *testing.T) { holdsTo(t, rule, file, kind == "pass") })
				}
			}
		})
	}
	folders, err := os.ReadDir(examples)
	require.NoError(t, err)
	for _, folder := range folders {
		assert.Contains(t, rulesByID(), folder.Name(), "jobs for a rule that is not there")
	}
}

// holdsTo holds a job's finding to what stands in the job.
func holdsTo(t *testing.T, rule *Rule, file string, passes bool) {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, file, Builtin())
	require.NoError(t, err)
	want, ok := job.Extra["finding"].(map[string]any)
	require.True(t, ok, "[extra.finding] says what is to be found")
	f := meant(judged(t, job), rule, want)
	if want["none"] == true {
		assert.Nil(t, f)
		return
	}
	require.NotNil(t, f, "nothing was found")
	assert.InDelta(t, want["value"], f.Value, digits)
	assert.Equal(t, want["margin"] != nil, f.Margin.Set)
	if f.Margin.Set {
		assert.InDelta(t, want["margin"], f.Margin.Value, digits)
	}
	assert.Equal(t, want["verdict"], f.Verdict.String(), f.Why)
	assert.Equal(t, passes, f.Verdict == Clear)
	assert.Equal(t, passes, f.Why == "")
	if want["why"] != nil {
		assert.Equal(t, want["why"], f.Why)
	}
	assert.NotContains(t, f.Why, "%!", "a format without its amount")
}

// meant is the finding that a job speaks of, the worst one where it is not told apart from others; nil for none.
func meant(result Result, rule *Rule, want map[string]any) *Finding {
	is := func(key, name string) bool { return want[key] == nil || want[key] == name }
	for i := range result.Findings {
		f := &result.Findings[i]
		own := f.Rule == rule || want["id"] == f.ID()
		if own && is("subject", f.Subject.String()) && is("against", f.Against.String()) {
			return f
		}
	}
	return nil
}
