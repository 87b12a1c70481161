package tui

import (
	"strings"

	"bench.example/undermark/tui/desk"
)

// shortTitles are what titles are called where there is no room for all of them.
var shortTitles = map[string]string{"Underneath": "Under", "On top": "Top", "Marks": "Mark", "Checks": "Check"}

// unsaved is how many columns the dot of work that is not saved takes.
const unsaved = 2

// headerParts are the screens' titles, the current one in brackets so that it is marked without colour too. Where there is no room for
// all of each, those of the others have as many first letters as there is.
func (r *Root) headerParts() []part {
	parts := r.titles(false, longestTitle)
	for letters := longestTitle; !r.holds(parts) && letters > 0; letters-- {
		parts = r.titles(true, letters)
	}
	return parts
}

// longestTitle is as many letters as a title has at most.
const longestTitle = 10

func (r *Root) holds(parts []part) bool {
	last := parts[len(parts)-1]
	return last.from+last.width <= r.w-unsaved
}

// titles are the titles one after another, each with a blank on both sides; tight, in short, with a single blank between two and so many
// letters at most of those that are not shown.
func (r *Root) titles(tight bool, letters int) []part {
	styles := r.desk.State.Settings.Styles()
	var parts []part
	x := 0
	for i, s := range r.screens {
		digit, title, before, behind := desk.KeyScreens.Keys()[i], s.Title(), " ", " "
		if short, has := shortTitles[title]; tight && has {
			title = short
		}
		p := part{from: x, key: digit, style: styles.Plain}
		switch {
		case i == r.at:
			before, behind, p.style = "[", "]", styles.Here
		case tight && i == r.at+1:
			before, behind = "", "" // the bracket parts them
		case tight:
			behind = ""
		}
		if i != r.at {
			title = title[:min(letters, len(title))]
		}
		p.text = before + digit + " " + strings.TrimSpace(title) + behind
		p.width = desk.Width(p.text)
		x += p.width
		parts = append(parts, p)
	}
	return parts
}
