package vehicles

import "bench.example/undermark/geometry/survey"

// Pump sits on leg Leg of the fuel line, Start mm along it, its outlet Tilt degrees up from level.
type Pump struct {
	Leg           int
	Start, Tilt   float64
	MlPer1000, Hz Number
}

// UsualPump is what hangs on a fuel line until the fitter says otherwise, on its first leg, its outlet tilted up. common practice, no source
var UsualPump = Pump{Leg: 1, Tilt: 30}

// TiltMeans says what the tilt of a pump is counted from.
const TiltMeans = "0 lies level, 90 stands"

// APump is what is known of pumps.
var APump = one(HangingKind{
	Key: "pump", Name: "pump", Full: "pump", Sign: "P", Means: "pump", On: []RunKind{FuelRun},
	Wanted: true, Goes: "on", Asks: ", and how does it sit",
	Told:   "A pump on leg {leg}, tilted " + survey.InDegrees(UsualPump.Tilt) + " as is usual: {type} types how it is.",
	Counts: [len(RunKinds)]string{FuelRun: "pump"}, Lacks: "the fuel line has no pump",
}, func(h *Hanging) **Pump { return &h.Pump }, UsualPump)

func (p *Pump) seat() (leg *int, start *float64) { return &p.Leg, &p.Start }
func (p *Pump) takes() float64                   { return 0 }

func (p *Pump) details() []Detail {
	return []Detail{
		{
			Key: "tilt", Size: &p.Tilt, takes: ATilt, Label: "outlet up", Unit: "°", Told: "outlet %s up", Paper: "outlet %s° up from level",
			Wanted: "how far up the pump's outlet points is wanted: " + TiltMeans,
		},
		{Key: "ml_per_1000", Figure: &p.MlPer1000, takes: AMeasure, Label: "1000 strokes", Unit: "ml", Told: "%s in 1000 strokes"},
		{Key: "hz", Figure: &p.Hz, takes: AMeasure, Label: "at most", Unit: "Hz", Told: "%s"},
	}
}

// Figures are its numbers that may be left out.
func (p *Pump) Figures() (list []Figure) {
	for _, d := range p.details() {
		if d.Figure != nil {
			list = append(list, Figure{d.Key, d.Figure, d.takes})
		}
	}
	return list
}

// Filter sits in the fuel line, on leg Leg, Start mm along it.
type Filter struct {
	Leg   int
	Start float64
}

// AFilter is what is known of fuel filters. How far before the pump one goes until the fitter says otherwise: common practice, no source
var AFilter = one(HangingKind{
	Key: "filter", Name: "filter", Full: "filter", Sign: "F", Means: "fuel filter", On: []RunKind{FuelRun},
	Goes: "in", Before: APump, Apart: 100,
	Told:   "A filter on leg {leg}: slide it to where a hand reaches it from below.",
	Counts: [len(RunKinds)]string{FuelRun: "fuel filter"}, Lacks: "the fuel line has no filter: one takes two joints more",
}, func(h *Hanging) **Filter { return &h.Filter }, Filter{Leg: 1})

func (f *Filter) seat() (leg *int, start *float64) { return &f.Leg, &f.Start }
func (f *Filter) takes() float64                   { return 0 }
func (f *Filter) details() []Detail                { return nil }
