package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules/template"
)

// Rows lie below each other whatever they hold: of one line or of many, with something said under them, so long that half a page would not hold them; all is
// there in order, and no line lies over another.
func TestRowsLieBelowEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := Table{Cols: []Col{{Head: "thing"}, {Head: "mm", Figure: true}, {Head: "what is said of it"}}}
		for i := range rapid.IntRange(1, 12).Draw(t, "rows") {
			words := func(name string, most int) string {
				return strings.TrimSpace(strings.Repeat(fmt.Sprintf("%s%dq ", name, i), rapid.IntRange(0, most).Draw(t, name)))
			}
			most := 30
			if rapid.IntRange(0, 5).Draw(t, "long") == 0 {
				most = 900
			}
			table.Rows = append(table.Rows, Row{Cells: []string{fmt.Sprintf("row%dq", i), "1.5", words("said", most)}, Under: words("under", 60), Strong: i%2 == 0})
		}
		pages := laid(template.Papers["a4"], Section{Heading: "H", Parts: []Part{table}})
		want := map[string]int{}
		for _, row := range table.Rows {
			for _, word := range strings.Fields(strings.Join(row.Cells, " ") + " " + row.Under) {
				want[word]++
			}
		}
		for n, p := range pages {
			for i, a := range p.boxes {
				for _, word := range strings.Fields(p.texts[i].Words) {
					want[word]--
				}
				for k, b := range p.boxes[:i] {
					if over(a, b) > 0.6 {
						t.Fatalf("page %d: %q lies over %q", n+1, p.texts[i].Words, p.texts[k].Words)
					}
				}
			}
		}
		for word, left := range want {
			if left > 0 && !strings.HasPrefix(word, "H") {
				t.Fatalf("%q is lost %d times", word, left)
			}
		}
	})
}

// What is said under a row begins in the second column and is below the row's last line; the next row is below that.
func TestWhatIsSaidUnderARowIsBelowIt(t *testing.T) {
	page := laid(template.Papers["a4"], Section{Parts: []Part{Table{
		Cols: []Col{{Head: "of"}, {Head: "words", Most: 30}},
		Rows: []Row{{Cells: []string{"first", strings.Repeat("broken ", 12)}, Under: strings.Repeat("under ", 60)}, {Cells: []string{"second", "b"}}},
	}}})[0]
	low := map[string]float64{}
	var second, left float64
	top := map[string]float64{}
	for i, text := range page.texts {
		word := strings.Fields(text.Words)[0]
		if _, seen := top[word]; !seen {
			top[word] = page.boxes[i].Top
		}
		low[word] = page.boxes[i].Top
		switch word {
		case "broken":
			second = page.boxes[i].Left
		case "under":
			left = page.boxes[i].Left
		}
	}
	assert.InDelta(t, top["first"], top["broken"], 1e-9)
	assert.InDelta(t, second, left, 1e-9)
	assert.Greater(t, low["broken"], top["broken"], "it takes more than a line")
	assert.Greater(t, low["under"], top["under"])
	assert.Greater(t, top["under"], low["broken"])
	assert.Greater(t, top["second"], low["under"])
	for _, words := range []string{"broken", "under"} {
		lines := 0
		for _, text := range page.texts {
			if strings.HasPrefix(text.Words, words) {
				lines++
			}
		}
		assert.InDelta(t, float64(lines-1)*body*leading, low[words]-top[words], 1e-6, "lines are as far apart as in a text")
	}
}

// The lines of a column's head are at least an em apart, the first of them below what stands over the table, the last just over the line under the head.
func TestLinesOfAHead(t *testing.T) {
	head := "as many words as make a head of some lines"
	page := laid(template.Papers["a4"], Section{Parts: []Part{Text{Words: "over it"}, Table{
		Cols: []Col{{Head: head, Most: 20}, {Head: "one"}}, Rows: []Row{{Cells: []string{"a", "b"}}},
	}}})[0]
	var tops []float64
	over, one := 0.0, 0.0
	for i, text := range page.texts {
		switch box := page.boxes[i]; {
		case text.Words == "over it":
			over = box.Top + box.Height
		case text.Words == "one":
			one = box.Top
		case strings.Contains(head, text.Words) && len(text.Words) > 1:
			tops = append(tops, box.Top)
		}
	}
	require.Greater(t, len(tops), 1)
	assert.Greater(t, tops[0], over+gap/2)
	for i := range tops[1:] {
		assert.GreaterOrEqual(t, tops[i+1]-tops[i], small)
	}
	assert.InDelta(t, one, tops[len(tops)-1], 1e-6, "all heads end on one line")
}

// A column of text that is broken holds a word of four letters, however little room all have.
func TestNoColumnIsTooNarrowForAWord(t *testing.T) {
	cells := make([]string, 6)
	table := Table{Cols: make([]Col, len(cells)), Rows: []Row{{Cells: cells}}}
	for i := range cells {
		cells[i] = strings.TrimSpace(strings.Repeat("pipe ", 30*(i+1)))
	}
	for width := 40.0; width < 200; width += 7 {
		for i, c := range table.laidOut(width).cols {
			assert.GreaterOrEqual(t, c.width, measured(vector.Text{Size: body}, "pipe"), "column %d of a table %g wide", i, width)
		}
	}
}

// Wherever on a page it begins, what is said under a row that is longer than a page goes on on the next one.
func TestWhatIsSaidUnderALongRowStaysOnThePage(t *testing.T) {
	paper := template.Papers["a4"]
	row := Row{Cells: []string{"row", strings.Repeat("said ", 1400)}, Under: strings.Repeat("under ", 500)}
	table := Table{Cols: []Col{{Head: "of"}, {Head: "words", Most: 60}}, Rows: []Row{row}}
	for lines := range 60 {
		pages := laid(paper, Section{Parts: []Part{Text{Words: strings.Repeat("line\n", lines)}, table}})
		require.Greater(t, len(pages), 1)
		onPages(t, pages, paper)
		assert.Equal(t, 500, strings.Count(said(pages), "under"))
	}
}

// A long first row leaves no page blank before it: it begins where there is room for it, or for some lines of one that no page would hold.
func TestALongFirstRowBeginsWhereThereIsRoom(t *testing.T) {
	paper := template.Papers["a4"]
	for words, needs := range map[int]float64{1400: 40, 400: 40, 200: 105, 80: 55} { // mm, its head and title with it: two that no half page holds, two that stay whole
		row := Row{Cells: []string{"row", strings.TrimSpace(strings.Repeat("said ", words))}}
		for _, rows := range [][]Row{{row}, {{Cells: []string{"title"}}, row, row}} {
			for lines := range 60 {
				before := Text{Words: strings.Repeat("line\n", lines)}
				pages := laid(paper, Section{Parts: []Part{before, Table{Cols: []Col{{Head: "of"}, {Head: "words", Most: 60}}, Rows: rows}}})
				onPages(t, pages, paper)
				if left := paper.High - bottom - top - float64(lines)*leading*body; left > needs {
					assert.Contains(t, said(pages[:1]), "said", "%d words, %d rows, %.0f mm left", words, len(rows), left)
				}
			}
		}
	}
}

// onPages asserts that nothing is written outside of what a page has for it, nor over anything else.
func onPages(t *testing.T, pages []*board, paper template.Paper) {
	for n, p := range pages {
		for i, a := range p.boxes {
			require.True(t, a.Top > top-1 && a.Top+a.Height < paper.High-bottom+1, "page %d: %q is at %v", n+1, p.texts[i].Words, a)
			for k, b := range p.boxes[:i] {
				require.LessOrEqual(t, over(a, b), 0.6, "page %d: %q lies over %q", n+1, p.texts[i].Words, p.texts[k].Words)
			}
		}
	}
}

// Of two parts beside each other one may be longer than a page: then they come one after the other, whole.
func TestPartsThatNoPageHoldsBesideEachOther(t *testing.T) {
	paper := template.Papers["a4"]
	for _, lines := range []int{5, 40, 60, 70, 90, 200} {
		left, right := Text{Words: strings.Repeat("left\n", lines)}, Text{Words: strings.Repeat("right\n", 8)}
		for _, p := range []Part{Beside{Left: left, Right: right}, Beside{Left: right, Right: left}} {
			pages := laid(paper, Section{Heading: "H", Parts: []Part{p, Text{Words: "behind"}}})
			onPages(t, pages, paper)
			assert.Equal(t, lines, strings.Count(said(pages), "left"), "%d lines", lines)
			assert.Equal(t, 8, strings.Count(said(pages), "right"), "%d lines", lines)
		}
	}
}

// How much of a page two parts may take that stand beside each other: what takes more comes one after the other, each from the left of the page.
func TestHowHighPartsBesideEachOtherMayBe(t *testing.T) {
	for lines, beside := range map[int]bool{20: true, 55: true, 60: false, 65: false, 100: false} { // of 71 on a page
		p := Beside{Left: Text{Words: strings.Repeat("left\n", lines)}, Right: Text{Words: "right"}}
		pages := laid(template.Papers["a4"], Section{Parts: []Part{p}})
		for _, page := range pages {
			for i, text := range page.texts {
				if text.Words == "right" {
					assert.Equal(t, beside, page.boxes[i].Left > aside+1, "%d lines", lines)
				}
			}
		}
	}
}

// A title begins where there is room for it and some lines of what is under it: a long part does not leave the rest of a page empty.
func TestATitleBeginsWhereSomeOfItsPartHasRoom(t *testing.T) {
	paper := template.Papers["a4"]
	for _, items := range []int{1, 5, 100} {
		before := Text{Words: strings.Repeat("line\n", 45)}
		pages := laid(paper, Section{Parts: []Part{before, Titled{"TITLE", List(strings.Split(strings.Repeat("item,", items), ","))}}})
		assert.Contains(t, said(pages[:1]), "TITLE", "%d items", items)
	}
}
