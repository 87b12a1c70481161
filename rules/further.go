package rules

import (
	"bench.example/undermark/geometry"
	"bench.example/undermark/vehicles"
)

// further is a run that keeps what is asked where no search of demands led to one, nil for none: "none" is told only once these led nowhere
// too. The job's own comes last, as it need not be the shortest. Each is tried for a run that is clear once it leads to one that breaks no rule:
// mostly there is none.
func (s *seeker) further() *attempt {
	for _, from := range append(s.otherWays(), s.fromOwn) {
		switch kept := from(demands[len(demands)-1]); {
		case s.ctx.Err() != nil:
			return nil
		case kept.keeps():
			if clear := from(demands[0]); clear.keeps() {
				return clear
			}
			return kept
		}
	}
	return nil
}

// otherWays seek by demands what meeting did not: ways that lead straight down where those that lean were sought alone, and such that hardly
// fall, as what is level behind a muffler may.
func (s *seeker) otherWays() (list []func(demand) *attempt) {
	add := func(upright, flat bool) {
		list = append(list, func(d demand) *attempt {
			d.upright, d.flat, d.orNone = upright, flat, true
			return s.among(d)
		})
	}
	if !s.to.Upright {
		add(true, false)
	}
	if s.hanging.Muffler != nil {
		add(true, true)
		if !s.strict {
			add(false, true)
		}
	}
	return list
}

// fromOwn is the job's own run straightened, where it ends where the run is to end; nil where it does not, or there is none.
func (s *seeker) fromOwn(d demand) (best *attempt) {
	corners := s.ownCorners()
	if len(corners) < 2 || !s.mayEnd(corners[len(corners)-1]) {
		return nil
	}
	goals, _ := s.goals(d)
	d.less -= s.to.Spare
	d.upright, d.orNone = s.strict, true
	c := newCourse(s.judge, s.kind, goals, d)
	for lower := range s.mufflerLegs() {
		if a := s.straighten(corners, c, d.judged, lower); a.better(best) {
			best = a
		}
	}
	return best
}

// ownCorners are those of the job's own run, its stub's mouth the first.
func (s *seeker) ownCorners() []geometry.Point3 {
	path := s.own.Path
	if s.kind == vehicles.FuelRun {
		path = path[min(len(s.to.Above), len(path)):]
	}
	corners := []geometry.Point3{s.judge.plan.Mouth(s.judge.job, s.kind)}
	for i := range path {
		at := path[i]
		if s.kind == vehicles.FuelRun {
			at = path[len(path)-1-i]
		}
		corners = append(corners, inSpace(at))
	}
	return corners
}

// mayEnd tells whether a run may end at a place.
func (s *seeker) mayEnd(at geometry.Point3) bool {
	if s.to.exactly() {
		return at == inSpace(*s.to.At)
	}
	return s.onEdge(at)
}

// asItIs is the job's own run, which may hold what hangs on it where no search would put it; ok where it breaks no rule and ends where it may.
func (s *seeker) asItIs() (own Route, ok bool) {
	corners := s.ownCorners()
	if len(corners) < 2 || !s.mayEnd(corners[len(corners)-1]) || s.to.Spare > 0 {
		return Route{}, false
	}
	own = s.judged(s.trial(0, 0), &s.own)
	return own, own.Found() && !(s.strict && own.slopes)
}
