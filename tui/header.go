package tui

import (
	"bench.example/undermark/tui/desk"
)

// shortTitles are what titles are called where there is no room for all of them.
var shortTitles = map[string]string{"Underneath": "Under", "On top": "Top", "Marks": "Mark", "Checks": "Check"}

// headerParts are the screens' titles, the current one in brackets so that it is marked without colour too.
func (r *Root) headerParts() []part {
	const unsaved = 2 // columns for the dot of work that is not saved
	parts := r.titles(false)
	if last := parts[len(parts)-1]; last.from+last.width > r.w-unsaved {
		return r.titles(true)
	}
	return parts
}

// titles are the titles one after another, each with a blank on both sides; tight, in short and with a single blank
// between two.
func (r *Root) titles(tight bool) []part {
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
		p.text = before + digit + " " + title + behind
		p.width = desk.Width(p.text)
		x += p.width
		parts = append(parts, p)
	}
	return parts
}
