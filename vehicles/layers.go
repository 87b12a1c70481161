package vehicles

import "slices"

// Layer is a layer of the floor where the heater stands, as it lies from its top down.
type Layer struct {
	Kind  string  // one of LayerKinds
	Thick float64 // mm; of a swage its depth, which only the thickest place has
	Name  string  // "" for none
}

// The kinds of layer.
const (
	Lining     = "lining"
	Ply        = "ply"
	Insulation = "insulation"
	SheetMetal = "sheet"
	SwageLayer = "swage"
)

// LayerKinds are all of them, from the top of a usual floor down.
var LayerKinds = []string{Lining, Ply, Insulation, SheetMetal, SwageLayer}

// Gives tells whether the layer is pressed together by what is bolted through it.
func (l Layer) Gives() bool { return l.Kind == Insulation }

// Metal tells whether the layer is of the van's own sheet.
func (l Layer) Metal() bool { return l.Kind == SheetMetal || l.Kind == SwageLayer }

// Deck is what carries the heater's plate: as somebody said it, else as the layers where the heater stands have it; "" while nobody knows.
func (j *Job) Deck() string {
	if j.Floor.Deck == "" && slices.ContainsFunc(j.Stack, Layer.Metal) {
		return Steel
	}
	return j.Floor.Deck
}

// OnDeck is what may burn on it: wood where somebody or the layers say so, else as somebody said it, else none where all layers are metal;
// "" while nobody knows.
func (j *Job) OnDeck() string {
	switch {
	case slices.ContainsFunc(j.Stack, func(l Layer) bool { return !l.Metal() }):
		return Wood
	case j.Floor.Layers == "" && len(j.Stack) > 0:
		return NoLayers
	}
	return j.Floor.Layers
}

// Mount is how the heater stands on the floor.
type Mount struct {
	On    string // OnSteel or OnLining; "" while nobody has said
	Plate Number // of the metal of its plate, mm
	Bead  Number // how thick a string of sealant is laid, mm
}

// What the heater's plate may stand on.
const (
	OnSteel  = "steel"
	OnLining = "lining"
)

// MountsOn are both.
var MountsOn = []string{OnSteel, OnLining}

func (t *table) layer() Layer {
	l := Layer{Kind: t.choice("kind", required, LayerKinds), Thick: t.number("thick", required, ASize).Value, Name: t.line("name", optional)}
	t.done()
	return l
}

func (w *writer) layer(l Layer) {
	w.list("layer")
	w.text("kind", l.Kind)
	w.number("thick", l.Thick)
	w.texts("name", l.Name)
}

// Figures are its numbers.
func (m *Mount) Figures() []Figure {
	return []Figure{{"plate", &m.Plate, ASize}, {"bead", &m.Bead, ASize}}
}

func (t *table) mount() (m Mount) {
	m.On = t.choice("on", optional, MountsOn)
	t.figuresOf(m.Figures())
	t.done()
	return m
}

func (w *writer) mount(m Mount) {
	if m == (Mount{}) {
		return
	}
	w.table("mount")
	w.texts("on", m.On)
	w.figuresOf(m.Figures())
}
