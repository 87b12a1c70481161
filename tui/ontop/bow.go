package ontop

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// bow are the values of the card for a bumper that is not straight: a row for each place across it, and a blank one.
type bow struct{}

// The keys of a row: where across, and how far forward the edge is there.
func bowKeys(row int) (y, offset string) {
	return fmt.Sprintf("y%d", row), fmt.Sprintf("offset%d", row)
}

// Fields are the rows, and one more behind those that texts are held for.
func (bow) Fields(s desk.State, held map[string]string) []form.Field {
	var out []form.Field
	for row := range bowRows(s.Job, held) + 1 {
		ky, ko := bowKeys(row)
		y := form.Field{Key: ky, Label: fmt.Sprintf("place %d", row+1), Unit: "mm", Blank: "no more"}
		offset := form.Field{Key: ko, Label: fmt.Sprintf("place %d, forward", row+1), Unit: "mm", Blank: "forward", Second: true}
		if row < len(s.Job.Bow) {
			p := s.Job.Bow[row]
			y.Text, offset.Text = survey.Exact(p.Y), survey.Exact(p.Offset)
			y.Note = "= " + desk.Across(p.Y, s.Settings)
			offset.Note = bowNote(p, s.Settings)
		}
		if row == 0 {
			y.Heading = "From the centreline (" + desk.Left(s.Settings) + " +), then forward"
		}
		out = append(out, y, offset)
	}
	return out
}

// bowRows is how many rows the job or texts held for the next ones fill.
func bowRows(j vehicles.Job, held map[string]string) int {
	for row := len(j.Bow); ; row++ {
		if ky, ko := bowKeys(row); held[ky]+held[ko] == "" {
			return row
		}
	}
}

func bowNote(p vehicles.BowPoint, set desk.Settings) string {
	way := " forward of the line"
	if p.Offset < 0 {
		way = " behind the line"
	}
	return "= " + desk.Length(math.Abs(p.Offset), set.Units) + way
}

// Set returns the job with these texts in the rows. A row is taken when it is whole; one that is wiped is taken out.
func (b bow) Set(s desk.State, texts map[string]string) (vehicles.Job, error) {
	var points []vehicles.BowPoint
	var faults form.Faults
	fields := b.Fields(s, texts)
	for i := 0; i < len(fields); i += 2 {
		p, there, fault := bowPoint(fields[i], fields[i+1], texts, points)
		switch {
		case fault != form.Fault{}:
			faults = append(faults, fault)
		case there:
			points = append(points, p)
		}
	}
	if len(faults) > 0 {
		return s.Job, faults
	}
	job := s.Job
	job.Bow = points
	_, err := form.Try(s, job)
	return job, err
}

// textOf is what a field says: the new text, or what the job has.
func textOf(f form.Field, texts map[string]string) string {
	if text, edited := texts[f.Key]; edited {
		return strings.TrimSpace(text)
	}
	return f.Text
}

// bowPoint reads a row behind others; there is false for a blank one. A fault is of the text that stands there.
func bowPoint(y, offset form.Field, texts map[string]string, others []vehicles.BowPoint) (p vehicles.BowPoint, there bool, fault form.Fault) {
	across, forward := textOf(y, texts), textOf(offset, texts)
	var err error
	if across != "" {
		p.Y, err = form.Length(across, vehicles.ALength)
	}
	switch {
	case across == "" && forward == "":
		return p, false, fault
	case across == "":
		return p, false, form.Fault{Key: offset.Key, Why: "where across is that? The two are taken together"}
	case err != nil:
		return p, false, form.Fault{Key: y.Key, Why: err.Error()}
	case slices.ContainsFunc(others, func(q vehicles.BowPoint) bool { return q.Y == p.Y }):
		return p, false, form.Fault{Key: y.Key, Why: "each place once: it has a row already"}
	case forward == "":
		return p, false, form.Fault{Key: y.Key, Why: "and how far forward? The two are taken together"}
	}
	if p.Offset, err = form.Length(forward, vehicles.ALength); err != nil {
		return p, false, form.Fault{Key: offset.Key, Why: err.Error()}
	}
	return p, true, fault
}

// costBow says what the bow does to readings.
func costBow(s desk.State) string {
	all := s.Job.Bow
	if len(all) == 0 {
		return "Nothing entered: it counts as straight. If it bows, readings from the " + s.Job.Datum.Called() + " are off by as much."
	}
	low, high := all[0].Offset, all[0].Offset
	for _, p := range all {
		low, high = min(low, p.Offset), max(high, p.Offset)
	}
	u := s.Settings.Units
	by := desk.Length(low, u)
	if high > low {
		by += " to " + desk.Length(high, u)
	}
	return "Every reading from the " + s.Job.Datum.Called() + ", below and above, is corrected by the bow where the tape ran: " + by + " longer."
}
