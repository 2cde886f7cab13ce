package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"strings"

	"slotwright/winding/drawing"
	"slotwright/winding/job"
	"slotwright/winding/text"

	"github.com/spf13/cobra"
)

// drawn is the JSON answer of draw.
type drawn struct {
	Trial string      `json:"trial,omitempty"`
	Paper string      `json:"paper"`
	Pages []drawnPage `json:"sheets"`
}

// drawnPage is one file written.
type drawnPage struct {
	Sheet    string `json:"sheet"`
	Page     int    `json:"page"`
	Of       int    `json:"pages"`
	Path     string `json:"written"`
	NotDrawn string `json:"not_drawn,omitempty"`

	svg string
}

// drawWish is what is asked of draw.
type drawWish struct {
	paper
	trial, sheet, size, out string
}

// newDraw is the verb that draws a trial as SVG, a file a page.
func newDraw(s streams) *cobra.Command {
	var w drawWish
	c := &cobra.Command{
		Use:   "draw JOB",
		Short: "Draw a trial to wind by, as SVG: unrolled, face, slot, amps over speed",
		Long: "Draw a trial to wind by, as SVG, a file a page: unrolled, face, slot, amps over speed. The files\n" +
			"stand in the folder one is in, or where --out says. An older drawing is replaced; any other file\n" +
			"is left as it is, and nothing is drawn.",
		Example: "  slotwright draw stator.toml --trial B\n  slotwright draw stator.toml --sheet unrolled --paper letter --out wall.svg",
		RunE: func(_ *cobra.Command, args []string) error {
			answer, err := w.draw(s, args[0])
			if err != nil {
				return err
			}
			if w.json {
				return printJSON(s.out, answer)
			}
			for _, p := range answer.Pages {
				fmt.Fprintln(s.out, p.says())
			}
			return nil
		},
	}
	c.Flags().StringVar(&w.trial, "trial", "", "name of the trial; when not given the one wound, else the reference")
	c.Flags().StringVar(&w.sheet, "sheet", "all", "unrolled, face, slot, amps or all")
	c.Flags().StringVar(&w.size, "paper", "a4", "a4 or letter")
	c.Flags().StringVar(&w.out, "out", "", "file to write; with more than one page, what their names begin with; named after the job when not given")
	w.flags(c)
	return c
}

// draw reads the job, draws it and writes the pages.
func (w *drawWish) draw(s streams, path string) (drawn, error) {
	size, err := drawing.ParsePaper(w.size)
	if err != nil {
		return drawn{}, fmt.Errorf("--paper: %w", err)
	}
	sheets, err := drawing.ParseSheets(w.sheet)
	if err != nil {
		return drawn{}, fmt.Errorf("--sheet: %w", err)
	}
	d, b, o, err := workOut(path)
	if err != nil {
		return drawn{}, err
	}
	i, err := theTrial(s, b, o, w.trial)
	if err != nil {
		return drawn{}, err
	}
	answer := drawn{Trial: o.Trials[i].Name, Paper: size.Name}
	pages := drawing.Pages(b, o, i, sheets, drawing.Options{Paper: size, Units: w.units(&d), ASCII: isASCII(s.out)})
	for _, p := range pages {
		svg, err := p.SVG()
		if err != nil {
			return drawn{}, fmt.Errorf("the %s sheet could not be written as SVG: %w", p.Sheet, err)
		}
		answer.Pages = append(answer.Pages, drawnPage{Sheet: string(p.Sheet), Page: p.Number, Of: p.Of,
			Path: w.name(path, p, len(pages)), NotDrawn: p.NotDrawn, svg: svg})
	}
	return answer, answer.save()
}

// name is the file of a page: --out when it is the only one.
func (w *drawWish) name(path string, p *drawing.Page, pages int) string {
	if pages == 1 && w.out != "" {
		return w.out
	}
	base := strings.TrimSuffix(w.out, ".svg")
	if base == "" {
		base = strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	}
	base += "-" + string(p.Sheet)
	if p.Of > 1 {
		base += fmt.Sprintf("-%d", p.Number)
	}
	return base + ".svg"
}

// save writes every page, or none where one would write over something that is no drawing.
func (d *drawn) save() error {
	for _, p := range d.Pages {
		if err := mayWrite(p.Path); err != nil {
			return err
		}
	}
	for _, p := range d.Pages {
		if _, err := job.Write(p.Path, p.svg, job.Mark{}, job.OverChanged|job.Anew); err != nil {
			return jobProblem{text: err.Error(), file: p.Path}
		}
	}
	return nil
}

// mostDrawing is the largest file that is looked into for whether it is a drawing, bytes:
// a slot full of the finest wire makes some two million.
const mostDrawing = 16 << 20

// mayWrite lets a new file be written and an older drawing replaced.
func mayWrite(path string) error {
	there, err := job.ReadRegular(path, mostDrawing)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil // whatever else is wrong is found on writing
	case err != nil:
		return jobProblem{text: "it cannot be written over, give another name with --out: " + path, file: path}
	case !bytes.Contains(there[:min(len(there), 4096)], []byte(drawing.Signature)):
		return jobProblem{text: "there is such a file already and it is no drawing of ours; it was left as it is, give another name with --out: " + path, file: path}
	}
	return nil
}

// says is what was written, and what could not be drawn on it.
func (p drawnPage) says() string {
	if p.NotDrawn != "" {
		return fmt.Sprintf("Wrote %s, without a drawing: %s", text.Visible(p.Path), p.NotDrawn)
	}
	return "Wrote " + text.Visible(p.Path)
}
