package parts

import (
	"math"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/vehicles"
)

// What goes in beside heater and pipes: collar, grommets, wiring, and what people need.

// collar is the heater's own where that is deep enough, else the one to order in its place.
func (m *maker) collar() {
	h := m.r.Job.Heater
	if !h.Turret.Set {
		m.Absent = append(m.Absent, "nobody has said how deep the collar is")
		return
	}
	row := one(forHeater, "collar", survey.InMM(h.Turret.Value)+" deep", "comes with the heater")
	row.Kit = row.Count
	m.add(row)
	if has, ok := m.sized(sizing.CollarHas); ok && has.Amiss != "" {
		m.add(Row{For: forHeater, Of: "deeper collar", Size: m.deeper(), Count: vehicles.Some(1), Unit: pieces, Note: has.Why, Source: has.Source.String()})
	}
}

// deeper is how deep the collar is that is ordered.
func (m *maker) deeper() string {
	if row, ok := m.sized(sizing.CollarToOrder); ok {
		return row.Unit.Of(row.Value.Value) + " deep"
	}
	return ""
}

// fuelBeside is what a fuel line takes beside pipe and joints.
func (m *maker) fuelBeside() {
	f := m.r.Job.Fuel
	if f.Pump != nil {
		m.add(Row{For: vehicles.FuelRun.String(), Of: "rubber mount", Count: vehicles.Some(1), Unit: pieces, Note: "for the pump", Source: practice})
	}
}

func (m *maker) wiring() {
	if m.r.Job.Heater == nil {
		return
	}
	m.cable()
	fuse := Row{For: forWiring, Of: "fuse and its holder", Count: vehicles.Some(1), Unit: pieces, Note: rules.FuseAtTheBattery, Source: rules.NeedsFigure}
	if row, ok := m.sized(sizing.Fuse); ok {
		fuse.Size, fuse.Note, fuse.Source = row.Said(), "at the battery; the heater's instructions come first", row.Source.String()
	}
	m.add(fuse)
}

// What a cable takes beside its way, mm: common practice, no source.
const (
	cableEnds = 300.0 // more of each wire, for its terminals and a hand's room
	cableHeld = 300.0 // from clip to clip
)

// metres is a length by the metre, to a tenth of a millimetre: what adding up leaves behind no shop reads.
func metres(mm float64) vehicles.Number {
	const metre, decimals = 1000, 4
	return vehicles.Some(survey.Rounded(mm/metre, decimals))
}

// cable is the supply's, two wires of it.
func (m *maker) cable() {
	row := Row{For: forWiring, Of: "supply cable", Unit: "m", Note: "plus and minus, from the battery", Source: practice}
	if area, ok := m.sized(sizing.CableArea); ok {
		row.Size, row.Source = area.Said(), area.Source.String()
	}
	if one := m.r.Job.Electrics.Cable; one.Set {
		row.Count = metres(2 * (one.Value + cableEnds))
		row.Note += ", " + survey.InMM(cableEnds) + " more of each for its ends"
	} else {
		row.Note += "; tape how long it is from there to the heater, one way: length and size follow (Sizing)"
	}
	m.add(row)
	sleeve := Row{For: forWiring, Of: "sleeve", Unit: "m", Note: "over the cable, all its way", Source: practice}
	if one := m.r.Job.Electrics.Cable; one.Set {
		sleeve.Count = metres(one.Value)
	}
	m.add(sleeve)
	held := Row{For: forWiring, Of: "cable clip", Unit: pieces, Note: "each " + survey.InMM(cableHeld) + " of the supply cable; more for the other leads", Source: practice}
	if one := m.r.Job.Electrics.Cable; one.Set {
		held.Count = vehicles.Some(math.Ceil(one.Value / cableHeld))
	}
	m.add(held)
	m.add(Row{For: forWiring, Of: "ring terminal", Size: strings.TrimSpace(row.Size + " cable"), Count: vehicles.Some(2), Unit: pieces, Note: "plus and minus, at the battery", Source: practice})
	// The pump's lead has no hole of its own: it goes through the collar.
	m.add(Row{For: forWiring, Of: "grommet", Count: vehicles.Some(1), Unit: pieces, Note: "for the supply cable, where it goes through sheet", Source: practice})
}

func (m *maker) people() {
	if m.r.Job.Heater == nil {
		return
	}
	m.add(one(forPeople, "carbon monoxide alarm", "EN 50291-2", "where people sleep"))
	m.add(one(forPeople, "notice for the fuel filler", "", rules.OffWhenRefuelled))
}
