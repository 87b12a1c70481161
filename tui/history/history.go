// Package history is the job on the desk with every job there was before it. It does what a screen's Change asks of the
// state: judges a changed job, counts undo steps, goes back and forth between them, ticks marks.
//
// It writes nothing to a disk and says nothing: saving, the journal and what lies over the screens are the root's.
package history

import (
	"slices"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// Desk is what all screens see, and what it takes to change it.
type Desk struct {
	State desk.State
	Made  Ticks
	versions
}

// Begin puts a job on the desk that has just been opened: there undo ends.
func (d *Desk) Begin(job vehicles.Job, saved bool) {
	d.versions = begin(job, saved)
	d.judge()
}

// Done is what came of a Change.
type Done struct {
	Edited  bool    // another job is on the desk
	Refused string  // why the job asked for is not, "" when it is or none was
	Unmade  []Moved // the marks that count as made no more, as the tape must say something else there now
	Stayed  []Moved // those that stay made though the pilot hole moved them, by less than they are marked to
}

// Apply does what a screen asks of the state. Screens, files and lines at the foot are left to others.
func (d *Desk) Apply(c desk.Change) (done Done) {
	if c.Job != nil {
		was, sheet := d.State.Ticked, d.State.Marks
		done.Refused = d.edit(c)
		done.Unmade, done.Stayed = d.unmade(was, sheet), d.stayed(was, sheet)
		done.Edited = done.Refused == ""
	}
	if c.Select != nil {
		d.State.Selected = *c.Select
	}
	if c.Camera != nil {
		d.State.Camera = *c.Camera
	}
	if c.Settings != nil {
		d.State.Settings = *c.Settings
	}
	if c.Tick != "" {
		d.tick(c.Tick)
	}
	return done
}

// edit puts a changed job on the desk, unless its readings or runs contradict each other in a way that they did not
// before, or it holds more than a job may: such a job could neither be judged nor saved. Then it returns why. Matching points that do not fit each other are
// taken: a reading of which the last digit was not would be wrong, too.
func (d *Desk) edit(c desk.Change) (refused string) {
	if wrong := c.Job.TooMany(); wrong != "" {
		return "the job then " + wrong
	}
	if c.Anew {
		d.Seal()
	}
	job := d.followed(c)
	result, faults := rules.Rejudge(&d.State.Result, job, d.State.Book)
	for _, fault := range faults {
		if !desk.Misfit(fault) && !d.knows(fault) {
			return fault.Text
		}
	}
	d.add(version{job: job, step: c.Step, called: c.Called})
	d.judged(result, faults)
	return ""
}

// knows says whether the job had a fault before. Its text has figures that change while it is being put right, its key
// moves when a list does.
func (d *Desk) knows(fault vehicles.Fault) bool {
	return slices.ContainsFunc(d.State.Faults, func(f vehicles.Fault) bool { return f.Key == fault.Key || f.Text == fault.Text })
}

// Put puts a job on the desk as it is, as one step.
func (d *Desk) Put(job vehicles.Job) {
	d.add(version{job: job})
	d.judge()
}

// Undo goes back one step and says whether there was one.
func (d *Desk) Undo() bool { return d.stepped(d.undo()) }

// Redo goes forward one step and says whether there was one.
func (d *Desk) Redo() bool { return d.stepped(d.redo()) }

func (d *Desk) stepped(moved bool) bool {
	if moved {
		d.judge()
	}
	return moved
}

// Saved notes which version lies on the disk.
func (d *Desk) Saved(number uint64) {
	d.saved = number
	d.State.Dirty = d.dirty()
}

// judge works the state out afresh from the job that is now on the desk.
func (d *Desk) judge() { d.judged(rules.Rejudge(&d.State.Result, d.now.job, d.State.Book)) }

// judged is the state of the job that is now on the desk, with what it came to. When the job's readings contradict
// each other there is no result: the last good one stays, with what is wrong beside it.
func (d *Desk) judged(result rules.Result, faults []vehicles.Fault) {
	s := &d.State
	s.Job, s.Dirty, s.Focus = d.now.job, d.dirty(), nil
	s.Selected = min(s.Selected, len(s.Job.Obstructions)-1)
	s.Plan, s.Faults = result.Plan, faults
	s.Next.Known, s.Sketch, s.Kept = false, new(desk.Sketch), new(desk.Kept)
	if len(faults) > 0 {
		s.Next = desk.Next{}
		return
	}
	s.Result, s.Marks = result, rules.Marks(result)
	s.Ticked = d.Made.ticked(s.Marks, &s.Result)
}
