package words

import (
	"strings"

	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/tui/desk"
)

// TakenAsNobodySaid is what stands before what was taken.
const TakenAsNobodySaid = "Taken, as nobody has said: "

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

// NoteOn is what a note of a result is on.
type NoteOn uint8

// What notes are on.
const (
	OnTrouble NoteOn = iota // what is to be put right
	OnLacking               // what nobody has said
	OnMaking                // how it is reckoned, of what that was taken
	OnSource                // who says so
)

// SizedNote is a sentence or two of a result.
type SizedNote struct {
	On   NoteOn
	Text string
}

// NotesOfSize are what must be said of a result: what is to be put right, what nobody has said, how it is reckoned, what was taken,
// whose instructions come first, and who says so.
func NotesOfSize(r sizing.Row) (notes []SizedNote) {
	add := func(on NoteOn, before, text, behind string) {
		if text != "" {
			notes = append(notes, SizedNote{on, before + text + behind})
		}
	}
	add(OnTrouble, "Put right: ", r.Amiss, ".")
	add(OnLacking, "Nobody has said: ", strings.Join(r.Lacks, "; "), ".")
	add(OnMaking, "", r.Why, "")
	add(OnMaking, TakenAsNobodySaid, strings.Join(r.Taken, "; "), ".")
	if r.Instructions {
		add(OnMaking, "", Upper(sizing.InstructionsFirst), ".")
	}
	add(OnSource, "Source: ", r.Source.String(), ".")
	return notes
}

// SizedNotes are the texts of all of them.
func SizedNotes(r sizing.Row) []string { return textsUpTo(OnSource, r) }

// SizedTrouble is what is to be put right, and what nobody has said.
func SizedTrouble(r sizing.Row) []string { return textsUpTo(OnLacking, r) }

func textsUpTo(last NoteOn, r sizing.Row) (texts []string) {
	for _, note := range NotesOfSize(r) {
		if note.On <= last {
			texts = append(texts, note.Text)
		}
	}
	return texts
}
