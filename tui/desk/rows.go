package desk

import "strings"

// Wrapped breaks text into rows of at most w columns and paints each.
func Wrapped(style Style, text string, w int) []string {
	rows := Wrap(text, w)
	for i := range rows {
		rows[i] = style.Render(rows[i])
	}
	return rows
}

// Margin is how many columns stay free between the line of Beside and the text on either side of it.
const Margin = 1

// BoxColumns are those of pointer and box in front of a row that is ticked.
const BoxColumns = 6

// Indented is a block of painted rows behind the margin.
func Indented(block string) string {
	blank := strings.Repeat(" ", Margin)
	return blank + strings.ReplaceAll(block, "\n", "\n"+blank)
}

// Beside sets two blocks of equally many rows side by side, a line of one column between them.
func Beside(left, right string, look Styles) string {
	rows, others := strings.Split(left, "\n"), strings.Split(right, "\n")
	line := look.Frame.Render("│")
	for i := range rows {
		rows[i] += line + others[i]
	}
	return strings.Join(rows, "\n")
}
