package moving

import (
	"errors"
	"fmt"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// Reader says what a field holds, and so how its text is read.
type Reader uint8

// What a field may hold.
const (
	AlongVan  Reader = iota // a reading from the datum line
	AcrossVan               // a reading from the centreline or a side edge
	Height                  // a drop or a rise: a length with or without a minus
	Distance                // a length that is not negative
	Size                    // a length of more than 0
	Count                   // a number of more than 0 that is no length
	Tilt                    // degrees up from level, as far round as a job file may say
	OneOf                   // one of the field's choices
)

// limits are those of the readers of lengths.
var limits = map[Reader]vehicles.Limits{Height: vehicles.ALength, Distance: vehicles.ADistance, Size: vehicles.ASize}

// Value is what a field comes to.
type Value struct {
	Text    string          // as it was typed; "" for nothing
	Reading survey.Reading  // of a reading
	Number  vehicles.Number // of what is no reading and no choice; not set for a blank
}

// Read reads a text; a blank reads as nothing.
func (r Reader) Read(text string, s desk.State) (v Value, err error) {
	v.Text = strings.TrimSpace(text)
	if v.Text == "" || r == OneOf {
		return v, nil
	}
	var n float64
	switch r {
	case AlongVan:
		v.Reading, err = onVan(text, survey.X, s)
		return v, err
	case AcrossVan:
		v.Reading, err = onVan(text, survey.Y, s)
		return v, err
	case Count:
		n, err = form.NumberIn(v.Text, vehicles.AMeasure)
	case Tilt:
		n, err = tilt(v.Text)
	default:
		n, err = form.Length(v.Text, limits[r])
	}
	if err == nil {
		v.Number = vehicles.Some(n)
	}
	return v, err
}

// onVan reads where a place is along an axis: there is nothing that it could run on from.
func onVan(text string, axis survey.Axis, s desk.State) (survey.Reading, error) {
	r, err := survey.Typed(text, axis)
	if err == nil && r.Start == survey.On {
		err = s.Job.Datum.NothingBefore()
	}
	return r, err
}

func tilt(text string) (float64, error) {
	deg, err := form.Number(strings.TrimSuffix(text, "°"))
	if err != nil {
		return 0, err
	}
	if err = vehicles.ATilt.Takes(deg); err != nil {
		err = fmt.Errorf("%w: "+vehicles.TiltMeans+" with its outlet up", err)
	}
	return deg, err
}

// errBlank is for a place of which a reading is missing.
var errBlank = errors.New("both readings are wanted: along the van, and across")

// PlaceAsks are the two fields of a place as the tape reads from below; note is what they come to, "" while they come to nothing.
func PlaceAsks(s desk.State, along, across, note string) []Ask {
	blank := "1219 or 4' 0\""
	if s.Job.Datum.Named() {
		blank = "1219; behind it -420"
	}
	how := note
	if how == "" {
		how = "L from the " + desk.Left(s.Settings) + " edge, R from the " + desk.Right(s.Settings) +
			", plain: from the centreline, " + desk.Left(s.Settings) + " is plus"
	}
	return []Ask{
		{Label: "from the " + desk.Datum(&s.Job.Datum, 16), Text: along, Reads: AlongVan, Unit: "mm", Blank: blank, Note: note},
		{Label: "across", Text: across, Reads: AcrossVan, Unit: "mm", Blank: "L 652, R 310, -240", Note: how},
	}
}

// Place is where the first two fields come to at a drop, mm, reduced as every reading from below is.
func (p Prompt) Place(s desk.State, drop float64) (geometry.Point, error) {
	if strings.TrimSpace(p.texts[0]) == "" || strings.TrimSpace(p.texts[1]) == "" {
		return geometry.Point{}, errBlank
	}
	x, errX := AlongVan.Read(p.texts[0], s)
	y, errY := AcrossVan.Read(p.texts[1], s)
	if err := errors.Join(errX, errY); err != nil {
		return geometry.Point{}, err
	}
	placed, err := features.Obstructions.Spot(s.Job, vehicles.Pair{x.Reading, y.Reading}, drop)
	return placed.Prism.Footprint.Middle, err
}

// Note says where the first two fields come to at a drop, "" while they come to nothing.
func (p Prompt) Note(s desk.State, drop float64) string {
	if len(p.texts) < 2 {
		return ""
	}
	at, err := p.Place(s, drop)
	if err != nil {
		return ""
	}
	return desk.AtX(at.X, s.Settings.Units) + ", " + desk.Across(at.Y, s.Settings)
}
