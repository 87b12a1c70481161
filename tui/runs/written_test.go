package runs

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/screentest"
)

// Words of a row stand about their columns as near as they can, none over another, and none is cut while there is room before it.
func TestWordsOfARowStandAboutTheirColumns(t *testing.T) {
	row := func(w int, words ...word) string {
		r := written{lead: "drop", words: words}
		text, _ := r.laid(w)
		return text
	}
	at := func(col int, text string) word { return word{col: col, text: text} }
	assert.Equal(t, "drop  45 at 0  187 at 872", row(40, at(9, "45 at 0"), at(20, "187 at 872")))
	assert.Equal(t, "drop 45 at 0 172 at 9", row(40, at(8, "45 at 0"), at(9, "172 at 9")), "behind what stands there")
	assert.Equal(t, "drop     40 at 1533 45 at 1605", row(30, at(18, "40 at 1533"), at(29, "45 at 1605")), "the last moves back, and what is in its way")
	assert.Equal(t, "drop 40 at 1533 45 at 1605", row(20, at(18, "40 at 1533"), at(19, "45 at 1605")), "there is no room before it")
}

// In the largest window each corner has its drop and its place, the last one too.
func TestTheLastDimensionIsWhole(t *testing.T) {
	d := screentest.New(t, New(), screentest.State(t).Job, 160, 47)
	for range 3 {
		rows := strings.Split(d.View(160, 47), "\n")
		for _, row := range rows {
			if strings.HasPrefix(row, "drop ") {
				row, _, _ = strings.Cut(row, "│")
				m := d.Screen.(screen)
				assert.Len(t, regexp.MustCompile(`-?[0-9.]+ at [0-9.]+`).FindAllString(row, -1), len(d.State.Result.Plan.Run(m.of).Path), row)
				assert.NotContains(t, row, "…")
				assert.LessOrEqual(t, desk.Width(row), 160)
			}
		}
		d.Type("<tab>")
	}
}
