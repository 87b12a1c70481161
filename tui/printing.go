package tui

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	tea "github.com/charmbracelet/bubbletea"

	"bench.example/undermark/geometry/scene/vector"
	"bench.example/undermark/rules"
	"bench.example/undermark/rules/sheet"
	"bench.example/undermark/rules/template"
	"bench.example/undermark/tui/desk"
	"bench.example/undermark/tui/words"
	"bench.example/undermark/vehicles"
)

// papers are what can be printed: what each is called, how its file's name ends, and how it is set.
var papers = map[desk.Ask]struct {
	word, ending string
	set          func(*rules.Result, template.Paper) ([]byte, error)
}{
	desk.PrintSheet: {"sheet", "-sheet.pdf", func(r *rules.Result, on template.Paper) ([]byte, error) {
		s := sheet.Of(r, words.OnPaper())
		return s.PDF(on)
	}},
	desk.PrintCustomer: {"customer's page", "-customer.pdf", func(r *rules.Result, on template.Paper) ([]byte, error) {
		s := sheet.ForCustomer(r, words.OnPaper())
		return s.PDF(on)
	}},
	desk.PrintTemplate: {"template", "-template.pdf", func(r *rules.Result, on template.Paper) ([]byte, error) {
		return template.PDF(r, on, words.Standing(r))
	}},
}

// print writes something for the printer beside the job's file, of the job as it is on the desk.
func (r *Root) print(what desk.Ask) tea.Cmd {
	p := papers[what]
	switch {
	case len(r.desk.State.Faults) > 0:
		r.tell("No " + p.word + ": the job can't be judged as it is. " + r.desk.State.Faults[0].Text)
		return nil
	case r.document.Path == "":
		r.tell("Save the job first: its " + p.word + " is put beside its file.")
		return nil
	}
	path := strings.TrimSuffix(r.document.Path, filepath.Ext(r.document.Path)) + p.ending
	job := r.document.Path
	result, on := r.desk.State.Result, template.Papers[strings.ToLower(r.desk.State.Settings.Paper())]
	return func() tea.Msg {
		data, err := p.set(&result, on)
		if errors.Is(err, template.ErrNoCut) {
			err = errors.New(rules.CutHasNoPlace)
		}
		if err != nil {
			return printed{word: p.word, err: err}
		}
		if !mayPrintOver(path) {
			return printed{word: p.word, path: path, job: job, data: data}
		}
		return printed{word: p.word, path: path, err: vehicles.WriteLike(job, path, data)}
	}
}

// mayPrintOver tells whether nothing is lost where a file is written: there is none, or one that this program printed and nobody has
// changed since.
func mayPrintOver(path string) bool {
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return true
	}
	const largest = 64 << 20 // bytes: nothing that is printed here comes near
	if err != nil || !info.Mode().IsRegular() || info.Size() > largest {
		return false
	}
	data, err := os.ReadFile(path)
	return err == nil && vector.Sealed(data)
}

// printed is what came of printing; with data, somebody else's file is in the way.
type printed struct {
	word, path string
	job        string // the file of the job that it was printed of
	data       []byte
	err        error
}

func (m printed) happened(r *Root) tea.Cmd {
	switch {
	case m.err != nil:
		r.tell("No " + m.word + ": " + m.err.Error())
	case m.data != nil:
		// what is in the way may have gone meanwhile: then what is written is as private as its job
		write := func() tea.Msg {
			return printed{word: m.word, path: m.path, err: vehicles.WriteLike(m.job, m.path, m.data)}
		}
		r.open(&question{
			asks:    m.path + " is there already.",
			because: "This program did not write it, or somebody has changed it since.",
			answers: []answer{{"Write over it", func() tea.Cmd { return write }}, {"Leave it as it is", nil}},
		})
	default:
		r.tell("The " + m.word + " is in " + m.path)
	}
	return nil
}
