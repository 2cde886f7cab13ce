package drawing

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/parallel"
)

// File is a page with its path.
type File struct {
	*Page
	Path string
	svg  string
}

// ending is the file name's extension.
const ending = ".svg"

// Files are pages as SVG with the paths for a typed name: the file itself for one page, else files
// whose names begin with it. The error says in a sentence what is wrong with the name.
func Files(pages []*Page, name string) ([]File, error) {
	if err := usable(name); err != nil {
		return nil, err
	}
	files, wrong := make([]File, len(pages)), make([]error, len(pages))
	parallel.Each(len(pages), func(i int) {
		p := pages[i]
		svg, err := p.SVG()
		files[i], wrong[i] = File{p, p.fileName(name, len(pages)), svg}, err
	})
	for i, err := range wrong {
		if err != nil {
			return nil, fmt.Errorf("the %s sheet could not be written as SVG: %w", pages[i].Sheet, err)
		}
	}
	return files, nil
}

// usable refuses a name that no drawing can have.
func usable(name string) error {
	info, err := os.Stat(name)
	switch base := filepath.Base(name); {
	case err == nil && info.IsDir(), strings.HasSuffix(name, string(filepath.Separator)):
		return &job.FileError{Reason: "this is a folder; put the file's name behind it", Path: name, Err: job.ErrKind}
	case strings.EqualFold(filepath.Ext(base), ".pdf"):
		return &job.FileError{Reason: "drawings are SVG, which any browser opens and prints, into a PDF too; let the name end with .svg or with nothing", Path: name, Err: job.ErrKind}
	}
	return nil
}

// fileName is the file of a page, one of so many.
func (p *Page) fileName(name string, pages int) string {
	if pages == 1 {
		return name
	}
	base := strings.TrimSuffix(name, ending) + "-" + string(p.Sheet)
	if p.Of > 1 {
		base += fmt.Sprintf("-%d", p.Number)
	}
	return base + ending
}

// Older are those of the files that exist already, all of them older drawings. The error is a
// *job.FileError and names one that is no drawing of ours, or that cannot be read.
func Older(files []File) ([]string, error) {
	var list []string
	for _, f := range files {
		switch there, err := isOurs(f.Path); {
		case err != nil:
			return nil, err
		case there:
			list = append(list, f.Path)
		}
	}
	return list, nil
}

// mostDrawing is the largest file that is checked for being a drawing, bytes: a slot full of the finest
// wire makes some two million.
const mostDrawing = 16 << 20

// isOurs reports whether the file exists and is a drawing that may be replaced.
func isOurs(path string) (there bool, err error) {
	data, err := job.ReadRegular(path, mostDrawing)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return false, nil // any other fault shows on writing
	case err != nil:
		return true, &job.FileError{Reason: "it cannot be written over, choose another name", Path: path, Err: err}
	case !bytes.Contains(data[:min(len(data), 4096)], []byte(Signature)):
		return true, &job.FileError{Reason: "there is such a file already and it is no drawing of ours; it was left as it is, choose another name", Path: path, Err: job.ErrChanged}
	}
	return true, nil
}

// Save writes every file, or none where one would overwrite something that is no drawing. An older
// drawing is replaced. The error is that of the first that could not be written; the others are.
func Save(files []File) error {
	if _, err := Older(files); err != nil {
		return err
	}
	wrong := make([]error, len(files))
	parallel.Each(len(files), func(i int) {
		_, wrong[i] = job.Write(files[i].Path, files[i].svg, job.Mark{}, job.OverChanged|job.Anew)
	})
	for _, err := range wrong {
		if err != nil {
			return err
		}
	}
	return nil
}
