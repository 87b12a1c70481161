package rules

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// Of two rows of a list that say the same a fitter knows neither: in every sample job, the demo and a fitted van each finding
// has words of its own. Holes tell which they are where there is room for it.
func TestNoTwoFindingsHaveTheSameWords(t *testing.T) {
	jobs := map[string]vehicles.Job{"demo": vehicles.Demo(), "crew van": crewVan(t)}
	for _, pattern := range []string{"../testdata/cases/*.toml", "../testdata/rules/*/*.toml"} {
		files, err := filepath.Glob(pattern)
		require.NoError(t, err)
		for _, file := range files {
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			if job, err := vehicles.ParseJob(data, file); err == nil { // else it shows a fault of the file
				jobs[file] = job
			}
		}
	}
	count := 0
	for name, job := range jobs {
		result, _ := Judge(job, Builtin())
		seen := map[string]string{}
		count += len(result.Findings)
		for _, f := range result.Findings {
			assert.Empty(t, seen[f.About()], "%s: %q, %s", name, f.About(), f.Rule.ID)
			seen[f.About()] = f.Rule.ID
		}
	}
	assert.Greater(t, count, 1000)
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
	for _, id := range []string{"pilot.place", "pilot.direct", "ties.fit", "chain.closure"} {
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
