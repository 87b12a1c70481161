package tui

import (
	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/vehicles"
)

// askNew asks what a job starts from in a file that isn't there.
func (r *Root) askNew() {
	ref := r.document.Job.Ref
	answers := []answer{{"An empty van, everything to be measured", nil}}
	for _, van := range vehicles.Library() {
		answers = append(answers, answer{"Like a " + van.Title, func() tea.Cmd {
			job, _ := vehicles.FromLibrary(van.Name)
			r.tell("Invented, nothing measured: m confirms an item.")
			return r.startFrom(job, ref)
		}})
	}
	answers = append(answers,
		answer{"The sample, to try things on", func() tea.Cmd { return r.startFrom(vehicles.Demo(), ref) }},
		answer{"Quit", func() tea.Cmd { return tea.Quit }})
	r.open(&question{
		asks:    "There is no file " + r.document.Path + ".",
		because: "What does the new job start from? Nothing is written before you save.",
		answers: answers,
	})
}

// startFrom puts a job on the desk as what the new file is to hold. It is where undo ends.
func (r *Root) startFrom(job vehicles.Job, ref string) tea.Cmd {
	job.Ref = ref
	r.desk.Begin(job, false)
	return r.changed()
}
