package features

import (
	"strconv"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// texts are what the fields of a thing say, by key. A key that is not there is blank.
//
// Keys: kind, form, name, holds; x0 x1 y0 y1 turn of a rectangle; p0x p0y p1x ... of a line's points; cx cy of a round's
// centre; across of both; top and low of the heights, in the order of the file; taped; measured; tx ty of the overall readings; bx by ax ay of a tie
// below and above, and use.
type texts map[string]string

func pointKey(i, axis int) string { return "p" + strconv.Itoa(i) + "xy"[axis:axis+1] }

// pointOf is which point a key is of, and along which axis; it is of none when ok is false.
func pointOf(key string) (row int, axis survey.Axis, ok bool) {
	if len(key) < 3 || key[0] != 'p' {
		return 0, survey.X, false
	}
	row, err := strconv.Atoi(key[1 : len(key)-1])
	return row, axisOf(key), err == nil
}

// textsOf are the texts of a thing as the job has it.
func textsOf(t Feature) texts {
	if t.Below[0].Text != "" {
		return tieTexts(t)
	}
	x := texts{"kind": t.Kind, "name": t.Name, "form": shapeWords[t.Shape], "holds": t.Holds}
	switch t.Shape {
	case vehicles.Box:
		x["x0"], x["x1"], x["y0"], x["y1"] = t.X[0].Text, t.X[1].Text, t.Y[0].Text, t.Y[1].Text
		if t.Turn != 0 {
			x["turn"] = survey.Exact(t.Turn)
		}
	case vehicles.Piped:
		for i, p := range t.Path {
			x[pointKey(i, 0)], x[pointKey(i, 1)] = p[0].Text, p[1].Text
		}
	case vehicles.Disc:
		x["cx"], x["cy"] = t.Centre[0].Text, t.Centre[1].Text
	}
	x["tx"], x["ty"] = t.Total[0].Text, t.Total[1].Text
	x["across"], x["taped"], x["travel"] = t.Across.Text(), t.TapedAt.Text(), t.Travel.Text()
	if t.Span.Set {
		x["top"], x["low"] = survey.Exact(t.Span.From), survey.Exact(t.Span.To)
	}
	x["measured"] = notConfirmed
	if t.Measured {
		x["measured"] = onThisVan
	}
	return x
}

// points is how many rows of points the texts have, up to the last that says anything.
func (x texts) points() int {
	n := 0
	for i := 0; i <= n+1; i++ {
		if x[pointKey(i, 0)]+x[pointKey(i, 1)] != "" {
			n = i + 1
		}
	}
	return n
}

// form is the form the texts are of: the one chosen, or the usual one of the kind.
func (x texts) shape() vehicles.Shape {
	if f, known := shapeNamed(x["form"]); known {
		return f
	}
	return vehicles.UsualShape(x["kind"])
}

// canonical is a text as the job will hold it, where it can be read at all.
func canonical(key, text string) string {
	switch key {
	case "kind":
		if text == onlyStands {
			return ""
		}
		return text
	case "form", "name", "holds", "measured", "use":
		return text
	}
	if r, err := survey.Typed(text, axisOf(key)); err == nil {
		return r.Text
	}
	return text
}

func axisOf(key string) survey.Axis {
	switch {
	case key == "y0", key == "y1", key == "cy", key == "by", key == "ay", key == "ty", key[0] == 'p' && key[len(key)-1] == 'y':
		return survey.Y
	}
	return survey.X
}

// isReading says whether a key is of what a tape or a rule said.
func isReading(key string) bool {
	switch key {
	case "kind", "form", "name", "holds", "measured", "use", "turn":
		return false
	}
	return true
}

// ofPlace says whether a key is one of a form of place, and not of all.
func ofPlace(key string) bool {
	switch key {
	case "x0", "x1", "y0", "y1", "turn", "cx", "cy", "across":
		return true
	}
	return key[0] == 'p'
}
