package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// jobFiles are the extensions of job files.
func jobFiles(name string) bool { return strings.EqualFold(filepath.Ext(name), ".toml") }

// maxListed is how many entries of a folder are examined.
const maxListed = 5000

// filesLike are the folders, ending with a slash, and the accepted files that begin with what is typed,
// in order. Those that begin with a dot are listed only when the dot is typed.
func filesLike(typed string, taken func(string) bool) []string {
	dir, base := filepath.Split(typed)
	where, err := home(dir)
	if err != nil {
		return nil
	}
	if where == "" {
		where = "."
	}
	f, err := os.Open(where)
	if err != nil {
		return nil
	}
	defer f.Close()
	entries, _ := f.ReadDir(maxListed)
	var list []string
	for _, e := range entries {
		name := e.Name()
		if !strings.HasPrefix(name, base) || strings.HasPrefix(name, ".") && !strings.HasPrefix(base, ".") {
			continue
		}
		if info, err := os.Stat(filepath.Join(where, name)); err == nil && info.IsDir() {
			list = append(list, dir+name+string(filepath.Separator))
		} else if taken(name) {
			list = append(list, dir+name)
		}
	}
	slices.Sort(list)
	return list
}

// common is the longest beginning of all texts of a list, in whole characters.
func common(list []string) string {
	to := []rune(list[0])
	for _, s := range list[1:] {
		n := 0
		for _, r := range s {
			if n >= len(to) || to[n] != r {
				break
			}
			n++
		}
		to = to[:n]
	}
	return string(to)
}
