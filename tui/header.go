package tui

import (
	"bench.example/undermark/tui/desk"
)

// shortTitles are what titles are called where there is no room for all of them.
var shortTitles = map[string]string{"Underneath": "Under", "On top": "Top", "Marks": "Mark", "Checks": "Check", "Sizing": "Size"}

// spacing says how close the titles stand.
type spacing uint8

const (
	roomy spacing = iota // each with a blank on both sides, and room behind them for which job it is and that it is not saved
	snug                 // a single blank between two, and beside the brackets
	tight                // in short, too
	bare                 // without the digits
)

// titleButtons are the screens' titles, the current one in brackets so that it is marked without colour too: as roomy as they fit, which
// is the same for whichever is the current one.
func (r *Root) titleButtons() (buttons []button) {
	const unsaved = 2 // columns for the dot of work that is not saved
	for s := roomy; s <= bare; s++ {
		behind := unsaved
		if s == roomy {
			behind = desk.Width(r.ref()+" ● "+notSaved) + 1
		}
		buttons = r.titles(s)
		if last := buttons[len(buttons)-1]; last.from+last.width <= r.w-behind {
			break
		}
	}
	return buttons
}

// titles are the titles one after another.
func (r *Root) titles(spaced spacing) []button {
	styles := r.desk.State.Settings.Styles()
	var buttons []button
	x := 0
	for i, s := range r.screens {
		digit, title, before, behind := desk.KeyScreens.Keys()[i], s.Title(), "", ""
		if short, has := shortTitles[title]; spaced >= tight && has {
			title = short
		}
		if spaced == roomy {
			before, behind = " ", " "
		} else if i > 0 {
			x++
		}
		p := button{from: x, key: digit, style: styles.Plain}
		if i == r.at {
			before, behind, p.style = "[", "]", styles.Here
		}
		if spaced < bare {
			before += digit + " "
		}
		p.text = before + title + behind
		p.width = desk.Width(p.text)
		x += p.width
		buttons = append(buttons, p)
	}
	return buttons
}
