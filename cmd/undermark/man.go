package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"bench.example/undermark/rules"
)

func manCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "man",
		Short: "Print the manual page, for man -l or a manual folder",
		Args:  takes(0, "nothing behind it"),
		RunE: func(c *cobra.Command, _ []string) error {
			_, err := io.WriteString(s.out, manual(c.Root()))
			return asFailed(err)
		},
	}
}

// manual writes the manual page of a command and those below it, in the man macros of roff.
func manual(root *cobra.Command) string {
	var p page
	p.line(`.TH UNDERMARK 1 "" "undermark %s"`, version())
	p.section("NAME")
	p.text(root.Name() + " - " + root.Short)
	p.section("SYNOPSIS")
	p.synopsis(root)
	for _, c := range shown(root) {
		p.synopsis(c)
	}
	p.section("DESCRIPTION")
	p.text(root.Long)
	p.section("COMMANDS")
	for _, c := range shown(root) {
		p.line(".SS %s", escaped(c.Name()))
		p.text(c.Short + ".")
		p.text(c.Long)
		if list := lateWords[c.Name()]; list != nil {
			title, pairs := list()
			p.text(title + ":")
			p.items(pairs)
		}
		p.flags(c.LocalNonPersistentFlags())
	}
	p.section("OPTIONS")
	p.flags(root.LocalFlags())
	p.section("EXIT STATUS")
	p.items(exitWords)
	p.section("FILES")
	p.items(fileWords)
	p.section("EXAMPLES")
	p.line(".EX\n%s\n.EE", escaped(root.Example))
	return p.String()
}

var exitWords = [][2]string{
	{"0", "The command answered; for check: all is " + rules.ClearOfEntered + "."},
	{"1", "A job could not be read or written. Standard error says which, where and what to do, a line each."},
	{"2", "The command line is wrong."},
	{"10", "check: nothing is foul, something is doubtful."},
	{"11", "check: something is foul."},
}

var fileWords = [][2]string{
	{"$XDG_CONFIG_HOME/undermark/settings.toml", "Units, the words for the sides, the look."},
	{"$XDG_CONFIG_HOME/undermark/book.toml", "The workshop's own rules, over the built-in ones."},
	{"$XDG_STATE_HOME/undermark/journal/", "Unsaved work, until it is saved."},
	{"$XDG_STATE_HOME/undermark/ticks/", "Which marks have been made on which job."},
}

// shown are the commands that a reader is told of.
func shown(root *cobra.Command) []*cobra.Command {
	var list []*cobra.Command
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			list = append(list, c)
		}
	}
	return list
}

// page is a manual page being written.
type page struct{ strings.Builder }

func (p *page) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

func (p *page) section(title string) { p.line(".SH %s", title) }

func (p *page) synopsis(c *cobra.Command) { p.line(".B %s\n.br", escaped(c.UseLine())) }

// text writes paragraphs.
func (p *page) text(text string) {
	for _, paragraph := range strings.Split(strings.TrimSpace(text), "\n\n") {
		if paragraph != "" {
			p.line(".PP\n%s", escaped(paragraph))
		}
	}
}

func (p *page) items(pairs [][2]string) {
	for _, pair := range pairs {
		p.item(pair[0], pair[1])
	}
}

func (p *page) item(name, text string) { p.line(".TP\n.B %s\n%s", escaped(name), escaped(text)) }

// flags lists a command's flags.
func (p *page) flags(flags *pflag.FlagSet) {
	p.items(flagWords(flags))
}

// escaped keeps roff from reading text as anything but text.
func escaped(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(text)
	lines := strings.Split(text, "\n")
	for i, l := range lines {
		if strings.HasPrefix(l, ".") || strings.HasPrefix(l, "'") {
			lines[i] = `\&` + l
		}
	}
	return strings.Join(lines, "\n")
}
