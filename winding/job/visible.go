package job

// shorten cuts text to so many characters, with a sign that it was cut.
func shorten(s string, most int) string {
	if len(s) <= most {
		return s
	}
	n := 0
	for i := range s {
		if n == most-1 {
			return s[:i] + "…"
		}
		n++
	}
	return s
}
