package canvas

import (
	"slices"

	"bench.example/undermark/geometry/scene"
)

// nameAll writes names in their order. Where one of what is in the way has no place, or none with its figure, that goes before all others, if fewer
// go without then.
func (p *painter) nameAll(names []naming) {
	p.before.keep(p)
	lost := p.inOrder(names)
	if len(lost) == 0 {
		return
	}
	p.after.keep(p)
	p.before.back(p)
	first := slices.DeleteFunc(slices.Clone(names), func(n naming) bool { return !slices.Contains(lost, n.it) })
	others := slices.DeleteFunc(slices.Clone(names), func(n naming) bool { return slices.Contains(lost, n.it) })
	if again := p.inOrder(append(first, others...)); len(again) >= len(lost) {
		p.after.back(p)
	}
}

// inOrder writes names in their order, and returns those of what is in the way that have no place, or none with their figure.
func (p *painter) inOrder(names []naming) (lost []*part) {
	room := max(p.Cols*p.Rows/cellsALabel, 6)
	for i := range names {
		n := &names[i]
		guide := n.must && bears(n.it)
		if room <= 0 && !ending(n.it) && !guide {
			continue
		}
		said := p.label(n)
		if said != unsaid && !guide {
			room--
		}
		if said != whole && n.must && (n.it.Role == scene.Conflict || ending(n.it)) {
			lost = append(lost, n.it)
		}
	}
	return lost
}

// writing is what of a picture changes while names are written.
type writing struct {
	cells []Cell
	taken []uint64
	texts []Text
}

// keep takes what is written so far, and back goes back to that.
func (w *writing) keep(p *painter) {
	w.cells = append(w.cells[:0], p.canvas.Cells...)
	w.taken = append(w.taken[:0], p.taken.words...)
	w.texts = append(w.texts[:0], p.canvas.Texts...)
}

func (w *writing) back(p *painter) {
	copy(p.canvas.Cells, w.cells)
	copy(p.taken.words, w.taken)
	p.canvas.Texts = append(p.canvas.Texts[:0], w.texts...)
}
