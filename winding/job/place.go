package job

import "fmt"

// Place is a path of the job file in the words of the form: "Trial winding 1, Wire" for trial[0].gauge.
// A path that is no field stays as it is.
func Place(path string) string {
	field, ok := InputAt(path)
	if !ok {
		return path
	}
	table, known := TableOf(field.Table)
	if !known {
		return field.WholeLabel()
	}
	if _, n, _ := SplitPath(path); table.Many() {
		return fmt.Sprintf("%s %d, %s", table.Title, n+1, field.WholeLabel())
	}
	return table.Title + ", " + field.WholeLabel()
}
