package runs

import (
	"fmt"
	"slices"

	"bench.example/undermark/geometry/survey"
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

// mount puts the muffler on the exhaust, or the pump on the fuel line, where the part is that is picked, or, where that is no place for
// it, where there is most room; one that is there is picked.
func (m screen) mount(here placed, s desk.State) (screen, desk.Change) {
	if here.sort == filter {
		return m.mountFilter(here, s)
	}
	of, length, name := muffler, vehicles.UsualMuffler.Length, "muffler"
	if m.of == vehicles.FuelRun {
		of, length, name = pump, 0, "pump"
	}
	m.picked = part{sort: of}
	if run := m.run(s); run.Muffler != nil || run.Pump != nil {
		return m, desk.Change{}
	}
	laid := s.Job.Laid(m.of)
	if laid == nil {
		return m, desk.Change{Say: noStub}
	}
	leg, start, ok := laid.SeatAt(m.pointedAt(here, laid), length)
	if !ok || here.sort > pump {
		leg, start, ok = laid.Seat(length)
	}
	if !ok {
		return m, desk.Change{Say: fmt.Sprintf("No leg is straight for %s: make one longer, the %s goes there.", desk.Length(length, s.Settings.Units), name)}
	}
	job := m.edited(s, func(run *vehicles.Run) {
		if of == pump {
			h := vehicles.UsualPump
			h.Leg, h.Start = leg, start
			run.Pump = &h
		} else {
			h := vehicles.UsualMuffler
			h.Leg, h.Start = leg, start
			run.Muffler = &h
		}
	})
	say := fmt.Sprintf("A %s of a usual size on leg %d: %s types what it is. Does its drain hole point down? %s says down, or aside.",
		name, leg, keyType.Help().Key, keyOther.Help().Key)
	if of == pump {
		say = fmt.Sprintf("A pump on leg %d, tilted %s° as is usual: %s types how it is.", leg, survey.Exact(vehicles.UsualPump.Tilt), keyType.Help().Key)
	}
	return m, desk.Change{Job: job, Say: say}
}

// mountFilter puts a filter into the fuel line: before the pump, or else where the part is that is picked; one that is there is picked.
func (m screen) mountFilter(here placed, s desk.State) (screen, desk.Change) {
	m.picked = part{sort: filter}
	if m.run(s).Filter != nil {
		return m, desk.Change{}
	}
	laid := s.Job.Laid(m.of)
	if laid == nil {
		return m, desk.Change{Say: noStub}
	}
	at := m.pointedAt(here, laid)
	if laid.Pump.Set {
		at = max(0, laid.Pump.Value-beforePump)
	}
	leg, start, _ := laid.SeatAt(at, 0) // what has a place only has room on every leg
	h := vehicles.Filter{Leg: leg, Start: start}
	job := m.edited(s, func(run *vehicles.Run) { run.Filter = &h })
	return m, desk.Change{Job: job, Say: fmt.Sprintf("A filter on leg %d: slide it to where a hand reaches it from below.", leg)}
}

// beforePump is how far before the pump a filter goes until the fitter says otherwise, mm. common practice, no source
const beforePump = 100

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
	run := m.run(s)
	var job *vehicles.Job
	switch here.sort {
	case muffler:
		h := *run.Muffler
		leg, start, ok := laid.Slid(h.Leg, h.Start, h.Length, by)
		if h.Leg, h.Start = leg, start; ok {
			job = m.edited(s, func(run *vehicles.Run) { run.Muffler = &h })
		}
	case filter:
		h := *run.Filter
		leg, start, ok := laid.Slid(h.Leg, h.Start, 0, by)
		if h.Leg, h.Start = leg, start; ok {
			job = m.edited(s, func(run *vehicles.Run) { run.Filter = &h })
		}
	case pump:
		h := *run.Pump
		leg, start, ok := laid.Slid(h.Leg, h.Start, 0, by)
		if h.Leg, h.Start = leg, start; ok {
			job = m.edited(s, func(run *vehicles.Run) { run.Pump = &h })
		}
	default:
		to := max(0, min(moving.Hundredth(here.along+by), laid.Line.Length()))
		if to != here.along {
			job = m.edited(s, func(run *vehicles.Run) { setAlong(run, here.part, to) })
		}
	}
	if job == nil {
		return desk.Change{Say: "No room there: no leg that way is straight for it."}
	}
	after := s
	after.Job = *job
	now, _ := m.here(after)
	return desk.Change{Job: job, Step: fmt.Sprintf("slide %s %d of %s", name(here), here.index, m.of), Say: m.of.String() + " " + m.told(now, after)}
}

// setAlong puts a clip or a drain hole at a place along the run.
func setAlong(run *vehicles.Run, of part, along float64) {
	list := &run.Clips
	if of.sort == drain {
		list = &run.Drains
	}
	*list = slices.Clone(*list)
	(*list)[of.index] = along
}

// other says the other thing of what has but a few.
func (m screen) other(here placed, s desk.State) desk.Change {
	run := m.run(s)
	switch {
	case here.sort == muffler && here.there:
		h := *run.Muffler
		if h.Drain == vehicles.DrainDown {
			h.Drain = vehicles.DrainAside
		} else {
			h.Drain = vehicles.DrainDown
		}
		return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Muffler = &h }), Say: "The muffler's drain hole points " + h.Drain + "."}
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
		name := after(append([]string{""}, sources(s.Job)...), run.Supply.From)
		return desk.Change{Job: m.edited(s, func(run *vehicles.Run) { run.Supply.From = name }), Say: "The line begins at: " + orNone(name) + "."}
	}
	return desk.Change{Say: "There is nothing to say the other of here."}
}

// after is the one of a list after another; after the last comes the first.
func after(list []string, one string) string { return list[(slices.Index(list, one)+1)%len(list)] }

// takeAway takes out the run at hand, all of it.
func (m screen) takeAway(s desk.State) (screen, desk.Change) {
	job := s.Job.WithRun(m.of, nil)
	m.picked = part{}
	return m, desk.Change{Job: &job, Say: fmt.Sprintf("%s deleted, all of it. %s takes it back.", m.of, desk.KeyUndo.Help().Key)}
}

// remove takes out what is picked.
func (m screen) remove(here placed, s desk.State) (screen, desk.Change) {
	var job *vehicles.Job
	switch {
	case here.sort == point:
		return m, m.removePoint(s, here.index)
	case here.sort == stub || here.sort == pipe: // what is said of all of it
		return m.takeAway(s)
	case !here.there:
	case here.sort == muffler:
		job = m.edited(s, func(run *vehicles.Run) { run.Muffler = nil })
	case here.sort == filter:
		job = m.edited(s, func(run *vehicles.Run) { run.Filter = nil })
	case here.sort == pump:
		job = m.edited(s, func(run *vehicles.Run) { run.Pump = nil })
	case here.sort == tank:
		job = m.edited(s, func(run *vehicles.Run) { run.Supply.Tank = nil })
	case here.sort == clip:
		job = m.edited(s, func(run *vehicles.Run) { run.Clips = slices.Delete(slices.Clone(run.Clips), here.index, here.index+1) })
	case here.sort == drain:
		job = m.edited(s, func(run *vehicles.Run) {
			if run.Drains = slices.Delete(slices.Clone(run.Drains), here.index, here.index+1); len(run.Drains) == 0 {
				run.Drains = nil
			}
		})
	}
	if job == nil {
		return m, desk.Change{Say: "There is nothing to delete here."}
	}
	if here.sort == clip && len(job.Run(m.of).Clips) == 0 {
		m.picked = part{sort: clips}
	}
	return m, desk.Change{Job: job, Say: fmt.Sprintf("%s: %s deleted. %s takes it back.", m.of, name(here), desk.KeyUndo.Help().Key)}
}

// counted is a number of things.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
