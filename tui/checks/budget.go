package checks

import (
	"fmt"
	"math"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// A row of the budget: the cause, its bar, its part of the whole, and what it comes to alone.
const (
	causeWidth = 23
	partWidth  = 5  // "100 %"
	aloneWidth = 10 // "± 12.3"
	leastBar   = 8
	mostBar    = 40
)

// What stands above the budget, or in its place.
const (
	budgetHead = "Where the ± comes from: part of its square, and alone"
	noSpread   = "No ±: nothing measured enters."
)

// budget says in at most h rows where a finding's ± comes from, a bar for each cause, the largest first.
func budget(f rules.Finding, s desk.State, w, h int) []string {
	st := s.Settings.Styles()
	if f.Sigma == 0 {
		return []string{st.Plain.Render(desk.FitRow(noSpread, w))}
	}
	shares := rules.Budget(s.Result, f)
	rows := []string{st.Title.Render(desk.FitRow(budgetHead, w))}
	if room := h - len(rows); len(shares) > max(1, room) {
		shares = merged(shares, max(1, room))
	}
	var column desk.Figures
	for _, share := range shares {
		column = column.With(alone(share, f, s))
	}
	for _, share := range shares {
		rows = append(rows, shareRow(share, f, column, s, w))
	}
	return rows
}

// alone is what a finding's ± would be by one cause alone.
func alone(share rules.Share, f rules.Finding, s desk.State) string {
	f.Sigma = math.Sqrt(share.Variance)
	return words.PlusMinus(f, s.Settings.Units)
}

// merged keeps the n-1 largest shares and adds up the others.
func merged(shares []rules.Share, n int) []rules.Share {
	rest := rules.Share{Cause: "all others"}
	for _, share := range shares[n-1:] {
		rest.Variance += share.Variance
	}
	return append(shares[:n-1:n-1], rest)
}

func shareRow(share rules.Share, f rules.Finding, column desk.Figures, s desk.State, w int) string {
	part := share.Variance / (f.Sigma * f.Sigma)
	room := max(leastBar, min(mostBar, w-causeWidth-partWidth-aloneWidth-3))
	text := desk.FitRow(share.Cause, causeWidth) + " "
	drawn := bar(part, room)
	tail := strings.Repeat(" ", room-desk.Width(drawn)) + fmt.Sprintf(" %3s %% %s", survey.FigureTo(100*part, 0), column.Write(alone(share, f, s)))
	return desk.FitPainted(text+s.Settings.Styles().Key.Render(drawn)+tail, w)
}

// eighths are the parts of a cell that a bar may end in, from nothing.
var eighths = []rune(" ▏▎▍▌▋▊▉")

// bar draws a part of w columns to an eighth of a column; what is there at all shows.
func bar(part float64, w int) string {
	n := int(math.Round(part * float64(w) * 8))
	n = max(1, min(n, 8*w))
	text := strings.Repeat("█", n/8)
	if n%8 > 0 {
		text += string(eighths[n%8])
	}
	return text
}
