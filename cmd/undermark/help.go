package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"bench.example/undermark/tui/aloud"
)

// widestHelp is how many columns of a wide terminal help takes: longer lines are hard to read on from.
const widestHelp = 100

// helpSays is what command and flag say.
const helpSays = "how the program or a command is used"

func helpCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "help [COMMAND]",
		Short: "Say " + helpSays,
		Args:  takes(1, "one command"),

		DisableFlagsInUseLine: true, // those of the others are set where all are added
		ValidArgsFunction: func(c *cobra.Command, _ []string, _ string) ([]string, cobra.ShellCompDirective) {
			var names []string
			for _, known := range shown(c.Root()) {
				names = append(names, known.Name())
			}
			return names, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			about := c.Root()
			if len(args) == 1 {
				var err error
				if about, _, err = c.Root().Find(args); err != nil || about == c.Root() {
					return noCommand(c.Root(), args[0])
				}
			}
			return tellHelp(about, s)
		},
	}
}

// tellHelp writes how a command is used.
func tellHelp(c *cobra.Command, s streams) error {
	width := s.width()
	if width == 0 {
		width = aloud.UsualWidth
	}
	_, err := io.WriteString(s.out, helpText(c, min(width, widestHelp)))
	return asFailed(err)
}

// helpText is how a command is used, in lines of at most so many columns.
func helpText(c *cobra.Command, width int) string {
	p := paper{width: width}
	p.line("%s", c.UseLine())
	if c.HasSubCommands() {
		p.line("%s COMMAND ...", c.CommandPath())
	}
	p.blank()
	p.line("%s.", c.Short)
	for _, paragraph := range strings.Split(c.Long, "\n\n") {
		if paragraph != "" {
			p.blank()
			p.line("%s", strings.Join(strings.Fields(paragraph), " "))
		}
	}
	if c.Example != "" {
		p.section("For example", examples(c))
	}
	if list := lateWords[c.Name()]; list != nil {
		title, pairs := list()
		p.section(title, pairs)
	}
	commands := [][2]string{}
	for _, sub := range shown(c) {
		commands = append(commands, [2]string{sub.Name(), sub.Short})
	}
	p.section("Commands", commands)
	p.section("Flags", flagWords(c.LocalNonPersistentFlags()))
	p.section("Flags of every command", flagWords(c.Root().PersistentFlags()))
	return p.String()
}

// examples are a command's, each with what it does, if that needs to be said.
func examples(c *cobra.Command) (pairs [][2]string) {
	for example := range strings.SplitSeq(c.Example, "\n") {
		call, words, _ := strings.Cut(strings.TrimSpace(example), "  ")
		pairs = append(pairs, [2]string{call, strings.TrimSpace(words)})
	}
	return pairs
}

func (p *paper) section(title string, pairs [][2]string) {
	if len(pairs) > 0 {
		p.blank()
		p.line("%s:", title)
		p.pairs(pairs)
	}
}

// flagWords are flags as they are typed, and what they do.
func flagWords(flags *pflag.FlagSet) (words [][2]string) {
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden {
			return
		}
		value, usage := pflag.UnquoteUsage(f)
		name := strings.TrimSpace("--" + f.Name + " " + value)
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		words = append(words, [2]string{name, usage})
	})
	return words
}
