package form

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"bench.example/undermark/tui/desk"
)

// Shown names the rows that are painted, and no others; taps find the same.
func TestShownRowsAreThosePainted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := make([]Row, rapid.IntRange(0, 30).Draw(t, "rows"))
		for i := range rows {
			rows[i].Text = fmt.Sprintf("row %d.", i)
			rows[i].Head = rapid.SampledFrom([]string{"", "", "heading"}).Draw(t, "head")
		}
		top, at, h := rapid.IntRange(0, 60).Draw(t, "top"), rapid.IntRange(0, 30).Draw(t, "at"), rapid.IntRange(0, 12).Draw(t, "h")
		painted := strings.Split(PaintRows(rows, top, at, 40, h, desk.Settings{}.Styles()), "\n")
		from, to := Shown(rows, top, at, h)
		for i := range rows {
			seen := false
			for y, line := range painted {
				here := strings.Contains(line, rows[i].Text)
				seen = seen || here
				if row, ok := RowAt(rows, top, at, h, y); here {
					require.True(t, ok)
					require.Equal(t, i, row)
				}
			}
			require.Equal(t, from <= i && i < to, seen, "row %d of %d to %d", i, from, to)
		}
	})
}

// What a row is there for is painted as its text is; what is wrong is painted as wrong whatever it is there for, and the rest is faint.
func TestWhatARowIsThereForIsNotFaint(t *testing.T) {
	look := desk.Settings{Colour: desk.TrueColour}.Styles()
	for _, c := range []struct {
		row  Row
		with desk.Style
	}{
		{Row{Right: "36 mm"}, look.Faint}, {Row{Right: "36 mm", Value: true}, look.Plain}, {Row{Right: "36 mm", Value: true, Fault: true}, look.Fault},
	} {
		painted := PaintRows([]Row{{Text: "other"}, c.row}, 0, 0, 40, 2, look)
		require.Contains(t, painted, c.with.Render(" 36 mm"))
	}
}
