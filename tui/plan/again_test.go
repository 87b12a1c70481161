package plan

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/looks"
	"bench.example/undermark/vehicles"
)

// edited draws what somebody does to a job next: the cut is moved, made smaller, a thing is moved, measured or taken away.
func edited(t *rapid.T, job vehicles.Job) vehicles.Job {
	cut := *job.Cut
	switch i := rapid.IntRange(0, len(job.Obstructions)-1).Draw(t, "row"); rapid.IntRange(0, 5).Draw(t, "edit") {
	case 0:
		cut.At[0] += rapid.Float64Range(-30, 30).Draw(t, "by")
		return job.WithCut(cut)
	case 1:
		cut.Across = float64(rapid.IntRange(80, 140).Draw(t, "across"))
		return job.WithCut(cut)
	case 2:
		o := job.Obstructions[i]
		o.Drop.To += 10
		job.Obstructions = job.Obstructions.With(i, o)
	case 3:
		o := job.Obstructions[i]
		o.Measured = !o.Measured
		job.Obstructions = job.Obstructions.With(i, o)
	case 5:
		o := job.Obstructions[i]
		for k := range o.X {
			if r := o.X[k]; r.Start == 0 && r.Text != "" {
				mm := r.Length + 40
				o.X[k] = survey.Reading{Text: survey.Exact(mm), Number: true, Length: mm}
			}
		}
		job.Obstructions = job.Obstructions.With(i, o)
	case 4:
		if len(job.Obstructions) > 5 {
			job.Obstructions = job.Obstructions.Without(i)
		}
	}
	return job
}

// Whatever is done to a job and however it is looked at, a pane that has painted all of it paints what a new one does.
func TestAPaneThatPaintedMuchPaintsAsANewOne(t *testing.T) {
	first := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		s, used := first, New()
		for range rapid.IntRange(2, 12).Draw(t, "pictures") {
			job := edited(t, s.Job)
			if result, faults := rules.Rejudge(&s.Result, job, rules.Builtin()); len(faults) == 0 {
				s.Job, s.Plan, s.Result = job, result.Plan, result
			}
			s.Camera = desk.Camera{View: rapid.SampledFrom([]scene.View{scene.Below, scene.Above}).Draw(t, "view")}
			if rapid.Bool().Draw(t, "near") {
				s.Camera.Middle, s.Camera.Scale = pt(1200, 200), rapid.SampledFrom([]float64{4, 12}).Draw(t, "scale")
			}
			s.Settings = desk.Settings{Colour: desk.Colour(rapid.IntRange(0, int(desk.TrueColour)).Draw(t, "colour")), Look: looks.Look(rapid.IntRange(0, looks.Count-1).Draw(t, "look"))}
			s.Selected = rapid.IntRange(-1, len(s.Job.Obstructions)-1).Draw(t, "selected")
			o := Options{Room: rapid.IntRange(0, 3).Draw(t, "room") > 0, Shown: rules.ForPeople(s.Result.Findings)[:3]}
			size := rapid.SampledFrom([][2]int{{60, 17}, {100, 27}, {101, 30}}).Draw(t, "size") // few: what was kept is asked for again
			w, h := size[0], size[1]
			require.Equal(t, New().Sized(w, h).View(s, w, h, o), used.Sized(w, h).View(s, w, h, o))
		}
	})
}
