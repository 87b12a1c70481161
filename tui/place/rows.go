package place

// panelRows are rows of the panel, and what a tap on each is for.
type panelRows struct {
	rows []string
	of   []int // a row's index in what is listed, -1 for none
}

// add puts rows below, of what has the index.
func (p *panelRows) add(of int, rows ...string) {
	for _, row := range rows {
		p.rows, p.of = append(p.rows, row), append(p.of, of)
	}
}

// from leaves out the rows above one.
func (p panelRows) from(top int) panelRows { return panelRows{p.rows[top:], p.of[top:]} }

// at is the index of what stands in a row.
func (p panelRows) at(y int) (of int, is bool) {
	if y < 0 || y >= len(p.of) {
		return -1, false
	}
	return p.of[y], p.of[y] >= 0
}
