package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/route"
	"bench.example/undermark/vehicles"
)

// blocked is what is too near to the stub of the run that is sought, where no run from there keeps its distances: each begins at the stub's
// mouth, and is no farther from anything than its beginning is. "" where nothing is.
func (s *seeker) blocked() (by string) {
	t := s.trial(0, 0)
	mouth := t.judge.plan.Mouth(t.judge.job, s.kind)
	run := t.run
	run.Hanging, t.above = vehicles.Hanging{}, nil
	run.Path = t.pathThrough([]geometry.Point3{mouth, mouth.Sub(geometry.Point3{Z: beginning})})
	if !t.put(&run) {
		return ""
	}
	worst := -beginning // so much nearer than the mouth may the end of that be
	for _, f := range t.findings(t.rules) {
		if f.Rule.ByKind == AnObstruction && f.Rule.Unit == MM && f.Rule.Sense == Least && f.Verdict == Foul && f.Margin.Set && f.Margin.Value < worst {
			worst, by = f.Margin.Value, f.Against.String()
		}
	}
	return by
}

// beginning is how much of a run is looked at as its beginning, mm: as little as a run can be long.
const beginning = 1.0

// roughly is how a miss is worked on that no outlet mends: what blocks it is known, and where else the run comes too near is seen by so much.
var roughly = route.Straightener{Steps: []float64{32, 8}, Tries: 100}
