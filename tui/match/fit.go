package match

import (
	"sync/atomic"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/vehicles"
)

// fit is how the job's points fit each other now, also where that keeps the job from being judged.
type fit struct {
	survey.Fit
	plan     vehicles.Plan
	swapped  bool // left and right were swapped on one side
	onePlace bool // the points in the fit are all at one place
	oneSided int  // the only point with its sides swapped; -1 for none
}

// matching is the fit of one plan's ties.
type matching struct {
	of  *survey.Tie // the first of them: no other plan has it
	fit fit
}

// lastMatched is the fit that was asked for last: each row of the list asks for it.
var lastMatched atomic.Pointer[matching]

// matched is the fit of the job on the desk, worked out once a change.
func matched(s desk.State) fit {
	if len(s.Plan.Ties) == 0 {
		return matchedAnew(s)
	}
	of := &s.Plan.Ties[0]
	last := lastMatched.Load()
	if last == nil || last.of != of {
		last = &matching{of, matchedAnew(s)}
		lastMatched.Store(last)
	}
	return last.fit
}

// matchedAnew works the fit out. A point is looked for on the wrong side where nothing else is wrong.
func matchedAnew(s desk.State) fit {
	f := fit{Fit: s.Plan.Fit, plan: s.Plan, oneSided: -1}
	for _, fault := range s.Faults {
		f.swapped = f.swapped || desk.Swapped(fault)
		f.onePlace = f.onePlace || desk.OnePlace(fault)
	}
	if len(s.Faults) == 0 {
		if tie, ok := rules.TieOnWrongSide(s.Job, f.plan); ok {
			f.oneSided = tie
		}
	}
	return f
}

// fitted is the state with the points where they are, also when they keep the job from being judged: the plan is then
// without verdicts.
func fitted(s desk.State) desk.State {
	if len(s.Faults) == 1 && desk.Misfit(s.Faults[0]) {
		s.Result.Job, s.Result.Plan, s.Result.Findings = s.Job, s.Plan, nil
	}
	return s
}

// left is what the fit leaves over of a point: what was read above less what the fit says of it, mm.
func (f fit) left(name string) (off geometry.Point, known bool) {
	if !f.Tied() {
		return off, false
	}
	for _, list := range [][]survey.Residual{f.Residuals, f.LeftOut} {
		for _, r := range list {
			if r.Name == name {
				return geometry.Point{X: r.DX, Y: r.DY}, true
			}
		}
	}
	return off, false
}

// picked is the name of the point the keys act on.
func picked(e entryscreen.Entry, s desk.State) (name string, ok bool) {
	record, there := e.Here(s)
	feature, isFeature := record.(features.Record)
	if !there || !isFeature || !feature.Real(s.Job) {
		return "", false
	}
	return s.Job.Ties[feature.Row].Name, true
}

// column is that of what is left over at each point that is in the fit.
func (f fit) column(s desk.State) (c desk.Figures) {
	for _, t := range s.Job.Ties {
		if off, known := f.left(t.Name); known && t.Use {
			c = c.With(survey.Format(off.Norm(), s.Settings.Units))
		}
	}
	return c
}
