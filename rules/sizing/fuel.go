package sizing

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// The heater's fuel: where an indoor tank's filler and breather end, how long the tank lasts, lengths and heights as they were judged,
// and how the line is primed.

const (
	fillerOutside = "UN Regulation No. 122, 5.3.3.1, as paraphrased, its number from memory: the filler is not in the passenger space"
	byNature      = rules.Practice
	volumeOf      = "A quarter of pi times the bore's square, times the length"
)

func (m *maker) fuel() {
	if m.job.Fuel == nil {
		var none basis
		none.lack("the fuel line: lay it on Runs")
		m.put(Row{ID: NoTank, Label: "fuel"}, none)
		return
	}
	m.tankEnds()
	m.endurance()
	m.asJudged()
	m.priming()
}

// TankIndoors tells whether the job's fuel comes from a tank in the van: one that stands above the floor, or at a line that begins there.
func TankIndoors(j *vehicles.Job) bool {
	s := j.Fuel.Supply
	switch {
	case s.From != "" || s.Tank != nil && s.Tank.Drop.Set:
		return false
	case s.Tank != nil && s.Tank.Rise.Set:
		return true
	}
	return len(j.Fuel.Path) > 0 && j.Fuel.Path[0].Drop < 0
}

// tank is the job's tank, an empty one where it has none.
func (m *maker) tank() vehicles.Tank {
	if t := m.job.Fuel.Supply.Tank; t != nil {
		return *t
	}
	return vehicles.Tank{}
}

// tankEnds are where an indoor tank is filled and breathes.
func (m *maker) tankEnds() {
	if !TankIndoors(m.job) {
		return
	}
	tank := m.tank()
	for _, end := range []struct {
		id                ID
		label, at, source string
	}{
		{Filler, "tank in the van: filler", tank.Filler, fillerOutside}, {Breather, "tank in the van: breather", tank.Breather, byNature},
	} {
		var on basis
		row := Row{
			ID: end.id, Label: end.label, Text: end.at, Source: Sources{end.source},
			Why: "Filler and breather of a tank indoors end outside the people's space, the filler with a cap that lets nothing out.",
		}
		switch end.at {
		case "":
			on.lack("where the tank's " + end.id.String() + " ends")
		case vehicles.TankInside:
			row.Amiss = "it ends with the people: lead it out, or take a tank under the floor"
		}
		m.put(row, on)
	}
}

// burn is how many litres an hour a heater burns for so many watts.
func (m *maker) burn(watts float64, on *basis) float64 {
	kind := ""
	if m.job.Fuel != nil {
		kind = m.job.Fuel.Supply.Kind
	}
	if kind == "" {
		kind = vehicles.Diesel
		on.took("fuel " + kind)
	}
	on.take("of the fuel's heat is used", 100*m.sizes.Heater.Efficiency, "%")
	return LitresAnHour(watts, m.sizes.fuel(kind).PerLitre(), m.sizes.Heater.Efficiency)
}

// LitresAnHour is what is burnt for so many watts out of a fuel of so many kWh a litre, of which a share is used.
func LitresAnHour(watts, perLitre, share float64) float64 { return watts / 1000 / perLitre / share }

func (m *maker) fuelSource() Sources {
	kind := vehicles.Diesel
	if m.job.Fuel != nil && m.job.Fuel.Supply.Kind != "" {
		kind = m.job.Fuel.Supply.Kind
	}
	return Sources{m.sizes.fuel(kind).Source, m.sizes.Heater.EfficiencySource}
}

// endurance is how long the tank lasts, at full heat and at the least.
func (m *maker) endurance() {
	var on basis
	litres := on.need(m.tank().Litres, "how much the tank holds, litres")
	class := m.heater(&on)
	for _, at := range []struct {
		id    ID
		label string
		watts float64
	}{{Endurance, "tank lasts at full heat", class.Most}, {EnduranceLeast, "tank lasts at the least heat", class.Least}} {
		on := on // each its own
		rate := m.burn(at.watts, &on)
		m.put(Row{
			ID: at.id, Label: at.label, Unit: Hour, Value: vehicles.Some(litres / rate), Source: append(m.fuelSource(), m.sizes.classSource()),
			Why: fmt.Sprintf("%s at %s l an hour for %s. The last of it the pipe in the tank does not reach.", Litre.Of(litres), survey.FigureTo(rate, 2), Watt.Of(at.watts)),
		}, on)
	}
}

// judgedOfFuel are the rules whose findings are lengths and heights of the line, each with the id of its row.
var judgedOfFuel = []struct {
	id   ID
	rule *rules.Rule
}{{Suction, rules.FuelSuction}, {Delivery, rules.FuelDelivery}, {Lift, rules.FuelLift}, {Head, rules.FuelHead}}

// asJudged are the line's lengths and heights, as Checks has them.
func (m *maker) asJudged() {
	for _, of := range judgedOfFuel {
		for i := range m.r.Findings {
			f := &m.r.Findings[i]
			if !f.Of(of.rule) {
				continue
			}
			row := Row{ID: of.id, Label: f.Rule.Word, Unit: MM, Value: vehicles.Some(f.Value), Source: Sources{f.Limit.Source}, Instructions: true}
			row.Why = "Nobody has given its limit: see the heater's instructions, and enter it on Job."
			if f.Required.Set {
				row.Why = fmt.Sprintf("At most %s (%s). Checks judges it.", survey.InMM(f.Required.Value), asker(f.Limit))
			}
			if f.Verdict == rules.Foul {
				row.Amiss = "it is more than is asked for: see Checks"
			}
			var on basis
			if f.Unsaid {
				on.lack("how deep the tank reaches")
			}
			m.put(row, on)
		}
	}
}

// priming is what fills the line before the first start: till the fuel stands a hand's breadth short of the heater.
func (m *maker) priming() {
	f, h := m.job.Fuel, m.sizes.Heater
	var on basis
	bore := on.need(f.Supply.Bore, "the fuel line's bore")
	length := 0.0
	if line := m.r.Plan.Fuel; line == nil {
		on.lack("where the line ends: place the cut and choose a heater")
	} else {
		length = max(0, line.Line.Length()-h.Short)
	}
	ml := LineVolume(bore, length)
	m.put(Row{
		ID: LineHolds, Label: "line holds before the heater", Unit: ML, Value: vehicles.Some(ml), Source: Sources{h.ShortSource},
		Why: fmt.Sprintf("%s: %s inside, %s long, which ends %s short of the heater so that it is not flooded.", volumeOf, survey.InMMTo(bore, 2), survey.InMMTo(length, 0), survey.InMMTo(h.Short, 0)),
	}, on)
	var pump vehicles.Pump
	if f.Pump != nil {
		pump = *f.Pump
	}
	dose := on.need(pump.MlPer1000, "the pump's dose, ml in 1000 strokes")
	strokes := math.Floor(1000 * ml / dose)
	m.put(Row{
		ID: Priming, Label: "priming", Unit: Stroke, Value: vehicles.Some(strokes), Source: Sources{h.ShortSource}, Instructions: true,
		Why: fmt.Sprintf("%s at %s in 1000 strokes. A pump that is still dry moves less: watch the fuel come, and stop a hand's breadth before the heater.", ML.Of(ml), ML.Of(dose)),
	}, on)
	hz := on.need(pump.Hz, "the pump's strokes a second while it primes")
	m.put(Row{
		ID: PrimingTakes, Label: "priming takes", Unit: Second, Value: vehicles.Some(strokes / hz), Source: Sources{h.ShortSource}, Instructions: true,
		Why: fmt.Sprintf("%s strokes, %s a second.", survey.FigureTo(strokes, 0), survey.FigureTo(hz, 2)),
	}, on)
}

// LineVolume is what a line of a bore and a length, mm, holds, ml.
func LineVolume(bore, length float64) float64 { return math.Pi / 4 * bore * bore * length / 1000 }
