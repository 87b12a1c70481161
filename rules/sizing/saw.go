package sizing

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// cutNoPlace is what is lacking where a size is the hole's.
const cutNoPlace = "the cut: give it a place first"

// SawSpeed is how often a saw of a diameter, mm, turns a minute at a cutting speed, m/min.
func SawSpeed(metres, across float64) float64 { return 1000 * metres / (math.Pi * across) }

func (m *maker) saw() {
	if m.job.Cut == nil {
		var none basis
		none.lack(cutNoPlace)
		m.put(Row{ID: SawTurns, Label: "saw turns", Unit: RPM}, none)
		return
	}
	m.sawSpeed(m.job.Cut.Across)
	m.kerf(m.job.Cut.Across)
	m.moved()
}

func (m *maker) sawSpeed(across float64) {
	s := m.sizes.Saw
	var on basis
	text := "in steel, at most"
	if m.job.Deck() == "" {
		on.took("a deck of steel")
	}
	row := Row{
		ID: SawTurns, Label: "saw turns", Unit: RPM, Value: vehicles.Some(SawSpeed(s.Speed, across)), Text: text, Source: Sources{s.SpeedSource},
		Why: fmt.Sprintf("%s m/min at the teeth of %s: slowly, with oil, and let up before the sheet is through. A drill that can't turn "+
			"as slowly burns the teeth.", survey.FigureTo(s.Speed, 1), survey.InMM(across)),
	}
	if m.job.Deck() == vehicles.Timber {
		row.Why += " The timber goes through first, at the highest speed that the saw's own table has for wood; the steel plates are sawn by themselves."
	}
	m.put(row, on)
}

// kerf is what is left of the sheet that comes out.
func (m *maker) kerf(across float64) {
	m.put(Row{
		ID: Disc, Label: "disc that comes out", Unit: MM, Value: vehicles.Some(max(0, across-2*rules.SawKerf)), Source: Sources{rules.Practice},
		Why: fmt.Sprintf("The teeth turn a ring of %s into swarf: the hole is %s, the disc less. Whatever else is cut by the disc's edge is wrong by the kerf.", survey.InMM(rules.SawKerf), survey.InMM(across)),
	}, basis{})
}

// moved is what a centre that is moved beside the drilled pilot hole takes, and one that was moved from it.
func (m *maker) moved() {
	place := &m.r.Plan.Cut
	if place.Drilled {
		m.offMark(place.Intended.Sub(place.At).Norm())
	}
	if by, beside, there := rules.OldPilot(m.r); there {
		m.put(Row{
			ID: OldPilotBeside, Label: "centre beside the old pilot", Unit: MM, Value: vehicles.Some(by), Source: Sources{rules.Practice}, Text: beside.Takes(), Why: beside.WhyAtLength(),
		}, basis{})
	}
}

// offMark is a pilot hole that came out beside the centre as meant. Nobody has moved anything: the hole is the saw's guide.
func (m *maker) offMark(by float64) {
	beside := rules.BesidePilot(m.job.Cut, by)
	row := Row{
		ID: PilotMoved, Label: "pilot beside the centre as meant", Unit: MM, Value: vehicles.Some(by), Source: Sources{rules.Practice},
		Text: "to saw round that centre: " + beside.Takes(), Why: beside.WhyAtLength(),
	}
	if beside == rules.OnTheHole {
		row.Text = beside.Takes()
	} else {
		row.Why = "All is judged round the pilot hole: sawn round that, nothing more is needed. " + row.Why
	}
	m.put(row, basis{})
}
