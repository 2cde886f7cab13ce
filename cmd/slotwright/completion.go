package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// shells are those that completion is written for.
var shells = []string{"bash", "zsh", "fish"}

// newCompletion is the verb that prints what a shell needs to complete the command.
func newCompletion(s streams) *cobra.Command {
	return &cobra.Command{
		Use:   "completion SHELL",
		Short: "Print what bash, zsh or fish needs to complete verbs, options and jobs",
		Example: `  slotwright completion bash > ~/.local/share/bash-completion/completions/slotwright
  slotwright completion zsh > "${fpath[1]}/_slotwright"
  slotwright completion fish > ~/.config/fish/completions/slotwright.fish`,
		ValidArgs: shells,
		RunE: func(c *cobra.Command, args []string) error {
			switch args[0] {
			case "bash":
				return c.Root().GenBashCompletionV2(s.out, true)
			case "zsh":
				return c.Root().GenZshCompletion(s.out)
			case "fish":
				return c.Root().GenFishCompletion(s.out, true)
			}
			return fmt.Errorf("completion: read %q, expected %s", args[0], strings.Join(shells, ", "))
		},
	}
}

// completeJobs makes every verb that takes a job complete files of its kind, and no other
// verb any file.
func completeJobs(root *cobra.Command) {
	for _, c := range append(root.Commands(), root) {
		if len(c.ValidArgs) > 0 {
			continue
		}
		files := strings.Contains(c.Use, "JOB") || strings.Contains(c.Use, "FILE")
		folder := strings.Contains(c.Use, "FOLDER")
		c.ValidArgsFunction = func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			switch {
			case folder && len(args) == 0:
				return nil, cobra.ShellCompDirectiveFilterDirs
			case files && len(args) == 0:
				return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
			}
			return nil, cobra.ShellCompDirectiveNoFileComp
		}
	}
}
