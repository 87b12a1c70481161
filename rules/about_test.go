package rules

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Whatever stands in a list can be told from all else in it, in every sample job.
func TestNoTwoFindingsHaveTheSameWords(t *testing.T) {
	var files []string
	for _, pattern := range []string{"../testdata/cases/*.toml", "../testdata/rules/*/*.toml"} {
		found, err := filepath.Glob(pattern)
		require.NoError(t, err)
		files = append(files, found...)
	}
	judged := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		job, err := vehicles.ParseJob(data, file)
		if err != nil {
			continue // it shows a fault of the file
		}
		result, _ := Judge(job, Builtin())
		seen := map[string]string{}
		judged += len(result.Findings)
		for _, f := range result.Findings {
			if other, there := seen[f.About()]; there {
				t.Errorf("%s: %q stands for %s and %s", file, f.About(), other, f.Rule.ID)
			}
			seen[f.About()] = f.Rule.ID
		}
	}
	assert.Greater(t, judged, 1000)
}

// What is clear as there is none of it, such as low points, says less than any distance: people read it last.
func TestPeopleReadLastWhatThereIsNoneOf(t *testing.T) {
	count, length := rulesByID()["exhaust.drains"], rulesByID()["cut.clearance"]
	of := func(r *Rule, v Verdict, value float64) Finding {
		return Finding{Limit: &Limit{Rule: r}, Verdict: v, Value: value}
	}
	findings := []Finding{
		of(count, Foul, 1), of(count, Doubtful, 0), of(count, Clear, 0), of(length, Clear, 0), of(count, Clear, 1), of(length, Clear, 9),
	}
	held := of(rulesByID()["pilot.place"], Doubtful, 12)
	read := ForPeople([]Finding{of(length, Foul, 0), of(length, Doubtful, 0), held, of(length, Clear, 9)})
	assert.Equal(t, held, *read[1], "before what it holds back")
	for _, id := range []string{"pilot.place", "pilot.direct", "ties.fit"} {
		assert.True(t, rulesByID()[id].HoldsBack, id)
	}
	var order []int
	for _, f := range ForPeople(findings) {
		for i := range findings {
			if f == &findings[i] {
				order = append(order, i)
			}
		}
	}
	assert.Equal(t, []int{0, 1, 3, 4, 5, 2}, order)
	assert.Empty(t, ForPeople(nil))
}
