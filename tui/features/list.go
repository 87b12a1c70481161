// Package features is how one feature of the survey is entered: an obstruction, an opening, a fitting or a tie. It knows
// which of the job's lists the feature is in, its fields, what each text makes of it, and what the readings come to.
package features

import "bench.example/undermark/vehicles"

// Feature is one feature of the survey, with the fields of all the lists. A field its list has no place for stays
// empty.
type Feature struct {
	Name, Kind string
	vehicles.Place
	Span     vehicles.Span // the drop, or a fitting's rise
	TapedAt  vehicles.Number
	Measured bool
	Holds    string          // what is in a fuel tank or line
	Travel   vehicles.Number // how far it moves up and down
	Total    vehicles.Totals // overall readings that chains are held against

	Below, Above vehicles.Pair // a tie's readings
	Use          bool          // a tie is in the fit
}

// List is one of the job's lists of features.
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
	begun func(*vehicles.Unfinished) *vehicles.List[vehicles.Begun]
	edits
}

// edits are how a list of a job is read and changed.
type edits struct {
	size func(vehicles.Job) int
	at   func(vehicles.Job, int) Feature
	with func(vehicles.Job, int, Feature) vehicles.Job
	put  func(vehicles.Job, int, Feature) vehicles.Job
	drop func(vehicles.Job, int) vehicles.Job
	move func(j vehicles.Job, from, to int) vehicles.Job
}

// editsOf are those of the list that get finds in a job and set puts there, whose items become things and things items. A
// pointer to a job would keep a copy of it on the heap at every question, and lists ask for each of their rows.
func editsOf[T any](
	get func(vehicles.Job) vehicles.List[T], set func(vehicles.Job, vehicles.List[T]) vehicles.Job,
	feature func(T) Feature, item func(Feature) T,
) edits {
	return edits{
		size: func(j vehicles.Job) int { return len(get(j)) },
		at:   func(j vehicles.Job, i int) Feature { return feature(get(j)[i]) },
		with: func(j vehicles.Job, i int, t Feature) vehicles.Job { return set(j, get(j).With(i, item(t))) },
		put:  func(j vehicles.Job, i int, t Feature) vehicles.Job { return set(j, get(j).Insert(i, item(t))) },
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
			ofObstruction, Feature.obstruction),
		begun: func(u *vehicles.Unfinished) *vehicles.List[vehicles.Begun] { return &u.Obstructions },
	},
	Openings: {
		one: "opening", kinds: vehicles.OpeningKinds,
		heads: [3]string{"Below the floor (above it: with a minus)", "top", "bottom"},
		edits: editsOf(
			func(j vehicles.Job) vehicles.List[vehicles.Opening] { return j.Openings },
			func(j vehicles.Job, l vehicles.List[vehicles.Opening]) vehicles.Job { j.Openings = l; return j },
			ofOpening, Feature.opening),
		begun: func(u *vehicles.Unfinished) *vehicles.List[vehicles.Begun] { return &u.Openings },
	},
	Fittings: {
		one: "fitting", kinds: vehicles.Kinds, heads: [3]string{"Above the finished floor (inside: minus)", "foot", "top"},
		edits: editsOf(
			func(j vehicles.Job) vehicles.List[vehicles.Fitting] { return j.Fittings },
			func(j vehicles.Job, l vehicles.List[vehicles.Fitting]) vehicles.Job { j.Fittings = l; return j },
			ofFitting, Feature.fitting),
		begun: func(u *vehicles.Unfinished) *vehicles.List[vehicles.Begun] { return &u.Fittings },
	},
	Ties: tieTable,
}

func (l List) table() *table { return &tables[l] }

// One is the word for one thing of the list: "obstruction".
func (l List) One() string { return l.table().one }

// Kinds are the kinds a thing of the list may be of; none for ties.
func (l List) Kinds() []string { return l.table().kinds }

// ofKind says whether each of its things is of a kind: of fittings only what runs inside the floor is.
func (l List) ofKind() bool { return l.Kinds() != nil && l != Fittings }

// Len is how many things of the list the job has. Unfinished ones are not among them.
func (l List) Len(j vehicles.Job) int { return l.table().size(j) }

// Confirmable says whether its things may be those of another van, not yet confirmed on this one.
func (l List) Confirmable() bool { return l != Ties }

// At is one of them.
func (l List) At(j vehicles.Job, i int) Feature { return l.table().at(j, i) }

func ofObstruction(o vehicles.Obstruction) Feature {
	return Feature{
		Name: o.Name, Kind: o.Kind, Place: o.Place, Span: o.Drop, TapedAt: o.TapedAt, Measured: o.Measured, Holds: o.Holds,
		Travel: o.Travel, Total: o.Total,
	}
}

func (t Feature) obstruction() vehicles.Obstruction {
	return vehicles.Obstruction{
		Name: t.Name, Kind: t.Kind, Place: t.Place, Drop: t.Span, TapedAt: t.TapedAt, Measured: t.Measured, Holds: t.Holds,
		Travel: t.Travel, Total: t.Total,
	}
}

func ofOpening(o vehicles.Opening) Feature {
	return Feature{Name: o.Name, Kind: o.Kind, Place: o.Place, Span: o.Drop, Measured: !o.Unconfirmed}
}

func (t Feature) opening() vehicles.Opening {
	return vehicles.Opening{Name: t.Name, Kind: t.Kind, Place: t.Place, Drop: t.Span, Unconfirmed: !t.Measured}
}

func ofFitting(f vehicles.Fitting) Feature {
	return Feature{Name: f.Name, Kind: f.Kind, Place: f.Place, Span: f.Rise, Measured: !f.Unconfirmed, Total: f.Total}
}

func (t Feature) fitting() vehicles.Fitting {
	return vehicles.Fitting{Name: t.Name, Kind: t.Kind, Place: t.Place, Rise: t.Span, Total: t.Total, Unconfirmed: !t.Measured}
}
