package main

import (
	"fmt"
	"os"
	"strings"

	"slotwright/winding/text"

	"github.com/spf13/cobra"
	"github.com/spf13/cobra/doc"
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

// newMan is the verb that prints or writes the manual.
func newMan(s streams) *cobra.Command {
	return &cobra.Command{
		Use:     "man [FOLDER]",
		Short:   "Print the manual page, or write one a verb into a folder",
		Example: "  slotwright man | man -l -\n  slotwright man ~/.local/share/man/man1",
		RunE: func(c *cobra.Command, args []string) error {
			head := &doc.GenManHeader{Title: "SLOTWRIGHT", Section: "1", Source: "Slotwright", Manual: "Slotwright"}
			c.Root().DisableAutoGenTag = true
			if len(args) == 0 {
				return doc.GenMan(c.Root(), head, s.out)
			}
			if info, err := os.Stat(args[0]); err != nil || !info.IsDir() {
				return jobProblem{text: "there is no such folder: " + args[0]}
			}
			if err := doc.GenManTree(c.Root(), head, args[0]); err != nil {
				return jobProblem{text: err.Error()}
			}
			_, err := fmt.Fprintln(s.out, "Wrote the manual to "+text.Visible(args[0]))
			return err
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
