package vehicles

import "strings"

// Body is what is kept warm: how warm, and how much air goes through it. Its walls are the job's surfaces.
type Body struct {
	Inside, Outside Number // degrees Celsius
	Volume          Number // of the air in it, m3
	Changes         Number // how often an hour that air is changed
	Hours           Number // how long a night the heater runs
}

// Surface is a part of the body that heat goes out through.
type Surface struct {
	Name   string
	Area   float64 // m2
	Lies   string  // WallSurface, RoofSurface or FloorSurface
	Layers []Slab  // from the inside out
}

// Slab is a layer of a surface. Its resistance is what it says itself, else its thickness over its conductivity: that it says itself,
// else that of what it is of.
type Slab struct {
	Of     string
	Thick  Number // mm
	Lambda Number // its conductivity, W/(m K)
	R      Number // its resistance, m2 K/W
}

// How a surface lies: which way heat goes through it.
const (
	WallSurface  = "wall"
	RoofSurface  = "roof"
	FloorSurface = "floor"
)

// SurfacesLie are all ways.
var SurfacesLie = []string{WallSurface, RoofSurface, FloorSurface}

// Figures are its numbers.
func (b *Body) Figures() []Figure {
	return []Figure{
		{"inside", &b.Inside, aTemperature}, {"outside", &b.Outside, aTemperature}, {"volume", &b.Volume, AMeasure},
		{"changes", &b.Changes, ARate}, {"hours", &b.Hours, aDay},
	}
}

func (t *table) body() (b Body) {
	t.figuresOf(b.Figures())
	t.done()
	return b
}

func (w *writer) body(b Body) {
	if b == (Body{}) {
		return
	}
	w.table("body")
	w.figuresOf(b.Figures())
}

func (t *table) surface() Surface {
	s := Surface{
		Name: t.line("name", required), Area: t.number("area", required, AMeasure).Value, Lies: t.choice("lies", required, SurfacesLie),
	}
	for _, of := range t.list("layers") {
		s.Layers = append(s.Layers, of.slab())
	}
	t.done()
	return s
}

// Figures are its numbers.
func (s *Slab) Figures() []Figure {
	return []Figure{{"thick", &s.Thick, ASize}, {"lambda", &s.Lambda, AMeasure}, {"r", &s.R, AMeasure}}
}

func (t *table) slab() (s Slab) {
	s.Of = t.line("of", required)
	t.figuresOf(s.Figures())
	if s.Of != "" && !s.Whole() {
		t.r.fault(t.path, " says neither how thick it is nor its resistance: give it thick, mm, or r, m2 K/W")
	}
	t.done()
	return s
}

// Whole tells whether it says what its resistance is reckoned from.
func (s Slab) Whole() bool { return s.Thick.Set || s.R.Set }

func (w *writer) surface(s Surface) {
	w.list("surface")
	w.text("name", s.Name)
	w.number("area", s.Area)
	w.text("lies", s.Lies)
	if len(s.Layers) > 0 {
		slabs := make([]string, len(s.Layers))
		for i, l := range s.Layers {
			slabs[i] = inline("of", tomlText(l.Of), "thick", l.Thick.Text(), "lambda", l.Lambda.Text(), "r", l.R.Text())
		}
		w.value("layers", "["+strings.Join(slabs, ", ")+"]")
	}
}
