package runs

import (
	"fmt"
	"math"
	"slices"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// spread puts clips along the run, in place of those there are.
func (m screen) spread(s desk.State) (screen, desk.Change) {
	laid := s.Job.Laid(m.of)
	switch {
	case laid == nil:
		return m, desk.Change{Say: noStub}
	case s.Result.Book == nil:
		return m, desk.Change{Say: desk.PutRight}
	}
	spread := rules.SpreadClips(&s.Result, m.of, laid)
	job := m.edited(s, func(run *vehicles.Run) { run.Clips = spread.Along })
	m.picked = part{sort: clips}
	if len(spread.Along) > 0 {
		m.picked = part{sort: hung, kind: vehicles.AClip}
	}
	return m, desk.Change{Job: job, Say: m.spreadSo(spread, s)}
}

// spreadSo says how clips were spread.
func (m screen) spreadSo(spread rules.Clips, s desk.State) string {
	whose := "a usual span"
	if spread.Asked {
		whose = "the book's span for this run"
	}
	if len(spread.Along) == 0 {
		return fmt.Sprintf("%s: no clips: what holds it anyway is within %s, %s.", m.of, desk.Length(spread.Apart, s.Settings.Units), whose)
	}
	say := fmt.Sprintf("%s: %s at most %s apart, %s", m.of, survey.Counted(len(spread.Along), "clip"), desk.Length(spread.Apart, s.Settings.Units), whose)
	if spread.Loose > 0 {
		return fmt.Sprintf("%s. Nothing to clip to is surely within reach of %d of them.", say, spread.Loose)
	}
	return say + ". Slide each to where it can be fixed."
}

// oneMore puts one more clip or drain hole halfway to the next behind the one that is picked, or to the end; of no clips yet one in
// the middle.
func (m screen) oneMore(here placed, s desk.State) (screen, desk.Change) {
	laid := s.Job.Laid(m.of)
	if laid == nil {
		return m, desk.Change{Say: noStub}
	}
	kind, next := vehicles.AClip, laid.Line.Length()
	if here.sort == hung {
		kind = here.kind
	}
	list := *kind.List(&m.run(s).Hanging)
	for _, along := range list {
		if along > here.along {
			next = min(next, along)
		}
	}
	at := math.Round((here.along + next) / 2)
	list = append(slices.Clone(list), at)
	slices.Sort(list)
	m.picked = part{hung, slices.Index(list, at), kind}
	return m, desk.Change{Job: m.edited(s, func(run *vehicles.Run) { *kind.List(&run.Hanging) = list })}
}

// drainLow puts a drain hole at each low point that nothing drains, or, where all are drained, at the part that is picked.
func (m screen) drainLow(here placed, s desk.State) (screen, desk.Change) {
	laid, run := s.Job.Laid(m.of), m.run(s)
	if laid == nil {
		return m, desk.Change{Say: noStub}
	}
	low, say := rules.Undrained(laid, run.Drains), "a drain hole at each undrained low point"
	if len(low) == 0 {
		if !here.lies() {
			return m, desk.Change{Say: "No low point lacks a drain. To drill one elsewhere pick a point there first."}
		}
		low, say = []float64{here.along}, "no low point lacks a drain: one more drilled here"
	}
	for i := range low {
		low[i] = math.Round(low[i])
	}
	job := m.edited(s, func(run *vehicles.Run) {
		run.Drains = append(slices.Clone(run.Drains), low...)
		slices.Sort(run.Drains)
	})
	m.picked = part{hung, slices.Index(job.Run(m.of).Drains, low[0]), vehicles.ADrain}
	return m, desk.Change{Job: job, Say: fmt.Sprintf("%s: %s.", m.of, say)}
}
