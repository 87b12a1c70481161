package vehicles

// Electrics is what the heater is supplied from and what it draws. A heater's own instructions say the currents; what is left out is
// taken from its class by whoever reckons with it, and named.
type Electrics struct {
	Volts   Number // of the battery, V
	Cable   Number // one way from the battery to the heater, as it is laid, mm
	Glow    Number // the current while the glow pin is on, A
	Running Number // the current on an average night, A
	Drop    Number // how much may be lost in the cable at the glow current, V
	Fuse    Number // that stands at the battery, A
	Battery Number // its capacity, Ah
	Usable  Number // how much of that may be taken, percent
}

// Figures are its numbers.
func (e *Electrics) Figures() []Figure {
	return []Figure{
		{"volts", &e.Volts, AMeasure}, {"cable", &e.Cable, ASize}, {"glow", &e.Glow, AMeasure}, {"running", &e.Running, AMeasure},
		{"drop", &e.Drop, AMeasure}, {"fuse", &e.Fuse, AMeasure}, {"battery", &e.Battery, AMeasure}, {"usable", &e.Usable, aShare},
	}
}

func (t *table) electrics() (e Electrics) {
	t.figuresOf(e.Figures())
	t.done()
	return e
}

func (w *writer) electrics(e Electrics) {
	if e == (Electrics{}) {
		return
	}
	w.table("electrics")
	w.figuresOf(e.Figures())
}
