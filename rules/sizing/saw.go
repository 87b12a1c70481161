package sizing

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// SawSpeed is how often a saw of a diameter, mm, turns a minute at a cutting speed, m/min.
func SawSpeed(metres, across float64) float64 { return 1000 * metres / (math.Pi * across) }

func (m *maker) saw() {
	if m.job.Cut == nil {
		var none basis
		none.lack("the cut: give it a place first")
		m.put(Row{ID: "speed", Label: "saw turns", Unit: RPM}, none)
		return
	}
	m.sawSpeed(m.job.Cut.Across)
	m.kerf(m.job.Cut.Across)
	m.moved(m.job.Cut.Across)
}

func (m *maker) sawSpeed(across float64) {
	s := m.sizes.Saw
	var on basis
	text := "in steel, at most"
	if m.job.Deck() == "" {
		on.took("a deck of steel")
	}
	row := Row{
		ID: "speed", Label: "saw turns", Unit: RPM, Value: vehicles.Some(SawSpeed(s.Speed, across)), Text: text, Source: s.SpeedSource,
		Why: fmt.Sprintf("%s m/min at the teeth of %s mm: slowly, with oil, and let up before the sheet is through. A drill that can't turn "+
			"as slowly burns the teeth.", survey.FigureTo(s.Speed, 1), survey.FigureTo(across, 1)),
	}
	if m.job.Deck() == vehicles.Timber {
		row.Why += " The timber goes through first, at the highest speed that the saw's own table has for wood; the steel plates are sawn by themselves."
	}
	m.put(row, on)
}

// kerf is what is left of the sheet that comes out.
func (m *maker) kerf(across float64) {
	s := m.sizes.Saw
	m.put(Row{
		ID: "disc", Label: "disc that comes out", Unit: MM, Value: vehicles.Some(max(0, across-2*s.Kerf)), Source: s.Source,
		Why: fmt.Sprintf("The teeth turn a ring of %s mm into swarf: the hole is %s mm, the disc less. Whatever else is cut by the disc's edge is wrong by the kerf.", survey.FigureTo(s.Kerf, 1), survey.FigureTo(across, 1)),
	}, basis{})
}

// moved is what a centre that is moved beside the drilled pilot hole takes.
func (m *maker) moved(across float64) {
	place := m.r.Plan.Cut
	if !place.Drilled {
		return
	}
	off := place.Intended.Sub(place.At)
	by := math.Hypot(off.X, off.Y)
	row := Row{ID: "moved", Label: "centre moved from the pilot", Unit: MM, Value: vehicles.Some(by), Source: m.sizes.Saw.Source}
	row.Text, row.Why = m.sizes.Saw.afterMove(by, across, m.job.Cut.PilotAcross())
	m.put(row, basis{})
}

// unmoved is how far off its mark a pilot hole may be and still count as on it, mm: a centre punch's own error. common practice, no source.
const unmoved = 1

// afterMove says what a centre takes that is so far from its drilled pilot hole, in a few words and why.
func (s sawSizes) afterMove(by, across, pilot float64) (text, why string) {
	board := fmt.Sprintf("Clamp a board over it, sawn through with the same saw: its hole leads the teeth from outside, so the saw needs no pilot bit. "+
		"Set the board by its hole's edge; the cut is as wide as that, and the kerf of %s mm lies within.", survey.FigureTo(s.Kerf, 1))
	switch inner := across/2 - s.Kerf - pilot/2; {
	case by < unmoved:
		return "saw it as it is", "The pilot hole is where the cut is meant."
	case by < s.Guide:
		return "guide board", "A new pilot bit would run into the old hole. " + board
	case by < inner:
		return "new pilot", "The old hole lies in the disc and comes out with it. Drill a new pilot, and look from below again."
	case by <= across/2+pilot/2:
		return "new pilot, guide board", "The old hole lies under the teeth, which snatch there. Drill a new pilot. " + board
	}
	return "new pilot, close the old", "The old hole stays in the floor: drill a new pilot, and close the old one with metal, sealed on both faces."
}
