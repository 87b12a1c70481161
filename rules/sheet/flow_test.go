package sheet

import (
	"image/color"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules/template"
)

// board keeps what a page is told to draw.
type board struct {
	texts []vector.Text
	boxes []vector.Box
	lines [][]geometry.Point
}

func (b *board) Face([]geometry.Point, color.NRGBA)            {}
func (b *board) Line(points []geometry.Point, _ vector.Stroke) { b.lines = append(b.lines, points) }
func (b *board) Windowed(_ vector.Box, draw func())            { draw() }
func (b *board) Write(at geometry.Point, t vector.Text) {
	b.texts, b.boxes = append(b.texts, t), append(b.boxes, vector.BoxOf(at.X, at.Y, t))
}

// laid are the pages that sections take, without their heads.
func laid(paper template.Paper, sections ...Section) (pages []*board) {
	f := newFlow(paper)
	for _, s := range sections {
		f.section(s)
	}
	for _, p := range f.pages {
		b := &board{}
		p.Draw(b)
		pages = append(pages, b)
	}
	return pages
}

// said is all that pages say, without blanks.
func said(pages []*board) string {
	var all strings.Builder
	for _, p := range pages {
		for _, t := range p.texts {
			all.WriteString(tight(t.Words))
		}
	}
	return all.String()
}

func tight(text string) string { return strings.Join(strings.Fields(text), "") }

// words of others: of any letters, with and without blanks, long and short.
var wordsOfOthers = rapid.OneOf(
	rapid.StringMatching(`[a-zA-Z0-9 ,.±-]{0,60}`), rapid.String(), rapid.StringMatching(`[a-z]{80,300}`), rapid.Just(""),
)

// Whatever others write in paragraphs, lists, tables and beside boxes stays in its column and on its page, and all of it is there, in order.
func TestNothingRunsOutAndNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		paper := template.Papers[rapid.SampledFrom([]string{"a4", "letter"}).Draw(t, "paper")]
		draw := func(name string) string { return wordsOfOthers.Draw(t, name) }
		table := Table{Cols: []Col{{Head: "thing"}, {Head: "mm", Figure: true}, {Head: "what is said of it"}}}
		want := map[string]string{}
		for i := range rapid.IntRange(1, 60).Draw(t, "rows") {
			name, remark := draw("name"), draw("remark")
			table.Rows = append(table.Rows, Row{Cells: []string{name, "12.5", remark}, Strong: i%2 == 0})
		}
		long, tick := draw("long"), draw("tick")
		pages := laid(paper,
			Section{Heading: "Text", Parts: []Part{Text{Words: long}, List{draw("item")}, Named{{draw("of"), draw("words")}}}},
			Section{Heading: "Table", Parts: []Part{table}},
			Section{Heading: "Halves", Parts: []Part{Halves{Table{Cols: table.Cols, Rows: table.Rows[:1]}}}},
			Section{Heading: "Ticks", Parts: []Part{Ticks{{Name: draw("name of tick"), Words: tick, Answers: []Answer{{"V", draw("value")}, {draw("ask"), ""}}}}}},
		)
		for n, p := range pages {
			for i, box := range p.boxes {
				const hair = 1e-6
				if box.Left < aside-hair || box.Left+box.Width > paper.Wide-aside+hair || box.Top < top-1 || box.Top+box.Height > paper.High-bottom+1 {
					t.Fatalf("page %d: %q is at %v", n+1, p.texts[i].Words, box)
				}
			}
		}
		all := said(pages)
		want["text"], want["tick"] = long, tick
		for what, text := range want {
			for _, part := range strings.Split(text, "\n") {
				for _, word := range strings.Fields(printable(part)) {
					if !strings.Contains(all, word) && len(word) < 60 {
						t.Fatalf("%s: %q is lost", what, word)
					}
				}
			}
		}
		for _, row := range table.Rows {
			if whole := tight(printable(row.Cells[2])); len(table.Rows) < 10 && len(whole) < 200 && !strings.Contains(all, whole) {
				t.Fatalf("%q is lost", whole)
			}
		}
	})
}

// Figures stand by their points, whatever stands before and behind.
func TestFiguresStandByTheirPoints(t *testing.T) {
	cells := []string{"1263.9", "± 3", "84.6 mm short", "-24.6", "90°", "0"}
	var rows []Row
	for _, c := range cells {
		rows = append(rows, Row{Cells: []string{"a", c}})
	}
	page := laid(template.Papers["a4"], Section{Parts: []Part{Table{Cols: []Col{{Head: "of"}, {Head: "found", Figure: true}}, Rows: rows}}})[0]
	var points []float64
	for i, text := range page.texts {
		if before, _ := atPoint(text.Words); before != "" {
			points = append(points, page.boxes[i].Left+vector.WidthOf(vector.Text{Words: before, Size: text.Size}))
		}
	}
	require.Len(t, points, len(cells))
	for _, at := range points {
		assert.InDelta(t, points[0], at, 1e-6)
	}
}

// A section without parts is not printed, one that goes on says so, and a column without anything in it is left out.
func TestWhatIsNotThereIsNotPrinted(t *testing.T) {
	long := Text{Words: strings.Repeat("line\n", 180)}
	pages := laid(template.Papers["a4"], Section{Heading: "Nothing"}, Section{Heading: "Something", Parts: []Part{
		long, Table{Cols: []Col{{Head: "kept"}, {Head: "left out"}}, Rows: []Row{{Cells: []string{"a", ""}}}},
	}})
	require.Len(t, pages, 3)
	all := said(pages)
	assert.NotContains(t, all, "Nothing")
	assert.NotContains(t, all, "leftout")
	assert.Equal(t, 3, strings.Count(all, "Something"))
	assert.Equal(t, 2, strings.Count(all, "goeson"))
	assert.Equal(t, 180, strings.Count(all, "line"))
}

// However long a heading is that fits its page, what says on the next one that it goes on stands beside it, within the page; all of it stands where it begins.
func TestALongHeadingThatGoesOnStaysOnThePage(t *testing.T) {
	for name, paper := range template.Papers {
		for letters := 1; ; letters++ {
			heading := strings.Repeat("e", letters)
			if vector.WidthOf(vector.Text{Words: heading, Size: second, Bold: true}) > paper.Wide-2*aside {
				break
			}
			pages := laid(paper, Section{Heading: heading, Parts: []Part{Text{Words: strings.Repeat("line\n", 100)}}})
			require.Len(t, pages, 2)
			assert.Contains(t, said(pages[:1]), heading)
			assert.Contains(t, said(pages[1:]), "goeson")
			onPages(t, pages, paper)
			for _, box := range pages[1].boxes {
				assert.LessOrEqual(t, box.Left+box.Width, paper.Wide-aside+1e-6, "%s, %d letters", name, letters)
			}
		}
	}
}

// A box is ticked where it is done; where something is to be written there is a line and what it is, and what was written stands on it.
func TestTicks(t *testing.T) {
	count := func(tick Tick) (lines int, all string) {
		pages := laid(template.Papers["a4"], Section{Parts: []Part{Ticks{tick}}})
		require.Len(t, pages, 1)
		return len(pages[0].lines), said(pages)
	}
	open, _ := count(Tick{Words: "swarf out"})
	done, _ := count(Tick{Words: "swarf out", Done: true})
	assert.Equal(t, open+1, done)
	asked, words := count(Tick{Words: "voltage at the heater", Answers: []Answer{{Ask: "V"}}})
	assert.Equal(t, open+1, asked)
	assert.Contains(t, words, "V")
	_, words = count(Tick{
		Words: "voltage at the heater", Answers: []Answer{{"V", "11.9 while it glows, read twice, and a long note of it besides"}, {"time", "10:40"}},
	})
	assert.Contains(t, words, tight("11.9 while it glows, read twice, and a long note of it besides"))
	assert.Contains(t, words, "time10:40")
}

// Two columns come out about as high as each other and hold all rows in order, down the first and then down the second.
func TestHalvesAreEven(t *testing.T) {
	var rows []Row
	for i := range 40 {
		rows = append(rows, Row{Cells: []string{strings.Repeat("i", i+1), "1"}})
	}
	pages := laid(template.Papers["a4"], Section{Heading: "H", Parts: []Part{Halves{Table{Cols: []Col{{Head: "of"}, {Head: "n", Figure: true}}, Rows: rows}}, Text{Words: "behind"}}})
	require.Len(t, pages, 1)
	var lefts []float64
	low := map[bool]float64{}
	for i, text := range pages[0].texts {
		if strings.Trim(text.Words, "i") == "" {
			second := pages[0].boxes[i].Left > 100
			lefts = append(lefts, pages[0].boxes[i].Left)
			low[second] = pages[0].boxes[i].Top
		}
	}
	assert.IsNonDecreasing(t, lefts)
	assert.InDelta(t, low[false], low[true], 20)
	assert.Greater(t, low[true], 60.0)
	last := len(pages[0].texts) - 1
	assert.Equal(t, "behind", pages[0].texts[last].Words)
	assert.Greater(t, pages[0].boxes[last].Top, max(low[false], low[true]), "what follows is below both")
}

// A row of one cell is a title over the rows below it, with all the room there is.
func TestTitlesInATable(t *testing.T) {
	title := strings.Repeat("a title over rows ", 4)
	page := laid(template.Papers["a4"], Section{Parts: []Part{Table{
		Cols: []Col{{Head: "of"}, {Head: "mm", Figure: true}}, Rows: []Row{{Cells: []string{title}}, {Cells: []string{"a", "1"}, Under: "said under it"}},
	}}})[0]
	found := map[string]bool{}
	for _, text := range page.texts {
		found[text.Words] = text.Bold
	}
	assert.Equal(t, map[string]bool{"of": false, "mm": false, strings.TrimSpace(title): true, "a": false, "1": false, "said under it": false}, found)
}

// Wherever a page ends, no title is the last thing on it: not one of a table's rows, not one over boxes, not a section's heading.
func TestNoTitleIsAloneAtAPagesFoot(t *testing.T) {
	for lines := range 80 {
		table := Table{Cols: []Col{{Head: "of"}, {Head: "mm", Figure: true}}}
		var parts []Part
		for i := range 12 {
			table.Rows = append(table.Rows, Row{Cells: []string{"TITLE over rows"}}, Row{Cells: []string{"a", "1"}, Under: "said under it"}, Row{Cells: []string{"b", "2"}})
			parts = append(parts, Titled{"TITLE over boxes", Ticks{{Name: "step", Words: strings.Repeat("words ", 10*(i%4)), Answers: []Answer{{Ask: "when"}, {Ask: "mm"}}}}})
		}
		columns := Titled{"TITLE over columns", Halves{Text{Words: strings.Repeat("words in two columns ", 40)}}}
		parts = append(parts, Titled{"TITLE over a list", List{"item"}}, columns, table, columns)
		pages := laid(template.Papers["a4"], Section{Heading: "TITLE", Parts: []Part{Text{Words: strings.Repeat("line\n", lines)}}}, Section{Heading: "TITLE two", Parts: parts})
		for n, p := range pages {
			lowest := 0
			for i, box := range p.boxes {
				if box.Top > p.boxes[lowest].Top {
					lowest = i
				}
			}
			assert.NotContains(t, p.texts[lowest].Words, "TITLE", "%d lines, page %d", lines, n+1)
		}
	}
}

// A short text in two columns begins in the first of them, and no page has one column alone.
func TestAShortTextFillsBothColumns(t *testing.T) {
	for lines := 2; lines < 12; lines++ {
		words := strings.TrimSpace(strings.Repeat("some words of a text in which there is about as much as a line ", lines))
		pages := laid(template.Papers["a4"], Section{Heading: "by", Parts: []Part{Halves{Text{Words: words, Size: small}}}})
		require.Len(t, pages, 1)
		left, right := 0, 0
		for _, b := range pages[0].boxes[1:] {
			if b.Left < template.Papers["a4"].Wide/2 {
				left++
			} else {
				right++
			}
		}
		assert.GreaterOrEqual(t, left, right, "%d lines", lines)
		assert.LessOrEqual(t, left-right, 3, "%d lines", lines)
	}
}
