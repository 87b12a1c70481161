package harmless

import "strings"

// Cell is a text for a cell of a table that a spreadsheet reads: one that it would reckon has an apostrophe before it.
func Cell(text string) string {
	if text != "" && strings.ContainsRune("=+-@", rune(text[0])) {
		return "'" + text
	}
	return text
}
