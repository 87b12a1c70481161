package vehicles

// Muffler sits on leg Leg (counted from 1), Start mm along it.
type Muffler struct {
	Leg                   int
	Start, Length, Across float64
	Drain                 string // how its drain hole points: DrainDown or DrainAside; "" while nobody has looked
}

// How a muffler's drain hole points.
const (
	DrainDown  = "down"
	DrainAside = "aside"
)

// UsualMuffler is what hangs on an exhaust until the fitter says otherwise, on its first leg. common practice, no source
var UsualMuffler = Muffler{Leg: 1, Length: 180, Across: 68}

// AMuffler is what is known of mufflers.
var AMuffler = one(HangingKind{
	Key: "muffler", Name: "muffler", Full: "muffler", Sign: "M", Means: "muffler", On: []RunKind{ExhaustRun},
	Wanted: true, Goes: "on", Asks: ", and how large",
	Told:   "A muffler of a usual size on leg {leg}: {type} types what it is. Does its drain hole point down? {other} says down, or aside.",
	Minds:  ", its drain hole down",
	Counts: [len(RunKinds)]string{ExhaustRun: "muffler"}, Lacks: "the exhaust has no muffler",
}, func(h *Hanging) **Muffler { return &h.Muffler }, UsualMuffler)

func (m *Muffler) seat() (leg *int, start *float64) { return &m.Leg, &m.Start }
func (m *Muffler) takes() float64                   { return m.Length }

func (m *Muffler) details() []Detail {
	const wanted = "the muffler's length and width are wanted"
	return []Detail{
		{Key: "length", Size: &m.Length, takes: ASize, Label: "long", Unit: "mm", Wanted: wanted, Told: "%s long"},
		{Key: "across", Size: &m.Across, takes: ASize, Label: "across", Unit: "mm", Wanted: wanted, Told: "%s across", Paper: "%s across"},
		{Key: "drain", Word: &m.Drain, Words: []string{DrainDown, DrainAside}, Label: "drain hole", Told: "drain hole points %s", Paper: "drain hole %s"},
	}
}
