package canvas

import (
	"slices"
	"strings"
	"unicode/utf8"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
)

// leastBelow is how many rows a canvas has at least that has room for another below its ruler.
const leastBelow = 7

// hasBelow tells whether a canvas of h rows has a row that says what is out of view in place of a foot line: where it looks at a part of a plan.
func hasBelow(h int, seen *scene.Projection, camera desk.Camera) bool {
	return h >= leastBelow && h < scant && camera.Scale > 0 && seen.FacesFloor()
}

// beyondEdge is what lies out of view: on which side, and how far from that edge.
type beyondEdge struct {
	of    *part
	name  string
	arrow int
	mm    float64
}

// sayBelow says in the row below the ruler what one looks for and lies out of view, where the picture has few rows: in it, each would take the room of what is in
// the way of the cut. What the row has no room for is named in the picture.
func (p *painter) sayBelow() {
	row := p.Top + p.Rows + 1
	if !hasBelow(p.canvas.Height, &p.projection, p.look.Camera) {
		return
	}
	all := p.outOfSight()
	for ; len(all) > 0; all = all[:len(all)-1] {
		for brief := range briefest + 1 {
			text := p.line(all, brief)
			if utf8.RuneCountInString(text) > p.canvas.Width {
				continue
			}
			p.canvas.Put(0, row, text, strong)
			for _, b := range all {
				p.below = append(p.below, b.of)
			}
			return
		}
	}
}

// saidBelow tells whether that row says of a part how far out of view it is.
func (p *painter) saidBelow(it *part) bool { return slices.Contains(p.below, it) }

// outOfSight is what one looks for that lies out of view, what tells most of where one looks first.
func (p *painter) outOfSight() (all []beyondEdge) {
	for i := range p.parts {
		it := &p.parts[i]
		if it.Role != scene.Bumper || it.Label == "" {
			continue
		}
		name := clean(it.Label)
		if p.look.Datum != "" {
			name = rearEnd
		}
		if p.barOff > 0 {
			all = append(all, beyondEdge{it, name, toLeft, p.barOff})
		} else if e := p.edgeTo(&it.Area); e.out {
			all = append(all, beyondEdge{it, name, e.arrow, e.off})
		}
	}
	for _, it := range p.soughtBeyond() {
		e, name := p.edgeTo(&it.Area), clean(it.Label)
		if it.Role == scene.Rail {
			name = p.besideOf(e.arrow) + " " + aRail
		}
		all = append(all, beyondEdge{it, name, e.arrow, e.off})
	}
	return all
}

// briefest is the last of the ways to write the row: with the rails together, with no blank behind an arrow, with a single one between two things.
const briefest = 3

// line is the row for some things that lie out of view, in one of the ways to write it. Its unit stands once.
func (p *painter) line(all []beyondEdge, brief int) string {
	behind, between := " ", "  "
	if brief >= 2 {
		behind = ""
	}
	if brief >= briefest {
		between = " "
	}
	figure := func(b beyondEdge) string {
		if mm := coarse(b.mm, p.look.Units); mm > 0 {
			return words.Measure(scene.Measure{Value: mm, Unit: scene.MM, Bare: true}, p.look.Units)
		}
		return "0"
	}
	var said []string
	rails := slices.DeleteFunc(slices.Clone(all), func(b beyondEdge) bool { return b.of.Role != scene.Rail })
	for i, b := range all {
		switch arrow := string(arrows[b.arrow]); {
		case brief == 0 || b.of.Role != scene.Rail || len(rails) < 2:
			said = append(said, arrow+behind+b.name+" "+figure(b))
		case i > 0 && all[i-1].of.Role == scene.Rail:
			said[len(said)-1] += " " + arrow + behind + figure(b)
		default:
			said = append(said, aRail+"s "+arrow+behind+figure(b))
		}
	}
	return strings.Join(said, between) + " " + p.look.Units.Sign() + outOfView
}
