// Package things is how one thing of the survey is entered: an obstruction, an opening, a fitting or a tie. It knows
// which of the job's lists the thing is in, its fields, what each text makes of it, and what the readings come to.
package features

import "bench.example/undermark/vehicles"

// Thing is one thing of the survey, with the fields of all the lists. A field its list has no place for stays
// empty.
type Thing struct {
	Name, Kind string
	vehicles.Place
	Span     vehicles.Span // the drop, or a fitting's rise
	TapedAt  vehicles.Number
	Measured bool
	Total    vehicles.Totals // overall readings that chains are held against

	Below, Above vehicles.Pair // a tie's readings
	Use          bool          // a tie is in the fit
}

// List is one of the job's lists of things.
type List uint8

// The lists.
const (
	Obstructions List = iota
	Openings
	Fittings
	Ties
)

// table is what one list knows that the others don't.
type table struct {
	one   string   // what the file calls one of them
	kinds []string // nil: its things have no kind
	heads [3]string
	edits
}

// edits are how a list of a job is read and changed.
type edits struct {
	size func(vehicles.Job) int
	at   func(vehicles.Job, int) Thing
	with func(vehicles.Job, int, Thing) vehicles.Job
	put  func(vehicles.Job, int, Thing) vehicles.Job
	drop func(vehicles.Job, int) vehicles.Job
	move func(j vehicles.Job, from, to int) vehicles.Job
}

// editsOf are those of the list that get finds in a job and set puts there, whose items become things and things items. A
// pointer to a job would keep a copy of it on the heap at every question, and lists ask for each of their rows.
func editsOf[T any](
	get func(vehicles.Job) vehicles.List[T], set func(vehicles.Job, vehicles.List[T]) vehicles.Job,
	thing func(T) Thing, item func(Thing) T,
) edits {
	return edits{
		size: func(j vehicles.Job) int { return len(get(j)) },
		at:   func(j vehicles.Job, i int) Thing { return thing(get(j)[i]) },
		with: func(j vehicles.Job, i int, t Thing) vehicles.Job { return set(j, get(j).With(i, item(t))) },
		put:  func(j vehicles.Job, i int, t Thing) vehicles.Job { return set(j, get(j).Insert(i, item(t))) },
		drop: func(j vehicles.Job, i int) vehicles.Job { return set(j, get(j).Without(i)) },
		move: func(j vehicles.Job, from, to int) vehicles.Job { return set(j, get(j).Move(from, to)) },
	}
}

var tables = [...]table{
	Obstructions: {
		one: "obstruction", kinds: vehicles.Kinds, heads: [3]string{"Below the floor", "top", "bottom"},
		edits: editsOf(
			func(j vehicles.Job) vehicles.List[vehicles.Obstruction] { return j.Obstructions },
			func(j vehicles.Job, l vehicles.List[vehicles.Obstruction]) vehicles.Job { j.Obstructions = l; return j },
			ofObstruction, Thing.obstruction),
	},
	Openings: {
		one: "opening", kinds: vehicles.OpeningKinds,
		heads: [3]string{"Below the floor (above it: with a minus)", "top", "bottom"},
		edits: editsOf(
			func(j vehicles.Job) vehicles.List[vehicles.Opening] { return j.Openings },
			func(j vehicles.Job, l vehicles.List[vehicles.Opening]) vehicles.Job { j.Openings = l; return j },
			ofOpening, Thing.opening),
	},
	Fittings: {
		one: "fitting", heads: [3]string{"Above the finished floor", "foot", "top"},
		edits: editsOf(
			func(j vehicles.Job) vehicles.List[vehicles.Fitting] { return j.Fittings },
			func(j vehicles.Job, l vehicles.List[vehicles.Fitting]) vehicles.Job { j.Fittings = l; return j },
			ofFitting, Thing.fitting),
	},
	Ties: tieTable,
}

func (l List) table() *table { return &tables[l] }

// One is the word for one thing of the list: "obstruction".
func (l List) One() string { return l.table().one }

// Kinds are the kinds a thing of the list may be of; none for fittings.
func (l List) Kinds() []string { return l.table().kinds }

// Len is how many things of the list the job has. Unfinished ones are not among them.
func (l List) Len(j vehicles.Job) int { return l.table().size(j) }

// Confirmable says whether its things may be those of another van, not yet confirmed on this one.
func (l List) Confirmable() bool { return l == Obstructions || l == Openings }

// At is one of them.
func (l List) At(j vehicles.Job, i int) Thing { return l.table().at(j, i) }

func ofObstruction(o vehicles.Obstruction) Thing {
	return Thing{
		Name: o.Name, Kind: o.Kind, Place: o.Place, Span: o.Drop, TapedAt: o.TapedAt, Measured: o.Measured, Total: o.Total,
	}
}

func (t Thing) obstruction() vehicles.Obstruction {
	return vehicles.Obstruction{
		Name: t.Name, Kind: t.Kind, Place: t.Place, Drop: t.Span, TapedAt: t.TapedAt, Measured: t.Measured, Total: t.Total,
	}
}

func ofOpening(o vehicles.Opening) Thing {
	return Thing{Name: o.Name, Kind: o.Kind, Place: o.Place, Span: o.Drop, Measured: !o.Unconfirmed}
}

func (t Thing) opening() vehicles.Opening {
	return vehicles.Opening{Name: t.Name, Kind: t.Kind, Place: t.Place, Drop: t.Span, Unconfirmed: !t.Measured}
}

func ofFitting(f vehicles.Fitting) Thing {
	return Thing{Name: f.Name, Place: f.Place, Span: f.Rise, Measured: true, Total: f.Total}
}

func (t Thing) fitting() vehicles.Fitting {
	return vehicles.Fitting{Name: t.Name, Place: t.Place, Rise: t.Span, Total: t.Total}
}
