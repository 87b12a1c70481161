package sheet

import (
	"slices"
	"strings"

	"bench.example/undermark/geometry/scene/vector"
)

// grid is a table whose columns have their places.
type grid struct {
	*Table
	size  float64
	cols  []column
	width float64 // of its rows
	room  float64 // that there is for it
}

// column is where a column stands, from the table's left, and what it takes; before is what figures take before their points.
type column struct {
	figured
	at, width float64
}

// figured is what a column's figures take before their points and behind.
type figured struct{ before, behind float64 }

// laidOut gives columns their places in a width.
func (t *Table) laidOut(width float64) *grid {
	g := &grid{Table: t, size: t.Size, cols: make([]column, len(t.Cols)), width: width, room: width}
	if g.size == 0 {
		g.size = body
	}
	for i := range t.Cols {
		g.cols[i] = g.natural(i)
	}
	between := float64(between)
	if t.Close {
		between = beside
	}
	g.fit(width - between*float64(len(g.cols)-1))
	all := 0.0
	for _, c := range g.cols {
		all += c.width
	}
	apart := min(max((width-all)/max(float64(len(g.cols)-1), 1), between), most)
	at := 0.0
	for i := range g.cols {
		g.cols[i].at = at
		at += g.cols[i].width + apart
	}
	titled := slices.ContainsFunc(t.Rows, func(row Row) bool { return len(row.Cells) == 1 })
	if g.width = min(max(at-apart, least), width); titled {
		g.width = width // a title has all the room there is
	}
	return g
}

func (g *grid) style(bold bool) vector.Text { return vector.Text{Size: g.size, Bold: bold} }

func (g *grid) headStyle() vector.Text { return vector.Text{Size: small} }

func measured(style vector.Text, words string) float64 {
	style.Words = printable(words)
	return vector.WidthOf(style)
}

// headWide is how wide a head of at most two lines is.
func (g *grid) headWide(head string) (width float64) {
	for _, word := range split(head) {
		width = max(width, measured(g.headStyle(), word))
	}
	for len(wrapped(head, g.headStyle(), width)) > 2 {
		width++
	}
	return width
}

// natural is what a column takes unbroken: its cells, and its head in two lines.
func (g *grid) natural(i int) (c column) {
	c.width = g.headWide(g.Cols[i].Head)
	for _, row := range g.Rows {
		switch {
		case i >= len(row.Cells) || len(row.Cells) == 1:
		case g.Cols[i].Figure:
			before, behind := atPoint(row.Cells[i])
			c.before = max(c.before, measured(g.style(false), before))
			c.behind = max(c.behind, measured(g.style(false), behind))
		default:
			c.width = max(c.width, measured(g.style(row.Strong && i == 0), row.Cells[i]))
		}
	}
	if c.width = max(c.width, c.before+c.behind); g.Cols[i].Most > 0 {
		c.width = min(c.width, g.Cols[i].Most)
	}
	return c
}

// fit takes from the widest columns of text what all together take too much of a width.
func (g *grid) fit(width float64) {
	for {
		over, widest, next := -width, -1, 0.0
		for i, c := range g.cols {
			over += c.width
			switch {
			case g.Cols[i].Figure:
			case widest < 0 || c.width > g.cols[widest].width:
				if widest >= 0 {
					next = g.cols[widest].width
				}
				widest = i
			default:
				next = max(next, c.width)
			}
		}
		const hairsbreadth = 1e-6 // mm
		if over <= hairsbreadth || widest < 0 || g.cols[widest].width <= least {
			return
		}
		take := over
		if w := g.cols[widest].width; next < w {
			take = min(over, w-next+0.5)
		} else {
			take = min(over, 0.5)
		}
		g.cols[widest].width -= take
	}
}

// atPoint parts a text behind its first whole number, where figures in a column stand under each other; one without is all behind.
func atPoint(text string) (before, behind string) {
	text = printable(text)
	begin := strings.IndexAny(text, "0123456789")
	if begin < 0 {
		return "", text
	}
	end := begin + strings.IndexFunc(text[begin:]+".", func(r rune) bool { return r < '0' || r > '9' })
	return text[:end], text[end:]
}
