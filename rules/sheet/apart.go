package sheet

import (
	"slices"
	"strconv"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
)

// apartTitle stands over the table of things by parts, deadlyIs behind it.
const apartTitle = "How far each thing is from each part, mm: found ± 95 %, asked for at least, by; " + deadly + "can kill. The nearest hole counts."

// apartCol is a column of the table of things by parts: what it holds the distances of.
type apartCol struct {
	head string
	of   []rules.Sort
}

var apartCols = [...]apartCol{
	{"cut", []rules.Sort{rules.TheCut}},
	{scene.Hole.Pen().Means, []rules.Sort{rules.ABolt, rules.AFuelHole}},
	{scene.Exhaust.Pen().Means, []rules.Sort{rules.TheExhaust}},
	{"heater's intake", []rules.Sort{rules.TheIntake}},
	{scene.Fuel.Pen().Means, []rules.Sort{rules.TheFuel, rules.TheFuelStub}},
}

// apart are findings as a table of things by parts, and the clear ones that need more words, or are of something else.
type apart struct {
	things []string // the one first that has the least to spare
	of     map[string]*[len(apartCols)]*rules.Finding
	others []*rules.Finding
}

// sorted takes the findings apart that are of a part and a thing, as people read them.
func (s *source) sorted(findings []*rules.Finding) apart {
	a := apart{of: map[string]*[len(apartCols)]*rules.Finding{}}
	for _, f := range findings {
		in := a.put(f)
		if f.Verdict == rules.Clear && (!in || s.say.WhyClear(*f) != "") {
			a.others = append(a.others, f)
		}
	}
	return a
}

// put puts a finding in its place in the table, where it has one and that is free.
func (a *apart) put(f *rules.Finding) bool {
	part, thing, is := f.Apart()
	col := slices.IndexFunc(apartCols[:], func(c apartCol) bool { return slices.Contains(c.of, part.Sort) })
	if !is || col < 0 {
		return false
	}
	if a.of[thing] == nil {
		a.things, a.of[thing] = append(a.things, thing), &[len(apartCols)]*rules.Finding{}
	}
	if place := &a.of[thing][col]; *place == nil {
		*place = f
		return true
	}
	return false
}

// apart is the table. What stands above it or below is named there: how it is judged, or where.
func (s *source) apart(a *apart, by *sources) Table {
	t := Table{Size: small, Close: true, Cols: []Col{{Head: "thing"}}}
	for _, c := range apartCols {
		t.Cols = append(t.Cols, Col{Head: c.head, Figure: true})
	}
	for _, thing := range a.things {
		row := Row{Cells: []string{thing}}
		for _, f := range a.of[thing] {
			row.Cells = append(row.Cells, s.apartCell(f, by))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// apartCell is one finding in the table: "145.9 ± 3.1 ≥120a". The hole that it is of stands behind.
func (s *source) apartCell(f *rules.Finding, by *sources) string {
	switch {
	case f == nil:
		return ""
	case f.Verdict != rules.Clear:
		return f.Verdict.String()
	case s.say.WhyClear(*f) != "":
		return f.Verdict.String() + ", below"
	}
	text := survey.Joined(" ", s.say.Short(*f, f.Value), s.say.PlusMinus(*f), "≥"+s.say.Short(*f, f.Required.Value)+by.mark(f.Limit))
	if f.Weight == rules.Kills {
		text = deadly + text
	}
	switch f.Subject.Sort {
	case rules.ABolt:
		text += " (" + strconv.Itoa(int(f.Subject.Index)+1) + ")"
	case rules.AFuelHole:
		text += " (fuel)"
	}
	return text
}
