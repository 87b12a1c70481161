package tui

import (
	"fmt"
	"io"
	"io/fs"
	"strings"

	"bench.example/undermark/rules"
	"bench.example/undermark/tui/aloud"
	"bench.example/undermark/tui/desk"
)

// WritePlain writes what all screens show, each under its title, in lines of at most w columns. It changes nothing, and asks
// nobody: what stands before something on a screen stands before it here.
func WritePlain(o Options, to io.Writer, w int) error {
	r, missing, err := withJob(o)
	switch {
	case err != nil:
		return err
	case missing:
		return fmt.Errorf("%s: %w: name a job file, or run it in a terminal to begin one", o.Path, fs.ErrNotExist)
	}
	p := &plainly{Root: r}
	p.begin()
	if len(r.desk.State.Faults) == 0 {
		r.desk.State.Next = next(r.desk.State.Result, r.desk.State.Book, rules.Next)
	}
	var text strings.Builder
	for _, line := range aloud.Broken(append(o.Notes, p.everything()...), w) {
		text.WriteString(line + "\n")
	}
	_, err = io.WriteString(to, text.String())
	return err
}

// everything is what all screens show, a blank line between two.
func (p *plainly) everything() (lines []string) {
	for p.at = range p.screens {
		if p.at > 0 {
			lines = append(lines, "")
		}
		lines = append(lines, p.whole()...)
		if behind := p.screens[p.at].Plain(p.desk.State).Behind; behind != nil {
			lines = append(append(lines, beforeDrilling(&p.desk.State.Result)...), behind()...)
		}
	}
	return lines
}

// beforeDrilling are the cautions that stand before the first mark.
func beforeDrilling(result *rules.Result) []string {
	d := cautionsFor(drillingTitle, true, drillingOccasions...)
	return append([]string{d.title + ":"}, aloud.Rows(d.text(result, desk.Settings{}.Styles(), aloud.Unbroken)...)...)
}
