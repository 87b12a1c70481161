// Undermark helps to find the place for an air heater's hole through a van's floor, from readings of a tape taken
// underneath. Without a command it opens the screens; the commands answer other programs.
package main

import (
	"errors"
	"fmt"
	"os"
	"runtime/debug"
	"strings"

	// Before anything that knows of terminals: it keeps them from being asked.
	_ "bench.example/undermark/tui/quiet"

	"github.com/spf13/cobra"

	"bench.example/undermark/rules"
	"bench.example/undermark/vehicles/harmless"
)

// The exit codes, as other programs rely on them.
const (
	exitDoubtful = 10
	exitFoul     = 11
	exitFailed   = 1 // a job could not be read or written
	exitUsage    = 2 // the command line is wrong
)

// exit is the error of a command that has said all there is to say.
type exit int

func (e exit) Error() string { return fmt.Sprintf("exit code %d", int(e)) }

// failed is the error of a command that could not read or write something; its text is for people.
type failed struct{ error }

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(heapGrowth)
	}
	os.Exit(run(os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr}))
}

// heapGrowth is by how many percent of what is in use the memory may grow before it is swept. Little is in use, and each key
// makes findings and a picture anew: at the usual 100 a quarter of a key's time went into sweeping (BenchmarkTypingAReading).
const heapGrowth = 400

// run runs the program with the arguments behind its name and returns its exit code.
func run(args []string, s streams) int {
	s = s.guarded()
	root := newRoot(s)
	root.SetArgs(told(args))
	called, err := root.ExecuteC()
	var code exit
	var fault failed
	if !errors.As(err, &fault) && s.lost.err != nil {
		err = failed{s.lost.err}
	}
	switch {
	case err == nil:
		return 0
	case errors.As(err, &fault):
		s.complain(fault.error)
		return exitFailed
	case errors.As(err, &code):
		return int(code)
	}
	if called.Name() == "help" {
		called = called.Root()
	}
	s.complainOf("undermark: %v; see %s --help", err, called.CommandPath())
	return exitUsage
}

// told are the arguments as the library may tell of them: when it completes a word for the shell it complains on its own.
func told(args []string) []string {
	if len(args) == 0 || !strings.HasPrefix(args[0], cobra.ShellCompRequestCmd) {
		return args
	}
	words := make([]string, len(args))
	for i, arg := range args {
		words[i] = harmless.Text(arg)
	}
	return words
}

func newRoot(s streams) *cobra.Command {
	var shared sharedFlags
	var plain, which bool
	root := &cobra.Command{
		Use:   "undermark [JOB]",
		Short: "Find the place for an air heater's hole through a van's floor",
		Long: "Undermark takes a tape's readings from underneath a van, keeps the place of an air heater's cut, exhaust and\n" +
			"intake, judges every clearance with its uncertainty, and says where to put the marks on top.\n\n" +
			"With a job file or with nothing it opens the screens. " + rules.InstructionsAndCodeFirst + ",\n" +
			"this program after them.",
		Example: "  undermark                        open the sample van\n" +
			"  undermark van.toml               open a job, or start one\n" +
			"  undermark --plain van.toml       the same in lines, for a screen reader; piped: all screens, once\n" +
			"  undermark check --json van.toml  judge a job for another program",
		Args: aJobOrNothing, ValidArgsFunction: anyFile,
		SilenceErrors: true, SilenceUsage: true,
		RunE: func(_ *cobra.Command, args []string) error {
			if which {
				s.tell("undermark %s", version())
				return nil
			}
			return screen(shared, plain, args, s)
		},
	}
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.err)
	root.SetFlagErrorFunc(wrongFlag)
	root.SetHelpFunc(func(c *cobra.Command, _ []string) { _ = tellHelp(c, s) }) // there is nobody to tell of it
	root.SetHelpCommand(helpCommand(s))
	root.CompletionOptions.DisableDefaultCmd = true
	root.PersistentFlags().StringVar(&shared.book, "book", "", "the rules of `FILE`, another workshop's book, in place of the usual one")
	root.PersistentFlags().BoolP("help", "h", false, "say "+helpSays)
	// Not by the library's own way: its template has the linker keep every method of every type, two of fifteen megabytes.
	root.Flags().BoolVarP(&which, "version", "v", false, "say which version this is")
	root.Flags().BoolVar(&plain, "plain", false, "lines in place of screens: for a screen reader, a braille line, a terminal that can't draw, a pipe")
	root.AddCommand(newCommand(&shared, s), checkCommand(&shared, s), marksCommand(&shared, s), suggestCommand(&shared, s), layoutCommand(&shared, s),
		routeCommand(&shared, s), cutlistCommand(&shared, s), sizingCommand(&shared, s), partsCommand(&shared, s), workCommand(&shared, s), planCommand(&shared, s),
		templateCommand(&shared, s), sheetCommand(&shared, s), rulesCommand(&shared, s), versionCommand(s), manCommand(s), completionCommand(s))
	for _, c := range append(root.Commands(), root) {
		c.DisableFlagsInUseLine = true
	}
	return root
}

// lateWords are lists that end what is told of a command. They are found out once somebody asks: reading the library takes
// longer than all the rest of a start.
var lateWords = map[string]func() (title string, pairs [][2]string){"new": vans}

// anyFile has a shell complete a file where no command begins so: with jobFiles it would take the names of the commands for endings of files.
func anyFile(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	return nil, cobra.ShellCompDirectiveDefault
}

func jobFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}
