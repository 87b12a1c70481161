package sheet

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// expected is what others computed of a sample job: testdata/cases/README.md says with what.
type expected struct {
	Check *struct {
		Verdict  string
		Findings []struct {
			ID, Verdict string
			Against     *string
			Value       float64
		}
	}
	Marks *struct {
		Marks []struct {
			Name  string
			Below map[string]float64
			Above *struct {
				Bumper, Left, Right float64
				PinLeft             float64 `json:"pin_left"`
				PinRight            float64 `json:"pin_right"`
				Sigma               [2]float64
			}
		}
	}
}

// cases are the sample jobs that can be judged, each on paper, with what others computed of it.
func cases(t *testing.T, look func(name string, s *source, want *expected)) {
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	looked := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		data, err := os.ReadFile(strings.TrimSuffix(file, ".toml") + ".expect.json")
		require.NoError(t, err)
		var want expected
		require.NoError(t, json.Unmarshal(data, &want), file)
		if want.Check == nil {
			continue // refused
		}
		job, err := vehicles.ParseJob(text, file)
		require.NoError(t, err)
		look(filepath.Base(file), paperOf(t, job), &want)
		looked++
	}
	assert.Equal(t, len(files)-1, looked, "the sides of one are swapped")
}

// The tape's readings on paper are those that others computed of the sample jobs: within their own 0.05 mm, and as much for the last figure.
func TestMarksOnPaperAreThoseThatOthersComputed(t *testing.T) {
	const within = 0.05 + 0.05 + 1e-9
	cases(t, func(name string, s *source, want *expected) {
		rows := markRows(s)
		for _, m := range want.Marks.Marks {
			cells, there := rows[m.Name]
			require.True(t, there, "%s: %s is not on paper", name, m.Name)
			assert.InDelta(t, m.Below["bumper"], figure(t, cells[1]), within, "%s: %s", name, m.Name)
			assert.InDelta(t, m.Below["left"], figure(t, cells[2]), within, "%s: %s", name, m.Name)
			assert.InDelta(t, m.Below["right"], figure(t, cells[3]), within, "%s: %s", name, m.Name)
			if m.Above == nil {
				assert.Len(t, cells, 4, "%s: %s is made from below alone", name, m.Name)
				continue
			}
			for at, value := range map[int]float64{4: m.Above.Bumper, 6: m.Above.Left, 7: m.Above.Right, 9: m.Above.PinLeft, 11: m.Above.PinRight} {
				assert.InDelta(t, value, figure(t, cells[at]), within, "%s: %s, column %d", name, m.Name, at)
			}
			// The spreads beside the tapes: of one along the van and of one across it, by the sigmas that others computed. The words of
			// this test write them as they are.
			assert.InDelta(t, m.Above.Sigma[0], figure(t, strings.TrimPrefix(cells[5], "± ")), 0.05+0.02, "%s: %s", name, m.Name)
			assert.InDelta(t, m.Above.Sigma[1], figure(t, strings.TrimPrefix(cells[8], "± ")), 0.05+0.02, "%s: %s", name, m.Name)
			// An arc's lies between those of the two ways that it goes.
			low, high := min(m.Above.Sigma[0], m.Above.Sigma[1]), max(m.Above.Sigma[0], m.Above.Sigma[1])
			for _, at := range []int{10, 12} {
				arc := figure(t, strings.TrimPrefix(cells[at], "± "))
				assert.True(t, arc >= low-0.1 && arc <= high+0.1, "%s: %s: %g is not in %g to %g", name, m.Name, arc, low, high)
			}
		}
	})
}

// markRows are the rows of the marks by the names that programs know.
func markRows(s *source) map[string][]string {
	table, rows := tableOf(s.above(), "mark"), map[string][]string{}
	for i, m := range listedOf(s) {
		rows[m.Name] = table.Rows[i].Cells
	}
	return rows
}

func listedOf(s *source) []rules.Mark {
	sheet := rules.Marks(*s.Result)
	return sheet.Listed()
}

func figure(t *testing.T, text string) float64 {
	v, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return v
}

// All that others found foul or doubtful is on paper under that word, against the same thing and with the same figure; what is clear is in one table and
// no other; and whoever signs reads how the place stands.
func TestFindingsOnPaperAreThoseThatOthersFound(t *testing.T) {
	cases(t, func(name string, s *source, want *expected) {
		section := s.checks()
		open := tableOf(section, "verdict")
		for _, f := range want.Check.Findings {
			if f.Verdict == "clear" {
				continue
			}
			against := ""
			if f.Against != nil {
				against = *f.Against
			}
			within := max(0.1, math.Abs(f.Value)*1e-3) + 0.05 // theirs, and the last figure
			if strings.HasPrefix(f.ID, "pilot.") {
				within = 0.03*f.Value + 0.02 + 0.05
			}
			assert.True(t, slices.ContainsFunc(open.Rows, func(row Row) bool {
				found, err := strconv.ParseFloat(row.Cells[2], 64)
				return err == nil && row.Cells[0] == f.Verdict && strings.Contains(row.Cells[1], against) && math.Abs(found-f.Value) <= within
			}), "%s: %s against %q is not on paper with %g", name, f.ID, against, f.Value)
		}
		clear, tabled := 0, 0
		for _, f := range s.Findings {
			if f.Verdict == rules.Clear {
				clear++
			}
		}
		for _, row := range tableOf(section, "thing").Rows {
			tabled += strings.Count(strings.Join(row.Cells[1:], " "), "≥")
		}
		assert.Equal(t, clear, tabled+len(clearTable(section).Rows), "%s: each clear finding is in one table", name)
		assert.Contains(t, signedUnder(s), "the place is "+want.Check.Verdict, name)
	})
}

// clearTable is the table of what else is clear.
func clearTable(section Section) Table {
	for _, t := range each[Table](section) {
		if t.Cols[0].Head != "verdict" && t.Cols[0].Head != "thing" {
			return t
		}
	}
	return Table{}
}

// signedUnder is what is said over the lines for names.
func signedUnder(s *source) string {
	var all []string
	for _, text := range each[Text](s.signOff()) {
		all = append(all, text.Words)
	}
	return strings.Join(all, " ")
}

// On paper a place is found by two ways that know nothing of each other: where the tapes from the datum's edge and from the sides cross, there the arcs
// from both pins cross. From the printed figures alone, by Pythagoras, to what six roundings to a tenth are worth.
func TestTheTapesAndThePinsMeetOnPaper(t *testing.T) {
	cases(t, func(name string, s *source, _ *expected) {
		if s.Job.Datum.ShiftAbove.Value != 0 || s.Job.Datum.SideAbove.Value != 0 || strings.Contains(s.pins(), "batten") {
			return // then the ways begin elsewhere
		}
		left, _ := rules.CentreAbove(&s.Job)
		pins, hook := s.Job.Pins(), s.Job.Datum.HookAbove.Value
		for of, cells := range markRows(s) {
			if len(cells) < 13 {
				continue
			}
			x, y := math.Sqrt(math.Pow(figure(t, cells[4]), 2)-hook*hook), left-figure(t, cells[6])
			assert.InDelta(t, math.Sqrt(x*x+(y-pins)*(y-pins)+hook*hook), figure(t, cells[9]), 0.2, "%s: %s from the left pin", name, of)
			assert.InDelta(t, math.Sqrt(x*x+(y+pins)*(y+pins)+hook*hook), figure(t, cells[11]), 0.2, "%s: %s from the right pin", name, of)
		}
	})
}
