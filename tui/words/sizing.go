package words

import (
	"strings"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
)

// What the notes of a result begin with.
const (
	PutRight       = "Put right: "
	NobodySaidSize = "Nobody has said: "
	SizedBy        = "Source: "
	SizedTaken     = "Taken, as nobody has said: "
)

// Sized is a result in few words, its lengths in the units of the screen.
func Sized(r sizing.Row, u desk.Units) string {
	if r.Unit != sizing.MM || !r.Value.Set || u == desk.Millimetres {
		return r.Said()
	}
	said := desk.Length(r.Value.Value, u)
	if r.Text != "" {
		said += ", " + r.Text
	}
	return said
}

// SizedNotes are what must be said of a result, a sentence or two each: what is to be put right, what nobody has said, how it is
// reckoned, what was taken, whose instructions come first, and who says so.
func SizedNotes(r sizing.Row) (notes []string) {
	notes = SizedTrouble(r)
	add := func(before, text, behind string) {
		if text != "" {
			notes = append(notes, before+text+behind)
		}
	}
	add("", r.Why, "")
	add(SizedTaken, strings.Join(r.Taken, "; "), ".")
	if r.Instructions {
		notes = append(notes, "The heater's own instructions come first.")
	}
	add(SizedBy, r.Source, ".")
	return notes
}

// SizedTrouble is what is to be put right, and what nobody has said.
func SizedTrouble(r sizing.Row) (notes []string) {
	if r.Amiss != "" {
		notes = append(notes, PutRight+r.Amiss+".")
	}
	if len(r.Lacks) > 0 {
		notes = append(notes, NobodySaidSize+strings.Join(r.Lacks, "; ")+".")
	}
	return notes
}
