package features

import (
	"maps"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// A thing whose readings are not all in yet is no thing of the job: it can't be judged. What is known of it is
// kept in the job all the same, so that it is saved and can be undone.

// Unfinished is how many things of the list are begun and not whole yet.
func (l List) Unfinished(j vehicles.Job) int { return len(l.unfinished(j)) }

// begun is the job's list of them.
func (l List) begun(j *vehicles.Job) *vehicles.List[vehicles.Begun] {
	return l.table().begun(&j.Unfinished)
}

// unfinished are the list's unfinished things, the newest first.
func (l List) unfinished(j vehicles.Job) vehicles.List[vehicles.Begun] { return *l.begun(&j) }

// withUnfinished returns the job with these unfinished things in place of those it had.
func (l List) withUnfinished(j vehicles.Job, all vehicles.List[vehicles.Begun]) vehicles.Job {
	*l.begun(&j) = all
	return j
}

// sketch fills in what is not read yet, so that what is known can be shown: a single edge as a strip across the
// floor, a single point as a dot. It is for the eye only and never enters the job; ok is false when there is
// nothing to show.
func (l List) sketch(x texts, floor vehicles.Floor) (t Feature, ok bool) {
	if l == Ties {
		return t, false
	}
	x = maps.Clone(x)
	fill := func(key, text string) {
		if x[key] == "" {
			x[key] = text
		}
	}
	const thin = "+20"
	if l.ofKind() {
		fill("kind", vehicles.KindOf("").Name)
	}
	fill("name", " unfinished")
	if x.shape() != vehicles.Box {
		fill("across", "10")
	}
	if l != Obstructions {
		fill("top", "0")
		fill("low", x["top"])
	}
	switch x.shape() {
	case vehicles.Box:
		ok = x["x0"]+x["x1"]+x["y0"]+x["y1"] != ""
		fill("x0", survey.Exact(floor.From))
		fill("x1", thin)
		x.fillAcross(floor.Width / 2)
	case vehicles.Piped:
		ok = x.sketchPath()
	case vehicles.Disc:
		ok = x["cx"] != ""
		fill("cy", "0")
	}
	if x["top"] == "" || x["low"] == "" {
		x["top"], x["low"] = "", ""
	}
	t, missing, wrong := l.build(Feature{}, nil, x)
	t.Measured = false
	return t, ok && len(missing) == 0 && len(wrong) == 0
}

// fillAcross gives a rectangle the sides it has not got: the floor's edges, the far one from a side that is read.
func (x texts) fillAcross(half float64) {
	one, other := survey.Exact(-half), survey.Exact(half)
	for _, key := range []string{"y0", "y1"} {
		r, err := survey.Typed(x[key], survey.Y)
		if err == nil && (r.Start == survey.FromLeft || r.Start == survey.Datum && r.Length > 0) {
			one, other = other, one
		}
	}
	if x["y0"] == "" {
		x["y0"] = one
		if x["y1"] != "" {
			x["y0"] = other
		}
	}
	if x["y1"] == "" {
		x["y1"] = other
	}
}

// sketchPath drops half points and makes a dot of a single one.
func (x texts) sketchPath() bool {
	whole := 0
	for i := range x.points() {
		if x[pointKey(i, 0)] == "" || x[pointKey(i, 1)] == "" {
			delete(x, pointKey(i, 0))
			delete(x, pointKey(i, 1))
			continue
		}
		whole++
	}
	if n := x.points(); whole == 1 {
		x[pointKey(n, 0)], x[pointKey(n, 1)] = "+1", "+1"
	}
	return whole > 0
}
