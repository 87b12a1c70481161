package main

import (
	"fmt"
	"strconv"
	"strings"
	"text/tabwriter"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles"
)

// routeText writes a run for a person.
func routeText(r *rules.Result, kind vehicles.RunKind, found *rules.Route) string {
	var b strings.Builder
	if found.Run == nil {
		line(&b, "%s: no %s leads there, whatever rule it breaks.", r.Job.Ref, kind)
		return b.String()
	}
	switch found.Verdict {
	case rules.Clear:
		line(&b, "%s: the shortest %s there that keeps every rule. All in mm.", r.Job.Ref, kind)
	case rules.Doubtful:
		line(&b, "%s: the shortest %s there that breaks no rule. All in mm. Doubtful of it:", r.Job.Ref, kind)
	default:
		line(&b, "%s: no %s there keeps every rule. The nearest miss, all in mm, breaks:", r.Job.Ref, kind)
	}
	for i := range found.Misses {
		if f := &found.Misses[i]; f.Verdict == rules.Foul || found.Verdict == rules.Doubtful {
			line(&b, "  %s: %s", f.About(), f.Why)
		}
	}
	fmt.Fprintln(&b)
	t := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	row(t, "point", "x", "y", "below floor")
	for i, p := range found.Run.Path {
		row(t, strconv.Itoa(i+1), survey.Figure(p.X), survey.Figure(p.Y), survey.Figure(p.Drop))
	}
	_ = t.Flush() // a builder takes everything
	fmt.Fprintln(&b)
	margin := "nothing near it was entered"
	if found.Margin.Set {
		margin = "to spare " + survey.Figure(found.Margin.Value)
	}
	line(&b, "length %s, bends %s°, %s", survey.Figure(found.Length), survey.Figure(found.Bends), margin)
	if m := found.Run.Muffler; m != nil {
		line(&b, "muffler on leg %d, %s along it, its drain hole down", m.Leg, survey.Figure(m.Start))
	}
	if p := found.Run.Pump; p != nil {
		line(&b, "pump on leg %d, %s along it", p.Leg, survey.Figure(p.Start))
	}
	if clips := found.Run.Clips; len(clips) > 0 {
		places := make([]string, len(clips))
		for i, c := range clips {
			places[i] = survey.Figure(c)
		}
		line(&b, "clips at %s along it", strings.Join(places, ", "))
	}
	return b.String()
}
