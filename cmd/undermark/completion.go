package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

// shells are those that can be told how commands go on.
var shells = []string{"bash", "zsh", "fish", "powershell"}

func completionCommand(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "completion " + strings.Join(shells, "|"),
		Short: "Print what lets a shell complete commands at Tab",
		Long: "The script that the shell reads when it starts; load it as below in the shell's own start file, zsh behind its\n" +
			"compinit. It completes commands, flags, job files and the library's vans.",
		Example: "  source <(undermark completion bash)\n" +
			"  source <(undermark completion zsh)\n" +
			"  undermark completion fish | source\n" +
			"  undermark completion powershell | Out-String | Invoke-Expression",
		ValidArgs: shells,
		Args:      oneShell,
		RunE: func(c *cobra.Command, args []string) error {
			root := c.Root()
			script := map[string]func(io.Writer) error{
				"bash":       func(to io.Writer) error { return root.GenBashCompletionV2(to, true) },
				"zsh":        root.GenZshCompletion,
				"fish":       func(to io.Writer) error { return root.GenFishCompletion(to, true) },
				"powershell": root.GenPowerShellCompletionWithDesc,
			}[args[0]]
			return asFailed(script(s.out))
		},
	}
}

func oneShell(_ *cobra.Command, args []string) error {
	if len(args) != 1 || !slices.Contains(shells, args[0]) {
		return fmt.Errorf("completion needs one shell: %s", strings.Join(shells, ", "))
	}
	return nil
}
