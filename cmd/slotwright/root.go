package main

import (
	"context"
	"io"

	"github.com/spf13/cobra"
)

// streams is where the command reads and writes.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// newRoot is the command with its verbs.
func newRoot(ctx context.Context, s streams) *cobra.Command {
	var look appearance
	terminal := s
	root := &cobra.Command{
		Use:   "slotwright [JOB]",
		Short: "Rewind small alternator stators for slow drives",
		Long: `Slotwright opens the screen on a job file; without one, on the job that was open
last, else on the built-in example. The verbs below answer in text.`,
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		RunE: func(_ *cobra.Command, args []string) error {
			return openScreen(ctx, terminal, args, look)
		},
	}
	root.SetVersionTemplate("slotwright {{.Version}}\n")
	root.PersistentFlags().BoolVar(&look.ascii, "ascii", false, "nothing beyond plain ASCII characters")
	root.Flags().BoolVar(&look.example, "example", false, "open the built-in example")
	root.CompletionOptions.HiddenDefaultCmd = true
	s.out = folding{s.out, &look.ascii}
	root.AddCommand(newNew(s), newCheck(s), newReport(s), newCard(s), newDraw(s), newWire(s), newLayout(s), newShelf(s))
	plainUsage(root)
	return root
}
