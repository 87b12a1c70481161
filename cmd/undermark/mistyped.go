package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// isFile tells whether a word of the command line names a job file and not a command: it has a dot or a slash, or there is such
// a file.
func isFile(word string) bool {
	if strings.ContainsAny(word, "./"+string(os.PathSeparator)) {
		return true
	}
	_, err := os.Lstat(word)
	return err == nil
}

// noCommand says that a word is no command, and which is the nearest.
func noCommand(root *cobra.Command, word string) error {
	nearest := nearestCommand(root, word)
	if nearest != "" {
		nearest = "; the nearest command is " + nearest
	}
	return fmt.Errorf("there is no command and no file %q%s", word, nearest)
}

// nearestCommand is the command that takes the fewest changes of a letter to come to from a word; none when all take many.
func nearestCommand(root *cobra.Command, word string) string {
	const most = 3 // as many as turn one short command into another
	for changes := 1; changes <= most; changes++ {
		root.SuggestionsMinimumDistance = changes
		if near := root.SuggestionsFor(word); len(near) > 0 {
			return near[0]
		}
	}
	return ""
}

// aJobOrNothing is what the program takes without a command.
func aJobOrNothing(root *cobra.Command, args []string) error {
	switch {
	case len(args) > 0 && args[0] == "-":
		return errors.New("the screens read no job from standard input: name its file")
	case len(args) > 0 && !isFile(args[0]):
		return noCommand(root, args[0])
	case len(args) > 1:
		return fmt.Errorf("the screens open one job at a time: leave %q out", args[1])
	}
	return nil
}

// takes is what a command takes that has at most so many words behind it.
func takes(most int, what string) cobra.PositionalArgs {
	return func(c *cobra.Command, args []string) error {
		if len(args) > most {
			return fmt.Errorf("%s takes %s: leave %q out", c.Name(), what, args[most])
		}
		return nil
	}
}

// wrongFlag says what is wrong with a flag. Behind a word that is no command no flag is known, so the word is told of.
func wrongFlag(c *cobra.Command, err error) error {
	if words := c.Flags().Args(); !c.HasParent() && len(words) > 0 && !isFile(words[0]) {
		return noCommand(c, words[0])
	}
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var bad *pflag.InvalidValueError
	var odd *pflag.InvalidSyntaxError
	switch {
	case errors.As(err, &unknown) && unknown.GetSpecifiedShortnames() != "":
		return fmt.Errorf("there is no flag %q in %q", "-"+unknown.GetSpecifiedName(), "-"+unknown.GetSpecifiedShortnames())
	case errors.As(err, &unknown):
		return fmt.Errorf("there is no flag %q", "--"+unknown.GetSpecifiedName())
	case errors.As(err, &bare):
		value, _ := pflag.UnquoteUsage(bare.GetFlag())
		return fmt.Errorf("--%s needs its %s behind it", bare.GetFlag().Name, value)
	case errors.As(err, &bad) && bad.GetFlag().Value.Type() == "bool":
		return fmt.Errorf("--%s takes no value: leave %q out", bad.GetFlag().Name, bad.GetValue())
	case errors.As(err, &bad):
		value, _ := pflag.UnquoteUsage(bad.GetFlag())
		return fmt.Errorf("--%s %q: give its %s as a number", bad.GetFlag().Name, bad.GetValue(), value)
	case errors.As(err, &odd):
		return fmt.Errorf("%q is no flag", odd.GetSpecifiedFlag())
	}
	return err
}
