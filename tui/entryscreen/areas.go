package entryscreen

import (
	"cmp"

	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
)

// Area is a part of the body, in cells.
type Area struct{ X, Y, W, H int }

// Holds says whether a cell of the body is in the area.
func (a Area) Holds(x, y int) bool { return x >= a.X && x < a.X+a.W && y >= a.Y && y < a.Y+a.H }

// cutOff parts the first rows from an area.
func (a Area) cutOff(rows int) (first, rest Area) {
	return Area{a.X, a.Y, a.W, rows}, Area{a.X, a.Y + rows, a.W, a.H - rows}
}

// areas are the parts of the body; a part without rows does not show. The first row of list and form is a title.
type areas struct{ list, form, panel, drawing, picture, under Area }

const (
	// leastStrip is how many rows a plan under the list has at least.
	leastStrip = 5
	// leastPlan is how many rows a plan under a drawing has at least: a van in fewer is but a stripe.
	leastPlan = 11
	// leastWords are the columns that a few words have beside a list, and mostList how many are all that one can use.
	leastWords, mostList = 26, 80
	// usualForm is how many rows the form of an obstruction takes, with its title: the list leaves it those where it can. The
	// form that is shown has no say in it, or the list would change its height from row to row.
	usualForm = 20
)

// arranged says what stands where in a body of w columns and h rows. With panel, the screen's own panel has the
// place of list and form.
func (e Entry) arranged(s desk.State, w, h int, panel bool) areas {
	a := e.parts(s, w, h, panel)
	if e.besideWords(w) {
		return e.formBelow(s, a)
	}
	if rows := e.drawn(s, a.picture.W, a.picture.H); rows > 0 {
		a.drawing, a.picture = a.picture, Area{}
		if !e.spec.NoPlan && a.drawing.H > rows+leastPlan {
			a.drawing, a.picture = a.drawing.cutOff(rows + 1)
		}
		return a
	}
	if e.spec.Under == nil || a.picture.H <= leastStrip {
		return a
	}
	if form, under, ok := e.underForm(s, a.form); ok {
		a.form, a.under = form, under
		return a
	}
	text := a.picture
	text.X, text.W = text.X+desk.Margin, text.W-desk.Margin
	rows := min(len(e.spec.Under(e, s, text.W, text.H)), text.H-max(leastStrip, text.H/3))
	a.picture, _ = a.picture.cutOff(text.H - rows)
	_, a.under = text.cutOff(text.H - rows)
	return a
}

// besideWords tells whether the form stands under the words beside the list, which then has the whole height.
func (e Entry) besideWords(w int) bool { return e.spec.NoPlan && !e.spec.Brief && w >= desk.SideBySide }

// formBelow parts what is beside the list: the words, and under them, with a blank row, the form.
func (e Entry) formBelow(s desk.State, a areas) areas {
	right := a.picture
	rows := min(e.drawn(s, right.W, right.H)+1, right.H-min(right.H/2, cmp.Or(e.spec.Form, usualForm)))
	a.picture = Area{}
	if a.drawing, a.form = right.cutOff(rows); rows == 1 {
		a.drawing, a.form = Area{}, right
	}
	return a
}

// underForm parts what it all comes to from the form where there is room for both, so that the plan has its whole height.
func (e Entry) underForm(s desk.State, all Area) (rest, under Area, ok bool) {
	if all.H == 0 || e.Editor.Picking(s) {
		return all, under, false
	}
	rows := len(e.spec.Under(e, s, all.W-desk.Margin, all.H))
	if rows > all.H-cmp.Or(e.spec.Form, usualForm) {
		return all, under, false
	}
	rest, under = all.cutOff(all.H - rows)
	return rest, under, true
}

// drawn is how many rows the screen's drawing takes in place of the plan.
func (e Entry) drawn(s desk.State, w, h int) int {
	if e.spec.Beside == nil || e.whole || h == 0 {
		return 0
	}
	_, rows := e.spec.Beside(e, s, w, h)
	return rows
}

// parts are list, form, panel and picture.
func (e Entry) parts(s desk.State, w, h int, panel bool) areas {
	switch {
	case e.whole:
		return areas{picture: Area{0, 0, w, h}}
	case w >= desk.SideBySide:
		left := max(48, min(64, w*45/100)) + desk.Margin
		if e.spec.NoPlan {
			left = w * 3 / 5
		}
		if e.spec.Brief {
			left = max(left, min(w-leastWords, mostList))
		}
		column := Area{0, 0, left - desk.Margin, h}
		a := areas{picture: Area{left + 1, 0, w - left - 1, h}}
		switch a.panel = column; {
		case panel:
		case e.besideWords(w):
			a.panel, a.list = Area{}, column
		default:
			a.panel = Area{}
			a.list, a.form = column.cutOff(e.listHeight(s, column.W, h))
		}
		return a
	}
	strip := e.strip(s, w, h, panel)
	rest, picture := Area{0, 0, w, h}.cutOff(h - strip)
	a := areas{picture: picture}
	switch {
	case panel:
		a.panel = rest
	case e.Typing():
		a.form = rest
	default:
		a.list = rest
	}
	return a
}

// listHeight is how many rows of h the list has above its form: what it needs and a blank one, or what leaves a form room.
func (e Entry) listHeight(s desk.State, w, h int) int {
	most := max(h/2, h-cmp.Or(e.spec.Form, usualForm))
	if e.Typing() {
		most = h / 3
	}
	if n := len(e.spec.Records(s)); n == 0 || n+2 >= most || len(e.warnings(s, w, most)) > 0 {
		return most
	}
	rows, _, _, _ := e.listed(s)
	return min(most, form.Height(rows)+2)
}

// strip is how many rows the picture has under the list: a panel and choices need them all.
func (e Entry) strip(s desk.State, w, h int, panel bool) int {
	if panel || e.Editor.Picking(s) {
		return 0
	}
	if rows := e.drawn(s, w, h); rows > 0 {
		return min(rows, h-leastStrip)
	}
	if e.spec.Under != nil && !e.Typing() {
		return max(2*leastStrip, h/2)
	}
	return max(leastStrip, h/3)
}
