package sheet

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

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
