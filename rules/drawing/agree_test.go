package drawing

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// everySample are the sample jobs that can be judged, and the demo.
func everySample(t *testing.T, look func(name string, r *rules.Result)) {
	files, err := filepath.Glob("../../testdata/cases/*.toml")
	require.NoError(t, err)
	judged := func(name string, job vehicles.Job) bool {
		r, faults := rules.Judge(job, rules.Builtin())
		if len(faults) == 0 {
			look(name, &r)
		}
		return len(faults) == 0
	}
	n := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		if job, err := vehicles.ParseJob(text, file); err == nil && judged(filepath.Base(file), job) {
			n++
		}
	}
	assert.Equal(t, len(files)-1, n, "the sides of one are swapped")
	judged("the sample", vehicles.Demo())
}

// worstAgainst is the worst verdict of what is found against a thing, by its place in the job; clear of one that nothing is held against.
func worstAgainst(r *rules.Result, sort rules.Sort, i int) scene.State {
	worst := scene.Plain
	for _, f := range r.Findings {
		if f.Against.Sort == sort && int(f.Against.Index) == i && f.Subject.Sort != rules.TheSurvey {
			worst = max(worst, map[rules.Verdict]scene.State{rules.Foul: scene.Foul, rules.Doubtful: scene.Doubtful, rules.Clear: scene.Clear}[f.Verdict])
		}
	}
	return worst
}

// Each thing that was surveyed is on the plan once, where it is, and in the state of the worst that is found against it; one that nobody measured here is
// unsure.
func TestEachThingIsDrawnAsItIsJudged(t *testing.T) {
	everySample(t, func(name string, r *rules.Result) {
		s := Draw(*r, Options{View: scene.Below, Selected: -1})
		seen := map[int]int{}
		for _, it := range s.Items {
			if it.Code == "" || it.Role == scene.Fitting {
				continue
			}
			seen[it.Ref]++
			o := &r.Plan.Obstructions[it.Ref]
			assert.Equal(t, worstAgainst(r, rules.AnObstruction, it.Ref), it.State, "%s: %s", name, r.Job.Obstructions[it.Ref].Name)
			assert.Equal(t, o.Prism.Footprint, it.Solid.Prism.Footprint, "%s: %s", name, r.Job.Obstructions[it.Ref].Name)
			if !r.Job.Obstructions[it.Ref].Measured {
				assert.True(t, it.Unsure, "%s: %s", name, r.Job.Obstructions[it.Ref].Name)
			}
		}
		assert.Len(t, seen, len(r.Job.Obstructions), name)
		for i, n := range seen {
			assert.Equal(t, 1, n, "%s: %s", name, r.Job.Obstructions[i].Name)
		}
	})
}

// radii are by how much the line of a clearance may be longer than that: it begins in the middle of a pipe, or of the muffler on it.
func radii(r *rules.Result, of rules.Sort) []float64 {
	for sort, kind := range map[rules.Sort]vehicles.RunKind{rules.TheExhaust: vehicles.ExhaustRun, rules.TheIntake: vehicles.IntakeRun, rules.TheFuel: vehicles.FuelRun} {
		if sort != of {
			continue
		}
		run := r.Job.Run(kind)
		all := []float64{0, run.Across / 2} // 0: of its end, or of its middle in plan
		if run.Muffler != nil {
			all = append(all, run.Muffler.Across/2)
		}
		return all
	}
	return []float64{0}
}

// The line of a finding that is looked at goes from the one place to the other, and has the figure that lists have of it; a clearance in plan or space is as
// long as it is said to be.
func TestALineIsAsLongAsItsFigure(t *testing.T) {
	lines, long := 0, 0
	everySample(t, func(name string, r *rules.Result) {
		for i := range r.Findings {
			f := &r.Findings[i]
			s := Draw(*r, Options{View: scene.Below, Selected: -1, Focus: f})
			var found []scene.Item
			for _, it := range s.Items {
				if it.Selected && (it.Role == scene.Dimension || it.Role == scene.Conflict) {
					found = append(found, it)
				}
			}
			if f.Places == 0 {
				assert.Empty(t, found, "%s: %s has no place", name, f.About())
				continue
			}
			require.Len(t, found, 1, "%s: %s", name, f.About())
			it := found[0]
			lines++
			if f.Margin.Set {
				require.NotNil(t, it.Measure)
				assert.InDelta(t, f.Margin.Value, it.Measure.Value, 0)
				assert.Equal(t, string(f.Rule.Unit), it.Measure.Unit)
			}
			if it.Primitive != scene.Stroke {
				continue
			}
			assert.Equal(t, scene.Straight(f.At[0], f.At[1]), it.Path, "%s: %s", name, f.About())
			if f.Rule.Unit == rules.MM && f.Rule.Sense == rules.Least && f.Value > 0 && f.Against.Sort == rules.AnObstruction {
				long++
				line := f.At[0].Sub(f.At[1])
				assert.True(t, slices.ContainsFunc(radii(r, f.Subject.Sort), func(radius float64) bool {
					return math.Abs(line.Norm()-radius-f.Value) < 0.1 || math.Abs(line.Plan().Norm()-radius-f.Value) < 0.1
				}), "%s: %s is %g, and its line %g", name, f.About(), f.Value, line.Norm())
			}
		}
	})
	assert.Greater(t, lines, 500)
	assert.Greater(t, long, 200)
}

// Marks are drawn where the tapes mark them, by their words, and one that is made is clear.
func TestMarksAreDrawnWhereTheyAreMarked(t *testing.T) {
	everySample(t, func(name string, r *rules.Result) {
		marks := rules.Marks(*r).Marks
		if len(marks) == 0 {
			return
		}
		for _, view := range []scene.View{scene.Above, scene.Below} {
			s := Draw(*r, Options{View: view, Selected: -1, Marks: marks, Ticked: map[string]bool{marks[0].Name: true}})
			at := map[string]geometry.Point{}
			for _, it := range s.Items {
				if it.Role == scene.Mark && it.Primitive == scene.Spot {
					at[it.Label] = it.At.Plan()
					assert.Equal(t, it.Label == marks[0].Words, it.State == scene.Clear, "%s: %s", name, it.Label)
				}
			}
			for _, m := range marks {
				assert.Equal(t, m.Plan, at[m.Words], "%s: %s", name, m.Words)
			}
		}
	})
}
