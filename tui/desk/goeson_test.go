package desk

import (
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
)

func TestATitleSaysThatItsListGoesOn(t *testing.T) {
	st := Settings{}.Styles()
	for _, c := range []struct {
		title        string
		above, below int
		w            int
		want         string
	}{
		{"Marks", 0, 0, 10, "Marks     "},
		{"Marks", 0, 7, 20, "Marks   7 more below"},
		{"Marks", 3, 7, 30, "Marks    3 more above, 7 below"},
		{"Marks", 3, 0, 12, "Marks     ↑3"},
		{"Marks", 3, 7, 12, "Marks  ↑3 ↓7"},
		{"All marks, mm", 0, 7, 14, "All marks, mm "},
		{"All marks, mm", 0, 7, 12, "All mark… ↓7"},
	} {
		got := ansi.Strip(st.ListTitle(c.title, c.above, c.below, c.w))
		assert.Equal(t, c.want, got)
		assert.Equal(t, c.w, Width(got))
	}
}
