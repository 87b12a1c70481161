package moving

import (
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// A thing that nobody confirmed on this van is doubted however far off it is, and no move ends that doubt. One line below the list tells of
// all of those: among the worst they would stand before what a move can mend.

// farOff tells whether a finding is such a doubt.
func farOff(f *rules.Finding) bool { return f.Unconfirmed && f.Margin.Value > vehicles.LookRound }

// Parted is the list with the far doubts taken out of what the move changes. Where it holds nothing else they stay, as something is to be
// seen there.
func (l Worst) Parted() Worst {
	near := slices.DeleteFunc(slices.Clone(l.Moved), farOff)
	if len(near) == 0 {
		return l
	}
	for _, f := range l.Moved {
		if farOff(f) {
			l.Far = append(l.Far, f)
		}
	}
	l.Moved = near
	return l
}

// unconfirmed are the things that far doubts are about, each once, and their names.
func (l Worst) unconfirmed() (things []rules.Thing, names []string) {
	for _, f := range l.Far {
		if !slices.Contains(things, f.Against) {
			things, names = append(things, f.Against), append(names, f.Against.String())
		}
	}
	return things, names
}

// ToConfirm says in a line how many the far doubts are, what ends them, and what they are about; "" without any.
func (l Worst) ToConfirm() string {
	text := l.unnamed()
	if _, names := l.unconfirmed(); len(names) > 0 {
		text += ": " + strings.Join(names, ", ")
	}
	return text
}

// unnamed is that line without names.
func (l Worst) unnamed() string {
	things, _ := l.unconfirmed()
	if len(things) == 0 {
		return ""
	}
	return fmt.Sprintf("%d far off, doubtful until confirmed ", len(l.Far)) + words.ConfirmedBy(things...)
}

// farRows are that line as rows of their own, with names where there is room for those.
func (l Worst) farRows(w, h int) []string {
	if h < leastTitled || len(l.Far) == 0 {
		return nil
	}
	if named := desk.Wrap(l.ToConfirm(), w); len(named) <= h/leastTold+1 {
		return named
	}
	return desk.Wrap(l.unnamed(), w)
}

// inShort says in few words, where the list has few rows, that there are far doubts, and how much is open of what else is not in the list.
func (l Worst) inShort(s desk.State, w int) string {
	things, _ := l.unconfirmed()
	text, others := fmt.Sprintf("%d far off", len(l.Far)), Worst{Moved: l.Moved, Far: l.Far}
	long := survey.Joined(". ", text+", unconfirmed "+words.ConfirmedBy(things...), others.elsewhere(s))
	if open := others.openElsewhere(s); open != "" && desk.Width(long)+seenWidth > w {
		return text + ", elsewhere " + open
	}
	return long
}
