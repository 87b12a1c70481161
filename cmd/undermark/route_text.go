package main

import (
	"strconv"
	"strings"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// What a run that was found is: by itself, or of a pair, which need not be short.
const (
	byItself = "the shortest %s there that"
	ofAPair  = "the %s of the pair that keeps most, which"
)

// routeText writes a run for a person; what is what it is.
func routeText(p *paper, r *rules.Result, kind vehicles.RunKind, what string, found *rules.Route) {
	if found.Run == nil {
		p.line("%s: %s.", r.Job.Ref, words.NoWay(kind))
		return
	}
	switch {
	case found.Here:
		p.line("%s: the %s as it is: no pair was found that keeps more. All in mm.", r.Job.Ref, kind)
		if found.Verdict == rules.Doubtful {
			p.line("Doubtful of it:")
		}
	case !found.Found():
		p.line("%s: no %s there keeps every rule. The nearest miss, all in mm, breaks:", r.Job.Ref, kind)
	case found.Verdict == rules.Clear:
		p.line("%s: "+what+" keeps every rule. All in mm.", r.Job.Ref, kind)
	default:
		p.line("%s: "+what+" breaks no rule. All in mm. Doubtful of it:", r.Job.Ref, kind)
	}
	if found.Stub != "" {
		p.line("%s", words.Sentence(words.StubBlocked(kind, found.Stub)))
	}
	for _, f := range found.Missed() {
		p.item(f.About() + ": " + f.Why)
	}
	p.blank()
	path := grid{head: []string{"point", "x", "y", "below floor"}, first: 1, last: 4}
	for i, at := range found.Run.Path {
		path.rows = append(path.rows, []string{strconv.Itoa(i + 1), survey.Figure(at.X), survey.Figure(at.Y), survey.Figure(at.Drop)})
	}
	p.grid(path)
	p.blank()
	measures := "length " + survey.Figure(found.Length) + ", bends " + survey.InDegrees(found.Bends)
	if found.Found() { // a miss has no margin: by how much it falls short of each rule stands above
		measures += ", " + marginOf(found)
	}
	p.line("%s", measures)
	for _, thing := range found.Run.Hanging.OnLegs().Things() {
		p.line("%s on leg %d, %s along it%s", thing.Name(), thing.Leg(), survey.Figure(thing.Start()), thing.Kind.Minds)
	}
	for _, k := range vehicles.HangingOn(kind) {
		if !k.Many() || !k.Has(found.Run.Hanging) {
			continue
		}
		var places []string
		for _, along := range *k.List(&found.Run.Hanging) {
			places = append(places, survey.Figure(along))
		}
		p.line("%ss at %s along it", k.Full, strings.Join(places, ", "))
	}
}

// marginOf says what a run that breaks no rule keeps of what was entered.
func marginOf(found *rules.Route) string {
	m := found.Margin
	if !m.Set {
		return "nothing near it was entered"
	}
	if short := survey.Figure(-m.Value); m.Value < 0 && short != survey.Figure(0) {
		return "short by " + short
	}
	return "to spare " + survey.Figure(max(0, m.Value))
}
