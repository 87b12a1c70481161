package vehicles

// Wish is where the customer would like the heater: the place of the cut's centre.
type Wish struct {
	At     [2]float64
	Within Number // how far from there it may be, mm; default UsualWithin
}

// UsualWithin is how far from the wish a place is looked for while the job does not say, mm.
const UsualWithin = 300

// Radius returns how far from the wish a place may be, mm.
func (w Wish) Radius() float64 { return w.Within.Or(UsualWithin) }

func (t *table) wish() *Wish {
	w := Wish{At: t.point("at", required), Within: t.number("within", optional, ASize)}
	t.done()
	return &w
}

func (w *writer) wish(v Wish) {
	w.table("wish")
	w.numbers("at", v.At[:]...)
	w.maybe("within", v.Within)
}
