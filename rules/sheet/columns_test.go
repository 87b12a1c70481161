package sheet

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules/template"
)

// Columns stand apart whatever stands in them: in a table with room to spare from 4 to 9 mm, in one of many figures from 2 on; where there is too little room,
// words are broken and figures never, and all of the table stays in its width.
func TestColumnsStandApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		table := Table{Close: rapid.Bool().Draw(t, "close"), Size: rapid.SampledFrom([]float64{small, body}).Draw(t, "size")}
		n := rapid.IntRange(1, 7).Draw(t, "columns")
		for i := range n {
			table.Cols = append(table.Cols, Col{Head: rapid.StringMatching(`[a-z]{1,8}( [a-z]{1,8}){0,2}`).Draw(t, "head"), Figure: i > 0 && rapid.Bool().Draw(t, "figure")})
		}
		for range rapid.IntRange(1, 8).Draw(t, "rows") {
			row := Row{Strong: rapid.Bool().Draw(t, "strong")}
			for _, c := range table.Cols {
				cell := rapid.StringMatching(`[a-z]{1,9}( [a-z]{1,9}){0,6}`)
				if c.Figure {
					cell = rapid.StringMatching(`(± )?-?[0-9]{1,4}(\.[0-9])?`)
				}
				row.Cells = append(row.Cells, cell.Draw(t, "cell"))
			}
			if n == 1 {
				row.Cells = append(row.Cells, "") // a single cell is a title
			}
			table.Rows = append(table.Rows, row)
		}
		if n == 1 {
			table.Cols = append(table.Cols, Col{})
		}
		width := rapid.Float64Range(60, 178).Draw(t, "width")
		standApart(t, table.filled(), width)
	})
}

// standApart lays a table's columns and holds them to what they take.
func standApart(t *rapid.T, table Table, width float64) {
	g := table.laidOut(width)
	least := 4.0
	if table.Close {
		least = 2
	}
	natural := 0.0
	for i := range g.cols {
		natural += g.natural(i).width
	}
	gaps := float64(len(g.cols) - 1)
	for i, c := range g.cols {
		if i == 0 && c.at != 0 {
			t.Fatalf("the first column is in by %g", c.at)
		}
		if i > 0 {
			gap := c.at - g.cols[i-1].at - g.cols[i-1].width
			if gap < least-1e-6 || gap > 9+1e-6 {
				t.Fatalf("column %d is %g behind the one before it", i, gap)
			}
			if spare := width - natural; spare >= 9*gaps && gap < 9-1e-6 {
				t.Fatalf("%g mm to spare, and columns %g apart", spare, gap)
			}
		}
		whole := g.natural(i).width
		if g.Cols[i].Figure && c.width != whole {
			t.Fatalf("column %d of figures takes %g and has %g", i, whole, c.width)
		}
		if natural+least*gaps <= width && c.width != whole {
			t.Fatalf("column %d is broken to %g of %g, and there is room", i, c.width, whole)
		}
		if c.width > whole {
			t.Fatalf("column %d is %g wide, and takes %g", i, c.width, whole)
		}
	}
	last := g.cols[len(g.cols)-1]
	if end := last.at + last.width; natural+least*gaps <= width && end > width+1e-6 {
		t.Fatalf("the last column ends at %g of %g", end, width)
	}
	widestIsBroken(t, g, natural+least*gaps > width)
}

// widestIsBroken: where room is short the widest column of words gives it, so that none that was broken is much narrower than one that was not.
func widestIsBroken(t *rapid.T, g *grid, short bool) {
	if !short {
		return
	}
	for i, c := range g.cols {
		for k, other := range g.cols {
			broken := c.width < g.natural(i).width-1e-6
			if broken && !g.Cols[k].Figure && other.width > c.width+0.51 && other.width > least && c.width > least {
				t.Fatalf("column %d was broken to %g, and column %d has %g", i, c.width, k, other.width)
			}
		}
	}
}

// Two columns that go on over pages fill each page but the last, where they come out even: rows go down the first and then down the second.
func TestHalvesAreEvenOnTheLastPage(t *testing.T) {
	for _, n := range []int{130, 160, 200, 260} {
		var rows []Row
		for i := range n {
			rows = append(rows, Row{Cells: []string{fmt.Sprintf("row %dq", i), "1"}})
		}
		cols := []Col{{Head: "of"}, {Head: "n", Figure: true}}
		pages := laid(template.Papers["a4"], Section{Heading: "H", Parts: []Part{Halves{Table{Cols: cols, Rows: rows}}}})
		require.Greater(t, len(pages), 1, "%d rows", n)
		next := 0
		for i, p := range pages {
			heads, low := 0, map[bool]float64{}
			for k, text := range p.texts {
				second := p.boxes[k].Left > 100
				switch {
				case strings.HasPrefix(text.Words, "row "):
					require.Equal(t, fmt.Sprintf("row %dq", next), text.Words)
					low[second] = p.boxes[k].Top
					next++
				case text.Words == "of":
					heads++
				}
			}
			require.Equal(t, 2, heads, "%d rows, page %d: a head over either column", n, i+1)
			assert.InDelta(t, low[false], low[true], 20, "%d rows, page %d", n, i+1)
		}
		assert.Equal(t, n, next)
	}
}

// Nothing stands where a folder's holes are punched: their middles are 12 mm from the edge and they are 6 mm wide (ISO 838). What flows begins right under
// the head, and the head says what the page is of in the largest letters there.
func TestPagesLeaveRoomForAFoldersHoles(t *testing.T) {
	for name, paper := range template.Papers {
		s := Sheet{Head: Head{Of: jobSheet, Job: "TL-07", Van: "a van", Date: "2026-11-27", Standing: "the place is clear"}, Sections: []Section{
			{Heading: "Text", Parts: []Part{Text{Words: strings.Repeat("words of a text that goes over pages ", 600)}}},
		}}
		pages := s.Pages(paper)
		require.Greater(t, len(pages), 1)
		for n, page := range pages {
			p := printedOf(page)
			first, largest := paper.High, 0.0
			for i, box := range p.boxes {
				assert.GreaterOrEqual(t, box.Left, 15.0, "%s, page %d: %q", name, n+1, p.texts[i].Words)
				assert.LessOrEqual(t, box.Left+box.Width, paper.Wide-15)
				if box.Top+box.Height > 21 {
					first = min(first, box.Top)
				} else if p.texts[i].Words == "TL-07" {
					largest = p.texts[i].Size
				}
			}
			assert.InDelta(t, 23, first, 1.5, "the heading is under the head's line")
			for i, text := range p.texts {
				if p.boxes[i].Top < 21 && text.Words != "TL-07" {
					assert.Less(t, text.Size, largest, text.Words)
				}
			}
		}
	}
}

// A page is folded where its marks are: a short line at the middle of each edge, where nothing else stands, and no other line but the head's.
func TestAPageIsMarkedWhereItIsFolded(t *testing.T) {
	for _, paper := range template.Papers {
		page, b := Page{}, board{}
		h := Head{Of: jobSheet, Job: "TL-07"}
		h.put(&page, paper, 1, 1)
		page.Draw(&b)
		var got []vector.Box
		for _, line := range b.lines {
			require.Len(t, line, 2)
			got = append(got, vector.Box{Left: line[0].X, Top: line[0].Y, Width: line[1].X - line[0].X, Height: line[1].Y - line[0].Y})
		}
		w, high := paper.Wide, paper.High
		for _, want := range []vector.Box{
			{Left: w / 2, Top: 8, Height: 3}, {Left: w / 2, Top: high - 8, Height: -3}, {Left: 8, Top: high / 2, Width: 3}, {Left: w - 8, Top: high / 2, Width: -3},
			{Left: 16, Top: 21, Width: w - 32},
		} {
			assert.True(t, slices.ContainsFunc(got, func(b vector.Box) bool {
				return max(abs(b.Left-want.Left), abs(b.Top-want.Top), abs(b.Width-want.Width), abs(b.Height-want.Height)) < 1e-9
			}), "%v is not among %v", want, got)
		}
		assert.Len(t, got, 5)
	}
}

func abs(v float64) float64 { return max(v, -v) }
