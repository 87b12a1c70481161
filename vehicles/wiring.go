package vehicles

// Wiring is where what the heater is wired to goes, in people's words; "" where nobody has said. Nothing is reckoned from it: whoever does
// the work, and whom the van belongs to, must know.
type Wiring struct {
	Battery string // where the battery is that it is supplied from; its fuse is there, too
	Cable   string // which way the supply cable goes
	Earth   string // where its minus ends
	Control string // where its control is
	Alarm   string // where the carbon monoxide alarm hangs
}

// texts are its texts by key, in the order of the file.
func (w *Wiring) texts() []struct {
	key string
	at  *string
} {
	return []struct {
		key string
		at  *string
	}{{"battery", &w.Battery}, {"cable", &w.Cable}, {"earth", &w.Earth}, {"control", &w.Control}, {"alarm", &w.Alarm}}
}

func (t *table) wiring() (w Wiring) {
	for _, text := range w.texts() {
		*text.at = t.line(text.key, optional)
	}
	t.done()
	return w
}

func (w *writer) wiring(of Wiring) {
	if of == (Wiring{}) {
		return
	}
	w.table("wiring")
	for _, text := range of.texts() {
		w.texts(text.key, *text.at)
	}
}
