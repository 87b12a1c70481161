package words

import (
	"slices"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
)

// ConfirmIt says what to do about things that were not measured on this van: which key, and on which screens.
func ConfirmIt(things ...rules.Thing) string { return "confirm it " + ConfirmedBy(things...) }

// ConfirmedBy is, in brackets, the key that confirms things, and on which screens.
func ConfirmedBy(things ...rules.Thing) string {
	var on []string
	for _, t := range things {
		if title, is := desk.EnteredOn(t.Sort); is && !slices.Contains(on, title) {
			on = append(on, title)
		}
	}
	return "(m in " + strings.Join(on, " or ") + ")"
}

// OnlyUnconfirmed are the things that were not measured on this van, where nothing but doubts about them keeps the job from being
// clear, the floor aside while a size of it is a guess; none where something else does, too.
func OnlyUnconfirmed(r *rules.Result) (things []rules.Thing) {
	for i := range r.Findings {
		f := &r.Findings[i]
		switch {
		case f.Verdict == rules.Clear, f.Verdict == rules.Doubtful && f.OfGuess:
		case f.Verdict == rules.Foul || r.Confirmed(f.Against):
			return nil
		case !slices.Contains(things, f.Against):
			things = append(things, f.Against)
		}
	}
	return things
}
