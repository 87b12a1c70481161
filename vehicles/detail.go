package vehicles

import "bench.example/undermark/geometry/survey"

// Detail is something that is said of a hanging thing beside its place: how the file, a prompt, a list and the sheet have it. It is a
// size, which must be said, a figure, which may be left out, or one of several words, which may, too.
type Detail struct {
	Key    string
	Size   *float64
	Figure *Number
	Word   *string
	Words  []string // what it may be
	takes  Limits   // of a number

	Label  string // of its field
	Unit   string // "mm", "°"; of a figure what is counted
	Wanted string // what is said where a size is left out
	Told   string // in the list, %s the value with its unit: "%s long"; of a word a sentence that "its" comes before
	Paper  string // on the sheet, %s the value: "%s across"; "" for nothing
}

// Text is what is said, exactly; "" for nothing.
func (d *Detail) Text() string {
	switch {
	case d.Size != nil:
		return survey.Exact(*d.Size)
	case d.Figure != nil:
		return d.Figure.Text()
	}
	return *d.Word
}

// Value is what is said, as a number or a word; nil for nothing.
func (d *Detail) Value() any {
	switch {
	case d.Size != nil:
		return *d.Size
	case d.Figure != nil && d.Figure.Set:
		return d.Figure.Value
	case d.Word != nil && *d.Word != "":
		return *d.Word
	}
	return nil
}

func (d *Detail) read(t *table) {
	switch {
	case d.Size != nil:
		*d.Size = t.number(d.Key, required, d.takes).Value
	case d.Figure != nil:
		*d.Figure = t.number(d.Key, optional, d.takes)
	default:
		*d.Word = t.choice(d.Key, optional, d.Words)
	}
}

// written is a detail as a value of the file, "" for nothing.
func (d *Detail) written() string {
	if d.Word != nil {
		return quoted(*d.Word)
	}
	return d.Text()
}
