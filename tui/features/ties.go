package features

import (
	"errors"
	"fmt"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

var tieTable = table{
	one: "matching point",
	edits: editsOf(
		func(j vehicles.Job) vehicles.List[vehicles.Tie] { return j.Ties },
		func(j vehicles.Job, l vehicles.List[vehicles.Tie]) vehicles.Job { j.Ties = l; return j },
		ofTie, Feature.tie),
	begun: func(u *vehicles.Unfinished) *vehicles.List[vehicles.Begun] { return &u.Ties },
}

func ofTie(t vehicles.Tie) Feature {
	return Feature{Name: t.Name, Below: t.Below, Above: t.Above, Use: t.Use, Measured: true}
}

func (t Feature) tie() vehicles.Tie {
	return vehicles.Tie{Name: t.Name, Below: t.Below, Above: t.Above, Use: t.Use}
}

// The words for whether a tie is in the fit.
const (
	inFit   = "in the fit"
	leftOut = "left out, kept"
)

// tieReadings are the keys of a tie's readings, in the order of the work.
var tieReadings = [...]string{"bx", "by", "ax", "ay"}

func tieTexts(t Feature) texts {
	x := texts{"name": t.Name, "use": leftOut}
	if t.Use {
		x["use"] = inFit
	}
	for i, r := range t.readings() {
		x[tieReadings[i]] = r.Text
	}
	return x
}

// readings are a tie's readings in the order of their keys.
func (t *Feature) readings() [4]*survey.Reading {
	return [4]*survey.Reading{&t.Below[0], &t.Below[1], &t.Above[0], &t.Above[1]}
}

// tie makes a tie of the texts.
func (b *builder) tie(t *Feature) {
	t.Use, t.Measured = b.now["use"] != leftOut, true
	if t.Name == "" {
		b.missing = append(b.missing, "name")
	}
	was := b.old.readings()
	for i, r := range t.readings() {
		*r = b.reading(tieReadings[i], *was[i])
	}
}

// tie are the fields of a tie.
func (m *maker) tie() {
	m.add("name", "", needed)
	m.head = m.fromDatum("From the ", thenAcross)
	m.add("bx", "mm", needed)
	m.add("by", "mm", needed).Second = true
	m.add("ax", "mm", needed)
	m.add("ay", "mm", needed).Second = true
	use := m.add("use", "", "")
	use.Choices, use.Pass = form.YesNo(inFit, leftOut), true
	if use.Text == "" {
		use.Text = inFit
	}
}

// ofTie notes what a tie's readings come to, each pair as soon as it is whole.
func (n noter) ofTie(h Record, s desk.State) noter {
	if h.Real(s.Job) {
		tie, is := s.Job.Ties[h.Row], s.Plan.Ties[h.Row]
		n.point("bx", "by", tie.Below, is.Below, is.U[:2], Obstructions)
		n.point("ax", "ay", tie.Above, is.Above, is.U[2:], Fittings)
		return n
	}
	x := h.texts(s.Job)
	at, ok := readPair(x["bx"], x["by"])
	if ok {
		n.spot("bx", "by", at, Obstructions)
	}
	if at, ok = readPair(x["ax"], x["ay"]); ok {
		n.spot("ax", "ay", at, Fittings)
	}
	return n
}

// spot says what the two readings of a point on the floor come to, taken as those of a list are.
func (n *noter) spot(kx, ky string, at vehicles.Pair, l List) {
	if placed, err := l.Spot(n.s.Job, at, 0); err == nil {
		n.point(kx, ky, at, placed.Prism.Footprint.Middle, []float64{placed.X.U, placed.Y.U}, l)
	}
}

// point says what two readings of one come to that lies there on the floor, with the standard uncertainties of x and y.
func (n *noter) point(kx, ky string, read vehicles.Pair, at geometry.Point, u []float64, l List) {
	n.list = l
	n.x(kx, at.X, u[0], read[0])
	n.y(ky, at.Y, u[1], read[1])
}

func readPair(x, y string) (p vehicles.Pair, ok bool) {
	var errX, errY error
	p[0], errX = survey.Typed(x, survey.X)
	p[1], errY = survey.Typed(y, survey.Y)
	return p, errX == nil && errY == nil
}

// tryAt is form.Try; a fault of the thing at row is one of its field, by the field's key.
func (l List) tryAt(s desk.State, after vehicles.Job, row int) error {
	_, err := form.Try(s, after)
	var fault form.Fault
	if !errors.As(err, &fault) {
		return err
	}
	own := fmt.Sprintf("%s[%d].", lists[l], row)
	key, mine := strings.CutPrefix(fault.Key, own)
	if !mine {
		return form.Fault{Why: fault.Why}
	}
	return form.Fault{Key: FieldOf(key), Why: fault.There} // the field says where it is
}
