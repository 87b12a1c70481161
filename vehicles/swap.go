package vehicles

import (
	"strings"

	"bench.example/undermark/geometry/survey"
)

// WithTieSidesSwapped returns the job with left and right of every tie's reading from below, or of every one from
// above, changed over: L becomes R, and what was measured from the centreline changes its sign.
func (j Job) WithTieSidesSwapped(below bool) Job {
	for i := range j.Ties {
		j = j.WithTieSideSwapped(i, below)
	}
	return j
}

// WithTieSideSwapped is the same of one tie.
func (j Job) WithTieSideSwapped(i int, below bool) Job {
	t := j.Ties[i]
	if below {
		t.Below[1] = mirrored(t.Below[1])
	} else {
		t.Above[1] = mirrored(t.Above[1])
	}
	j.Ties = j.Ties.With(i, t)
	return j
}

// mirrored is a reading across the van as it would be of the other side.
func mirrored(r survey.Reading) survey.Reading {
	switch r.Start {
	case survey.FromLeft:
		r.Start, r.Text = survey.FromRight, strings.Replace(r.Text, "L", "R", 1)
	case survey.FromRight:
		r.Start, r.Text = survey.FromLeft, strings.Replace(r.Text, "R", "L", 1)
	case survey.Datum:
		// In mm, as feet and inches take no minus.
		return survey.FromNumber(-r.Length, r.Length == float64(int64(r.Length)))
	}
	return r
}
