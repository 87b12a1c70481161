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
// all of each, the others have as many first letters as there is whichever is the current one: no title moves from under a thumb.
func (r *Root) headerParts() []part {
	parts := r.titles(false, longestTitle)
	if last := parts[len(parts)-1]; last.from+last.width <= r.w-unsaved {
		return parts
	}
	letters := longestTitle
	for letters > 1 && r.tightWidth(letters) > r.w-1 {
		letters--
	}
	return r.titles(true, letters)
}

// longestTitle is as many letters as a title has at most.
const longestTitle = 10

// tightWidth is how many columns the titles take at most in short, with so many letters of those that are not shown.
func (r *Root) tightWidth(letters int) int {
	w, spared := len("]"), 0
	for _, s := range r.screens {
		title := desk.Width(inShort(s.Title()))
		w += len(" 1 ") + min(title, letters)
		spared = max(spared, title-letters)
	}
	return w + spared
}

// inShort is what a title is called where there is little room.
func inShort(title string) string {
	if short, has := shortTitles[title]; has {
		return short
	}
	return title
}

// titles are the titles one after another, each with a blank on both sides; tight, in short, with a single blank between two and so many
// letters at most of those that are not shown.
func (r *Root) titles(tight bool, letters int) []part {
	styles := r.desk.State.Settings.Styles()
	var parts []part
	x := 0
	for i, s := range r.screens {
		digit, title, before, behind := desk.KeyScreens.Keys()[i], s.Title(), " ", " "
		if tight {
			title = inShort(title)
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
