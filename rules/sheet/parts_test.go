package sheet

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// within are the parts that a part is made of, itself first, in the order in which they are laid.
func within(p Part) []Part {
	all := []Part{p}
	add := func(parts ...Part) {
		for _, p := range parts {
			all = append(all, within(p)...)
		}
	}
	switch p := p.(type) {
	case Parts:
		add(p...)
	case Beside:
		add(p.Left, p.Right)
	case Titled:
		add(p.Part)
	case Halves:
		add(p.Part)
	case Kept:
		add(p.Part)
	case Carried:
		add(p.Part)
	case First:
		add(p.Part)
	case Filled:
		for _, make := range p {
			add(make(mostHigh))
		}
	}
	return all
}

// each are the parts of a sort in a section, in order.
func each[P Part](s Section) (all []P) {
	for _, part := range s.Parts {
		for _, p := range within(part) {
			if one, ok := p.(P); ok {
				all = append(all, one)
			}
		}
	}
	return all
}

// tableOf is the table of a section that has a column of a name, empty where there is none.
func tableOf(s Section, head string) Table {
	for _, t := range each[Table](s) {
		if slices.ContainsFunc(t.Cols, func(c Col) bool { return c.Head == head }) {
			return t
		}
	}
	return Table{}
}

// judged is a job that can be judged.
func judged(t require.TestingT, job vehicles.Job) *rules.Result {
	r, faults := rules.Judge(job, rules.Builtin())
	require.Empty(t, faults)
	return &r
}

// paperOf is what sections of a job are made of.
func paperOf(t require.TestingT, job vehicles.Job) *source {
	return &source{judged(t, job), plainWords()}
}

// Every part of the sample's sheet is one that the tests look into: a kind of part that they did not know would hide its tables.
func TestNothingOfASheetIsHiddenFromTheTests(t *testing.T) {
	var known, unknown int
	for _, section := range contents {
		for _, part := range section(paperOf(t, vehicles.Demo())).Parts {
			for _, p := range within(part) {
				switch p.(type) {
				case Text, List, Named, Table, Ticks, Picture, Legend, Lines, Where, SmallFacts, Parts, Beside, Titled, Halves, Kept, Carried, First, Filled:
					known++
				default:
					unknown++
					t.Errorf("%T is not looked into", p)
				}
			}
		}
	}
	require.Greater(t, known, 60)
	require.Zero(t, unknown)
}
