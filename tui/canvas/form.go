package canvas

import (
	"strings"

	"bench.example/undermark/geometry/scene"
	"bench.example/undermark/tui/words"
)

// form is one way to write a name: in how many words, and what that costs beside what it hides. One that is last is written only where none before it has
// a place.
type form struct {
	label
	said said
	dear int
	last bool
}

// What a form of fewer words costs: without the unit of its figure, without how far off an end is, a rail's without which one it is, the cut's
// without that it is to scale, and without how large.
const (
	scaleWorth  = 60
	figureWorth = 400
	unitWorth   = 20
	endWorth    = 90
	railWorth   = 120
)

// forms are the ways to write an item's name, the best first.
func (p *painter) forms(n *naming) []form {
	it, text := n.it, p.worded(n)
	as := func(name string, said said, dear int, last bool) form {
		f := form{text, said, dear, last}
		f.name = name
		return f
	}
	out := p.exitOf(it)
	switch m := it.Measure; {
	case out != nil:
		return p.exitForms(it, out, as)
	case it.Role == scene.Cut:
		var forms []form
		for _, name := range p.cutNames(it.Item) {
			forms = append(forms, as(name.text, whole, name.dear, false))
		}
		return forms
	case ending(it):
		bare := strings.Replace(text.name, heaters, "", 1) // of two orders of names the one is better that has it whole
		return []form{as(text.name, whole, 0, false), as(bare, whole, mostHidden, true)}
	case it.Role == scene.Rail && n.must && !strings.EqualFold(text.name, aRail):
		return []form{as(text.name, whole, 0, false), as(aRail, whole, railWorth, false)}
	case m == nil || it.Label == "":
		return []form{as(text.name, whole, 0, false)}
	default:
		var forms []form
		dear := 0
		if m.Bare && m.Spare {
			forms, dear = append(forms, as(named(it.Item, words.Measure(withUnit(*m), p.look.Units)), whole, 0, false)), unitWorth
		}
		forms = append(forms, as(text.name, whole, dear, false))
		if n.must { // its figure stands in a list, too
			f := as(clean(it.Label), short, mostHidden, true)
			f.tail = it.Warning()
			forms = append(forms, f)
		}
		return forms
	}
}

// aRail is what a chassis rail is called where there is no room for its name.
const aRail = "rail"

// exitForms are those of a run that goes on beyond the picture: that its end is there, and where there is room how far.
func (p *painter) exitForms(it *part, out *exit, as func(string, said, int, bool) form) []form {
	path := it.Area.Path
	mm := coarse(path[len(path)-1].Sub(out.at).Norm(), p.look.Units)
	far := " " + words.Measure(scene.Measure{Value: mm, Unit: scene.MM}, p.look.Units)
	far += outOfView
	name, end, arrow := clean(it.Label), "", " "+string(arrows[out.arrow])
	if it.Role == scene.Exhaust {
		end = ", outlet"
	}
	bare := strings.Replace(name, heaters, "", 1)
	forms := []form{as(name+end+far+arrow, whole, 0, false)}
	if it.Role == scene.Exhaust {
		forms = append(forms, as(name+far+arrow, whole, endWorth/2, false))
	}
	return append(forms, as(name+end+arrow, whole, endWorth, false), as(name+arrow, whole, endWorth+unitWorth, false), as(bare+strings.TrimPrefix(end, ",")+arrow, whole, mostHidden, false))
}

// worded is an item's name as it is written where there is room enough.
func (p *painter) worded(n *naming) label {
	it := n.it
	text := label{name: p.text(it.Item), ink: inkOf(it.Item), over: n.must, guides: n.must && guides(it), urgent: n.rank >= scene.RankFoul, always: ending(it)}
	if text.names = it; it.Role == scene.Conflict {
		text.names = p.inWay(it)
	}
	if of := text.names; of != nil && of.Primitive == scene.Area && !p.thin(of) {
		text.of = of
	}
	if it.Role != scene.Conflict && it.Role != scene.Cut {
		text.tail = it.Warning()
	}
	if !n.must && !it.Selected {
		text.ink.Tone = Word
	}
	text.tailInk = Ink{Role: it.Role, State: it.State, Tone: text.ink.Tone, Selected: it.Selected}
	return text
}
