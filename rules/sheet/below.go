package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/vehicles"
)

// below is the van from below with all that was entered there, as the tape said it.
func (s *source) below() Section {
	const worst = 3
	shown := drawing.Worst(s.Findings, func(f *rules.Finding) bool { return f.Rule.AtCut }, worst)
	whole := numbered(drawing.Draw(*s.Result, drawing.Options{View: scene.Below, Selected: -1, Shown: shown}))
	section := Section{Heading: "Underneath: what is there, and what the tape said", Fresh: true}
	section.Parts = append(section.Parts, Beside{s.picture("The van from below; numbers are those of the list", whole, floorHigh), Parts{Legend{whole}, s.hands(scene.Below)}, legendWide})
	if t := s.obstructions(); len(t.Rows) > 0 {
		section.Parts = append(section.Parts, t)
	}
	others := Parts{}
	for _, t := range []Table{s.openings(), s.fittings()} {
		if len(t.Rows) > 0 {
			others = append(others, t)
		}
	}
	if s.Job.Cut == nil {
		section.Parts = append(section.Parts, others...)
		return section
	}
	near := numbered(drawing.Draw(*s.Result, drawing.Options{View: scene.Below, Selected: -1, Shown: shown}))
	for i := range near.Items {
		if it := &near.Items[i]; it.Role == scene.Hole {
			it.Label = codes.Replace(it.Label)
		}
	}
	section.Parts = append(section.Parts, Beside{Left: others, Right: s.near(s.nearTitle("Near the cut, from below", false), near)})
	return section
}

// numbered gives what is under the floor its number in the list for a name.
func numbered(s scene.Scene) scene.Scene {
	for i := range s.Items {
		if it := &s.Items[i]; it.OfObstruction() {
			it.Label, it.Code, it.Aside = strconv.Itoa(it.Ref+1), "", false
		}
	}
	return s
}

// The columns of what was surveyed.
func surveyed(what, height string) []Col {
	return []Col{{Head: "", Figure: true}, {Head: what}, {Head: "kind"}, {Head: "along, x"}, {Head: "across, y"}, {Head: height}, {Head: ""}}
}

func (s *source) obstructions() Table {
	t := Table{Size: small, Cols: surveyed("under the floor", "below the floor")}
	for i, o := range s.Job.Obstructions {
		x, y, more := place(&o.Place)
		remarks := []string{more, o.Holds}
		if o.TapedAt.Set {
			remarks = append(remarks, "x taped at "+o.TapedAt.Text())
		}
		if o.Travel.Set {
			remarks = append(remarks, "moves ± "+o.Travel.Text())
		}
		if !o.Measured {
			remarks = append(remarks, notHere)
		}
		t.Rows = append(t.Rows, Row{Cells: []string{strconv.Itoa(i + 1), o.Name, o.Kind, x, y, span(o.Drop), survey.Joined(", ", remarks...)}})
	}
	return t
}

func (s *source) openings() Table {
	t := Table{Size: small, Close: true, Cols: surveyed("opening", "below the floor")}
	for _, o := range s.Job.Openings {
		x, y, more := place(&o.Place)
		t.Rows = append(t.Rows, Row{Cells: []string{"", o.Name, o.Kind, x, y, span(o.Drop), survey.Joined(", ", more, unconfirmed(o.Unconfirmed))}})
	}
	return t
}

func (s *source) fittings() Table {
	t := Table{Size: small, Close: true, Cols: surveyed("on the floor", "above the floor")}
	for _, o := range s.Job.Fittings {
		x, y, more := place(&o.Place)
		t.Rows = append(t.Rows, Row{Cells: []string{"", o.Name, o.Kind, x, y, span(o.Rise), survey.Joined(", ", more, unconfirmed(o.Unconfirmed))}})
	}
	return t
}

// ties are the points seen from both sides.
func (s *source) ties() Table {
	t := Table{Size: small, Cols: []Col{{Head: "", Figure: true}, {Head: "matching point"}, {Head: "below:\u00a0x"}, {Head: "y"}, {Head: "above:\u00a0x"}, {Head: "y"}, {Head: ""}}}
	for _, tie := range s.Job.Ties {
		use := ""
		if !tie.Use {
			use = "left out"
		}
		t.Rows = append(t.Rows, Row{Cells: []string{"", tie.Name, tie.Below[0].Text, tie.Below[1].Text, tie.Above[0].Text, tie.Above[1].Text, use}})
	}
	return t
}

// notHere is said of what was taken over from elsewhere.
const notHere = "not measured here"

func unconfirmed(is bool) string {
	if is {
		return notHere
	}
	return ""
}

// place is where a thing is, as the tape said it: along the van, across it, and what else says its form.
func place(p *vehicles.Place) (x, y, more string) {
	switch p.Shape {
	case vehicles.Piped:
		var xs, ys []string
		for _, at := range p.Path {
			xs, ys = append(xs, at[0].Text), append(ys, at[1].Text)
		}
		x, y, more = strings.Join(xs, "; "), strings.Join(ys, "; "), "a line"
	case vehicles.Disc:
		x, y, more = p.Centre[0].Text, p.Centre[1].Text, "round"
	default:
		x, y = p.X[0].Text+" to "+p.X[1].Text, p.Y[0].Text+" to "+p.Y[1].Text
		if p.Turn != 0 {
			more = "turned " + survey.InDegrees(p.Turn)
		}
	}
	if p.Across.Set {
		more = survey.Joined(", ", more, p.Across.Text()+" across")
	}
	return x, y, more
}

func span(s vehicles.Span) string {
	if !s.Set {
		return vehicles.NotMeasured
	}
	return fmt.Sprintf("%s to %s", survey.Exact(s.From), survey.Exact(s.To))
}
