package place

import (
	"errors"
	"math"
	"strings"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/features"
	"bench.example/undermark/vehicles"
)

// texts are what stands in the fields of a prompt when it opens.
func (m screen) texts(kind asked, s desk.State) []string {
	switch kind {
	case drilled:
		if d := s.Job.Cut.Drilled; d != nil {
			return []string{d[0].Text, d[1].Text}
		}
	case collar:
		depth := vehicles.Number{}
		if s.Job.Heater != nil {
			depth = s.Job.Heater.Turret
		}
		return []string{depth.Text(), survey.Exact(s.Job.Cut.Across), s.Job.Cut.Relieved.Text()}
	case pipe:
		run := m.run(s)
		return []string{survey.Exact(run.Across), run.Bend.Text()}
	case pointAt:
		return []string{"", "", survey.Exact(m.run(s).Path[m.point].Drop)}
	}
	return []string{"", ""}
}

// blank is what an empty field says.
func (m screen) blank(i int, s desk.State) string {
	if m.prompt.kind == cutAt || m.prompt.kind == pointAt {
		if i == 1 {
			return "L 652, R 310, -240"
		}
		if s.Job.Datum.Named() {
			return "1219; behind it -420"
		}
		return "1219 or 4' 0\""
	}
	if m.prompt.kind == collar && i == cutBack {
		return "not said"
	}
	return desk.NotMeasured
}

// note says what the fields come to, or how to write one.
func (m screen) note(i int, s desk.State) string {
	isPlace := m.prompt.kind == cutAt || m.prompt.kind == pointAt || m.prompt.kind == drilled
	if !isPlace {
		return ""
	}
	if at, err := m.place(s); err == nil {
		return desk.AtX(at.X, s.Settings.Units) + ", " + desk.Across(at.Y, s.Settings)
	}
	if i == 1 {
		return "L from the " + desk.Left(s.Settings) + " edge, R from the " + desk.Right(s.Settings) +
			", plain: from the centreline, " + desk.Left(s.Settings) + " is plus"
	}
	return ""
}

// errBlank is for a place of which a reading is missing.
var errBlank = errors.New("both readings are wanted: along the van, and across")

// read reads the text of a field. Blank reads as nothing.
func (m screen) read(i int, text string, s desk.State) (survey.Reading, error) {
	if strings.TrimSpace(text) == "" {
		return survey.Reading{}, nil
	}
	r, err := survey.Typed(text, m.axis(i))
	if err == nil && r.Start == survey.On {
		err = errors.New("nothing stands before it to run on from: measure from the " + s.Job.Datum.Called() + ", the centreline or a side edge")
	}
	if size := m.prompt.kind == collar || m.prompt.kind == pipe; err == nil && r.Length <= 0 && size {
		err = errors.New("must be more than 0")
	}
	return r, err
}

// place is where the two readings of a prompt come to, reduced as every reading from below is.
func (m screen) place(s desk.State) (geometry.Point, error) {
	t := m.prompt.texts
	if strings.TrimSpace(t[0]) == "" || strings.TrimSpace(t[1]) == "" {
		return geometry.Point{}, errBlank
	}
	x, errX := m.read(0, t[0], s)
	y, errY := m.read(1, t[1], s)
	if err := errors.Join(errX, errY); err != nil {
		return geometry.Point{}, err
	}
	drop := 0.
	if m.prompt.kind == pointAt {
		d, err := m.read(2, t[2], s)
		if err != nil {
			return geometry.Point{}, err
		}
		drop = d.Length
	}
	placed, err := features.Obstructions.Spot(s.Job, vehicles.Pair{x, y}, drop)
	return placed.Prism.Footprint.Middle, err
}

// taken is the change that a prompt comes to.
func (m screen) taken(s desk.State) (desk.Change, error) {
	switch m.prompt.kind {
	case drilled:
		return m.takeDrilled(s)
	case collar:
		return m.takeCollar(s)
	case pipe:
		return m.takePipe(s)
	}
	at, err := m.place(s)
	if err != nil {
		return desk.Change{}, err
	}
	at = geometry.Point{X: hundredth(at.X), Y: hundredth(at.Y)}
	if m.prompt.kind == cutAt {
		return moveCut(s.Job, at, ""), nil
	}
	drop, _ := m.read(2, m.prompt.texts[2], s)
	return m.setPoint(s, vehicles.RunPoint{X: at.X, Y: at.Y, Drop: drop.Length}, ""), nil
}

// hundredth rounds a place to 0.01 mm: finer than any tape, and short in the file.
func hundredth(v float64) float64 { return math.Round(v*100) / 100 }

func (m screen) takeDrilled(s desk.State) (desk.Change, error) {
	if strings.TrimSpace(strings.Join(m.prompt.texts, "")) == "" {
		job := s.Job.WithDrilled(nil)
		say := "The pilot counts as not drilled."
		if len(s.Job.Cut.Direct) > 0 {
			say += " The tapes straight from it are gone with it: " + desk.KeyUndo.Help().Key + " brings all back."
		}
		return desk.Change{Job: &job, Say: say}, nil
	}
	if _, err := m.place(s); err != nil {
		return desk.Change{}, err
	}
	x, _ := m.read(0, m.prompt.texts[0], s)
	y, _ := m.read(1, m.prompt.texts[1], s)
	job := s.Job.WithDrilled(&vehicles.Pair{x, y})
	return desk.Change{Job: &job, Say: "From now on every check is for where the hole is."}, nil
}

func (m screen) takeCollar(s desk.State) (desk.Change, error) {
	if s.Job.Heater == nil {
		return desk.Change{}, errors.New("no heater is chosen yet: choose one on the Job screen")
	}
	cut, heater := *s.Job.Cut, *s.Job.Heater
	n, err := m.numbers(s)
	if err != nil {
		return desk.Change{}, err
	}
	if !n[1].Set {
		return desk.Change{}, errors.New("the hole's width is wanted")
	}
	if n[cutBack].Set && n[cutBack].Value < n[1].Value {
		return desk.Change{}, errors.New("wood is cut back to at least the hole's width")
	}
	heater.Turret, cut.Across, cut.Relieved = n[0], n[1].Value, n[cutBack]
	heater.Given |= vehicles.HasTurret
	job := s.Job.WithCut(cut).WithHeater(heater)
	return desk.Change{Job: &job}, nil
}

func (m screen) takePipe(s desk.State) (desk.Change, error) {
	run := *m.run(s)
	n, err := m.numbers(s)
	if err != nil {
		return desk.Change{}, err
	}
	if !n[0].Set {
		return desk.Change{}, errors.New("the pipe's width is wanted")
	}
	run.Across, run.Bend = n[0].Value, n[1]
	job := withRun(s.Job, m.moving, run)
	return desk.Change{Job: &job}, nil
}

// numbers are those of a prompt of lengths, blank ones not set.
func (m screen) numbers(s desk.State) ([]vehicles.Number, error) {
	n := make([]vehicles.Number, len(m.prompt.texts))
	for i, text := range m.prompt.texts {
		r, err := m.read(i, text, s)
		if err != nil {
			return nil, err
		}
		n[i] = vehicles.Number{Value: r.Length, Set: r.Text != ""}
	}
	return n, nil
}
