package runs

import "bench.example/undermark/tui/desk"

// Listing tells whether a list, or a search, has the keys.
func (m screen) Listing() bool { return m.shielding || m.finder.open() || m.cutting }

// listTakes is what a key is told that does nothing to the list or the search that has the keys; "" where none has.
func (m screen) listTakes(s desk.State) string {
	leave := desk.KeyLeave.Help().Key
	switch {
	case m.finder.open():
		return m.finderTakes(s)
	case m.cutting:
		return "The cut list is open: " + leave + " leaves it."
	case m.shielding:
		return keyShield.Help().Key + " says whether a shield stands before it, " + leave + " leaves."
	}
	return ""
}
