package desk

import (
	"fmt"
	"strings"
)

// ListTitle paints the title of a list into a row of w columns, with how many of its rows are above and below those that are seen, in the
// longest words that there is room for. A title that is whole without it is not cut for it; one that is cut anyway is.
func (st Styles) ListTitle(title string, above, below, w int) string {
	ways := goesOn(above, below)
	for _, more := range ways {
		if gap := w - Width(title) - Width(more); gap >= 2 {
			return st.Title.Render(title) + strings.Repeat(" ", gap) + st.Faint.Render(more)
		}
	}
	if len(ways) == 0 || Width(title) <= w {
		return FitPainted(st.Title.Render(FitRow(title, w)), w)
	}
	least := ways[len(ways)-1]
	return st.Title.Render(FitRow(title, max(0, w-1-Width(least)))) + " " + st.Faint.Render(least)
}

// goesOn says that a list goes on, the longest way first; nothing where it does not.
func goesOn(above, below int) []string {
	switch {
	case above > 0 && below > 0:
		return []string{fmt.Sprintf("%d more above, %d below", above, below), fmt.Sprintf("↑%d ↓%d", above, below)}
	case below > 0:
		return []string{fmt.Sprintf("%d more below", below), fmt.Sprintf("↓%d", below)}
	case above > 0:
		return []string{fmt.Sprintf("%d more above", above), fmt.Sprintf("↑%d", above)}
	}
	return nil
}
