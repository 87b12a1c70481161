package tui

import (
	"cmp"
	"fmt"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/survey"
	"bench.example/undermark/rules"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/history"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// apply does what a screen asks for.
func (r *Root) apply(c desk.Change) tea.Cmd {
	var cmds []tea.Cmd
	c = r.retried(c)
	done := r.desk.Apply(c)
	if done.Edited {
		cmds = append(cmds, r.changed())
	}
	if done.Refused != "" {
		r.tell("Not done: " + done.Refused)
	}
	if c.Settings != nil {
		cmds = append(cmds, r.keepSettings())
	}
	if c.Once || c.Tick != "" {
		r.deaf = r.now().Add(bounce)
	}
	if c.Tick != "" {
		cmds = append(cmds, r.keepTicks())
	}
	if c.Goto != "" {
		r.goTo(r.titled(c.Goto))
		if r.desk.State.Focus = c.Focus; c.Focus != nil {
			cmds = append(cmds, r.toScreen(r.at, desk.Reveal{}))
		}
	}
	if c.Open != nil {
		cmds = append(cmds, r.toScreen(r.at, *c.Open))
	}
	if c.Unsay != "" && c.Unsay == r.say {
		r.say = ""
	}
	say := c.Say
	if len(done.Unmade) > 0 {
		say = strings.TrimSpace(say + " " + unmade(done.Unmade, r.desk.State.Settings))
	}
	if len(done.Stayed) > 0 {
		say = strings.TrimSpace(say + " " + stayed(done.Stayed, r.desk.State.Settings))
	}
	if say != "" && done.Refused == "" {
		r.tell(say)
	}
	return tea.Batch(append(cmds, r.ask(c.Ask))...)
}

// mostUnmade is how many marks are named.
const mostUnmade = 5

// unmade says which marks are to be made again, and how far they lie from where they were made: those that moved alike together.
func unmade(marks []history.Moved, set desk.Settings) string {
	var ways, groups []string
	names := map[string][]string{}
	for _, m := range marks {
		way := words.Moved(m.By, set)
		if names[way] == nil {
			ways = append(ways, way)
		}
		names[way] = append(names[way], m.Words)
	}
	left := mostUnmade
	for _, way := range ways {
		group := fewOf(names[way], left)
		left -= len(names[way])
		if len(ways) > 1 && way != "" {
			group = way + ": " + group
		}
		groups = append(groups, group)
	}
	text := "Moved"
	if len(ways) == 1 && ways[0] != "" {
		text += " " + ways[0]
	}
	return text + ", so to be marked again: " + strings.Join(groups, "; ") + "."
}

// fewOf names so many at the most, and counts the rest.
func fewOf(names []string, most int) string {
	switch more := len(names) - max(most, 0); {
	case more <= 0:
		return strings.Join(names, ", ")
	case more == len(names):
		return survey.Counted(more, "mark")
	default:
		return strings.Join(names[:most], ", ") + fmt.Sprintf(", and %d more", more)
	}
}

// stayed says of marks that the pilot hole moved a little that they stay made.
func stayed(marks []history.Moved, set desk.Settings) string {
	way := words.Moved(marks[0].By, set) // all of them go with the hole
	if len(marks) == 1 {
		return marks[0].Words + " lies " + way + ", less than its ±: it stays made."
	}
	return fmt.Sprintf("%d made marks lie %s, less than their ±: they stay made.", len(marks), way)
}

// ask does what only the root does.
func (r *Root) ask(a desk.Ask) tea.Cmd {
	switch a {
	case desk.Save:
		return r.save()
	case desk.SaveAs:
		r.askName()
	case desk.Undo:
		was := r.desk.State.Job
		return r.stepped(r.desk.Undo(), "nothing to undo", func(is vehicles.Job) string { return "took back: " + r.went(is, was) })
	case desk.Redo:
		was := r.desk.State.Job
		return r.stepped(r.desk.Redo(), "nothing to do again", func(is vehicles.Job) string { return "done again: " + r.went(was, is) })
	case desk.Quit:
		return r.quit()
	case desk.Cautions:
		r.open(newCautions())
	case desk.BeforeDrilling:
		r.open(cautionsFor(drillingTitle, true, r.beforeDrilling()...))
	case desk.FirstRun:
		r.open(cautionsFor("Read this before the heater first runs", false, rules.FirstRun))
	case desk.PrintSheet, desk.PrintTemplate, desk.PrintCustomer:
		return r.print(a)
	}
	return nil
}

// went is what undo or redo went over: what the edit is called, or what it changed.
func (r *Root) went(before, after vehicles.Job) string {
	return cmp.Or(r.desk.Moved(), words.Changed(before, after))
}

// stepped goes on after an undo or redo, and says what that did: one that takes back something else than was meant is seen.
func (r *Root) stepped(moved bool, didNot string, did func(is vehicles.Job) string) tea.Cmd {
	r.waits = false
	if !moved {
		r.tell(didNot)
		return nil
	}
	r.tell(did(r.desk.State.Job))
	return r.replaced()
}

// put puts a job on the desk as it is.
func (r *Root) put(job vehicles.Job) tea.Cmd {
	r.desk.Put(job)
	return r.replaced()
}

// replaced goes on when the job on the desk is another by no edit of a screen: the screens are told at once, as what a field is of may be gone.
func (r *Root) replaced() tea.Cmd {
	r.body = [2]int{}
	return r.changed()
}

// changed goes on when another job is on the desk.
func (r *Root) changed() tea.Cmd { return tea.Batch(r.keepJournal(), r.advise()) }

// setSettings takes new settings and writes them down.
func (r *Root) setSettings(s desk.Settings) tea.Cmd { return r.apply(desk.Change{Settings: &s}) }

// keepSettings writes the settings down.
func (r *Root) keepSettings() tea.Cmd {
	s, path := r.desk.State.Settings, r.options.SettingsPath
	if path == "" {
		return nil
	}
	return r.settings.keep(func() error { return s.Save(path) })
}
