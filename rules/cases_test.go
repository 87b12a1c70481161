package rules

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/vehicles"
)

// The cases are jobs whose outputs were computed without this program, by Python with Shapely/GEOS, NumPy and SciPy.
// Tolerances are theirs: values 0.1 (mm/m 0.1 %, counts exact), sigma 0.02, marks and fit 0.05.

type expected struct {
	Check *struct {
		Job, Verdict string
		Unchecked    []Lack
		NotLookedFor []string `json:"not_looked_for"`
		Findings     []findingJSON
	}
	Marks *sheetJSON
	Exit  int
	Says  string
}

func caseNames(t testing.TB) []string {
	names, err := filepath.Glob("../testdata/cases/*.toml")
	require.NoError(t, err)
	require.Len(t, names, 34)
	return names
}

func readCase(t testing.TB, name string) vehicles.Job {
	data, err := os.ReadFile(name)
	require.NoError(t, err)
	job, err := vehicles.ParseJob(data, name)
	require.NoError(t, err)
	return job
}

func TestCases(t *testing.T) {
	for _, name := range caseNames(t) {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".toml"), func(t *testing.T) {
			want := expectedOf(t, name)
			if want.Says != "" {
				data, err := os.ReadFile(name)
				require.NoError(t, err)
				_, err = vehicles.ParseJob(data, name)
				require.ErrorContains(t, err, want.Says)
				return
			}
			result, faults := Judge(readCase(t, name), Builtin())
			require.Empty(t, faults)
			compareCheck(t, want, result)
			compareMarks(t, want.Marks, result)
		})
	}
}

func expectedOf(t *testing.T, name string) (want expected) {
	data, err := os.ReadFile(strings.TrimSuffix(name, ".toml") + ".expect.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(data, &want))
	return want
}

// asked keeps the findings of rules that some case speaks of: they were computed for those only.
func asked(t *testing.T, findings []Finding) []Finding {
	known := map[string]bool{}
	for _, name := range caseNames(t) {
		if check := expectedOf(t, name).Check; check != nil {
			for _, f := range check.Findings {
				known[f.ID] = true
			}
		}
	}
	return slices.DeleteFunc(slices.Clone(findings), func(f Finding) bool { return !known[f.ID()] })
}

func compareCheck(t *testing.T, want expected, result Result) {
	got := asked(t, result.Findings)
	assert.Equal(t, want.Check.Unchecked, result.Unchecked)
	known, _ := contractKinds(result.NotLookedFor)
	assert.ElementsMatch(t, want.Check.NotLookedFor, known)
	assert.Equal(t, want.Check.Job, result.Job.Ref)
	assert.Equal(t, want.Check.Verdict, overall(&result.Job, got).String())
	assert.Equal(t, map[int]string{0: "clear", 10: "doubtful", 11: "foul"}[want.Exit], overall(&result.Job, got).String())
	type key struct{ id, subject, against, required string }
	byKey := map[key]Finding{}
	for _, f := range got {
		byKey[key{f.ID(), f.Subject.String(), f.Against.String(), fmt.Sprintf("%.3f", f.Required.Value)}] = f
	}
	assert.Len(t, got, len(want.Check.Findings))
	for _, w := range want.Check.Findings {
		name := fmt.Sprintf("%s %s %s", w.ID, w.Subject, text(w.Against))
		f, ok := byKey[key{w.ID, w.Subject, text(w.Against), fmt.Sprintf("%.3f", *w.Required)}]
		if !assert.True(t, ok, "no %s", name) {
			continue
		}
		within := 0.1
		if w.Unit == "mm/m" {
			within = math.Max(0.1, math.Abs(*w.Value)*1e-3)
		}
		if f.Subject.Sort == ThePilot {
			within = 0.03**w.Value + 0.02
		}
		assert.InDelta(t, *w.Value, f.Value, within, name)
		assert.InDelta(t, *w.Margin, f.Margin.Value, within, name)
		assert.InDelta(t, w.Sigma, f.Sigma, 0.02, name+" sigma")
		assert.InDelta(t, f.Sigma, math.Sqrt(f.Spread.Sum()), 1e-9, name)
		assert.Equal(t, w.Verdict, f.Verdict.String(), name)
		if w.Weight != 0 {
			assert.Equal(t, w.Weight, f.Weight, name)
		}
		assert.Equal(t, text(w.Kind), result.kindOf(&f), name)
		assert.Equal(t, f.Verdict == Clear, f.Why == "", name)
		if w.Source == ThisJob {
			assert.Equal(t, w.Source, f.Limit.Source, name)
			assert.Equal(t, w.Unit, string(f.Rule.Unit), name)
		}
		compareAt(t, w.At, f, name)
	}
	compareOrder(t, want.Check.Findings, got)
}

func compareAt(t *testing.T, want [][]float64, f Finding, name string) {
	if want == nil {
		return
	}
	got := f.places()
	require.Len(t, got, len(want), name)
	if (f.ID() == "plate.fitting" || f.ID() == "plate.swage") && parallel(want, got) {
		return // along two parallel edges every pair is as near as the other
	}
	for i := range want {
		assert.InDeltaSlice(t, want[i], got[i], 0.1, name)
	}
}

// parallel tells whether two pairs of points are equally far apart in the same direction.
func parallel(p, q [][]float64) bool {
	x := (p[1][0] - p[0][0]) - (q[1][0] - q[0][0])
	y := (p[1][1] - p[0][1]) - (q[1][1] - q[0][1])
	return math.Hypot(x, y) < 0.1
}

// compareOrder holds the order; findings of one verdict may swap places within 0.1 of margin. Where the cases leave a weight to
// the book they order it as 2.
func compareOrder(t *testing.T, want []findingJSON, got []Finding) {
	for i := range got {
		got[i].Weight = Damages
		for _, w := range want {
			if w.Weight == Kills && w.ID == got[i].ID() && text(w.Against) == got[i].Against.String() && w.Subject == got[i].Subject.String() {
				got[i].Weight = Kills
			}
		}
	}
	sortWorst(got)
	for i, w := range want {
		if i < len(got) {
			assert.Equal(t, w.Verdict, got[i].Verdict.String(), "place %d", i)
			assert.InDelta(t, *w.Margin, got[i].Margin.Value, math.Max(0.1, math.Abs(*w.Margin)*1e-3), "place %d", i)
		}
	}
}

func compareMarks(t *testing.T, want *sheetJSON, result Result) {
	data, err := MarksJSON(result)
	require.NoError(t, err)
	var got sheetJSON
	require.NoError(t, json.Unmarshal(data, &got))
	if want.Pilot == nil {
		got.Pilot = nil
	}
	got.Checks, got.Dangers, got.Stubs = nil, nil, nil // beyond the contract
	for i := range got.Marks {
		got.Marks[i].InWay = nil
	}
	near(t, "marks", asMaps(t, want), asMaps(t, &got))
}

func asMaps(t *testing.T, sheet *sheetJSON) any {
	data, err := json.Marshal(sheet)
	require.NoError(t, err)
	var v any
	require.NoError(t, json.Unmarshal(data, &v))
	return v
}

// near compares two values of JSON, numbers within 0.05.
func near(t *testing.T, path string, want, got any) {
	switch w := want.(type) {
	case float64:
		g, ok := got.(float64)
		require.True(t, ok, path)
		assert.InDelta(t, w, g, 0.05, path)
	case []any:
		g, ok := got.([]any)
		require.True(t, ok && len(g) == len(w), "%s: %v against %v", path, want, got)
		for i := range w {
			near(t, fmt.Sprintf("%s[%d]", path, i), w[i], g[i])
		}
	case map[string]any:
		g, ok := got.(map[string]any)
		require.True(t, ok && len(g) == len(w), "%s: %v against %v", path, want, got)
		for key := range w {
			near(t, path+"."+key, w[key], g[key])
		}
	default:
		assert.Equal(t, want, got, path)
	}
}

func text(s *string) string {
	if s == nil {
		return ""
	}
	return *s
}
