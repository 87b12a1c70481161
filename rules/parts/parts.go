// Package parts is the list of what is ordered before the van comes: all that a job takes, how many of each and how much of it the usual
// kit holds. It counts what the job holds and nothing else; what nobody has reckoned is listed without a count. Lengths are mm.
package parts

import (
	"fmt"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/cutlist"
	"bench.example/undermark/rules/sizing"
	"bench.example/undermark/vehicles"
)

// Row is a part of the list.
type Row struct {
	For    string          // what it is for: "heater", "exhaust"
	Of     string          // what it is; no two rows of a list are of the same thing for the same
	Size   string          // of one: "26 mm across, 1000 mm long"; "" where there is but one sort
	Count  vehicles.Number // how many, in Unit; not set where nobody has reckoned it
	Unit   string          // "pieces", "lengths", "ml"
	Kit    vehicles.Number // how many of them the usual kit holds; not set where a kit has none of its own
	Note   string
	Source string // of the count, where the job does not say it
}

// Buy is how many are bought beside the kit; not set where nobody has reckoned how many are wanted.
func (r Row) Buy() vehicles.Number {
	if !r.Count.Set {
		return r.Count
	}
	return vehicles.Some(max(0, r.Count.Value-r.Kit.Or(0)))
}

// List is what a job takes.
type List struct {
	Rows   []Row
	Absent []string // what the job does not hold or say, so that it is not counted
}

// What rows are for.
const (
	forHeater  = "heater"
	forFloor   = "floor"
	forWiring  = "wiring"
	forPeople  = "people"
	forWarmAir = "warm air"
	forClips   = "clips of the runs"
	pieces     = "pieces"
	lengths    = "lengths"
	practice   = rules.Practice
)

// Of makes the list of a judged job with what the usual kit holds: what is cut as the cut list has it, sealant, screws, cable and fuse as they
// are sized.
func Of(r *rules.Result, kit *cutlist.Kit) List {
	m := maker{r: r, cut: cutlist.Of(r, kit)}
	m.Absent = m.cut.Absent
	m.heater()
	m.floor()
	for _, run := range vehicles.RunKinds {
		m.run(run)
	}
	m.clipped()
	m.warmAir()
	m.wiring()
	m.people()
	return m.List
}

// maker makes a list.
type maker struct {
	List
	r   *rules.Result
	cut cutlist.List
}

func (m *maker) add(r Row) { m.Rows = append(m.Rows, r) }

// sized is what is sized, ok false where something is missing for it.
func (m *maker) sized(id sizing.ID) (row sizing.Row, ok bool) {
	row, _ = sizing.Find(m.r, id)
	return row, row.Value.Set
}

func one(of, what, size, note string) Row {
	return Row{For: of, Of: string(what), Size: size, Count: vehicles.Some(1), Unit: pieces, Note: note}
}

func (m *maker) heater() {
	h := m.r.Job.Heater
	if h == nil {
		m.Absent = append(m.Absent, "no heater is chosen")
		return
	}
	class := h.Class
	if h.Given&vehicles.HasClass == 0 {
		class = "sizes of its own"
	}
	m.add(one(forHeater, "heater", class, ""))
	m.collar()
	if n := len(rules.Bolts(&m.r.Job, &m.r.Plan)); n > 0 {
		m.add(Row{
			For: forHeater, Of: "bolt, nut and two washers", Size: "for a hole of " + survey.InMM(h.Bolt) + m.boltLength(), Count: vehicles.Some(float64(n)), Unit: "sets",
			Note: "long enough for plate, floor and nut, and no longer",
		})
	} else {
		m.Absent = append(m.Absent, "nobody has said how the heater is bolted down")
	}
	m.sealant()
}

// boltLength is how long the bolts are at least, where that is known.
func (m *maker) boltLength() string {
	if row, ok := m.sized(sizing.Bolt); ok {
		return ", " + row.Said() + " long at least"
	}
	return ""
}

func (m *maker) sealant() {
	row := Row{For: forHeater, Of: "sealant", Size: "cartridges", Unit: pieces, Note: "two beads, " + sizing.WhereBeadsGo + "; of the sort that the heater's instructions ask for", Source: rules.NeedsFigure}
	if n, ok := m.sized(sizing.Cartridges); ok {
		row.Count, row.Size, row.Source = n.Value, n.Label, n.Source.String()
	}
	m.add(row)
}

func (m *maker) floor() {
	cut := m.r.Job.Cut
	if cut == nil {
		m.Absent = append(m.Absent, "no cut is placed")
		return
	}
	if m.r.Job.Deck() == vehicles.Timber {
		m.add(Row{For: forFloor, Of: "steel plate", Size: "wider than the heater's, holed " + survey.InMM(cut.Across), Count: vehicles.Some(2), Unit: pieces, Note: "above and below the deck", Source: practice})
		m.varnish()
	} else {
		m.paint()
		m.wax()
	}
	m.packing()
}

// run is what a run is cut from, and what joins and holds it.
func (m *maker) run(of vehicles.RunKind) {
	what, across := map[vehicles.RunKind]cutlist.Thing{vehicles.ExhaustRun: cutlist.ExhaustPipe, vehicles.IntakeRun: cutlist.IntakeHose, vehicles.FuelRun: cutlist.FuelLine}[of], 0.0
	for _, p := range m.cut.Pieces {
		if p.Run == of {
			across = p.Across
		}
	}
	for _, s := range m.cut.Stock {
		if s.Of != what {
			continue
		}
		if s.Needed > 0 {
			m.add(Row{
				For: of.String(), Of: string(what), Size: fmt.Sprintf("%s across, %s long", survey.InMM(across), survey.InMM(s.Length)), Count: vehicles.Some(float64(s.Needed)), Unit: lengths,
				Kit: vehicles.Some(float64(s.Holds)), Note: leftOver(s.Left), Source: m.cut.Source,
			})
		}
		for i, cut := range s.TooLong {
			m.add(Row{For: of.String(), Of: string(what) + " in one piece" + again(i), Size: fmt.Sprintf("%s across, %s long", survey.InMM(across), survey.InMM(cut)), Count: vehicles.Some(1), Unit: pieces, Kit: vehicles.Some(0), Note: "longer than the usual length", Source: m.cut.Source})
		}
	}
	for _, p := range m.cut.Parts {
		if p.Run == of {
			m.add(Row{For: of.String(), Of: string(p.Of), Size: m.size(p), Count: vehicles.Some(float64(p.Count)), Unit: pieces, Kit: vehicles.Some(float64(p.Holds)), Note: note(p), Source: m.cut.Source})
		}
	}
	if of == vehicles.FuelRun && m.r.Plan.Fuel != nil {
		m.fuelBeside()
	}
	switch run := m.r.Job.Run(of); {
	case run == nil:
	case of == vehicles.ExhaustRun && run.Shielded.All:
		m.add(Row{For: of.String(), Of: "heat shield", Unit: pieces, Note: "before whatever is near the exhaust"})
	case of == vehicles.ExhaustRun && len(run.Shielded.Names) > 0:
		m.add(Row{For: of.String(), Of: "heat shield", Count: vehicles.Some(float64(len(run.Shielded.Names))), Unit: pieces, Note: "one before each thing that has one"})
	case of == vehicles.FuelRun && run.Supply.From != "":
		m.add(one(of.String(), "fuel take-off", "", "for "+run.Supply.From))
	case of == vehicles.FuelRun && run.Supply.Tank != nil:
		m.add(one(of.String(), "fuel tank", "", "with filler, breather and what holds it"))
	}
}

// clipped is what the clips are fastened with of all runs that are counted: one without a stub to start from is not.
func (m *maker) clipped() {
	n := 0
	for _, of := range vehicles.RunKinds {
		if run := m.r.Job.Run(of); run != nil && m.r.Plan.Run(of) != nil {
			n += len(run.Clips)
		}
	}
	if n > 0 {
		m.add(Row{For: forClips, Of: "screw and nut, or rivet", Size: "for a clip's hole", Count: vehicles.Some(float64(n)), Unit: pieces, Source: practice})
	}
}

// leftOver says what is left of each length, mm.
func leftOver(left []float64) string {
	texts := make([]string, len(left))
	for i, v := range left {
		texts[i] = survey.Figure(v)
	}
	texts[len(left)-1] = survey.InMM(left[len(left)-1])
	return "left over: " + strings.Join(texts, ", ")
}

// again numbers the second and later of pieces that are ordered by their length.
func again(i int) string {
	if i == 0 {
		return ""
	}
	return fmt.Sprintf(", number %d", i+1)
}

// size is what is said of a part beside what it is: the job gives a muffler's.
func (m *maker) size(p cutlist.Part) string {
	e, f := m.r.Job.Exhaust, m.r.Job.Fuel
	switch of := p.Of; {
	case p.Each > 0:
		return survey.InMM(p.Each) + " of hose"
	case of == cutlist.Muffler && e != nil && e.Muffler != nil:
		return fmt.Sprintf("%s across, %s long", survey.InMM(e.Muffler.Across), survey.InMM(e.Muffler.Length))
	case of == cutlist.Grommet && f != nil:
		return "for a hole of " + survey.InMM(f.Supply.HoleAcross()) + ", " + survey.InMM(f.Across) + " inside"
	}
	return ""
}

// note is what is said of a part of a run.
func note(p cutlist.Part) string {
	switch {
	case p.Each > 0:
		return survey.InMM(p.Total()) + " in all" + rules.UnlessHeaterSays
	case p.Of == cutlist.Grommet:
		return "in each hole through the floor; see whether the kit's fits it"
	}
	return ""
}

func (m *maker) warmAir() {
	h := m.r.Job.Heater
	if h == nil || h.Duct.Count() == 0 {
		return
	}
	n := float64(h.Duct.Count())
	size := survey.InMM(h.DuctAcross) + " across"
	duct := Row{For: forWarmAir, Of: "duct", Size: size, Unit: "m", Note: "nobody has said how long"}
	if long := m.r.Job.Ductwork.Length; long.Set {
		duct.Count, duct.Note = metres(long.Value), ""
	}
	m.add(duct)
	m.add(Row{For: forWarmAir, Of: "duct clamp", Size: size, Count: vehicles.Some(2 * n), Unit: pieces, Note: "one at either end", Source: practice})
	m.add(Row{For: forWarmAir, Of: "outlet", Size: size, Count: vehicles.Some(n), Unit: pieces, Source: practice})
}
