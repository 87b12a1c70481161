package runs

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/moving"
	"bench.example/undermark/vehicles"
)

// edited is the job with a run changed in place, which is a copy.
func (m screen) edited(s desk.State, edit func(run *vehicles.Run)) *vehicles.Job {
	run := *m.run(s)
	edit(&run)
	job := s.Job.WithRun(m.of, &run)
	return &job
}

// wants is the kind that the run at hand is not whole without; nil for none.
func (m screen) wants() *vehicles.HangingKind {
	for _, k := range vehicles.HangingOn(m.of) {
		if k.Wanted {
			return k
		}
	}
	return nil
}

// mount puts what the part is that is picked, or else what the run is not whole without, before what it sits before, or where the part is
// that is picked, or, where that is no place for it, where there is most room; one that is there is picked.
func (m screen) mount(here placed, s desk.State) (screen, desk.Change) {
	kind := m.wants()
	if here.alone() {
		kind = here.kind
	}
	m.picked = part{sort: hung, kind: kind}
	if kind.Has(m.run(s).Hanging) {
		return m, desk.Change{}
	}
	laid := s.Job.Laid(m.of)
	if laid == nil {
		return m, desk.Change{Say: noStub}
	}
	length := kind.Usual().Length()
	leg, start, ok := laid.SeatAt(m.meant(kind, here, s, laid), length)
	if !ok || here.sort > hung {
		leg, start, ok = laid.Seat(length)
	}
	if !ok {
		return m, desk.Change{Say: fmt.Sprintf("No leg is straight for %s: make one longer, the %s goes there.", desk.Length(length, s.Settings.Units), kind.Name)}
	}
	asBefore := false
	job := m.edited(s, func(run *vehicles.Run) {
		kind.Hang(&run.Hanging, leg, start)
		asBefore = kind == vehicles.APump && m.pumpAsBefore(run)
	})
	say := strings.NewReplacer("{leg}", strconv.Itoa(leg), "{type}", keyType.Help().Key, "{other}", keyOther.Help().Key).Replace(kind.Told)
	if asBefore {
		say += " It pumps as the one before."
	}
	return m, desk.Change{Job: job, Say: say}
}

// meant is the place along the run where a thing of a kind is to go: what would come to be within the floor goes below it.
func (m screen) meant(kind *vehicles.HangingKind, here placed, s desk.State, laid *vehicles.LaidRun) float64 {
	along := m.pointedAt(here, laid)
	if kind.Before != nil {
		run := *m.run(s)
		if other := run.Hanging.Thing(kind.Before, 0); other != nil {
			from, _, _ := other.Along(laid)
			along = max(0, from-kind.Apart)
		}
	}
	in := func(at float64) bool { return rules.PointInFloor(&s.Job, laid.Station(at).Drop) }
	for along < laid.Line.Length() && (in(along) || in(along-rules.UnderHole)) {
		along++
	}
	return along
}

// pointedAt is the place along the run that is meant by the part that is picked: of a point the middle of the leg that leads to it.
func (m screen) pointedAt(here placed, laid *vehicles.LaidRun) float64 {
	if here.sort != point {
		return here.along
	}
	leg := here.index + 1
	if m.of == vehicles.FuelRun {
		leg = max(here.index, 1)
	}
	return (laid.CornerAlong(leg-1) + laid.CornerAlong(leg)) / 2
}

// slide moves what hangs on the run so many mm along it.
func (m screen) slide(here placed, by float64, s desk.State) desk.Change {
	laid := s.Job.Laid(m.of)
	if laid == nil {
		return desk.Change{Say: noStub}
	}
	leg, to, ok := 0, max(0, min(moving.Hundredth(here.along+by), laid.Line.Length())), false
	if here.kind.Many() {
		ok = to != here.along
	} else {
		run := *m.run(s)
		thing := run.Hanging.Thing(here.kind, 0)
		leg, to, ok = laid.Slid(thing.Leg(), thing.Start(), thing.Length(), by)
	}
	if !ok {
		return desk.Change{Say: "No room there: no leg that way is straight for it."}
	}
	job := m.edited(s, func(run *vehicles.Run) { run.Hanging.Thing(here.kind, here.index).Put(leg, to) })
	return desk.Change{Job: job, Step: fmt.Sprintf("slide %s %d of %s", name(here), here.index, m.of)}
}

// other says the other thing of what has but a few.
func (m screen) other(here placed, s desk.State) desk.Change {
	run := m.run(s)
	switch {
	case here.hangs():
		now := *run
		if thing := now.Hanging.Thing(here.kind, here.index); thing != nil {
			if d, ok := answered(thing); ok {
				*d.Word = after(d.Words, *d.Word)
				return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { *run = now }), Say: "The " + thing.Name() + "'s " + fmt.Sprintf(d.Told, *d.Word) + "."}
			}
		}
	case here.sort == clips:
		none, say := []float64{}, "There are no clips: the whole "+m.of.String()+" hangs free."
		if run.Clips != nil {
			none, say = nil, "Nobody has said where clips are: not checked."
		}
		return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Clips = none }), Say: say}
	case here.sort == burns:
		kind := after([]string{"", vehicles.Diesel, vehicles.Petrol}, run.Supply.Kind)
		return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Supply.Kind = kind }), Say: "The heater burns: " + orNotKnown(kind) + "."}
	case here.sort == from:
		name := after(append([]string{""}, s.Job.FuelSources()...), run.Supply.From)
		return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Supply.From = name }), Say: beginsAt(name)}
	}
	return desk.Change{Say: "There is nothing to say the other of here."}
}

// answered is what is said of a thing in one of a few words; ok is false where nothing is.
func answered(thing *vehicles.Hung) (d vehicles.Detail, ok bool) {
	list := thing.Details()
	i := slices.IndexFunc(list, func(d vehicles.Detail) bool { return d.Word != nil })
	if i < 0 {
		return d, false
	}
	return list[i], true
}

// after is the one of a list after another; after the last comes the first.
func after(list []string, one string) string { return list[(slices.Index(list, one)+1)%len(list)] }

// takeAway takes out the run at hand, all of it.
func (m screen) takeAway(s desk.State) (screen, desk.Change) {
	job := s.Job.WithRun(m.of, nil)
	m.picked = part{}
	if m.of == vehicles.FuelRun { // what the heater burns and where that is kept are no facts of the way that goes
		m.away = s.Job.Fuel
	}
	return m, desk.Change{Job: &job, Say: fmt.Sprintf("%s deleted, all of it. %s takes it back.", m.of, desk.KeyUndo.Help().Key)}
}

// remove takes out what is picked.
func (m screen) remove(here placed, s desk.State) (screen, desk.Change) {
	var job *vehicles.Job
	switch {
	case here.sort == point && len(m.run(s).Path) > m.fewest():
		return m, m.removePoint(s, here.index)
	case here.sort == point || here.sort == stub || here.sort == pipe: // of the last one, or what is said of all of it
		return m.takeAway(s)
	case !here.there:
	case here.sort == hung:
		job = m.edited(s, func(run *vehicles.Run) { here.kind.Without(&run.Hanging, here.index) })
	case here.sort == tank:
		job = m.edited(s, func(run *vehicles.Run) { run.Supply.Tank = nil })
	}
	if job == nil {
		return m, desk.Change{Say: "There is nothing to delete here."}
	}
	if here.kind == vehicles.AClip && len(job.Run(m.of).Clips) == 0 {
		m.picked = part{sort: clips}
	}
	return m, desk.Change{Job: job, Say: fmt.Sprintf("%s: %s deleted. %s takes it back.", m.of, name(here), desk.KeyUndo.Help().Key)}
}
