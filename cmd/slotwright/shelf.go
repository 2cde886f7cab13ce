package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"slotwright/winding/quantity"
	"slotwright/winding/shelf"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// shelved is the JSON answer of shelf.
type shelved struct {
	Folder  string          `json:"folder"`
	Jobs    []shelf.Entry   `json:"jobs"`
	LeftOut []shelf.LeftOut `json:"left_out,omitempty"`
	Bench   shelf.Bench     `json:"bench"`
}

// shelfWish is what is asked of shelf.
type shelfWish struct {
	json, reverse   bool
	by, find, state string
}

// newShelf is the verb that lists a folder of jobs.
func newShelf(s streams) *cobra.Command {
	var w shelfWish
	c := &cobra.Command{
		Use:   "shelf FOLDER",
		Short: "A folder of jobs: what each is, how far it has come, what the bench learns",
		Long: "A folder of jobs, a line for each winding: the one that was wound last, those before it under it;\n" +
			"where nothing was wound, every trial, the reference first. What could not be used or is no job\n" +
			"is said on standard error.",
		Example: "  slotwright shelf jobs --find \"mill 36/12\" --sort begins\n  slotwright shelf jobs --state proved --sort date --reverse",
		RunE: func(_ *cobra.Command, args []string) error {
			return w.list(s, args[0])
		},
	}
	c.Flags().StringVar(&w.by, "sort", "file", "by "+strings.Join(shelf.Orders(), ", "))
	c.Flags().StringVar(&w.find, "find", "", "only jobs that have all these words in file, name, notes, wire, date or state, or as 36/12")
	c.Flags().StringVar(&w.state, "state", "", "only jobs that are "+strings.Join(shelf.States(), ", "))
	c.Flags().BoolVar(&w.reverse, "reverse", false, "the last first")
	c.Flags().BoolVar(&w.json, "json", false, "answer in JSON")
	return c
}

// list reads the folder and answers.
func (w *shelfWish) list(s streams, folder string) error {
	if !slices.Contains(shelf.Orders(), w.by) {
		return fmt.Errorf("--sort: read %q, expected one of %s", w.by, strings.Join(shelf.Orders(), ", "))
	}
	if w.state != "" && !slices.Contains(shelf.States(), w.state) {
		return fmt.Errorf("--state: read %q, expected one of %s", w.state, strings.Join(shelf.States(), ", "))
	}
	all, left, err := shelf.Read(folder)
	if err != nil {
		return jobProblem{text: err.Error(), file: folder}
	}
	list := shelf.Sort(shelf.In(shelf.Find(all, w.find), w.state), w.by)
	if w.reverse {
		slices.Reverse(list)
	}
	sayLeftOut(s.err, all, left)
	answer := shelved{folder, append([]shelf.Entry{}, list...), left, shelf.Learn(all)}
	if w.json {
		return printJSON(s.out, answer)
	}
	answer.print(s.out, len(all))
	return nil
}

// mostNamed is how many names of what was left out are printed; JSON has all of them.
const mostNamed = 6

// sayLeftOut says what of a folder is not in the list, and why.
func sayLeftOut(w io.Writer, all []shelf.Entry, left []shelf.LeftOut) {
	for _, e := range all {
		if e.Problem != "" {
			fmt.Fprintf(w, "slotwright: %s cannot be used: %s\n", text.Visible(e.File), oneLine(e.Problem))
		}
	}
	var whys []string
	names := map[string][]string{}
	for _, l := range left {
		if names[l.Why] == nil {
			whys = append(whys, l.Why)
		}
		names[l.Why] = append(names[l.Why], text.Visible(l.Name))
	}
	for _, why := range whys {
		list := names[why]
		more := ""
		if n := len(list) - mostNamed; n > 0 {
			list, more = list[:mostNamed], fmt.Sprintf(" and %d more", n)
		}
		fmt.Fprintf(w, "slotwright: left out %s%s: %s\n", strings.Join(list, ", "), more, why)
	}
}

// mostShelf is the maximum width of each column; the file comes last and is never cut, since it is what
// one types next.
var mostShelf = []int{16, 7, 5, 5, 16, 5, 6, 10, 7}

// shelfTable sets rows of cells in columns, no column wider than its widest cell.
func shelfTable(w io.Writer, rows [][]string) {
	wide, mark := make([]int, len(mostShelf)), "…"
	if isASCII(w) {
		mark = ".."
	}
	for _, row := range rows {
		for i := range row {
			if isASCII(w) {
				row[i] = text.ASCII(row[i])
			}
			if row[i] = text.Clean(row[i]); i < len(wide) {
				wide[i] = min(max(wide[i], text.Width(row[i])), mostShelf[i])
			}
		}
	}
	for _, row := range rows {
		line := ""
		for i, c := range row {
			if i < len(wide) {
				c = text.Fit(c, wide[i], mark) + " "
			}
			line += c
		}
		fmt.Fprintln(w, strings.TrimRight(line, " "))
	}
}

// print writes a line for each winding, and what the bench learns.
func (a shelved) print(w io.Writer, all int) {
	rows := [][]string{{"machine", "s/p", "trial", "throw", "wire", "turns", "begins", "date", "state", "file"}}
	shown, problems := 0, 0
	for _, e := range a.Jobs {
		if e.Problem != "" {
			problems++
			continue
		}
		shown++
		name, iron := e.Job, pairOf(e.Slots, e.Poles)
		for _, v := range e.Windings() {
			rows = append(rows, []string{name, iron, v.Trial, throwOf(v.Span), v.Wire, orDash(v.Turns, quantity.None, 0), orDash(v.CutInRPM, quantity.RPM, 3), v.Date, v.State, e.File})
			name, iron = "", ""
		}
	}
	if shown > 0 {
		shelfTable(w, rows)
	}
	fmt.Fprintf(w, "%d of %d jobs", shown, all)
	if problems > 0 {
		fmt.Fprintf(w, "; %d cannot be used", problems)
	}
	fmt.Fprintln(w)
	printBench(w, &a.Bench)
}

func throwOf(span int) string {
	if span == 0 {
		return "-"
	}
	return fmt.Sprintf("1-%d", span+1)
}

func pairOf(slots, poles int) string {
	if slots == 0 || poles == 0 {
		return "-"
	}
	return fmt.Sprintf("%d/%d", slots, poles)
}

func orDash(f quantity.Figure, dim quantity.Dimension, digits int) string {
	if f.PlusMinus = 0; !f.Known() {
		return "-"
	}
	return f.Text(dim[0], digits)
}

// printBench offers what the records say; none of it is in any job.
func printBench(w io.Writer, b *shelf.Bench) {
	lines := lessons(b)
	if len(lines) == 0 {
		return
	}
	fmt.Fprintln(w, "\nThis bench, by what was recorded as wound (in no job until you type it there):")
	for _, l := range lines {
		fmt.Fprintln(w, "  "+l)
	}
}

// lessons is what the records say, a line each.
func lessons(b *shelf.Bench) (lines []string) {
	for _, l := range b.Fills {
		lines = append(lines, fmt.Sprintf("slots full, wire of %g to %g mm bare: fill %s (%s)", l.FromMM, l.ToMM, l.Fill.Text(quantity.None[0], 2), l.Fill.Why))
	}
	if f := b.MeanTurnOff; f.Known() {
		sign := ""
		if f.Value > 0 {
			sign = "+"
		}
		lines = append(lines, fmt.Sprintf("mean turn, by the wire used: %s%s %% off the one reckoned with (%s)", sign, f.Text(quantity.None[0], 2), f.Why))
	}
	for _, r := range b.Rises {
		lines = append(lines, fmt.Sprintf("%s: %s K/W (%s)", r.Machine, r.RisePerWatt.Text(quantity.KelvinPerW[0], 2), r.RisePerWatt.Why))
	}
	return lines
}
