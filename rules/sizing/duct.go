package sizing

import (
	"fmt"
	"math"
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// What a duct takes of the fan's pressure, by Darcy and Weisbach, and how much air comes out of it.

// laminar is the Reynolds number below which a flow is laminar. Between it and turbulence nobody can say: the larger factor counts.
const laminar = 2300

// Friction is Darcy's friction factor at a Reynolds number, for a roughness as a share of the diameter: 64/Re where the flow is laminar,
// else Colebrook's, to 1e-12.
func Friction(reynolds, rough float64) float64 {
	if reynolds < laminar {
		return 64 / reynolds
	}
	x := 7.0 // one over the factor's square root
	for range 100 {
		next := -2 * math.Log10(rough/3.7+2.51*x/reynolds)
		if math.Abs(next-x) < 1e-12 {
			break
		}
		x = next
	}
	return 1 / (x * x)
}

// way is the air's way: mm, and how many dynamic pressures its bends and its end take.
type way struct{ length, across, rough, shaped float64 }

// speed is how fast the air is, m/s, at so many m3/h.
func (w way) speed(flow float64) float64 {
	return flow / 3600 / (math.Pi / 4 * w.across * w.across / 1e6)
}

// loss is the pressure that a flow of so many m3/h loses, Pa.
func (w way) loss(flow float64, air ductSizes) float64 {
	if flow <= 0 {
		return 0
	}
	v := w.speed(flow)
	f := Friction(air.Density*v*w.across/1000/air.Viscosity, w.rough/w.across)
	return (f*w.length/w.across + w.shaped) * air.Density * v * v / 2
}

// FanPressure is what a fan makes at a flow, by its curve: straight between its points, none behind the last.
func FanPressure(fan []vehicles.FanPoint, flow float64) float64 {
	i := slices.IndexFunc(fan, func(p vehicles.FanPoint) bool { return p.Flow >= flow })
	switch {
	case i < 0:
		return 0
	case i == 0:
		return fan[0].Pressure
	}
	a, b := fan[i-1], fan[i]
	return a.Pressure + (b.Pressure-a.Pressure)*(flow-a.Flow)/(b.Flow-a.Flow)
}

// comesOut is the flow at which the way takes what the fan makes, to 1e-6 m3/h.
func (w way) comesOut(fan []vehicles.FanPoint, air ductSizes) float64 {
	low, high := 0.0, fan[len(fan)-1].Flow
	for range 60 {
		if middle := (low + high) / 2; w.loss(middle, air) < FanPressure(fan, middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

func (m *maker) duct() {
	if m.job.Heater != nil && m.job.Heater.Duct.Count() == 0 && !m.job.Ductwork.Said() {
		m.rows = append(m.rows, Row{ID: NoDuct, Label: "duct", Text: "none", Why: "The job says of no duct: the heater blows into the open. The heater's form on On top has its ducts."})
		return
	}
	d, sizes := m.job.Ductwork, m.sizes.Duct
	var on basis
	if m.job.Heater == nil {
		on.lack(whichHeater)
	}
	w := way{length: on.need(d.Length, "how long the duct is"), rough: on.or(d.Rough, sizes.Rough, "roughness inside", MM), across: 1}
	if h := m.job.Heater; h != nil {
		if w.across = h.DuctAcross; h.Duct.Count() == 0 {
			on.took(fmt.Sprintf("one duct of %s, as On top has none", survey.InMMTo(w.across, 0)))
		}
	}
	if d.Bends == nil {
		on.lack("the duct's bends, or that it has none")
	}
	turned := 0.0
	for _, b := range d.Bends {
		turned += b
	}
	w.shaped = turned/90*sizes.Bend + sizes.Out
	m.wanted(w, turned, on)
	m.blown(w, on)
}

// heardFrom is how fast air is in a duct that one hears, m/s. common practice, no source
const heardFrom = 8

// wanted is what the way takes of the flow that is wanted.
func (m *maker) wanted(w way, turned float64, on basis) {
	sizes, flow := m.sizes.Duct, m.job.Ductwork.Flow.Value
	if !m.job.Ductwork.Flow.Set {
		flow = m.heater(&on).Air
		on.take("air wanted", flow, Flow)
	}
	why := fmt.Sprintf("%s through %s. Above %d m/s it is heard.", Flow.Of(flow), survey.InMMTo(w.across, 0), heardFrom)
	if h := m.job.Heater; h != nil && h.Duct.Count() > 1 {
		why += " It is of one duct: a second one takes air of its own, and what is wanted here is this one's."
	}
	m.put(Row{ID: DuctAir, Label: "air in the duct", Unit: Speed, Value: vehicles.Some(w.speed(flow)), Source: Sources{sizes.Source}, Why: why}, on)
	m.put(Row{
		ID: DuctLoss, Label: "pressure it takes", Unit: Pascal, Value: vehicles.Some(w.loss(flow, sizes)), Source: Sources{sizes.FrictionSource, sizes.AirSource, "bends and end: " + sizes.Source},
		Why: fmt.Sprintf("%s m of it, bends of %s degrees in all, and the open end.", survey.FigureTo(w.length/1000, 2), survey.FigureTo(turned, 0)),
	}, on)
}

// blown is what comes out with the fan that the job has.
func (m *maker) blown(w way, on basis) {
	d, sizes := m.job.Ductwork, m.sizes.Duct
	if len(d.Fan) == 0 {
		on.lack("the fan's curve: see the heater's instructions")
		m.put(Row{ID: DuctFlow, Label: "air that comes out", Unit: Flow, Source: Sources{sizes.FrictionSource}}, on)
		return
	}
	flow := w.comesOut(d.Fan, sizes)
	row := Row{
		ID: DuctFlow, Label: "air that comes out", Unit: Flow, Value: vehicles.Some(flow), Source: Sources{sizes.FrictionSource, "the fan's curve: the job's"},
		Why:          "Where the duct takes what the fan makes by its curve.",
		Instructions: true,
	}
	if want := d.Flow; want.Set && flow < want.Value {
		row.Amiss = fmt.Sprintf("%s are wanted: shorten the duct, take bends out, or take a wider one", Flow.Of(want.Value))
	}
	m.put(row, on)
}
