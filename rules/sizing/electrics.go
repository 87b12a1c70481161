package sizing

import (
	"fmt"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/vehicles"
)

// The heater's supply. A cable is as thick as the larger of two: what loses no more than is allowed at the glow current, there and back,
// and what the fuse at the battery protects.

const (
	ohmsLaw  = "Current times resistance of the loop, there and back"
	afterRun = "UN Regulation No. 122, annex 7, 5, from memory: the fan runs on even where the fuel was cut"
)

// supply is what the electrics are reckoned from.
type supply struct {
	glow, loop, drop, fuse float64
	onGlow, onLoop, onDrop basis
	onFuse                 basis
}

func (m *maker) supply() (s supply) {
	e, usual := m.job.Electrics, m.sizes.Supply
	volts := s.onGlow.or(e.Volts, usual.Volts, "battery", Volt)
	if class := m.heater(&s.onGlow); e.Glow.Set {
		s.onGlow, s.glow = basis{}, e.Glow.Value
	} else {
		s.glow = class.Glow * usual.Volts / volts
		s.onGlow.take("glow current", survey.Rounded(s.glow, 1), Ampere)
	}
	s.loop = 2 * s.onLoop.need(e.Cable, "the cable's length from battery to heater") / 1000
	s.drop = s.onDrop.or(e.Drop, usual.Drop, "volts that may be lost", Volt)
	s.fuse, s.onFuse = e.Fuse.Value, basis{}
	if !e.Fuse.Set {
		s.onFuse = s.onGlow
		var ok bool
		if s.fuse, ok = leastOf(m.sizes.Fuses.Amperes, usual.Spare*s.glow); !ok {
			s.onFuse.lack("a fuse for so large a current: see the heater's instructions")
		}
	}
	return s
}

func (m *maker) electrics() {
	s := m.supply()
	m.fuse(&s)
	m.cable(&s)
	m.battery()
	m.rows = append(m.rows, Row{
		ID: AfterRun, Label: "when switched off", Text: "the fan runs on", Source: Sources{afterRun}, Instructions: true,
		Why: "Leave its supply on until the fan stands still: power that is cut before it has cooled down ruins it. So no main switch, " +
			"no timer and no key of the van stands between battery and heater. A fire or a fuel leak is another matter: pull the fuse and get out.",
	})
}

// fuse is the fuse at the battery.
func (m *maker) fuse(s *supply) {
	row := Row{
		ID: Fuse, Label: "fuse at the battery", Value: vehicles.Some(s.fuse), Unit: Ampere,
		Why:    fmt.Sprintf("The first size of %s times the glow current, %s. It stands at the battery's pole: what lies before it nothing protects.", survey.FigureTo(m.sizes.Supply.Spare, 2), Ampere.Of(s.glow)),
		Source: Sources{m.sizes.Supply.Source, "sizes " + m.sizes.Fuses.Source}, Instructions: true,
	}
	if m.job.Electrics.Fuse.Set {
		row.Why = "As the job has it. It stands at the battery's pole: what lies before it nothing protects."
		if s.fuse <= s.glow && len(s.onGlow.lacks) == 0 {
			row.Amiss = fmt.Sprintf("the glow current is %s: it blows at the first start", Ampere.Of(s.glow))
		}
	}
	m.put(row, s.onFuse)
}

// cable is its area: by the drop, by the fuse, and the larger one, with what is lost in that.
func (m *maker) cable(s *supply) {
	onDrop := s.onGlow.and(s.onLoop).and(s.onDrop)
	byDrop, enough := m.byDrop(s.loop, s.glow, s.drop)
	row := Row{
		ID: CableByDrop, Label: "cable, by what is lost", Unit: MM2, Value: vehicles.Some(byDrop.Area), Source: Sources{m.sizes.CableNote.OhmSource},
		Why: fmt.Sprintf("%s: %s over %s m, no more than %s.", ohmsLaw, Ampere.Of(s.glow), survey.FigureTo(s.loop, 2), Volt.Of(s.drop)),
	}
	if !enough {
		row.Value, row.Text, row.Amiss = vehicles.Number{}, "none is thick enough", "no cable here is thick enough: bring battery and heater nearer together"
	}
	m.put(row, onDrop)
	byFuse, fused := m.byFuse(s.fuse)
	row = Row{
		ID: CableByFuse, Label: "cable, by the fuse", Unit: MM2, Value: vehicles.Some(byFuse.Area), Source: Sources{m.sizes.CableNote.FuseSource},
		Why: fmt.Sprintf("The thinnest that a fuse of %s keeps from burning.", Ampere.Of(s.fuse)),
	}
	if !fused {
		row.Value, row.Text, row.Amiss = vehicles.Number{}, "none", "no cable here is protected by so large a fuse"
	}
	m.put(row, s.onFuse)
	if !enough || !fused {
		return
	}
	c := byDrop
	if byFuse.Area > c.Area {
		c = byFuse
	}
	both := onDrop.and(s.onFuse)
	m.put(Row{
		ID: CableArea, Label: "cable's area", Unit: MM2, Value: vehicles.Some(c.Area), Source: Sources{m.sizes.CableNote.OhmSource, m.sizes.CableNote.FuseSource},
		Why: "The larger of the two, plus and minus alike.",
	}, both)
	m.put(Row{
		ID: CableDrop, Label: "lost in it while it glows", Unit: Volt, Value: vehicles.Some(Lost(c.Ohm, s.loop, s.glow)), Source: Sources{m.sizes.CableNote.OhmSource},
		Why: ohmsLaw + ". Copper that is warmer by 10 degrees loses 4 % more; joints and the fuse lose some, too.",
	}, both)
}

// Lost is how many volts are lost in a loop of so many metres of a cable of so many ohms a kilometre, at so many amperes.
func Lost(ohm, loop, amperes float64) float64 { return amperes * ohm * loop / 1000 }

// byDrop is the thinnest cable that loses no more than is allowed; ok is false where none is thick enough.
func (m *maker) byDrop(loop, amperes, allowed float64) (c cableSizes, ok bool) {
	for _, c = range m.sizes.Cable {
		if Lost(c.Ohm, loop, amperes) <= allowed {
			return c, true
		}
	}
	return c, false
}

// byFuse is the thinnest cable that a fuse protects.
func (m *maker) byFuse(amperes float64) (c cableSizes, ok bool) {
	for _, c = range m.sizes.Cable {
		if c.Fuse >= amperes {
			return c, true
		}
	}
	return c, false
}

// battery is how long it lasts.
func (m *maker) battery() {
	e, usual := m.job.Electrics, m.sizes.Supply
	var on basis
	ah := on.need(e.Battery, "the battery's capacity, Ah")
	usable := on.or(e.Usable, usual.Usable, "of the battery may be used", "%")
	running := e.Running.Value
	if !e.Running.Set {
		volts := on.or(e.Volts, usual.Volts, "battery", Volt)
		running = m.heater(&on).Running * usual.Volts / volts
		on.take("running current", survey.Rounded(running, 1), Ampere)
	}
	hours := ah * usable / 100 / running
	m.put(Row{
		ID: BatteryLasts, Label: "battery lasts", Unit: Hour, Value: vehicles.Some(hours), Source: Sources{usual.Source},
		Why: fmt.Sprintf("%s %% of %s Ah over %s, nothing else drawn. Cold takes more from it.", survey.FigureTo(usable, 0), survey.FigureTo(ah, 0), Ampere.Of(running)),
	}, on)
	if night := m.job.Body.Hours; night.Set {
		m.put(Row{
			ID: BatteryNights, Label: "that is, without charging", Unit: Night, Value: vehicles.Some(hours / night.Value), Source: Sources{usual.Source},
			Why: fmt.Sprintf("At %s hours a night.", survey.FigureTo(night.Value, 1)),
		}, on)
	}
}
