package tui

import (
	"slices"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/vehicles"
)

// apply does what a screen asks for.
func (r *Root) apply(c desk.Change) tea.Cmd {
	var cmds []tea.Cmd
	if c.Say != "" { // first, so that what is said of a change that is not taken stands in its place
		r.tell(c.Say)
	}
	if c.Job != nil {
		cmds = append(cmds, r.edit(*c.Job, c.Step))
	}
	if c.Select != nil {
		r.state.Selected = *c.Select
	}
	if c.Camera != nil {
		r.state.Camera = *c.Camera
	}
	if c.Settings != nil {
		cmds = append(cmds, r.setSettings(*c.Settings))
	}
	if c.Tick != "" {
		cmds = append(cmds, r.tick(c.Tick))
	}
	if c.Goto != "" {
		r.goTo(r.titled(c.Goto))
		r.state.Focus = c.Focus
	}
	if c.Open != nil {
		cmds = append(cmds, r.toScreen(r.at, *c.Open))
	}
	return tea.Batch(append(cmds, r.ask(c.Ask))...)
}

// ask does what only the root does.
func (r *Root) ask(a desk.Ask) tea.Cmd {
	switch a {
	case desk.Save:
		return r.save()
	case desk.SaveAs:
		r.askName()
	case desk.Undo:
		return r.stepped(r.history.undo(), "undone", "nothing to undo")
	case desk.Redo:
		return r.stepped(r.history.redo(), "done again", "nothing to do again")
	case desk.Quit:
		return r.quit()
	case desk.Cautions:
		r.open(newCautions())
	}
	return nil
}

// edit puts a changed job on the desk, unless its readings or runs contradict each other in a way that they did not
// before: such a job could neither be judged nor saved.
func (r *Root) edit(job vehicles.Job, step string) tea.Cmd {
	result, faults := rules.Judge(job, r.options.Book)
	for _, fault := range faults {
		if !r.knows(fault) {
			r.tell("Not done: " + fault.Text)
			return nil
		}
	}
	r.history.add(job, step)
	return r.judged(result, faults)
}

// knows says whether the job had a fault before. Its text has figures that change while it is being put right, its key
// moves when a list does.
func (r *Root) knows(fault vehicles.Fault) bool {
	return slices.ContainsFunc(r.state.Faults, func(f vehicles.Fault) bool { return f.Key == fault.Key || f.Text == fault.Text })
}

// put puts a job on the desk as it is.
func (r *Root) put(job vehicles.Job, step string) tea.Cmd {
	r.history.add(job, step)
	return r.judge()
}

func (r *Root) stepped(moved bool, did, didNot string) tea.Cmd {
	if !moved {
		r.tell(didNot)
		return nil
	}
	r.tell(did)
	return r.judge()
}

// judge works the state out afresh from the job that is now on the desk.
func (r *Root) judge() tea.Cmd { return r.judged(rules.Judge(r.history.now.job, r.options.Book)) }

// judged is the state of the job that is now on the desk, with what it came to. When the job's readings contradict
// each other there is no result: the last good one stays, with what is wrong beside it.
func (r *Root) judged(result rules.Result, faults []vehicles.Fault) tea.Cmd {
	s := &r.state
	s.Job, s.Dirty, s.Focus = r.history.now.job, r.history.dirty(), nil
	if s.Selected >= len(s.Job.Obstructions) {
		s.Selected = len(s.Job.Obstructions) - 1
	}
	s.Faults = faults
	if len(faults) == 0 {
		s.Result, s.Marks = result, rules.Marks(result)
		s.Ticked = r.made.ticked(s.Marks)
	}
	return tea.Batch(r.keepJournal(), r.advise())
}

// setSettings takes new settings and writes them down.
func (r *Root) setSettings(s desk.Settings) tea.Cmd {
	r.state.Settings = s
	path := r.options.SettingsPath
	if path == "" {
		return nil
	}
	return func() tea.Msg { return noted{s.Save(path)} }
}

// noted is what came of writing down something small of the program's own.
type noted struct{ err error }

func (m noted) happened(r *Root) tea.Cmd {
	if m.err != nil {
		r.tell(m.err.Error())
	}
	return nil
}
