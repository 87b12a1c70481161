package runs

import (
	"bench.example/undermark/tui/canvas"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
)

// size is columns and rows.
type size struct{ W, H int }

// pictures says which of plan and profile are seen.
type pictures uint8

const (
	together  pictures = iota // one above the other; the plan alone where there is no room for both
	planAlone                 // with a whole panel
	fallAlone                 // the profile, with a whole panel
)

// arrangement is how much room the pictures have, each where it is seen, and where the panel stands.
type arrangement struct {
	sees          pictures
	plan, profile size
	body          moving.Body
}

// leastBoth is from how many rows on plan and profile stand one above the other, as many each as a picture takes; with less one stands in
// the other's place.
const leastBoth = canvas.MinHeight + leastProfile

// leastProfile is how many rows the profile has there at least, with its falls below it; it has two fifths.
const leastProfile = canvas.MinHeight + 1

const (
	// leastRows is how many rows the panel has at least under both: the run at hand, what is picked with its place, and the worst.
	leastRows = 3

	// leastTold is the same while something of two rows is told above the foot: without the worst, or, of what has just been laid and has
	// nothing picked yet, with it alone.
	leastTold = 2

	// leastListed is from how many rows on the panel lists the parts.
	leastListed = 5

	// moreOfIt is what a tap has in the head of a panel without that list: the panel whole.
	moreOfIt = "[list]"
)

// wholePanel tells whether both pictures have room above or beside a whole panel in a body of w by h: then nothing is to be chosen.
func wholePanel(w, h int) bool {
	_, planH := moving.Sizes(w, h)
	return planH >= leastBoth
}

// arranged is how pictures and panel stand in a body of w by h.
func (m screen) arranged(s desk.State, w, h int) arrangement {
	body := moving.Body{W: w, H: h}
	planW, planH := body.Sizes()
	whole := size{planW, planH}
	switch {
	case wholePanel(w, h):
		low := max(leastProfile, planH*2/5)
		return arrangement{together, size{planW, planH - low}, size{planW, low}, body}
	case m.pictures == together && m.brief(s, w, h):
		body.Under = h - leastBoth
		return arrangement{together, size{planW, canvas.MinHeight}, size{planW, leastProfile}, body}
	case m.pictures == together && m.aside > 0 && w < desk.SideBySide && m.bare():
		if rows := m.leastUnder(s, w); rows < leastListed {
			body.Under, whole.H = rows, h-rows
		}
		return arrangement{planAlone, whole, whole, body}
	case m.pictures == together && m.laid && !m.Typing() && w < desk.SideBySide && s.Result.Plan.Run(m.of) != nil:
		body.Under = leastRows
		whole.H = h - leastRows
		return arrangement{fallAlone, whole, whole, body}
	case m.pictures == fallAlone, m.pictures == together && m.typesDrop(s):
		return arrangement{fallAlone, whole, whole, body}
	}
	return arrangement{planAlone, whole, whole, body}
}

// brief tells whether a panel under both pictures has room for what is to be said above its list of the worst, which has what is left. A field, a
// list or a search has the whole panel, and the van from the side the plan's whole place.
func (m screen) brief(s desk.State, w, h int) bool {
	rows := h - leastBoth
	if rows < leastTold || w >= desk.SideBySide || m.Typing() || m.aside > 0 || s.Result.Plan.Run(m.of) == nil {
		return false
	}
	return len(m.above(s, w, rows)) <= rows
}

// bare tells whether nothing is asked, listed or sought that needs the whole panel.
func (m screen) bare() bool {
	return !m.Typing() && !m.finder.open() && !m.cutting && !m.shielding
}

// leastUnder is how many rows a panel needs under a picture for what is to be said above its list of the worst and for the first of that;
// leastListed where it needs that many or more.
func (m screen) leastUnder(s desk.State, w int) int {
	rows := leastRows
	for rows < leastListed && len(m.above(s, w, rows))+m.worst(s).Least(s, m.top, w) > rows {
		rows++
	}
	return rows
}

// typesDrop tells whether it is being typed how far below the floor a point is: that is seen in the profile.
func (m screen) typesDrop(s desk.State) bool {
	here, ok := m.here(s)
	return ok && here.sort == point && m.prompt.Kind == asked(here) && m.prompt.On() == belowFloor
}

// nextPictures goes on to what is seen next where plan and profile have no room beside a whole panel.
func (m screen) nextPictures(s desk.State) screen {
	switch a := m.arranged(s, m.w, m.h); {
	case a.sees == together, m.aside > 0 && a.body.Under > 0:
		m.pictures = planAlone
	case a.sees == planAlone:
		m.pictures = fallAlone
	default:
		m.pictures = together
	}
	return m
}

// alone tells whether the profile stands in the plan's place.
func (m screen) alone(s desk.State) bool { return m.arranged(s, m.w, m.h).sees == fallAlone }

// sized has the pane know how large the plan is now: that changes with what is said beside it.
func (m screen) sized(s desk.State) screen {
	if m.w > 0 {
		a := m.arranged(s, m.w, m.h)
		m.pane = m.pane.Sized(a.plan.W, a.plan.H)
	}
	return m
}
