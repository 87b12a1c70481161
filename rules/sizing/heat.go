package sizing

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// The heat that the body loses: through its surfaces by ISO 6946, and with the air that goes through it.

// SurfaceResistance is that of a surface from air to air, m2 K/W, after ISO 6946; lacks is what nobody has said, or known, of its layers.
func (s *Sizes) SurfaceResistance(of vehicles.Surface) (r float64, lacks []string) {
	r = s.inner(of.Lies) + s.Resistance.Outside
	for _, slab := range of.Layers {
		own, ok := s.slab(slab)
		if !ok {
			lacks = append(lacks, "the conductivity of "+slab.Of+": its maker declares it")
		}
		r += own
	}
	return r, lacks
}

// inner is the resistance of a surface's inside.
func (s *Sizes) inner(lies string) float64 {
	switch lies {
	case vehicles.RoofSurface:
		return s.Resistance.Roof
	case vehicles.FloorSurface:
		return s.Resistance.Floor
	}
	return s.Resistance.Wall
}

// slab is the resistance of a layer; ok is false where neither the job nor the table has its conductivity.
func (s *Sizes) slab(l vehicles.Slab) (r float64, ok bool) {
	if l.R.Set {
		return l.R.Value, true
	}
	lambda, ok := s.lambda(l)
	if !ok {
		return 0, false
	}
	return l.Thick.Value / 1000 / lambda, true
}

func (s *Sizes) lambda(l vehicles.Slab) (float64, bool) {
	if l.Lambda.Set {
		return l.Lambda.Value, true
	}
	m, ok := s.material(l.Of)
	return m.Lambda, ok
}

// losses is what the body loses for each degree, W/K, and what it takes to warm it by one, J/K.
type losses struct {
	perDegree, toWarm float64
	on                basis
}

func (m *maker) heat() {
	var degrees basis
	inside := degrees.need(m.job.Body.Inside, "how warm it should be inside")
	outside := degrees.need(m.job.Body.Outside, "how cold it is outside")
	rise := inside - outside
	if len(degrees.lacks) == 0 && rise <= 0 {
		degrees.lack("an outside that is colder than the inside")
	}
	var all losses
	m.begun(&all.on)
	if len(m.job.Surfaces) == 0 {
		all.on.lack("the body's surfaces")
	}
	for i := range m.job.Surfaces {
		m.surface(i, rise, degrees, &all)
	}
	m.changes(inside, rise, degrees, &all)
	all.on = all.on.and(degrees)
	watts := all.perDegree * rise
	m.put(Row{
		ID: HeatLost, Label: "heat lost in all", Unit: Watt, Value: vehicles.Some(watts), Source: Sources{m.sizes.Resistance.Source},
		Why: fmt.Sprintf("%s W for each degree, %s degrees warmer inside. Ribs and frames of bare steel carry heat past the insulation: enter them as surfaces of their own.",
			survey.FigureTo(all.perDegree, 1), survey.FigureTo(rise, 1)),
	}, all.on)
	m.class(watts, all.on)
	m.night(watts, all.on)
	m.warmUp(rise, all)
}

// surface is what goes out through a surface of the job, by index.
func (m *maker) surface(i int, rise float64, degrees basis, all *losses) {
	s := m.job.Surfaces[i]
	r, lacks := m.sizes.SurfaceResistance(s)
	var on basis
	for _, what := range lacks {
		on.lack(what)
	}
	u := 1 / r
	all.on = all.on.and(on)
	all.perDegree += u * s.Area
	all.toWarm += s.Area * m.warmed(s)
	m.put(Row{
		ID: ID{Heat, "surface " + s.Name}, Surface: i + 1, Label: s.Name, Unit: Watt, Value: vehicles.Some(u * s.Area * rise), Source: Sources{m.sizes.Resistance.Source, m.sizes.MaterialNote.Source},
		Why: fmt.Sprintf("%s m² at U %s W/(m² K): one over its layers' resistances and both faces', %s m² K/W in all.", survey.FigureTo(s.Area, 1), survey.FigureTo(u, 2), survey.FigureTo(r, 2)),
	}, on.and(degrees))
}

// warmed is what the layers of a square metre take to be warmed by a degree, J/K: those before the first that insulates.
func (m *maker) warmed(s vehicles.Surface) (joules float64) {
	for _, l := range s.Layers {
		lambda, ok := m.sizes.lambda(l)
		if !ok || lambda <= m.sizes.Resistance.Insulates || !l.Thick.Set {
			break
		}
		of, _ := m.sizes.material(l.Of)
		joules += l.Thick.Value / 1000 * of.Density * of.Heat
	}
	return joules
}

// changes is what goes out with the air.
func (m *maker) changes(inside, rise float64, degrees basis, all *losses) {
	var on basis
	volume := on.need(m.job.Body.Volume, "how much air is in it, m³")
	times := on.need(m.job.Body.Changes, "how often an hour its air is changed")
	a := m.sizes.Air
	perM3 := a.Pressure / (a.Constant * (a.Kelvin + inside)) * a.Heat
	perDegree := perM3 * volume * times / 3600
	all.on = all.on.and(on)
	all.perDegree += perDegree
	all.toWarm += perM3 * volume
	m.put(Row{
		ID: AirChanged, Label: "air that is changed", Unit: Watt, Value: vehicles.Some(perDegree * rise), Source: Sources{a.Source},
		Why: fmt.Sprintf("%s m³ changed %s times an hour. Vents stay open: people and a gas cooker need them.", survey.FigureTo(volume, 1), survey.FigureTo(times, 1)),
	}, on.and(degrees))
}

// class is the smallest class of heater that warms it, and whether the job's does.
func (m *maker) class(watts float64, on basis) {
	needed := m.sizes.Heat.Reserve * watts
	row := Row{
		ID: Class, Label: "class of heater", Source: Sources{m.sizes.Heat.Source, m.sizes.classSource()},
		Why: fmt.Sprintf("The first class that has %s times what is lost, %s. One much larger runs at its least all night and soots.", survey.FigureTo(m.sizes.Heat.Reserve, 1), Watt.Of(needed)),
	}
	for _, c := range m.sizes.Class {
		if row.Text == "" && c.Most >= needed {
			row.Text = c.Name
		}
	}
	if row.Text == "" {
		row.Text, row.Amiss = "none is large enough", "insulate more, or take two heaters"
	}
	if h := m.job.Heater; h != nil {
		var ignored basis
		if c := m.heater(&ignored); c.Most < needed && row.Amiss == "" {
			row.Amiss = fmt.Sprintf("the job's heater has %s, and %s are wanted", Watt.Of(c.Most), Watt.Of(needed))
		}
	}
	m.put(row, on)
}

// night is how long the burner is on in a night, and what it burns.
func (m *maker) night(watts float64, on basis) {
	hours := on.need(m.job.Body.Hours, "how many hours a night it runs")
	class := m.heater(&on)
	burning := hours
	if class.Least > 0 {
		burning = hours * min(1, max(0, watts)/class.Least)
	}
	m.put(Row{
		ID: Burning, Label: "burner on, a night", Unit: Hour, Value: vehicles.Some(burning), Source: Sources{m.sizes.ClassNote.Source},
		Why: fmt.Sprintf("Of %s hours. Below its least heat, %s, it goes on and off.", survey.FigureTo(hours, 1), Watt.Of(class.Least)),
	}, on)
	watts = min(max(0, watts), class.Most) // no heater gives more than it has
	rate := m.burn(watts, &on)
	m.put(Row{
		ID: FuelANight, Label: "fuel a night", Unit: Litre, Value: vehicles.Some(rate * hours), Source: m.fuelSource(),
		Why: fmt.Sprintf("%s l an hour for %s, over %s hours. Each start takes some more.", survey.FigureTo(rate, 2), Watt.Of(watts), survey.FigureTo(hours, 1)),
	}, on)
}

// WarmUp is how many seconds a heater of so many watts takes to warm a body by a rise in degrees that loses so many watts a degree and
// takes so many joules to be warmed by one; ok is false where it never gets there.
func WarmUp(watts, rise, perDegree, toWarm float64) (seconds float64, ok bool) {
	left := 1 - perDegree*rise/watts
	switch {
	case left <= 0:
		return 0, false
	case perDegree*rise < 1e-9*watts: // nothing is lost
		return toWarm * rise / watts, true
	}
	return -toWarm / perDegree * math.Log(left), true
}

// warmUp is how long it takes from cold.
func (m *maker) warmUp(rise float64, all losses) {
	on := all.on
	class := m.heater(&on)
	row := Row{
		ID: WarmIn, Label: "warm from cold in", Unit: Minute, Source: Sources{m.sizes.Resistance.InsulatesSource, m.sizes.MaterialNote.Source},
		Why: "At full heat, air and what lies within the insulation alone: what stands in the van is not counted and takes as long again, or longer.",
	}
	if seconds, ok := WarmUp(class.Most, max(0, rise), all.perDegree, all.toWarm); ok {
		row.Value = vehicles.Some(seconds / 60)
	} else {
		row.Text, row.Amiss = "never", "the heater has less than is lost"
	}
	m.put(row, on)
}

// classSource says where the watts of the heater's class are from.
func (s *Sizes) classSource() string { return "watts of the class: " + s.ClassNote.Source }
