package match

import (
	"fmt"
	"math"

	"bench.example/undermark/geometry"
	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/drawing"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/entryscreen"
	"bench.example/undermark/tui/words"
)

// report is what the points come to, under the plan: what must be done first, then how well they fit.
func report(e entryscreen.Entry, s desk.State, w, h int) []string {
	p := page{s: s, fit: matched(s), w: w}
	name, isTie := picked(e, s)
	switch {
	case p.fit.swapped:
		p.swapped()
	case p.fit.onePlace:
		p.add(p.look().Fault, "The points in the fit are all at one place: measure one more, well apart from it.")
	case !p.fit.Tied():
		p.tooFew()
	default:
		p.wrong()
		p.agree()
		p.apart()
		p.motion()
		if isTie {
			p.one(name)
		}
		p.others(name)
	}
	return p.rows
}

// page is a report in the making.
type page struct {
	s    desk.State
	fit  fit
	w    int
	rows []string
}

func (p *page) look() desk.Styles { return p.s.Settings.Styles() }

func (p *page) add(style desk.Style, text string) {
	p.rows = append(p.rows, desk.Wrapped(style, text, p.w)...)
}

func (p *page) mm(v float64) string { return desk.Length(v, p.s.Settings.Units) }

func (p *page) swapped() {
	p.add(p.look().Fault, fmt.Sprintf("Left and right are swapped on one side: as they are the points miss each other by %s, "+
		"in a mirror by %s.", p.mm(p.fit.RMS), p.mm(survey.MirroredRMS(p.fit.plan.Ties))))
	p.add(p.look().Strong, "On which side? s: "+swapBelow+". t: "+swapAbove+".")
	p.add(p.look().Plain, "Nothing can be judged before that. Look at the van: what else was read there with the sides swapped is wrong too.")
}

func (p *page) tooFew() {
	text := "One point alone ties nothing: enter another, well apart from it."
	if p.fit.N == 0 {
		text = "No point is in the fit."
	}
	p.add(p.look().Strong, text)
	p.add(p.look().Plain, fmt.Sprintf("Until two are in, the two sides may differ by ± %s at the cut (On top, how well it is measured).",
		p.mm(p.s.Job.Frames())))
}

// wrong names the point that seems wrong, and what to do about it.
func (p *page) wrong() {
	if i := p.fit.oneSided; i >= 0 {
		p.add(p.look().Fault, p.s.Job.Ties[i].Name+": left and right seem swapped, below or above. With that changed over all points agree. "+
			"s: swap its side below. t: its side above.")
		return
	}
	name := p.fit.Suspect
	if name == "" {
		return
	}
	for _, without := range survey.LeaveOneOut(p.fit.plan.Ties) {
		if without.Name == name {
			p.add(p.look().Fault, fmt.Sprintf("%s seems wrong: the others say it is %s off, and without it they agree to %s. "+
				"Measure it again on both sides, or o: leave it out of the fit.", name, p.mm(without.Off.Norm()), p.mm(without.RMS)))
		}
	}
}

// agree says how well the points fit, and whether their tapes explain it.
func (p *page) agree() {
	text := fmt.Sprintf("left over %s in all (arrows x%s)", p.mm(p.fit.RMS), survey.FigureTo(drawing.Times(p.fit.Fit), 0))
	for _, f := range p.s.Result.Findings {
		if f.Subject.Sort != rules.TheTies {
			continue
		}
		say := ": the points agree as well as their tapes can tell, "
		if f.Verdict != rules.Clear {
			say = ": the " + rules.PointsDiffer + ", nothing that crosses the floor is clear; "
		}
		p.add(p.look().Verdict(f.Verdict), desk.VerdictWord(f.Verdict)+say+text+".")
		return
	}
	p.add(p.look().Plain, text+".")
}

// mostPairs is how many pairs are named: one wrong point is in several.
const mostPairs = 2

// apart says which two points are not as far apart below as above.
func (p *page) apart() {
	for i, pair := range rules.TiesApart(p.fit.plan) {
		if i == mostPairs {
			break
		}
		more := "more"
		if pair.Difference < 0 {
			more = "less"
		}
		p.add(p.look().Doubtful, fmt.Sprintf("%s and %s are %s apart below, %s above: %s %s.", pair.A, pair.B,
			p.mm(pair.Below), p.mm(pair.Above), p.mm(math.Abs(pair.Difference)), more))
	}
}

// motion says how the top lies against the underneath.
func (p *page) motion() {
	p.add(p.look().Plain, "The top is "+turned(p.fit.Theta)+" and "+p.shifted(p.fit.Shift)+" against the underneath, at the "+p.s.Job.Datum.Line()+".")
	if p.s.Job.Cut == nil {
		return
	}
	at := p.fit.plan.Cut.At
	u := max(p.fit.U(geometry.Point{X: 1}, at), p.fit.U(geometry.Point{Y: 1}, at))
	p.add(p.look().Plain, "At the cut it is "+p.shifted(p.fit.Up(at).Sub(at))+", "+desk.Within95(u, p.s.Settings.Units)+".")
}

// turned says a turn in words.
func turned(deg float64) string {
	text := survey.Fixed(math.Abs(deg), 2) // a tenth of a degree is 5 mm at 3 m, and would hide what ties are for
	switch {
	case text == "0.00":
		return "not turned"
	case deg > 0:
		return "turned " + text + survey.Degree + " anticlockwise (seen from above)"
	}
	return "turned " + text + survey.Degree + " clockwise (seen from above)"
}

// shifted says a shift in words.
func (p *page) shifted(by geometry.Point) string {
	if way := words.Way(by, p.s.Settings); way != "" {
		return "shifted " + way
	}
	return "not shifted"
}

// one says what is left over of the point the keys act on.
func (p *page) one(name string) {
	off, known := p.fit.left(name)
	if !known {
		return
	}
	text := name + ", left over " + p.mm(off.Norm())
	if way := words.Way(off, p.s.Settings); way != "" {
		text += ": above it lies " + way + " of the fit"
	}
	p.add(p.look().Strong, text+".")
	switch {
	case p.isOut(name):
		p.add(p.look().Plain, "It is left out; its readings are kept. o puts it back.")
	case p.fit.N == 2:
		p.add(p.look().Plain, "Two points check only how far they are apart. A third checks both.")
	}
}

func (p *page) isOut(name string) bool {
	for _, r := range p.fit.LeftOut {
		if r.Name == name {
			return true
		}
	}
	return false
}

// others says what each point would say if it were left out, the one the keys act on first.
func (p *page) others(first string) {
	all := survey.LeaveOneOut(p.fit.plan.Ties)
	if len(all) == 0 {
		return
	}
	p.add(p.look().Title, "If one were left out, the others would say")
	for _, mine := range []bool{true, false} {
		for _, o := range all {
			if (o.Name == first) == mine {
				p.add(p.look().Plain, fmt.Sprintf("%s: %s off; they agree to %s", o.Name, p.mm(o.Off.Norm()), p.mm(o.RMS)))
			}
		}
	}
}
