package sizing

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/form"
	"bench.example/undermark/vehicles"
)

// surface is the form of a surface of the body, or of the next one.
type surface struct{ row int }

// ID says which surface it is.
func (f surface) ID() string { return fmt.Sprintf("surface %d", f.row+1) }

// of is the surface; there is false for the next one.
func (f surface) of(j *vehicles.Job) (s vehicles.Surface, there bool) {
	if f.row < len(j.Surfaces) {
		return j.Surfaces[f.row], true
	}
	return vehicles.Surface{Lies: vehicles.WallSurface}, false
}

const slabsNote = "from the inside: plywood 4, wool 40 at 0.037, air gap R 0.18, steel 1"

// Fields are the surface's fields.
func (f surface) Fields(s desk.State, _ map[string]string) []form.Field {
	of, there := f.of(&s.Job)
	name := form.Field{Key: "name", Label: "surface", Text: of.Name, Blank: "like walls", Heading: "What the heat goes out through"}
	area := form.Field{Key: "area", Label: "its area", Unit: "m²", Blank: "needed"}
	if there {
		area.Text, name.Note = survey.Exact(of.Area), `a "-" takes it out`
	}
	lies := form.Field{Key: "lies", Label: "it is", Text: of.Lies, Choices: []form.Choice{
		{Letter: 'w', Name: vehicles.WallSurface}, {Letter: 'r', Name: vehicles.RoofSurface}, {Letter: 'f', Name: vehicles.FloorSurface},
	}}
	return []form.Field{name, area, lies, {Key: "layers", Label: "its layers", Text: slabsText(of.Layers), Blank: "bare", Note: slabsNote}}
}

// Set returns the job with these texts in the surface. It is taken when it has a name and an area.
func (f surface) Set(s desk.State, texts map[string]string) (vehicles.Job, form.Record, error) {
	job, of := s.Job, map[string]string{}
	for _, field := range f.Fields(s, nil) {
		of[field.Key] = field.Text
		if text, edited := texts[field.Key]; edited {
			of[field.Key] = strings.TrimSpace(text)
		}
	}
	_, there := f.of(&job)
	if of["name"] == "-" {
		job.Surfaces = job.Surfaces.Without(f.row)
		return job, f, nil
	}
	said, err := f.read(of, job.Surfaces)
	switch {
	case err != nil:
		return s.Job, f, err
	case there:
		job.Surfaces = job.Surfaces.With(f.row, said)
	case of["name"] == "":
		return s.Job, f, nil // nothing was begun
	default:
		job.Surfaces = job.Surfaces.Insert(len(job.Surfaces), said)
	}
	return job, f, nil
}

// read reads a surface beside others.
func (f surface) read(of map[string]string, others []vehicles.Surface) (s vehicles.Surface, err error) {
	s.Name, s.Lies = of["name"], of["lies"]
	var faults form.Faults
	fault := func(key string, err error) {
		if err != nil {
			faults = append(faults, form.Fault{Key: key, Why: err.Error()})
		}
	}
	_, there := f.of(&vehicles.Job{Surfaces: others})
	switch {
	case s.Name == "" && (there || of["area"] != "" || of["layers"] != ""):
		fault("name", errors.New(`needed, like walls; a "-" takes it out`))
	case slices.ContainsFunc(others, func(o vehicles.Surface) bool { return o.Name == s.Name && (!there || o.Name != others[f.row].Name) }):
		fault("name", errors.New("another one is called so"))
	}
	s.Area, err = form.NumberIn(of["area"], vehicles.AMeasure)
	switch {
	case of["area"] == "" && s.Name != "":
		fault("area", errors.New("needed: how large is it?"))
	case of["area"] != "" && err != nil:
		fault("area", err)
	}
	s.Layers, err = slabsOf(of["layers"])
	fault("layers", err)
	if len(faults) > 0 {
		return s, faults
	}
	return s, nil
}

// slabsText are layers as they are typed.
func slabsText(slabs []vehicles.Slab) string {
	texts := make([]string, len(slabs))
	for i, l := range slabs {
		texts[i] = l.Of
		if l.Thick.Set {
			texts[i] += " " + l.Thick.Text()
		}
		if l.Lambda.Set {
			texts[i] += " at " + l.Lambda.Text()
		}
		if l.R.Set {
			texts[i] += " R " + l.R.Text()
		}
	}
	return strings.Join(texts, ", ")
}

// slabsOf reads layers as they are typed: what each is of, mm, and behind "at" its conductivity, or behind R its resistance.
func slabsOf(text string) (slabs []vehicles.Slab, err error) {
	if text == "" {
		return nil, nil
	}
	for _, part := range strings.Split(text, ",") {
		l, err := slabOf(strings.Fields(part))
		if err != nil {
			return nil, err
		}
		slabs = append(slabs, l)
	}
	return slabs, nil
}

// slabOf reads the words of a layer, from their end.
func slabOf(words []string) (l vehicles.Slab, err error) {
	said := strings.Join(words, " ")
	for _, behind := range []struct {
		word string
		at   *vehicles.Number
	}{{"R", &l.R}, {"at", &l.Lambda}, {"", &l.Thick}} {
		n := len(words)
		if n < 2 || behind.word != "" && (n < 3 || words[n-2] != behind.word) {
			continue
		}
		v, err := form.Number(words[n-1])
		if err != nil && behind.word == "" {
			continue // no figure: part of what it is of
		}
		if err == nil {
			for _, figure := range l.Figures() {
				if figure.At == behind.at {
					err = figure.Takes(v)
				}
			}
		}
		if err != nil {
			return l, fmt.Errorf("%s: %w", form.Quoted(said), err)
		}
		*behind.at = vehicles.Some(v)
		words = words[:n-1]
		if behind.word != "" {
			words = words[:n-2]
		}
	}
	l.Of = strings.Join(words, " ")
	if l.Of == "" || !l.Whole() {
		return l, fmt.Errorf("%q: what is it of, and how many mm? Like plywood 4", form.Quoted(said))
	}
	return l, nil
}
