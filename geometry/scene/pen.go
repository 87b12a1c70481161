package scene

// Pen is how a role is drawn, on whatever it is drawn: cells, pixels and paper take it from one table. Colours are each
// painter's own; without any the rest of a pen still tells what a thing is.
type Pen struct {
	Line     Line
	Weight   Weight
	Fill     Fill   // of an area
	Rim      bool   // its lines have a bare rim, so that they are seen on a fill and pass over other lines
	Steady   bool   // its lines look the same however it stands with the rules: only its name says that
	Front    uint8  // what is seen where several share a place: the highest
	Sign     Sign   // of a spot
	Rank     Rank   // of its label
	Before   uint8  // which labels of a rank are written first: those with the highest
	Stacked  bool   // its label stands on it, one letter under the other
	Sought   bool   // people look for it by its name, which no other label is to stand on
	Quiet    bool   // its line is never asked for by its name: a label beside it is not taken for that
	Band     bool   // a line of it is a band from end to end, however far away, where the eye finds it
	Carries  bool   // what all else hangs from: each has its name in every picture that has it
	Bent     bool   // but bent into the floor's own sheet: what is hot passes below its lines
	RunsEnd  bool   // its sign says where a run's gas goes out or its air comes in, which every picture says
	EndNamed bool   // its name stands at its end, where that is seen
	Unparted bool   // neither a line behind it nor a texture parts its face
	Ended    bool   // its line has a stroke across either end
	Range    Range  // from how far away it is drawn
	Yields   bool   // left out of a picture with few rows, where it would hide what is below it, unless it is foul
	Told     Told   // how it is told from the others without colour
	Means    string // what a legend says of its fill, line or sign; "" for what is no matter of a legend
}

// Line says how a line goes.
type Line uint8

// The lines.
const (
	Whole Line = iota
	Dashed
	Dotted
	DashDot
)

// Weight says how thick a line is.
type Weight uint8

// The weights.
const (
	Fine Weight = iota
	Heavy
)

// Fill says what an area is filled with.
type Fill uint8

// The fills.
const (
	Unfilled Fill = iota
	Hatched
	Lined
	Chequered
	Speckled
	Dense
	Filled
)

// Range says from how far away a role is drawn.
type Range uint8

// The ranges.
const (
	Anywhere       Range = iota
	UnhiddenOrNear       // where the floor hides it, in a near picture only
	Near                 // in a near picture only: farther off it would be a blot
)

// Sign is what a spot is marked with.
type Sign uint8

// The signs.
const (
	NoSign Sign = iota
	Disc
	Ring
	Lozenge
	Wedge // upright
	Saltire
	Plus
	Dot
	Target  // a disc in a ring
	Stroked // a ring with a stroke through it, as a diameter is written
	Crossed // a heavy saltire
)

// Rank says how important a label is: it is written before those of a lower rank.
type Rank uint8

// The ranks, the lowest first.
const (
	RankAside Rank = iota // written only where it hides nothing
	RankThing
	RankMark
	RankFoul // a thing that is foul
	RankDimension
	RankSelected
	RankCut
	RankFocus // a dimension that is picked out
	RankRun   // where the heater's gas goes and its air comes in: a picture that does not name that misleads, and it has the fewest places
)

// Told says how a role is told from the others without colour.
type Told uint8

// The ways to tell.
const (
	ByFill  Told = iota + 1 // no other role has its fill
	ByLine                  // no other role has its line
	BySign                  // no other role has its sign
	ByLabel                 // a name or a figure is always written at it
	ByShape                 // there is one of its shape in its place
)

// Roles are how many there are.
const Roles = int(Wish) + 1

var pens = [Roles]Pen{
	Floor:     {Front: 2, Told: ByShape},
	Steel:     {Fill: Hatched, Front: 3, Rank: RankThing, Sought: true, Carries: true, Told: ByFill, Means: "steel that carries"},
	Rail:      {Fill: Dense, Front: 3, Rank: RankThing, Before: 1, Sought: true, Carries: true, Told: ByFill, Means: "chassis rail"},
	Rib:       {Front: 3, Rank: RankAside, Quiet: true, Bent: true, Told: ByShape},
	Bumper:    {Fill: Filled, Front: 2, Stacked: true, Band: true, Told: ByLabel},
	Nose:      {Front: 2, Stacked: true, Told: ByLabel},
	Conflict:  {Front: 9, Sign: Crossed, Rank: RankDimension, Told: BySign, Means: "in the way of the cut"},
	Lines:     {Fill: Lined, Rim: true, Front: 3, Rank: RankThing, Sought: true, Told: ByFill, Means: "lines, wires, tanks"},
	Hot:       {Fill: Chequered, Front: 3, Rank: RankThing, Before: 1, Sought: true, Band: true, Told: ByFill, Means: "hot: van's exhaust"},
	Pressed:   {Line: DashDot, Front: 3, Rank: RankThing, Quiet: true, Bent: true, Told: ByLine, Means: "pressed in the sheet"},
	Movable:   {Fill: Speckled, Front: 3, Rank: RankAside, Told: ByFill, Means: "moves or comes off"},
	Fitting:   {Steady: true, Front: 2, Range: UnhiddenOrNear, Told: ByLabel},
	Opening:   {Weight: Heavy, Steady: true, Front: 4, Told: ByLine},
	Plate:     {Rim: true, Front: 4, Quiet: true, Range: Near, Yields: true, Told: ByShape},
	Body:      {Front: 4, Quiet: true, Range: Near, Yields: true, Told: ByShape},
	Space:     {Line: Dashed, Front: 4, Quiet: true, Range: Near, Yields: true, Told: ByShape},
	Cut:       {Rim: true, Front: 8, Sign: Target, Rank: RankCut, Told: BySign, Means: "the cut"},
	Hole:      {Rim: true, Front: 6, Sign: Stroked, Range: Near, Told: BySign, Means: "bolt or fuel hole"},
	CutCentre: {Front: 8, Sign: Plus, Told: BySign},
	Pilot:     {Front: 8, Sign: Saltire, Told: BySign},
	Exhaust:   {Fill: Filled, Rim: true, Steady: true, Front: 5, Rank: RankRun, Before: 3, Band: true, Unparted: true, EndNamed: true, Told: ByFill, Means: "heater's exhaust"},
	Intake:    {Line: Dashed, Rim: true, Steady: true, Front: 5, EndNamed: true, Told: ByLine, Means: "heater's air in"},
	Fuel:      {Line: Dotted, Rim: true, Steady: true, Front: 5, Told: ByLine, Means: "heater's fuel line"},
	Outlet:    {Front: 7, Sign: Disc, Rank: RankRun, Before: 3, RunsEnd: true, Told: BySign, Means: "exhaust's end"},
	Mouth:     {Front: 7, Sign: Ring, Rank: RankRun, Before: 2, RunsEnd: true, Told: BySign, Means: "air's way in"},
	Muffler:   {Fill: Filled, Rim: true, Steady: true, Front: 5, Unparted: true, Told: ByLabel},
	Tie:       {Front: 7, Sign: Lozenge, Told: BySign, Means: "matching point"},
	Dimension: {Rim: true, Front: 6, Sign: Dot, Rank: RankDimension, Ended: true, Told: ByLabel},
	Mark:      {Steady: true, Front: 7, Sign: Wedge, Rank: RankMark, Told: BySign},
	Wheel:     {Front: 2, Quiet: true, Range: Near, Told: ByShape},
	Wish:      {Line: Dashed, Front: 7, Told: ByShape},
}

// Pen returns how a role is drawn, as the table has it: it is only read. A picture asks several times for each of its cells, so it is no copy.
func (r Role) Pen() *Pen { return &pens[r] }

// LineOf returns how an item's line goes in a projection: what was not measured is dotted, what the floor hides dashed.
func (p *Projection) LineOf(it *Item) Line {
	switch {
	case it.Unsure:
		return Dotted
	case p.Hidden(it):
		return Dashed
	}
	return pens[it.Role].Line
}

// Weight returns how thick an item's line is: what is picked out is heavy, a pipe that can kill, and a muffler that is but a line.
func (it *Item) Weight() Weight {
	if it.Selected || it.Deadly || it.Role == Muffler && it.Primitive == Stroke {
		return Heavy
	}
	return pens[it.Role].Weight
}

// Rank returns how important an item's label is.
func (it *Item) Rank() Rank {
	rank := pens[it.Role].Rank
	switch {
	case it.Selected && rank == RankDimension:
		return RankFocus
	case it.Selected:
		return max(rank, RankSelected)
	case it.State == Foul && rank <= RankThing && !pens[it.Role].Steady:
		return RankFoul
	case it.Aside && it.State < Doubtful:
		return RankAside
	}
	return rank
}

// Before says which labels of a rank are written first: those with the highest. What is aside comes before nothing.
func (it *Item) Before() uint8 {
	if it.Aside {
		return 0
	}
	return pens[it.Role].Before
}

// Stressed tells whether an item's label is written to be seen first: a foul thing's, a figure, the cut's, what is picked out. A run is
// named before others, yet no louder than they are.
func (it *Item) Stressed() bool {
	rank := it.Rank()
	return it.Selected || rank >= RankFoul && rank < RankRun
}

// Warning returns the sign behind a label that says how the item stands without colour: "!" for foul, "?" for doubtful or
// not measured, else "".
func (it *Item) Warning() string {
	switch {
	case it.State == Foul:
		return "!"
	case it.State == Doubtful, it.Unsure:
		return "?"
	}
	return ""
}
