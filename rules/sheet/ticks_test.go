package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/vehicles"
)

// boxesOf are the boxes to tick on a page: closed lines of five points.
func boxesOf(p *board) (all []vector.Box) {
	for _, line := range p.lines {
		if len(line) == 5 && line[0] == line[4] && line[1].X == line[2].X && line[1].Y == line[0].Y && line[3].X == line[0].X && line[3].Y == line[2].Y {
			all = append(all, vector.Box{Left: line[0].X, Top: line[0].Y, Width: line[2].X - line[0].X, Height: line[2].Y - line[0].Y})
		}
	}
	return all
}

// textAt is where a text is on a page, by how it begins.
func textAt(t *testing.T, p *board, begins string) vector.Box {
	i := slices.IndexFunc(p.texts, func(text vector.Text) bool { return strings.HasPrefix(text.Words, begins) })
	require.GreaterOrEqual(t, i, 0, begins)
	return p.boxes[i]
}

// Wherever a page ends, a step's box, name, words and places to write are on one page: the box is square and stands before the name, on its line, and what is
// written stands on its line at the right.
func TestAStepStaysTogether(t *testing.T) {
	paper := template.Papers["a4"]
	for lines := range 70 {
		var ticks Ticks
		for i := range 4 {
			ticks = append(ticks, Tick{
				Name: fmt.Sprintf("step %dq", i), Words: strings.TrimSpace(strings.Repeat(fmt.Sprintf("words%dq ", i), 40)),
				Answers: []Answer{{"when", fmt.Sprintf("day %dq", i)}, {fmt.Sprintf("unit %dq", i), ""}},
			})
		}
		pages := laid(paper, Section{Parts: []Part{Text{Words: strings.Repeat("line\n", lines)}, ticks}})
		found := 0
		for _, p := range pages {
			boxes := boxesOf(p)
			names := 0
			for i := range ticks {
				all := said([]*board{p})
				if !strings.Contains(all, fmt.Sprintf("step%dq", i)) {
					assert.NotContains(t, all, fmt.Sprintf("words%dq", i), "%d lines", lines)
					continue
				}
				require.Greater(t, len(boxes), names, "%d lines: a box for each", lines)
				box, name := boxes[names], textAt(t, p, fmt.Sprintf("step %dq", i))
				names++
				assert.Equal(t, 40, strings.Count(all, fmt.Sprintf("words%dq", i)), "%d lines: step %d", lines, i)
				assert.Contains(t, all, fmt.Sprintf("unit%dq", i))
				assert.InDelta(t, 2.7, box.Width, 1e-9)
				assert.InDelta(t, box.Width, box.Height, 1e-9)
				assert.Less(t, box.Left+box.Width, name.Left)
				assert.InDelta(t, name.Top+name.Height/2, box.Top+box.Height/2, 1, "the box is on the name's line")
			}
			assert.Len(t, boxes, names)
			found += names
		}
		assert.Equal(t, len(ticks), found)
	}
}

// What is written behind a step stands on its line, between what is asked and the words; places to write on are farther apart than letters, and the next step
// begins below the last.
func TestWhatIsWrittenStandsOnItsLine(t *testing.T) {
	paper := template.Papers["a4"]
	tick := Tick{Name: "voltage", Words: "read it", Answers: []Answer{{"when", "10:40"}, {"V", "11.9"}, {"agreed for", ""}}}
	p := laid(paper, Section{Parts: []Part{Ticks{tick, {Name: "next", Words: "step"}}}})[0]
	right := paper.Wide - aside
	var lines []float64
	for _, line := range p.lines {
		if len(line) == 2 && line[0].X > right-answer-1 {
			assert.InDelta(t, right-answer, line[0].X, 1e-9)
			assert.LessOrEqual(t, line[1].X, right)
			lines = append(lines, line[0].Y)
		}
	}
	require.Len(t, lines, 3)
	for i, value := range []string{"10:40", "11.9"} {
		box, ask := textAt(t, p, value), textAt(t, p, tick.Answers[i].Ask)
		assert.InDelta(t, right-answer, box.Left, 1e-9, value)
		assert.InDelta(t, lines[i], box.Top+box.Height, 1.2, "%s stands on its line", value)
		assert.InDelta(t, right, ask.Left+ask.Width, 1e-6, "what is asked ends at the column's end")
		assert.Greater(t, ask.Left, box.Left+box.Width)
	}
	const letters = leading * body
	for i := 1; i < len(lines); i++ {
		assert.InDelta(t, letters+1, lines[i]-lines[i-1], 1e-6, "a millimetre more than letters need")
	}
	assert.Greater(t, textAt(t, p, "next").Top, lines[2], "the next step is below what is written")
}

// Facts stand behind their names, in two columns that keep their width on a page and become narrow with it; one without a fact is left out, and none runs out
// of a page.
func TestFactsStandBehindTheirNames(t *testing.T) {
	facts := SmallFacts{{"first", "a fact"}, {"nothing", ""}, {"second", strings.Repeat("a long fact ", 30)}, {"third", "one\nline"}}
	for wide, room := range map[float64]float64{178: 24.0 * small / body, 85: 24.0 * small / body, 45: 15} {
		f := newFlow(template.Papers["a4"])
		f.wide = wide
		facts.lay(f)
		p := &board{}
		f.pages[0].Draw(p)
		for _, words := range []string{"a fact", "a long fact", "one line"} {
			assert.InDelta(t, aside+room, textAt(t, p, words).Left, 1e-9, "%s, %g wide", words, wide)
		}
		assert.NotContains(t, said([]*board{p}), "nothing")
		assert.InDelta(t, textAt(t, p, "first").Top, textAt(t, p, "a fact").Top, 0.5)
		assert.Less(t, textAt(t, p, "first").Top, textAt(t, p, "second").Top)
		for i, box := range p.boxes {
			assert.LessOrEqual(t, box.Left+box.Width, aside+wide+1e-6, p.texts[i].Words)
		}
	}
	paper := template.Papers["a4"]
	for lines := range 75 {
		pages := laid(paper, Section{Parts: []Part{Text{Words: strings.Repeat("line\n", lines)}, Facts{{"name", strings.Repeat("a fact of some words ", 60)}}}})
		words := 0
		for _, p := range pages {
			for i, box := range p.boxes {
				require.LessOrEqual(t, box.Top+box.Height, paper.High-bottom+1, "%d lines: %q", lines, p.texts[i].Words)
				words += strings.Count(p.texts[i].Words, "fact")
			}
		}
		require.Equal(t, 60, words, "%d lines", lines)
	}
}

// Lines to write on stay on their page wherever it ends, each below the one before it, with what is to be written there before it.
func TestLinesToWriteOnStayOnTheirPage(t *testing.T) {
	paper := template.Papers["a4"]
	for lines := range 75 {
		pages := laid(paper, Section{Parts: []Part{Text{Words: strings.Repeat("line\n", lines)}, Lines{"fitted by", "date", "", "signed"}}})
		seen := 0
		for _, p := range pages {
			last := 0.0
			for _, line := range p.lines {
				require.LessOrEqual(t, line[0].Y, paper.High-bottom+1e-6, "%d lines", lines)
				require.True(t, last == 0 || line[0].Y-last > 6.9, "%d lines: hands need room", lines)
				last = line[0].Y
				seen++
			}
		}
		require.Equal(t, 4, seen, "%d lines", lines)
	}
}

// A step says of photos, a note or a caution only where it has some, and a column in which only a title stands is none.
func TestWhatAStepHasNotIsNotSaid(t *testing.T) {
	for _, ticks := range each[Ticks](paperOf(t, vehicles.Demo()).steps()) {
		for _, tick := range ticks {
			for _, not := range []string{"Photos:", "Note:", "Look again:", "Caution: .", "  "} {
				assert.NotContains(t, tick.Words, not, tick.Name)
			}
		}
	}
	filled := Table{Cols: []Col{{Head: "number"}, {Head: "thing"}}, Rows: []Row{{Cells: []string{"a title"}}, {Cells: []string{"", "a"}}, {Cells: []string{"", "b"}}}}.filled()
	assert.Equal(t, []Col{{Head: "thing"}}, filled.Cols)
	assert.Equal(t, [][]string{{"a title"}, {"a"}, {"b"}}, [][]string{filled.Rows[0].Cells, filled.Rows[1].Cells, filled.Rows[2].Cells})
}

// A line to write on begins behind the room for what is to be written there, which a narrow column has less of; without a name it takes all of the column.
func TestALineToWriteOnBeginsBehindItsName(t *testing.T) {
	for wide, room := range map[float64]float64{178: 22, 84: 22, 45: 15} {
		f := newFlow(template.Papers["a4"])
		f.wide = wide
		Lines{"name", ""}.lay(f)
		p := &board{}
		f.pages[0].Draw(p)
		require.Len(t, p.lines, 2)
		for i, in := range []float64{room, 0} {
			assert.InDelta(t, aside+in, p.lines[i][0].X, 1e-9, "%g wide", wide)
			assert.InDelta(t, aside+wide, p.lines[i][1].X, 1e-9)
		}
	}
}
