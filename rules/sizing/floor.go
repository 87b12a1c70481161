package sizing

import (
	"fmt"
	"math"
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// The floor where the heater stands, layer by layer: what its collar, screws and bolts have to reach through, and the sealant.

// sum adds up lengths, mm, to a millionth: tenths that are added one by one come out a hair off, and a collar that is just enough would be too short.
func sum(lengths ...float64) (all float64) {
	for _, length := range lengths {
		all += length
	}
	return survey.Rounded(all, 6)
}

// stack is how thick the layers are at the thickest and at the thinnest place, mm: swages are at the thickest alone.
type stack struct{ thick, thin float64 }

func (s *stack) add(l vehicles.Layer) {
	s.thick = sum(s.thick, l.Thick)
	if l.Kind != vehicles.SwageLayer {
		s.thin = sum(s.thin, l.Thick)
	}
}

// StackOf adds up layers: all of them, or the van's own metal alone.
func StackOf(layers []vehicles.Layer, metal bool) (thick, thin float64) {
	var s stack
	for _, l := range layers {
		if l.Metal() || !metal {
			s.add(l)
		}
	}
	return s.thick, s.thin
}

func (m *maker) floor() {
	var layered basis
	m.begun(&layered)
	if len(m.job.Stack) == 0 {
		layered.lack("the floor's layers")
	}
	m.thickness(layered)
	stood := layered
	switch on := m.job.Mount.On; {
	case on == "":
		stood.lack("what the heater stands on, steel or lining")
	case on == vehicles.OnSteel && len(layered.lacks) == 0 && !slices.ContainsFunc(m.job.Stack, vehicles.Layer.Metal):
		stood.lack("the steel that it stands on: no layer is of sheet")
	}
	thick, thin := StackOf(m.job.Stack, m.job.Mount.On == vehicles.OnSteel)
	m.collar(thick, stood)
	m.gives(stood)
	m.fastened(thick, thin, stood)
	m.sealant()
	m.cutBack()
}

// thickness is that of all layers, beside the one that was measured.
func (m *maker) thickness(on basis) {
	thick, thin := StackOf(m.job.Stack, false)
	row := Row{
		ID: Thickest, Label: "at the thickest", Unit: MM, Value: vehicles.Some(thick), Source: Sources{m.sizes.Floor.Source},
		Why: "All layers, swages with their depth.",
	}
	if apart := thick - m.job.Floor.Thickness; math.Abs(apart) > m.sizes.Floor.Match {
		row.Amiss = fmt.Sprintf("On top has the floor %s thick: measure again, or enter the layer that is missing", survey.InMM(m.job.Floor.Thickness))
	}
	m.put(row, on)
	m.put(Row{
		ID: Thinnest, Label: "at the thinnest", Unit: MM, Value: vehicles.Some(thin), Source: Sources{m.sizes.Floor.Source},
		Why: "Between the swages. What is screwed or clamped must hold here, too, and not come out.",
	}, on)
}

// collar is how deep it must be, and what to order or to cut where it is not.
func (m *maker) collar(thick float64, on basis) {
	beyond, says := m.asked(rules.CollarThrough, &on)
	needed := sum(thick, beyond)
	m.put(Row{
		ID: CollarNeeded, Label: "collar needed", Unit: MM, Value: vehicles.Some(needed), Source: Sources{says.source}, Instructions: true,
		Why: fmt.Sprintf("%s that it stands on at the thickest, and %s below it (%s).", survey.InMM(thick), survey.InMM(beyond), says.book),
	}, on)
	if m.job.Heater == nil || !m.job.Heater.Turret.Set {
		on.lack("how deep the heater's collar is")
	}
	if len(on.lacks) > 0 {
		m.put(Row{ID: CollarHas, Label: "the heater's collar", Unit: MM, Source: Sources{m.sizes.Floor.Source}}, on)
		return
	}
	has := m.job.Heater.Turret.Value
	row := Row{
		ID: CollarHas, Label: "the heater's collar", Unit: MM, Value: vehicles.Some(has), Text: "enough", Source: Sources{m.sizes.Floor.Source}, Instructions: true,
		Why: fmt.Sprintf("It reaches %s below the thickest place.", survey.InMM(has-thick)),
	}
	if has < needed {
		row.Text, row.Why, row.Amiss = "too short", m.deeper(needed), fmt.Sprintf("it is %s too short", survey.InMM(needed-has))
		row.Why += m.lower(needed - has)
	}
	m.put(row, on)
	if has < needed {
		m.toOrder(needed)
	}
}

// toOrder is the collar that is ordered in place of one that is too short, and what it is cut to.
func (m *maker) toOrder(needed float64) {
	row := Row{ID: CollarToOrder, Label: "collar to order", Unit: MM, Value: vehicles.Some(needed), Text: "made of steel", Source: Sources{m.sizes.Floor.Source}, Instructions: true}
	if size, ok := leastOf(m.sizes.Floor.Collars, needed); ok {
		row.Value, row.Text = vehicles.Some(size), ""
		if size > needed {
			row.Text = fmt.Sprintf("may be cut to %s", survey.InMM(needed))
		}
	}
	m.put(row, basis{})
}

// speaker is who asks for a value: which rule in which book, and its source.
type speaker struct{ book, source string }

// asked is what a rule asks, and who says so.
func (m *maker) asked(rule *rules.Rule, on *basis) (value float64, says speaker) {
	var limit rules.Limit
	ok := false
	if m.r.Book != nil {
		limit, ok = m.r.Book.Lookup(rule.ID, "")
	}
	if !ok || !limit.Value.Set {
		on.lack("what the rule " + rule.ID + " asks")
		return 0, says
	}
	return limit.Value.Value, speaker{asker(&limit), limit.Source}
}

// asker says which rule asks, and which book speaks.
func asker(l *rules.Limit) string { return l.Key() + ", " + l.Book }

// deeper is which collar to order, or that one is to be made.
func (m *maker) deeper(needed float64) string {
	if size, ok := leastOf(m.sizes.Floor.Collars, needed); ok {
		return fmt.Sprintf("Order one of %s; one that is too deep may be cut where the heater's instructions allow it.", survey.InMMTo(size, 0))
	}
	return fmt.Sprintf("No usual collar is so deep: have one of %s made of steel.", survey.InMM(needed))
}

// lower is how the heater could stand lower instead: by what is not the van's metal.
func (m *maker) lower(by float64) string {
	wood := 0.0
	for _, l := range m.job.Stack {
		if !l.Metal() {
			wood += l.Thick
		}
	}
	if m.job.Mount.On != vehicles.OnLining || wood < by {
		return ""
	}
	return fmt.Sprintf(" Or cut lining, ply and insulation back under the whole plate, all %s, and stand the heater on the steel.", survey.InMM(wood))
}

// gives is what is pressed together under the plate.
func (m *maker) gives(on basis) {
	soft := 0.0
	for _, l := range m.job.Stack {
		if l.Gives() {
			soft += l.Thick
		}
	}
	if len(on.lacks) > 0 || soft == 0 || m.job.Mount.On == vehicles.OnSteel {
		return
	}
	m.put(Row{
		ID: Gives, Label: "under the plate, gives", Unit: MM, Value: vehicles.Some(soft), Source: Sources{m.sizes.Floor.Source},
		Amiss: "a plate that is bolted over it works loose: take it out there, and put ply or steel of the same height in",
	}, on)
}

// fastened is the longest screw that stays inside, and the shortest bolt that takes its nut.
func (m *maker) fastened(thick, thin float64, on basis) {
	f := m.sizes.Floor
	plate := on.or(m.job.Mount.Plate, f.Plate, "plate of metal", MM)
	most := sum(plate, thin, -f.Spare)
	row := Row{
		ID: Screw, Label: "longest tapping screw, no nut", Unit: MM, Source: Sources{f.ScrewsSource, f.Source},
		Why: fmt.Sprintf("Plate and floor at the thinnest are %s, and it stays %s short of coming out below, where it would rust, and cut whoever lies there.", survey.InMM(plate+thin), survey.InMM(f.Spare)),
	}
	if size := mostOf(f.Screws, most); size > 0 {
		row.Value = vehicles.Some(size)
	} else {
		row.Text = "none: bolt it"
		row.Why = fmt.Sprintf("Plate and floor at the thinnest are %s: every screw comes out below.", survey.InMM(plate+thin))
	}
	m.put(row, on)
	least := sum(plate, thick, f.Nut)
	row = Row{
		ID: Bolt, Label: "shortest bolt", Unit: MM, Source: Sources{f.BoltsSource, f.Source}, Instructions: true,
		Why: fmt.Sprintf("Plate and floor at the thickest are %s; washer, nut and two threads take %s.", survey.InMM(plate+thick), survey.InMM(f.Nut)),
	}
	if size, ok := leastOf(f.Bolts, least); ok {
		row.Value = vehicles.Some(size)
	} else {
		row.Text = "threaded rod"
	}
	m.put(row, on)
}

// mostOf is the last of rising sizes that is no more than allowed, 0 where none is.
func mostOf(sizes []float64, allowed float64) (size float64) {
	for _, s := range sizes {
		if s <= allowed {
			size = s
		}
	}
	return size
}

// BeadVolume is what a round string of sealant of a thickness and a length, mm, takes, ml.
func BeadVolume(thick, length float64) float64 { return math.Pi / 4 * thick * thick * length / 1000 }

// WhereBeadsGo is where the two beads of sealant go.
const WhereBeadsGo = "round the hole and along the plate's edge"

// sealant is what two beads take: along the plate's edge, and round the hole.
func (m *maker) sealant() {
	f := m.sizes.Floor
	var on basis
	bead := on.or(m.job.Mount.Bead, f.Bead, "a bead of", MM)
	edge, round := 0.0, 0.0
	if m.job.Heater == nil {
		on.lack(whichHeater)
	} else {
		edge = 2 * (m.job.Heater.Plate[0] + m.job.Heater.Plate[1])
	}
	if m.job.Cut == nil {
		on.lack(cutNoPlace)
	} else {
		round = math.Pi * m.job.Cut.Across
	}
	ml := BeadVolume(bead, edge+round)
	m.put(Row{
		ID: Sealant, Label: "sealant, two beads", Unit: ML, Value: vehicles.Some(ml), Source: Sources{f.Source}, Instructions: true,
		Why: fmt.Sprintf("%s along the plate's edge and %s round the hole. Of the sort that the heater's instructions name: it gets warm.", survey.InMMTo(edge, 0), survey.InMMTo(round, 0)),
	}, on)
	m.put(Row{
		ID: Cartridges, Label: fmt.Sprintf("cartridges of %s ml", survey.FigureTo(f.Cartridge, 0)), Value: vehicles.Some(math.Ceil(ml / f.Cartridge)), Source: Sources{f.Source},
		Why: "Opened ones have often set: a whole one.",
	}, on)
}

// cutBack is how wide wood, foam and lining are cut back from the hot stub.
func (m *maker) cutBack() {
	if m.job.OnDeck() != vehicles.Wood && m.job.Deck() != vehicles.Timber {
		return
	}
	var on basis
	from, says := m.asked(rules.StubTimber, &on)
	if m.job.Heater == nil {
		on.lack(whichHeater)
	}
	if m.job.Exhaust == nil {
		on.lack("the exhaust: lay it on Runs")
	}
	wide := 0.0
	if len(on.lacks) == 0 {
		stub := m.job.Heater.ExhaustStub
		wide = math.Ceil(2 * (math.Hypot(stub[0], stub[1]) + m.job.Exhaust.Across/2 + from)) // whole mm, none too few
	}
	row := Row{
		ID: CutBack, Label: "wood, foam, lining cut back", Unit: MM, Value: vehicles.Some(wide), Text: "across", Source: Sources{says.source},
		Why: fmt.Sprintf("Round the cut's centre: the stub, and %s from it (%s).", survey.InMM(from), says.book),
	}
	if c := m.job.Cut; c != nil && c.Relieved.Set && c.Relieved.Value < wide {
		row.Amiss = fmt.Sprintf("Place has it cut back to %s", survey.InMM(c.Relieved.Value))
	}
	m.put(row, on)
}
